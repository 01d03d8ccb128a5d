import { q } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { published } from "../../../../test/support/published.js";
import { around, model, propagate, propagateLinearly } from "../../src/index.js";
import { normalQuantile } from "../../src/propagate/normal.js";
import { studentFactor } from "../../src/propagate/student.js";

/** Where the half-triangles of low/likely/high end, in half-widths; their standard deviation is that by √6. */
const end = 1 / (1 - Math.sqrt(0.2));

/** Evidence with a standard deviation. */
function standard(likely: number, deviation: number) {
  const half = (deviation * Math.sqrt(6)) / end;
  return { low: likely - half, likely, high: likely + half };
}

const gauge = model({
  name: "length of an end gauge",
  inputs: {
    standardLength: { unit: "1", meaning: "length of the standard, nm" },
    difference: { unit: "1", meaning: "measured difference, nm" },
    expansion: { unit: "1", meaning: "expansion coefficient of the standard, 1/K" },
    temperature: { unit: "1", meaning: "deviation of the temperature, K" },
    expansionDifference: { unit: "1", meaning: "difference of the expansion coefficients, 1/K" },
    temperatureDifference: { unit: "1", meaning: "difference of the temperatures, K" },
  },
  outputs: { length: { unit: "1", meaning: "length at 20 °C, nm" } },
  evaluate: (x) => ({
    length:
      x.standardLength +
      x.difference -
      x.standardLength * (x.expansionDifference * x.temperature + x.expansion * x.temperatureDifference),
  }),
});
const gaugeEvidence = {
  standardLength: standard(50_000_623, 25),
  difference: standard(215, 9.7),
  expansion: standard(11.5e-6, 1.2e-6),
  temperature: standard(-0.1, 0.41),
  expansionDifference: standard(0, 0.58e-6),
  temperatureDifference: standard(0, 0.029),
};
const { length } = propagateLinearly({
  ...{ model: gauge, evidence: gaugeEvidence, coverage: 0.99 },
  degreesOfFreedom: { standardLength: 18, difference: 25.6, expansionDifference: 50, temperatureDifference: 2 },
});
const contribution = (input: string): number =>
  Math.abs(length.budget.find((line) => line.input === input)?.contribution ?? Number.NaN);

const source = "JCGM 100:2008, example H.1";
const given = "end gauge of 50 mm, inputs and uncertainties of table H.1";

describe("linear propagation", () => {
  published({
    ...{ quantity: "length of an end gauge, nm", source, status: "quoted", given },
    ...{ published: 50_000_838, computed: () => length.value },
    ...{ tolerance: 0.5, why: "half of the last printed digit" },
  });
  published({
    ...{ quantity: "contributions to the uncertainty of an end gauge, nm", source, status: "quoted", given },
    published: [25, 9.7, 0, 0, 2.9, 16.7],
    computed: () => Object.keys(gaugeEvidence).map(contribution),
    ...{ tolerance: 0.05, why: "half of the last printed digit" },
  });
  published({
    ...{ quantity: "combined standard uncertainty of an end gauge, nm", source, status: "quoted", given },
    ...{ published: 31.71, computed: () => length.standardUncertainty },
    ...{ tolerance: 0.005, why: "half of the last printed digit" },
  });
  published({
    ...{ quantity: "effective degrees of freedom of an end gauge", source, status: "quoted", given },
    ...{ published: 16.7, computed: () => length.degreesOfFreedom ?? 0 },
    ...{ tolerance: 0.05, why: "half of the last printed digit" },
  });
  published({
    ...{ quantity: "coverage factor for 99 % of an end gauge", source, status: "quoted", given },
    ...{ published: 2.92, computed: () => length.coverageFactor },
    ...{ tolerance: 0.005, why: "half of the last printed digit" },
  });
  published({
    ...{ quantity: "expanded uncertainty for 99 % of an end gauge, nm", source, status: "quoted", given },
    ...{ published: 93, computed: () => length.expandedUncertainty },
    ...{ tolerance: 0.5, why: "half of the last printed digit" },
  });
  published({
    ...{
      quantity: "uncertainty of an end gauge with terms of second order, nm",
      source: `${source}.7`,
      status: "quoted",
      given,
    },
    ...{ published: 34, computed: () => length.withSecondOrder },
    ...{ tolerance: 0.5, why: "half of the last printed digit" },
  });

  it("says where the law bends, and the draws agree with the next order, not with the first", () => {
    expect(length.warnings).toEqual([expect.stringContaining("see propagate")]);
    const { standardDeviation } = propagate({ model: gauge, evidence: gaugeEvidence, draws: 65_536 });
    expect(standardDeviation.length).toBeCloseTo(length.withSecondOrder, 0);
    expect(Math.abs(standardDeviation.length / length.standardUncertainty - 1)).toBeGreaterThan(0.05);
  });

  it("agrees with the draws for sums, whatever the coefficients and however inputs go together", () => {
    const number = fc.integer({ min: -5, max: 5 });
    fc.assert(
      fc.property(
        number,
        number,
        fc.integer({ min: 1, max: 5 }),
        fc.integer({ min: -9, max: 9 }),
        (a, b, c, tenths) => {
          const sum = model({
            name: "sum",
            inputs: {
              x: { unit: "kg", meaning: "x" },
              y: { unit: "kg", meaning: "y" },
              z: { unit: "kg", meaning: "z" },
            },
            outputs: { sum: { unit: "kg", meaning: "sum" } },
            evaluate: ({ x, y, z }) => ({ sum: a * x + b * y + c * z }),
          });
          const evidence = {
            x: around(q("5 kg"), 0.1),
            y: around(q("9 kg"), 0.1),
            z: { low: q("1 kg"), likely: q("2 kg"), high: q("4 kg") },
          };
          const correlations = [{ between: ["x", "y"], rank: tenths / 10 }] as const;
          const linear = propagateLinearly({ model: sum, evidence, correlations }).sum;
          const drawn = propagate({ model: sum, evidence, correlations, draws: 16_384 });
          expect(linear.standardUncertainty.in("kg") / drawn.standardDeviation.sum.in("kg")).toBeCloseTo(1, 1);
          expect(linear.value.in("kg")).toBeCloseTo(drawn.mean.sum.in("kg"), 1);
          expect(linear.withSecondOrder.in("kg")).toBeCloseTo(linear.standardUncertainty.in("kg"), 9);
          expect(linear.degreesOfFreedom).toBeUndefined();
          expect(linear.coverageFactor).toBeCloseTo(1.96, 3);
          expect(linear.warnings).toEqual([]);
        },
      ),
      { numRuns: 15 },
    );
  });

  it("leaves exact inputs out of the budget, and has no uncertainty without unknowns", () => {
    const exact = Object.fromEntries(Object.entries(gaugeEvidence).map(([name, { likely }]) => [name, likely]));
    const none = propagateLinearly({ model: gauge, evidence: exact as never }).length;
    expect([none.standardUncertainty, none.expandedUncertainty, none.budget]).toEqual([0, 0, []]);
    expect(none.warnings).toEqual([]);
  });

  it.each([
    ["WRONG_CHOICE", { degreesOfFreedom: { colour: 3 } }],
    ["OUT_OF_RANGE", { degreesOfFreedom: { difference: 0.5 } }],
    ["NOT_AN_OBJECT", { degreesOfFreedom: 3 }],
    ["OUT_OF_RANGE", { coverage: 0 }],
    ["UNKNOWN_OPTION", { draws: 3 }],
    [
      "NOT_VALID_HERE",
      {
        model: { ...gauge, evaluate: (x: { difference: number }) => ({ length: x.difference > 216 ? Number.NaN : 1 }) },
      },
    ],
  ])("refuses with %s: %o", (code, change) => {
    expect(() => propagateLinearly({ model: gauge, evidence: gaugeEvidence, ...change } as never)).toThrow(
      expect.objectContaining({ code }),
    );
  });
});

/** A uniform number as a function of an input with low −1, likely 0, high 1: the share of that distribution below it. */
const uniform = (z: number): number => (z < 0 ? 0.5 * (1 + z / end) ** 2 : 1 - 0.5 * (1 - z / end) ** 2);

/** A value of Student's t: what a share of the distribution lies below. */
const student = (u: number, degrees: number): number =>
  u < 0.5 ? -studentFactor(1 - 2 * u, degrees) : studentFactor(2 * u - 1, degrees);

describe("the draws of the end gauge, with the distributions that a supplement assigns", () => {
  const z = { low: -1, likely: 0, high: 1 };
  const names = ["ls", "d0", "d1", "d2", "as", "mean", "cycle", "da", "daWidth", "dt", "dtWidth"] as const;
  const drawn = model({
    name: "end gauge by drawing",
    inputs: Object.fromEntries(names.map((name, i) => [name, { unit: "1", meaning: name, place: i + 1 }])),
    outputs: { length: { unit: "1", meaning: "length, nm" } },
    evaluate: (inputs) => {
      const u = (name: (typeof names)[number]): number => uniform(inputs[name] as unknown as number);
      const symmetric = (name: (typeof names)[number]): number => 2 * u(name) - 1;
      const standardLength = 50_000_623 + 25 * student(u("ls"), 18);
      const difference = 215 + 6 * student(u("d0"), 24) + 4 * student(u("d1"), 5) + 7 * student(u("d2"), 8);
      const expansion = 11.5e-6 + 2e-6 * symmetric("as");
      const temperature = -0.1 + 0.2 * normalQuantile(u("mean")) + 0.5 * Math.sin(2 * Math.PI * u("cycle"));
      const expansionDifference = (1e-6 + 0.1e-6 * symmetric("daWidth")) * symmetric("da");
      const temperatureDifference = (0.05 + 0.025 * symmetric("dtWidth")) * symmetric("dt");
      return {
        length:
          standardLength +
          difference -
          standardLength * (expansionDifference * temperature + expansion * temperatureDifference),
      };
    },
  });

  published({
    quantity: "standard uncertainty of an end gauge by drawing, nm",
    source: "JCGM 101:2008, 9.5",
    status: "memory",
    given:
      "distributions of table 10: t with 18, 24, 5, 8 degrees of freedom, rectangular, normal and arc sine, two of inexact limits",
    published: 36,
    computed: () =>
      propagate({ model: drawn, evidence: Object.fromEntries(names.map((name) => [name, z])) as never, draws: 16_384 })
        .standardDeviation.length as unknown as number,
    tolerance: 0.5,
    why: "half of the last printed digit",
  });
});

describe("the factor of Student's t", () => {
  published({
    quantity: "t for 95 % and 1, 2, 5, 10, 30, 100 degrees of freedom, and for 99 % and 16",
    source: "JCGM 100:2008, table G.2",
    status: "memory",
    published: [12.71, 4.3, 2.57, 2.23, 2.04, 1.984, 2.92],
    computed: () => [...[1, 2, 5, 10, 30, 100].map((degrees) => studentFactor(0.95, degrees)), studentFactor(0.99, 16)],
    tolerance: 0.005,
    why: "half of the last digit",
  });

  it("falls to that of the normal distribution, without a step where the one takes over", () => {
    expect(studentFactor(0.95, 9999)).toBeCloseTo(studentFactor(0.95, 10_000), 3);
    for (let degrees = 2; degrees < 60; degrees++) {
      expect(studentFactor(0.9, degrees)).toBeLessThan(studentFactor(0.9, degrees - 1));
    }
  });
});
