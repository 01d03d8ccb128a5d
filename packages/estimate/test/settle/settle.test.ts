import { q, quantity } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { published } from "../../../../test/support/published.js";
import { normalQuantile } from "../../src/evidence/normal.js";
import {
  around,
  intervalScore,
  model,
  propagate,
  runningRecord,
  sealEstimate,
  settle,
  wilsonLower,
  wilsonUpper,
} from "../../src/index.js";
import { rankedProbabilityScore, shareBelow } from "../../src/settle/fallen.js";

const fine = Array.from({ length: 9999 }, (_, i) => (i + 1) / 10_000);
const normal = { shares: fine, quantiles: fine.map(normalQuantile) };

describe("where an outcome fell", () => {
  published({
    quantity: "ranked probability score of the standard normal distribution, outcomes 0, 1 and −2",
    source:
      "T. Gneiting and A. E. Raftery, J. Am. Stat. Assoc. 102 (2007) 359, closed form: z(2Φ(z) − 1) + 2φ(z) − 1/√π",
    status: "memory",
    given: "9999 quantiles",
    published: [0.233695, 0.602441, 1.452792],
    computed: () => [0, 1, -2].map((outcome) => rankedProbabilityScore(normal, outcome)),
    tolerance: 2e-5,
    why: "tails beyond 1 in 10 000 are cut off",
  });

  published({
    quantity: "Wilson intervals at 95 % of 81 of 263, 15 of 148 and 0 of 20",
    source: "R. G. Newcombe, Statistics in Medicine 17 (1998) 857, table I, method 3",
    status: "memory",
    published: [0.2553, 0.3662, 0.0624, 0.1605, 0, 0.1611],
    computed: () =>
      [
        [81, 263],
        [15, 148],
        [0, 20],
      ].flatMap(([inside = 0, count = 1]) => {
        const given = { share: inside / count, count, deviate: 1.959964 };
        return [wilsonLower(given), wilsonUpper(given)];
      }),
    tolerance: 0.00005,
    why: "the last printed digit",
  });

  it("is the inverse of the quantiles, also where several of them coincide, and says what is beyond all of them", () => {
    const spread = { shares: [0.1, 0.3, 0.5, 0.9], quantiles: [10, 20, 20, 40] };
    const at = [10, 15, 20, 30, 40].map((outcome) => shareBelow(spread, outcome));
    for (const [i, share] of [0.1, 0.2, 0.4, 0.7, 0.9].entries()) expect(at[i]).toBeCloseTo(share, 12);
    expect(shareBelow(spread, 5)).toBe(0.05);
    expect(shareBelow(spread, 50)).toBe(0.95);
  });

  it("has a score that is the distance when there is no spread, and never negative", () => {
    expect(rankedProbabilityScore({ shares: [0.1, 0.9], quantiles: [3, 3] }, 5)).toBe(2);
    const sorted = fc.array(fc.double({ min: -100, max: 100, noNaN: true }), { minLength: 3, maxLength: 30 });
    fc.assert(
      fc.property(sorted, fc.double({ min: -200, max: 200, noNaN: true }), (values, outcome) => {
        const quantiles = values.toSorted((a, b) => a - b);
        const shares = quantiles.map((_, i) => (i + 1) / (quantiles.length + 1));
        const [score, further] = [outcome, Math.max(outcome, quantiles.at(-1) as number) + 10].map((each) =>
          rankedProbabilityScore({ shares, quantiles }, each),
        ) as [number, number];
        expect(score).toBeGreaterThanOrEqual(0);
        expect(further).toBeGreaterThan(0);
        // By its definition, with many rectangles
        const [from, to] = [Math.min(outcome, quantiles[0] as number), Math.max(outcome, quantiles.at(-1) as number)];
        const steps = 4000;
        let sum = 0;
        for (let i = 0; i < steps; i++) {
          const x = from + ((to - from) * (i + 0.5)) / steps;
          const inside = x >= (quantiles[0] as number) && x <= (quantiles.at(-1) as number);
          const below = inside ? shareBelow({ shares, quantiles }, x) : x < (quantiles[0] as number) ? 0 : 1;
          sum += ((below - (x >= outcome ? 1 : 0)) ** 2 * (to - from)) / steps;
        }
        expect(Math.abs(score - sum)).toBeLessThan(2e-3 * (to - from) + 1e-9);
      }),
      { numRuns: 40 },
    );
  });

  it("scores an interval least, on average, when it is the true one", () => {
    const score = (lower: number, upper: number) =>
      normal.quantiles.reduce((sum, outcome) => sum + intervalScore.of({ lower, upper, outcome, outside: 0.2 }), 0);
    const end = normalQuantile(0.9);
    const best = score(-end, end);
    for (const [lower, upper] of [
      [-0.8 * end, 0.8 * end],
      [-1.2 * end, 1.2 * end],
      [-end + 0.2, end + 0.2],
    ] as const) {
      expect(score(lower, upper)).toBeGreaterThan(best);
    }
  });
});

const range = model({
  name: "range",
  inputs: {
    usable: { unit: "kWh", meaning: "usable energy", above: 0, place: 1 },
    use: { unit: "Wh/km", meaning: "consumption", above: 0, place: 2 },
  },
  outputs: { range: { unit: "km", meaning: "range, full to empty" }, use: { unit: "Wh/km", meaning: "consumption" } },
  evaluate: ({ usable, use }) => ({ range: (1000 * usable) / use, use }),
});
const evidence = { usable: around(q("90 kWh"), 0.05), use: around(q("180 Wh/km"), 0.1) };
const sealOptions = { name: "van (invented)", date: "2026-11-25", model: range, evidence };
const sealed = sealEstimate(sealOptions);
const date = "2027-05-04";
const numberOf = (figure: unknown): number => (figure as { readonly value: number }).value;

describe("settle", () => {
  it("reads outcomes in any unit of the dimension, and judges them alike", () => {
    const [km, mi] = [q("470 km"), q("470 km").to("mi")].map((outcome) =>
      settle({ sealed, outcomes: { range: outcome }, date }),
    );
    expect(mi?.outcomes[0]?.shareBelow).toBeCloseTo(km?.outcomes[0]?.shareBelow ?? Number.NaN, 9);
    const study = propagate({ model: range, evidence });
    expect(km?.outcomes[0]?.shareBelow).toBeCloseTo(1 - study.chanceOfAtLeast("range", q("470 km")), 2);
    expect(km?.outcomes[0]?.intervals.map(({ share, inside }) => [share, inside])).toEqual([
      [0.5, false],
      [0.8, true],
      [0.9, true],
    ]);
  });

  it("attributes the whole miss: parts sum exactly to it, and nothing is left when all inputs are known", () => {
    const known = { usable: q("87 kWh"), use: q("186 Wh/km") };
    const outcomes = { range: quantity(87_000 / 186, "km") };
    const [settled] = settle({ sealed, outcomes, date, model: range, known }).outcomes;
    const attribution = settled?.attribution;
    const changes = (attribution?.parts ?? []).map(({ change }) => numberOf(change));
    expect(changes).toHaveLength(4);
    expect(changes.reduce((sum, change) => sum + change, 0)).toBe(numberOf(attribution?.change));
    expect(changes.at(-1)).toBeCloseTo(0, 9);
    expect(numberOf(attribution?.change)).toBeCloseTo(numberOf(settled?.miss), 9);
    expect(changes[1]).toBeCloseTo(87_000 / 180 - 500, 9);
    expect(settled?.words).toMatch(/inside the 80 % interval .*not explained by the model/);
  });

  it("warns when the model has changed since, and when the outcome is older than the seal", () => {
    const changed = model({ ...range, evaluate: ({ usable, use }) => ({ range: (990 * usable) / use, use }) });
    const outcomes = { range: q("470 km") };
    expect(settle({ sealed, outcomes, date, model: range }).warnings).toEqual([]);
    expect(settle({ sealed, outcomes, date, model: changed }).warnings).toEqual([
      "range has changed since: at the likely inputs it gave 500.00 km for range when it was sealed, and gives 495.00 km now",
    ]);
    expect(settle({ sealed, outcomes, date: "2026-01-01" }).warnings[0]).toContain("before the estimate was sealed");
  });

  it("refuses wrong units, unknown outputs, another model and a changed seal", () => {
    const coded = (code: string) => expect.objectContaining({ code });
    const outcomes = { range: q("470 km") };
    expect(() => settle({ sealed, outcomes: { range: q("470 kg") }, date })).toThrow(coded("WRONG_DIMENSION"));
    expect(() => settle({ sealed, outcomes: { mass: q("470 kg") }, date })).toThrow(
      "has no output 'mass': it has range, use",
    );
    expect(() => settle({ sealed, outcomes, date, known: { use: q("5 Wh/km") } as never })).toThrow(
      coded("MISSING_OPTION"),
    );
    const other = model({ ...range, name: "another" });
    expect(() => settle({ sealed, outcomes, date, model: other })).toThrow(
      "'another' is not the model 'range' that was sealed",
    );
    expect(() => settle({ sealed: { ...sealed, seed: 2 }, outcomes, date })).toThrow(coded("DIGEST_MISMATCH"));
  });
});

/** Settlements of estimates whose true inputs are drawn from their own evidence, or from one that is so many times as wide. */
function settlements(count: number, seed: number, wider = 1) {
  const truth = { usable: around(q("90 kWh"), 0.05 * wider), use: around(q("180 Wh/km"), 0.1 * wider) };
  const outcomes = propagate({ model: range, evidence: truth, seed, draws: Math.max(100, count) }).samples("range");
  return Array.from({ length: count }, (_, i) => {
    const each = sealEstimate({ ...sealOptions, name: `van ${i} (invented)`, draws: 1000, outputs: ["range"] });
    const day = `20${27 + (i % 2)}-05-04`;
    return settle({
      sealed: each,
      outcomes: { range: quantity(outcomes[i] as number, "km") },
      date: day,
      group: `class ${i % 3}`,
    });
  });
}

describe("the running record", () => {
  it("has the coverage that was stated when outcomes come from the spreads themselves", () => {
    const record = runningRecord({ settlements: settlements(400, 5) });
    for (const { share, observed, interval, expected, inside, balanced } of record.all.coverage) {
      // Four standard deviations of a binomial share
      expect(Math.abs(observed - share)).toBeLessThan(4 * Math.sqrt((share * (1 - share)) / 400));
      expect(interval.low).toBeLessThan(observed);
      expect(interval.high).toBeGreaterThan(observed);
      expect([expected, inside]).toEqual([share * 400, observed * 400]);
      expect(Math.abs((balanced ?? 0) - observed)).toBeLessThan(0.01);
    }
    expect(record.all.tenths.reduce((a, b) => a + b)).toBe(400);
    for (const tenth of record.all.tenths) expect(Math.abs(tenth - 40)).toBeLessThan(25);
    expect(record.all.meanShareBelow).toBeCloseTo(0.5, 1);
    expect(record.all.scatterOfDeviations).toBeCloseTo(1, 1);
    expect(record.all.words).toContain("no more or less than chance explains");
    expect(record.warnings).toEqual([]);
    expect(record.byYear.map(({ of, figures }) => [of, figures])).toEqual([
      ["2027", 200],
      ["2028", 200],
    ]);
    expect(record.byGroup.map(({ of }) => of)).toEqual(["class 0", "class 1", "class 2"]);
  });

  it("sees spreads that are too narrow, and those that are too wide", () => {
    const narrow = runningRecord({ settlements: settlements(100, 6, 2) });
    expect(narrow.all.words).toContain("too narrow");
    expect(narrow.all.scatterOfDeviations).toBeGreaterThan(1.5);
    expect(runningRecord({ settlements: settlements(100, 6, 0.4) }).all.words).toContain("wider than they need be");
  });

  it("balances groups, so that many figures of one do not speak for all", () => {
    const one = (i: number, km: number, group: string) =>
      settle({
        ...{ sealed: sealEstimate({ ...sealOptions, name: `${i} (invented)`, draws: 200 }), date, group },
        outcomes: { range: quantity(km, "km") },
      });
    const four = [one(1, 500, "a"), one(2, 501, "a"), one(3, 499, "a"), one(4, 900, "b")];
    const [fifty] = runningRecord({ settlements: four }).all.coverage;
    expect([fifty?.observed, fifty?.balanced]).toEqual([0.75, 0.5]);
  });

  it("warns when there are too few, and when figures of one estimate miss together", () => {
    const both = { range: q("470 km"), use: q("190 Wh/km") };
    const { warnings } = runningRecord({ settlements: [settle({ sealed, outcomes: both, date })] });
    expect(warnings).toHaveLength(2);
    expect(warnings[0]).toContain("2 settled figures are too few");
    expect(warnings[1]).toContain("2 figures are of 1 estimate:");
  });

  it("refuses what is counted twice, and what settle did not give", () => {
    const once = settle({ sealed, outcomes: { range: q("470 km") }, date });
    expect(() => runningRecord({ settlements: [once, once] })).toThrow(
      expect.objectContaining({ code: "COUNTED_TWICE" }),
    );
    expect(() => runningRecord({ settlements: [] })).toThrow(expect.objectContaining({ code: "EMPTY" }));
    const broken = { ...once, outcomes: [{ ...once.outcomes[0], shareBelow: 7 }] } as never;
    expect(() => runningRecord({ settlements: [broken] })).toThrow("is no outcome that settle gave");
    expect(runningRecord({ settlements: [JSON.parse(JSON.stringify(once))] }).all.figures).toBe(1);
  });
});
