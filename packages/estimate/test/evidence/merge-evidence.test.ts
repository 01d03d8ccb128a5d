import { q } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { published } from "../../../../test/support/published.js";
import { aroundByGrade, distributionOf, mergeEvidence } from "../../src/index.js";

const normal = (mean: number, standardDeviation: number) =>
  ({ distribution: "normal", mean, standardDeviation }) as const;
const pieces = fc.array(
  fc.tuple(fc.double({ min: -50, max: 50, noNaN: true }), fc.double({ min: 0.1, max: 10, noNaN: true })),
  { minLength: 1, maxLength: 6 },
);
const merge = (given: readonly (readonly [number, number])[]) =>
  mergeEvidence({ pieces: given.map(([mean, deviation]) => normal(mean, deviation)), unit: "1" });
const numbers = (merged: ReturnType<typeof merge>) => {
  if (merged.evidence.distribution !== "normal") throw new Error("a normal distribution is expected");
  return { mean: merged.evidence.mean, deviation: merged.evidence.standardDeviation };
};

published({
  quantity: "two equal uncertainties and a mismatch of 10: each gives way by 5",
  source: "documentation page of a mass-balance program, read for this",
  status: "seen",
  published: 5,
  computed: () =>
    numbers(
      merge([
        [0, 2],
        [10, 2],
      ]),
    ).mean,
  tolerance: 1e-12,
  why: "exact",
});

describe("merged evidence", () => {
  it("is the product of the normal densities, where they agree", () => {
    const { mean, deviation } = numbers(
      merge([
        [100, 4],
        [103, 3],
      ]),
    );
    // Two normal densities multiplied, worked by hand: weights 1/16 and 1/9, mean (100·9 + 103·16)/25, s = 12/5
    expect(mean).toBeCloseTo((100 * 9 + 103 * 16) / 25, 12);
    expect(deviation).toBeCloseTo(12 / 5, 12);
  });

  it("depends on no order, lies among the pieces, and is never wider than the scatter needs", () => {
    fc.assert(
      fc.property(pieces, (given) => {
        const { mean, deviation } = numbers(merge(given));
        const reversed = numbers(merge([...given].reverse()));
        expect(reversed.mean).toBeCloseTo(mean, 9);
        expect(reversed.deviation).toBeCloseTo(deviation, 9);
        expect(mean).toBeGreaterThanOrEqual(Math.min(...given.map(([value]) => value)) - 1e-9);
        expect(mean).toBeLessThanOrEqual(Math.max(...given.map(([value]) => value)) + 1e-9);
        const { agreement, pieces: rows } = merge(given);
        expect(rows.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1, 12);
        const alone = Math.min(...given.map(([, s]) => s));
        expect(deviation).toBeLessThanOrEqual(alone * Math.max(1, agreement.birgeRatio) * (1 + 1e-12));
      }),
    );
  });

  it("merges in steps to the same mean where nothing conflicts", () => {
    const all = numbers(
      merge([
        [100, 4],
        [101, 3],
        [99, 5],
      ]),
    );
    const two = numbers(
      merge([
        [100, 4],
        [101, 3],
      ]),
    );
    const stepwise = numbers(
      merge([
        [two.mean, two.deviation],
        [99, 5],
      ]),
    );
    expect(stepwise.mean).toBeCloseTo(all.mean, 12);
    expect(stepwise.deviation).toBeCloseTo(all.deviation, 12);
  });

  it("shows a conflict: how surprising, which piece, and a result as wide as the scatter", () => {
    const merged = merge([
      [100, 2],
      [101, 2],
      [120, 2],
    ]);
    // χ² about the mean 107 by hand: (49 + 36 + 169)/4
    expect(merged.agreement.chiSquared).toBeCloseTo(254 / 4, 9);
    expect(merged.agreement.chance).toBeCloseTo(Math.exp(-254 / 8), 15);
    expect(numbers(merged).deviation).toBeCloseTo((2 / Math.sqrt(3)) * Math.sqrt(254 / 8), 9);
    expect(merged.pieces[2]?.offBy).toBeCloseTo(19.5 / Math.hypot(2, Math.SQRT2), 9);
    expect(merged.warnings.join()).toContain("the oddest is 'piece 3', off the others by 8.0 standard deviations");
    expect(
      merge([
        [100, 2],
        [101, 2],
      ]).warnings,
    ).toEqual([]);
  });

  it("works on the logarithm for what is known to a factor", () => {
    const merged = mergeEvidence({
      scale: "logarithmic",
      unit: "1",
      pieces: [
        { distribution: "log-normal", median: 1, factor: 1.5 },
        { distribution: "log-normal", median: 2, factor: 1.5 },
      ],
    });
    expect(merged.likely).toBeCloseTo(Math.SQRT2, 3);
    expect(merged.evidence.distribution).toBe("log-normal");
  });

  it("cuts at bounds, says how they fit, and refuses what cannot be", () => {
    const bounded = (atLeast: number) =>
      mergeEvidence({ unit: "1", pieces: [normal(100, 2), { atLeast, source: "brochure" }] });
    expect(bounded(90).likely).toBeCloseTo(100, 4);
    expect(bounded(100).low).toBeGreaterThan(100);
    expect(bounded(100).agreement.chanceOfBounds).toBeCloseTo(0.5, 12);
    expect(bounded(104).warnings.join()).toContain("the bounds contradict the other pieces");
    expect(bounded(104).pieces[1]).toMatchObject({ role: "cuts", offBy: -2, weight: 0 });
    expect(distributionOf({ evidence: bounded(104).evidence, unit: "1" }).p10).toBeCloseTo(bounded(104).low, 9);
    expect(() => bounded(120)).toThrow(expect.objectContaining({ code: "INCONSISTENT" }));
  });

  it("shows the steps with the numbers that they take", () => {
    const working = merge([
      [100, 4],
      [103, 3],
    ]).working();
    expect(working.map(({ result }) => result.printed)).toEqual(["101.9", "0.36", "2.4"]);
    expect(
      merge([
        [100, 1],
        [110, 1],
      ])
        .working()
        .at(-1)?.expression,
    ).toBe("sqrt(χ²/1)/sqrt(1/s_1² + 1/s_2²)");
  });
});

describe("lineage", () => {
  const report = { ...normal(100, 2), id: "report", grade: "reported", source: "a magazine" } as const;
  const article = (id: string, mean = 100) => ({ ...normal(mean, 2), id, derivedFrom: ["report"] });

  it("counts three articles that repeat one report as one observation, the report", () => {
    const merged = mergeEvidence({ unit: "1", pieces: [article("a"), report, article("b"), article("c", 101)] });
    expect(merged.pieces.map(({ role }) => role)).toEqual(["repeats", "weighed", "repeats", "repeats"]);
    expect(numbers(merged)).toEqual({ mean: 100, deviation: 2 });
  });

  it("counts them as one also where the report itself is not at hand: the best grade, then the earliest", () => {
    const dated = (id: string, date: string, grade: "reported" | "announced") => ({ ...article(id), date, grade });
    const roles = (given: readonly ReturnType<typeof dated>[]) =>
      mergeEvidence({ unit: "1", pieces: given }).pieces.map(({ role }) => role);
    const [early, late] = [dated("a", "2026-01", "reported"), dated("b", "2026-02-03", "reported")];
    expect(roles([late, early])).toEqual(["repeats", "weighed"]);
    expect(roles([late, early, dated("c", "2026-05", "announced")])).toEqual(["repeats", "repeats", "weighed"]);
  });

  it("follows hearsay through hearsay, and a mean of two reports to both", () => {
    const second = { ...normal(90, 2), id: "second" };
    const mean = { ...normal(95, 2), id: "mean", derivedFrom: ["a", "second"] };
    const merged = mergeEvidence({ unit: "1", pieces: [report, article("a"), second, mean] });
    expect(merged.pieces.map(({ role }) => role)).toEqual(["weighed", "repeats", "weighed", "repeats"]);
  });

  it("never narrows by repetition, however often and in whatever order", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 6 }), fc.integer({ min: 0, max: 6 }), (count, place) => {
        const list = Array.from({ length: count }, (_, i) => article(`copy ${i}`));
        const all = [...list.slice(0, place), report, ...list.slice(place)];
        expect(numbers(mergeEvidence({ unit: "1", pieces: all }))).toEqual({ mean: 100, deviation: 2 });
      }),
    );
  });

  it("survives a lineage in which everything repeats everything before", () => {
    const tower = Array.from({ length: 60 }, (_, i) => ({
      ...{ ...normal(100, 2), id: `${i}` },
      ...(i < 2 ? {} : { derivedFrom: [`${i - 1}`, `${i - 2}`] }),
    }));
    expect(mergeEvidence({ unit: "1", pieces: tower }).agreement.degreesOfFreedom).toBe(1);
  });

  it("refuses a circle and an id that comes twice, and asks about a source that does", () => {
    const circle = [
      { ...normal(1, 1), id: "a", derivedFrom: ["b"] },
      { ...normal(1, 1), id: "b", derivedFrom: ["a"] },
    ];
    expect(() => mergeEvidence({ unit: "1", pieces: circle })).toThrow(
      "evidence is derived from itself: 'a' from 'b' from 'a'",
    );
    expect(() => mergeEvidence({ unit: "1", pieces: [report, report] })).toThrow(
      "two pieces of evidence have the id 'report'",
    );
    const twice = { ...normal(1, 1), source: "a magazine" };
    expect(mergeEvidence({ unit: "1", pieces: [twice, twice] }).warnings.join()).toContain("say derivedFrom");
  });
});

describe("the usual spread of a grade", () => {
  it("is given to a plain figure, so that a better grade weighs more", () => {
    const merged = mergeEvidence({
      unit: "kWh",
      pieces: [
        { value: q("98 kWh"), grade: "certified" },
        { value: q("100 kWh"), grade: "reported" },
      ],
    });
    expect(merged.pieces.map(({ usualSpread }) => usualSpread)).toEqual([true, true]);
    // Weights go with 1/(share·value)²: 0.02·98 against 0.1·100
    const [a, b] = [1.96 ** -2, 10 ** -2];
    expect(merged.pieces[0]?.weight).toBeCloseTo(a / (a + b), 12);
    expect(merged.likely.in("kWh")).toBeCloseTo((98 * a + 100 * b) / (a + b), 9);
  });

  it("widens from grade to grade and refuses a grade that there is not", () => {
    const high = (grade: "measured" | "certified" | "announced" | "reported" | "assumed") =>
      aroundByGrade(100, { grade }).high;
    const highs = (["measured", "certified", "announced", "reported", "assumed"] as const).map(high);
    expect(highs).toEqual([...highs].sort((x, y) => x - y));
    expect(() => aroundByGrade(1, { grade: "rumour" as never })).toThrow(
      expect.objectContaining({ code: "WRONG_CHOICE" }),
    );
  });

  it.each<[string, unknown]>([
    ["EMPTY", []],
    ["EMPTY", [{ atLeast: 1 }]],
    ["INCONSISTENT", [0]],
    ["INCONSISTENT", [5, { atLeast: 6 }, { atMost: 4 }]],
    ["UNKNOWN_OPTION", [{ distribution: "uniform", from: 0, too: 1 }]],
    ["NOT_A_QUANTITY", ["5"]],
  ])("refuses with %s: %o", (code, given) => {
    expect(() => mergeEvidence({ unit: "1", pieces: given as never })).toThrow(expect.objectContaining({ code }));
  });
});
