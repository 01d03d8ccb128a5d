import { q } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { published } from "../../../../test/support/published.js";
import { around, model, propagate } from "../../src/index.js";
import { normalQuantile, normalShare } from "../../src/propagate/normal.js";

const names = ["a", "b", "c"] as const;
const three = model({
  name: "three",
  inputs: {
    a: { unit: "kg", meaning: "first" },
    b: { unit: "kg", meaning: "second" },
    c: { unit: "kg", meaning: "third" },
  },
  outputs: {
    a: { unit: "kg", meaning: "first" },
    b: { unit: "kg", meaning: "second" },
    c: { unit: "kg", meaning: "third" },
  },
  evaluate: ({ a, b, c }) => ({ a, b, c }),
});
const evidence = {
  a: around(q("10 kg"), 0.2),
  b: { low: q("1 kg"), likely: q("2 kg"), high: q("9 kg") },
  c: around(q("5 kg"), 0.1),
};

function ranks(values: Float64Array): Float64Array {
  const order = [...values.keys()].sort((i, j) => (values[i] as number) - (values[j] as number));
  const found = new Float64Array(values.length);
  order.forEach((index, rank) => {
    found[index] = rank;
  });
  return found;
}

function rankCorrelation(x: Float64Array, y: Float64Array): number {
  const [a, b] = [ranks(x), ranks(y)];
  const n = a.length;
  let squares = 0;
  for (let i = 0; i < n; i++) squares += ((a[i] as number) - (b[i] as number)) ** 2;
  // Spearman's formula for ranks without ties
  return 1 - (6 * squares) / (n * (n * n - 1));
}

describe("inputs that go together", () => {
  it("have the rank correlation asked for, whatever their spreads, and keep them", () => {
    const rank = fc.integer({ min: -19, max: 19 }).map((n) => n / 20);
    fc.assert(
      fc.property(rank, (wanted) => {
        const correlations = [{ between: ["a", "b"], rank: wanted }] as const;
        const { samples, spread } = propagate({ model: three, evidence, correlations, draws: 4096 });
        expect(rankCorrelation(samples("a"), samples("b"))).toBeCloseTo(wanted, 1);
        expect(Math.abs(rankCorrelation(samples("a"), samples("c")))).toBeLessThan(0.08);
        expect(spread.b.p10.in("kg")).toBeCloseTo(1, 0);
        expect(spread.b.p90.in("kg")).toBeCloseTo(9, 0);
      }),
      { numRuns: 20 },
    );
  });

  it("go together wholly at 1 and −1", () => {
    for (const rank of [1, -1]) {
      const { samples } = propagate({
        model: three,
        evidence,
        correlations: [{ between: ["b", "a"], rank }],
        draws: 500,
      });
      expect(rankCorrelation(samples("a"), samples("b"))).toBeCloseTo(rank, 3);
    }
  });

  it("do not disturb the draws of the others, nor does their order matter", () => {
    const pairs = [
      { between: ["a", "b"], rank: 0.5 },
      { between: ["c", "b"], rank: -0.3 },
    ] as const;
    const plain = propagate({ model: three, evidence, draws: 300 });
    const tied = propagate({ model: three, evidence, correlations: pairs.slice(0, 1), draws: 300 });
    expect(tied.samples("c")).toEqual(plain.samples("c"));
    expect(tied.samples("b")).not.toEqual(plain.samples("b"));
    const [there, back] = [pairs, [...pairs].reverse()].map((correlations) =>
      propagate({ model: three, evidence, correlations, draws: 300 }).samples("b"),
    );
    expect(back).toEqual(there);
  });

  it.each([
    [
      "INCONSISTENT",
      [
        { between: ["a", "b"], rank: 0.9 },
        { between: ["b", "c"], rank: 0.9 },
        { between: ["a", "c"], rank: -0.9 },
      ],
    ],
    [
      "INCONSISTENT",
      [
        { between: ["a", "b"], rank: 1 },
        { between: ["b", "c"], rank: 0.5 },
        { between: ["a", "c"], rank: 0 },
      ],
    ],
    [
      "INCONSISTENT",
      [
        { between: ["a", "b"], rank: 0.1 },
        { between: ["b", "a"], rank: 0.1 },
      ],
    ],
    ["WRONG_CHOICE", [{ between: ["a", "x"], rank: 0.1 }]],
    ["WRONG_CHOICE", [{ between: ["a", "a"], rank: 0.1 }]],
    ["WRONG_CHOICE", [{ between: ["a"], rank: 0.1 }]],
    ["NOT_A_FRACTION", [{ between: ["a", "b"], rank: 1.1 }]],
    ["OUT_OF_RANGE", [{ between: ["a", "b"], rank: -1.1 }]],
    ["UNKNOWN_OPTION", [{ between: ["a", "b"], rank: 0.1, kind: "x" }]],
    ["WRONG_CHOICE", {}],
  ])("refuses with %s: %j", (code, correlations) => {
    expect(() => propagate({ model: three, evidence, correlations } as never)).toThrow(
      expect.objectContaining({ code }),
    );
  });

  it("names the inputs whose correlations cannot all hold", () => {
    const correlations = names.map((name, i) => ({ between: [name, names[(i + 1) % 3] as "a"], rank: -0.9 }) as const);
    expect(() => propagate({ model: three, evidence, correlations })).toThrow(
      "the correlations of a, b, c cannot all hold",
    );
  });
});

describe("the standard normal distribution", () => {
  it("has a quantile that turns its share round", () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-10, max: 1 - 1e-10, noNaN: true }), (u) => {
        expect(Math.abs(normalShare(normalQuantile(u)) - u)).toBeLessThan(4e-15);
        expect(normalQuantile(1 - u)).toBeCloseTo(-normalQuantile(u), 5);
      }),
    );
  });

  published({
    quantity: "standard normal quantiles of 90, 95, 97.5, 99, 99.5 %",
    source: "tables of the standard normal distribution, as in JCGM 100:2008 table G.2 for infinite degrees of freedom",
    status: "memory",
    published: [1.281552, 1.644854, 1.959964, 2.326348, 2.575829],
    computed: () => [0.9, 0.95, 0.975, 0.99, 0.995].map(normalQuantile),
    tolerance: 5e-7,
    why: "half of the last digit",
  });
});
