import betaQuantile from "@stdlib/stats-base-dists-beta-quantile";
import chiSquaredCdf from "@stdlib/stats-base-dists-chisquare-cdf";
import normalQuantileOracle from "@stdlib/stats-base-dists-normal-quantile";
import { type InputError, q } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { published } from "../../../../test/support/published.js";
import { shapeOf } from "../../src/evidence/distribution.js";
import { readEvidence } from "../../src/evidence/evidence.js";
import { chanceOfChiSquared, incompleteBeta, logGamma } from "../../src/evidence/gamma.js";
import { normalCdf, normalQuantile } from "../../src/evidence/normal.js";
import { quantileOf } from "../../src/evidence/quantile.js";
import { momentsOf, type Shape } from "../../src/evidence/shape.js";
import { distributionOf, model, propagate } from "../../src/index.js";

const ratio = { unit: "1" };
const shape = (given: unknown, rule = ratio): Shape => shapeOf(readEvidence("x", given, rule));
const share = fc.double({ min: 1e-6, max: 1 - 1e-6, noNaN: true });
const size = fc.double({ min: 0.01, max: 1000, noNaN: true });
const place = fc.double({ min: -1000, max: 1000, noNaN: true });

/** Evidence of every form that has a spread. */
const anyForm = fc
  .tuple(
    place,
    size,
    size,
    fc.double({ min: 1.01, max: 1.6, noNaN: true }),
    fc.array(place, { minLength: 2, maxLength: 9 }),
  )
  .chain(([a, d, e, factor, values]) =>
    fc.constantFrom<unknown>(
      { low: a - d, likely: a, high: a + e },
      { atLeast: a, rarelyAbove: a + d },
      { atMost: a, rarelyBelow: a - d },
      { distribution: "uniform", from: a, to: a + d },
      { distribution: "triangular", from: a - d, mode: a, to: a + e },
      { distribution: "PERT", from: a - d, mode: a, to: a + e },
      { distribution: "normal", mean: a, standardDeviation: d },
      { distribution: "normal", mean: a, standardDeviation: d, atLeast: a - e },
      { distribution: "log-normal", median: d, factor },
      { distribution: "log-normal", median: d, factor, atMost: d * factor },
      { distribution: "samples", values: values.map((each, i) => each + i * 1e-3) },
    ),
  );

describe("every distribution", () => {
  it("has a quantile that rises, and a share below it that is its inverse", () => {
    fc.assert(
      fc.property(anyForm, share, share, (given, u, v) => {
        const { quantile, cdf } = shape(given);
        const [x, y] = [quantile(Math.min(u, v)), quantile(Math.max(u, v))];
        expect(x).toBeLessThanOrEqual(y);
        const there = cdf(quantile(u));
        // Where samples coincide or crowd, a share has no one inverse: the way back then is exact.
        if (Math.abs(there - u) > 1e-7) expect(quantile(there)).toBeCloseTo(quantile(u), 6);
      }),
    );
  });

  it("has the mean and deviation that its quantile integrates to, and ends where it says", () => {
    fc.assert(
      fc.property(anyForm, (given) => {
        const { quantile, moments, ends } = shape(given);
        const numbers = momentsOf(quantile);
        const { mean, standardDeviation } = moments();
        expect(Math.abs(mean - numbers.mean)).toBeLessThanOrEqual(2e-3 * standardDeviation);
        expect(Math.abs(standardDeviation - numbers.standardDeviation)).toBeLessThanOrEqual(0.02 * standardDeviation);
        const room = 1e-9 * (1 + Math.abs(mean) + standardDeviation);
        if (Number.isFinite(ends[0])) expect(quantile(0)).toBeGreaterThanOrEqual(ends[0] - room);
        if (Number.isFinite(ends[1])) expect(quantile(1)).toBeLessThanOrEqual(ends[1] + room);
      }),
      { numRuns: 200 },
    );
  });

  it("stays within what the input can be", () => {
    const fraction = { unit: "1", above: 0, atMost: 1 };
    const cut = readEvidence("x", { distribution: "normal", mean: 0.95, standardDeviation: 0.05 }, fraction);
    fc.assert(
      fc.property(fc.double({ min: 1e-12, max: 1, noNaN: true }), (u) => {
        expect(quantileOf(cut, u)).toBeLessThanOrEqual(1);
        expect(quantileOf(cut, u)).toBeGreaterThan(0);
      }),
    );
    expect(cut.shape?.cdf(1)).toBe(1);
    const ends = readEvidence("x", { atLeast: 0.9, rarelyAbove: 0.98 }, fraction);
    expect(quantileOf(ends, 1)).toBe(1);
  });
});

describe("quantiles against a statistics library (@stdlib)", () => {
  it("agrees for the normal distribution, tails included", () => {
    for (const u of [1e-300, 1e-20, 1e-9, 1e-4, 0.02, 0.0749, 0.0751, 0.3, 0.5, 0.924, 0.926, 0.9999, 1 - 1e-9]) {
      const oracle = normalQuantileOracle(u, 0, 1);
      expect(Math.abs(normalQuantile(u) - oracle), `u = ${u}`).toBeLessThanOrEqual(
        1e-9 * Math.max(1, Math.abs(oracle)),
      );
    }
    fc.assert(
      fc.property(share, (u) => {
        expect(normalCdf(normalQuantile(u))).toBeCloseTo(u, 13);
      }),
    );
    expect([normalQuantile(0), normalQuantile(1)]).toEqual([Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY]);
  });

  it("agrees for PERT, whose library form is the beta distribution", () => {
    const three = fc.tuple(
      fc.double({ min: 0.01, max: 0.99, noNaN: true }),
      fc.double({ min: 0.001, max: 0.999, noNaN: true }),
    );
    fc.assert(
      fc.property(three, ([mode, u]) => {
        const ours = shape({ distribution: "PERT", from: 0, mode, to: 1 }).quantile(u);
        expect(ours).toBeCloseTo(betaQuantile(u, 1 + 4 * mode, 5 - 4 * mode), 9);
      }),
    );
  });

  it("agrees for the chance of a sum of squares", () => {
    for (const degrees of [1, 2, 3, 4, 7, 30, 200]) {
      for (const x of [0.001, 0.5, 2, 6.4, 9.488, 40, 250]) {
        expect(chanceOfChiSquared(x, degrees), `${x}, ${degrees}`).toBeCloseTo(1 - chiSquaredCdf(x, degrees), 12);
      }
    }
  });

  it("has the gamma function of whole and half numbers, and the binomial sums of the beta function", () => {
    expect(logGamma(11)).toBeCloseTo(Math.log(3628800), 12);
    expect(logGamma(0.5)).toBeCloseTo(Math.log(Math.PI) / 2, 13);
    // I_0.3(2, 3) is the chance of two or more successes out of four: 1 − 0.7⁴ − 4·0.3·0.7³
    expect(incompleteBeta(0.3, 2, 3)).toBeCloseTo(0.3483, 13);
    expect([incompleteBeta(0, 2, 3), incompleteBeta(1, 2, 3)]).toEqual([0, 1]);
  });
});

published({
  quantity: "quantiles of the normal distribution at 90, 95, 97.5 and 99.5 %",
  source: "printed tables of the normal distribution",
  status: "memory",
  published: [1.2816, 1.6449, 1.96, 2.5758],
  computed: () => [0.9, 0.95, 0.975, 0.995].map(normalQuantile),
  tolerance: 0.00005,
  why: "last printed digit",
});
published({
  quantity: "standard uncertainty of half-width 1: rectangular and triangular",
  source: "JCGM 100:2008, 4.3.7 and 4.3.9: a/√3 and a/√6",
  status: "memory",
  published: [1 / Math.sqrt(3), 1 / Math.sqrt(6)],
  computed: () => [
    shape({ distribution: "uniform", from: -1, to: 1 }).moments().standardDeviation,
    shape({ distribution: "triangular", from: -1, mode: 0, to: 1 }).moments().standardDeviation,
  ],
  tolerance: 1e-12,
  why: "exact",
});
published({
  quantity: "chance that χ² of four degrees of freedom exceeds its printed 95 % value",
  source: "printed tables of χ²: 9.488",
  status: "memory",
  published: 0.05,
  computed: () => chanceOfChiSquared(9.488, 4),
  tolerance: 0.00002,
  why: "last digit of the printed quantile",
});

describe("evidence of every form", () => {
  const codeOf = (given: unknown, rule = ratio): string => {
    try {
      readEvidence("x", given, rule);
    } catch (error) {
      return (error as InputError).code;
    }
    return "no error";
  };

  it.each([
    ["WRONG_CHOICE", { distribution: "cauchy", from: 0, to: 1 }],
    ["MISSING_OPTION", { distribution: "uniform", from: 0 }],
    ["INCONSISTENT", { distribution: "uniform", from: 1, to: 0 }],
    ["INCONSISTENT", { distribution: "PERT", from: 0, mode: 2, to: 1 }],
    ["UNKNOWN_OPTION", { distribution: "uniform", from: 0, mode: 0.5, to: 1 }],
    ["UNKNOWN_OPTION", { atleast: 1, rarelyAbove: 2 }],
    ["UNKNOWN_OPTION", { atleast: 1 }],
    ["MISSING_OPTION", { atLeast: 1 }],
    ["INCONSISTENT", { atLeast: 2, rarelyAbove: 1 }],
    ["INCONSISTENT", { atLeast: 1, rarelyAbove: 2, low: 1 }],
    ["NEGATIVE", { distribution: "normal", mean: 1, standardDeviation: -1 }],
    ["NOT_A_NUMBER", { distribution: "normal", mean: 1, standardDeviation: Number.NaN }],
    ["OUT_OF_RANGE", { distribution: "log-normal", median: 1, factor: 0.9 }],
    ["NEGATIVE", { distribution: "log-normal", median: -1, factor: 1.5 }],
    ["EMPTY", { distribution: "samples", values: [1] }],
    ["NOT_A_NUMBER", { distribution: "samples", values: [1, Number.NaN] }],
    ["WRONG_CHOICE", { value: 1, date: "2026-13" }],
    ["WRONG_CHOICE", { value: 1, date: "2026-02-30" }],
    ["WRONG_CHOICE", { value: 1, derivedFrom: "a" }],
    ["WRONG_CHOICE", { value: 1, derivedFrom: [""] }],
    ["WRONG_CHOICE", { value: 1, id: 5 }],
  ])("refuses with %s: %o", (code, given) => {
    expect(codeOf(given)).toBe(code);
  });

  it("refuses what lies mostly outside of what the input can be", () => {
    const positive = { unit: "1", above: 0 };
    expect(codeOf({ distribution: "normal", mean: -1, standardDeviation: 1 }, positive)).toBe("INCONSISTENT");
    expect(codeOf({ distribution: "uniform", from: -1, to: 1 }, positive)).toBe("NEGATIVE");
  });

  it("names what was misspelt even where no form can be told", () => {
    expect(() => readEvidence("x", { atleast: 1 }, ratio)).toThrow("x has no part 'atleast': did you mean 'atLeast'?");
  });

  it("reads widths of temperatures as differences", () => {
    const cold = distributionOf({
      evidence: { distribution: "normal", mean: q("20 °C"), standardDeviation: q("Δ9 °F") },
      unit: "°C",
    });
    expect(cold.standardDeviation).toBeCloseTo(5, 12);
    expect(cold.standardDeviationUnit).toBe("Δ°C");
    expect(cold.p50.in("°C")).toBeCloseTo(20, 12);
    expect(cold.p90.in("°C")).toBeCloseTo(20 + 5 * 1.2815515655446004, 9);
  });

  it("goes through propagate: the spread of the output is that of the input", () => {
    const same = model({
      name: "same",
      inputs: { mass: { unit: "kg", meaning: "mass", above: 0 } },
      outputs: { mass: { unit: "kg", meaning: "mass" } },
      evaluate: ({ mass }) => ({ mass }),
    });
    const evidence = { distribution: "PERT", from: q("1 t"), mode: q("1200 kg"), to: q("2 t") } as const;
    const { spread } = propagate({ model: same, evidence: { mass: evidence } });
    const wanted = distributionOf({ evidence, unit: "kg" });
    for (const part of ["p10", "p50", "p90"] as const) {
      // The standard error of these percentiles over 10,000 plain draws is 0.025 of the deviation: √(0.09/10,000)/density
      expect(Math.abs(spread.mass[part].in("kg") - wanted[part].in("kg"))).toBeLessThan(0.1 * wanted.standardDeviation);
    }
  });

  it("has no value at the end of a distribution without ends", () => {
    const wide = distributionOf({ evidence: { distribution: "normal", mean: 1, standardDeviation: 1 }, unit: "1" });
    expect(() => wide.quantile(1)).toThrow(expect.objectContaining({ code: "OUT_OF_RANGE" }));
    expect(wide.shareBelow(1)).toBe(0.5);
  });
});
