import { q } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  around,
  mergeStudy,
  model,
  propagate,
  propagateInSteps,
  type StudySummary,
  studyPart,
} from "../../src/index.js";
import { BIN_WIDTH, Bins, binEnds, quantileOfBins, shareOfBins } from "../../src/propagate/bins.js";
import { ExactSum, sumOf } from "../../src/propagate/exact-sum.js";
import { quantileOfSorted } from "../../src/propagate/spread.js";
import { mergedSummaries } from "../../src/propagate/summary.js";

const odd = model({
  name: "odd",
  inputs: { x: { unit: "kg", meaning: "a mass" }, y: { unit: "1", meaning: "a number" } },
  outputs: { product: { unit: "kg", meaning: "product" }, difference: { unit: "1", meaning: "difference" } },
  evaluate: ({ x, y }) => {
    if (y > 1.15) throw new Error("y is too large");
    return { product: x * y, difference: x > 12 ? Number.NaN : Math.log(y) };
  },
});
const evidence = { x: around(q("10 kg"), 0.15), y: around(1, 0.1) };

describe("parts of a study", () => {
  it("merge to exactly what one run gives, in any order and number", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 100, max: 6000 }),
        fc.integer({ min: 1, max: 30 }),
        fc.infiniteStream(fc.nat()),
        (draws, of, order) => {
          const study = { model: odd, evidence, draws, seed: 5 };
          const whole = studyPart({ ...study, part: [1, 1] });
          const parts = Array.from({ length: of }, (_, i) => studyPart({ ...study, part: [i + 1, of] }));
          const shuffled = parts.map((part) => ({ part, key: order.next().value })).sort((a, b) => a.key - b.key);
          const travelled = JSON.parse(JSON.stringify(shuffled.map(({ part }) => part))) as [StudySummary];
          expect(mergedSummaries(travelled)).toEqual(whole);
          const merged = mergeStudy({ model: odd, parts: travelled });
          const inOne = propagate({ ...study, keep: "summary" });
          expect(JSON.stringify(merged)).toBe(JSON.stringify(inOne));
          expect(merged.standardError("product")).toEqual(inOne.standardError("product"));
          expect(merged.failed).toBeGreaterThan(0);
        },
      ),
      { numRuns: 25 },
    );
  });

  it("agree with the draws themselves: the same moments, percentiles within the stated resolution", () => {
    const study = { model: odd, evidence, draws: 5000 };
    const [kept, summary] = [propagate(study), propagate({ ...study, keep: "summary" })];
    expect(summary.resolution).toBe(BIN_WIDTH);
    expect(JSON.stringify([summary.mean, summary.standardDeviation])).toBe(
      JSON.stringify([kept.mean, kept.standardDeviation]),
    );
    expect(summary.correlation("product", "difference")).toBe(kept.correlation("product", "difference"));
    for (const share of [0, 0.01, 0.1, 0.5, 0.9, 0.999, 1]) {
      const [a, b] = [summary, kept].map((each) => each.quantile("product", share).in("kg")) as [number, number];
      expect(Math.abs(a / b - 1)).toBeLessThan(BIN_WIDTH);
    }
    expect(summary.chanceOfAtLeast("product", q("10 kg"))).toBeCloseTo(kept.chanceOfAtLeast("product", q("10 kg")), 2);
    expect(() => summary.samples("product")).toThrow(expect.objectContaining({ code: "NOT_VALID_HERE" }));
  });

  it("have the mean, deviation and correlation that textbook formulas give for the draws", () => {
    const { samples, mean, standardDeviation, correlation } = propagate({ model: odd, evidence, draws: 777 });
    const [a, b] = [samples("product"), samples("difference")];
    const average = (values: Float64Array): number => values.reduce((sum, each) => sum + each, 0) / values.length;
    const [ma, mb] = [average(a), average(b)];
    const sum = (f: (i: number) => number): number => a.reduce((total, _, i) => total + f(i), 0);
    const da = (i: number): number => (a[i] as number) - ma;
    const db = (i: number): number => (b[i] as number) - mb;
    expect(mean.product.in("kg")).toBeCloseTo(ma, 12);
    expect(standardDeviation.product.in("kg")).toBeCloseTo(Math.sqrt(sum((i) => da(i) ** 2) / (a.length - 1)), 12);
    const expected = sum((i) => da(i) * db(i)) / Math.sqrt(sum((i) => da(i) ** 2) * sum((i) => db(i) ** 2));
    expect(correlation("product", "difference")).toBeCloseTo(expected, 12);
    expect(correlation("difference", "product")).toBe(correlation("product", "difference"));
  });

  it("show the first draws that failed, with the reason, and where", () => {
    const { failures, failed, warnings, draws } = propagate({ model: odd, evidence, draws: 1000 });
    expect(failures).toHaveLength(3);
    expect(failures.every(({ reason }) => ["y is too large", "difference is NaN"].includes(reason))).toBe(true);
    expect(warnings).toEqual([`${failed} of ${draws} draws gave no result and are left out of the spreads`]);
  });

  it.each<[string, (parts: StudySummary[]) => unknown]>([
    ["EMPTY", () => []],
    ["EMPTY", ([first]) => [first]],
    ["COUNTED_TWICE", ([first, second]) => [first, second, first]],
    ["INCONSISTENT", ([first]) => [first, studyPart({ model: odd, evidence, draws: 1024, seed: 2, part: [2, 2] })]],
    [
      "INCONSISTENT",
      ([first]) => [
        first,
        studyPart({ model: odd, evidence: { ...evidence, x: around(q("10 kg"), 0.1) }, draws: 1024, part: [2, 2] }),
      ],
    ],
    ["WRONG_CHOICE", ([first]) => [first, { ...first, succeeded: [1, 2] }]],
    ["WRONG_CHOICE", ([first, second]) => [first, { ...second, failed: 600 }]],
    ["WRONG_CHOICE", ([first]) => [first, "text"]],
    ["WRONG_CHOICE", () => ({})],
  ])("refuses with %s what is no whole study (%#)", (code, spoil) => {
    const parts = [1, 2].map((number) => studyPart({ model: odd, evidence, draws: 1024, part: [number, 2] }));
    expect(mergeStudy({ model: odd, parts }).draws).toBe(1024);
    expect(() => mergeStudy({ model: odd, parts: spoil(parts) } as never)).toThrow(expect.objectContaining({ code }));
  });

  it("refuses a part that there is not", () => {
    for (const part of [[0, 2], [3, 2], [1.5, 2], [1], "1/2"]) {
      expect(() => studyPart({ model: odd, evidence, part } as never)).toThrow(
        expect.objectContaining({ code: expect.any(String) }),
      );
    }
  });
});

describe("the error of percentiles", () => {
  it("is about what other seeds give, and rather more than less", () => {
    const study = { model: odd, evidence, draws: 2048 };
    const runs = Array.from({ length: 40 }, (_, seed) => propagate({ ...study, seed }));
    const medians = runs.map(({ spread }) => spread.product.p50.in("kg"));
    const mean = medians.reduce((a, b) => a + b) / medians.length;
    const actual = Math.sqrt(medians.reduce((a, b) => a + (b - mean) ** 2, 0) / (medians.length - 1));
    const stated = runs.map((run) => run.standardError("product").p50.in("kg")).reduce((a, b) => a + b) / runs.length;
    expect(stated / actual).toBeGreaterThan(0.9);
    expect(stated / actual).toBeLessThan(4);
  });
});

describe("a study in steps", () => {
  const study = { model: odd, evidence, draws: 10_000 };

  it("gives what the study in one go gives, and tells of its progress", async () => {
    const done: number[] = [];
    const result = await propagateInSteps({
      ...study,
      drawsPerStep: 2500,
      onProgress: (progress) => done.push(progress.done),
    });
    expect(JSON.stringify(result)).toBe(JSON.stringify(propagate(study)));
    expect(done.length).toBeGreaterThanOrEqual(3);
    expect(done.at(-1)).toBe(10_000);
    expect([...done].sort((a, b) => a - b)).toEqual(done);
  });

  it("stops when it is told to, between steps, also by somebody else on the same loop", async () => {
    const controller = new AbortController();
    let steps = 0;
    setTimeout(() => controller.abort(new Error("no longer wanted")), 0);
    const running = propagateInSteps({
      ...study,
      draws: 1_000_000,
      signal: controller.signal,
      onProgress: () => steps++,
    });
    await expect(running).rejects.toThrow("no longer wanted");
    expect(steps).toBeLessThan(20);
  });

  it("rejects with a typed error what makes no sense", async () => {
    for (const wrong of [{ signal: 3 }, { onProgress: 3 }, { drawsPerStep: 0 }, { keep: "all" }, { draws: 1 }]) {
      await expect(propagateInSteps({ ...study, ...wrong } as never)).rejects.toMatchObject({
        code: expect.any(String),
      });
    }
  });
});

const doubles = fc.double({ min: -1e12, max: 1e12, noNaN: true });

describe("exact sums", () => {
  it("do not depend on the order, and are the sum in whole numbers", () => {
    fc.assert(
      fc.property(fc.array(doubles, { maxLength: 60 }), fc.nat(60), (numbers, cut) => {
        const [there, back] = [sumOf([numbers]), sumOf([[...numbers].reverse()])];
        expect(back.parts()).toEqual(there.parts());
        expect(sumOf([sumOf([numbers.slice(cut)]).parts(), sumOf([numbers.slice(0, cut)]).parts()]).parts()).toEqual(
          there.parts(),
        );
      }),
    );
    fc.assert(
      fc.property(fc.array(fc.maxSafeInteger(), { maxLength: 60 }), (numbers) => {
        const exact = numbers.reduce((sum, each) => sum + BigInt(each), 0n);
        expect(sumOf([numbers]).rounded()).toBe(Number(exact) + 0);
        expect(
          sumOf([numbers])
            .parts()
            .reduce((sum, each) => sum + BigInt(each), 0n),
        ).toBe(exact);
      }),
    );
  });

  it("keep what a plain sum loses", () => {
    const sum = new ExactSum();
    for (const each of [1e16, 1, -1e16, 1e-30]) sum.add(each);
    expect(sum.parts()).toEqual([1, 1e-30]);
  });
});

describe("bins", () => {
  it("hold each number between their ends, which are at most 1/4096 of it apart", () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (number) => {
        fc.pre((Math.abs(number) > 1e-300 && Math.abs(number) < 1e300) || number === 0);
        const bins = new Bins();
        bins.add(number);
        const [[key, count] = [0, 0]] = bins.entries();
        const [low, high] = binEnds(key);
        expect(count).toBe(1);
        expect(number).toBeGreaterThanOrEqual(low);
        expect(number).toBeLessThanOrEqual(high);
        if (number !== 0) expect(high - low).toBeLessThanOrEqual(Math.abs(number) * BIN_WIDTH);
      }),
    );
  });

  it("give percentiles and shares within their width", () => {
    fc.assert(
      fc.property(
        fc.array(doubles, { minLength: 1, maxLength: 300 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (numbers, share) => {
          const bins = new Bins();
          for (const number of numbers) bins.add(number);
          const sorted = Float64Array.from(numbers).sort();
          const rank = Math.floor((sorted.length - 1) * share);
          const found = quantileOfBins(bins.entries(), sorted.length, share);
          const [a, b] = [sorted[rank] as number, sorted[Math.min(rank + 1, sorted.length - 1)] as number];
          const slack = BIN_WIDTH * Math.max(Math.abs(a), Math.abs(b)) + 1e-300;
          expect(found).toBeGreaterThanOrEqual(a - slack);
          expect(found).toBeLessThanOrEqual(b + slack);
          expect(shareOfBins(bins.entries(), sorted.length, a)).toBeLessThanOrEqual(1);
          expect(quantileOfSorted(sorted, 0)).toBe(sorted[0]);
        },
      ),
    );
  });
});
