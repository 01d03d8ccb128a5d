import { q } from "@tarewatt/units";
import { quantile as oracle } from "d3-array";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { around, model, propagate, quantileOfSorted } from "../../src/index.js";

const cube = model({
  name: "mass of a cube",
  inputs: {
    edge: { unit: "m", meaning: "edge", above: 0 },
    density: { unit: "kg/m³", meaning: "density", above: 0 },
  },
  outputs: { mass: { unit: "kg", meaning: "mass" }, area: { unit: "m²", meaning: "area of one face" } },
  evaluate: ({ edge, density }) => ({ mass: density * edge ** 3, area: edge ** 2 }),
});

describe("propagate", () => {
  it("gives no spread for exact inputs", () => {
    const { spread, likely } = propagate({
      model: cube,
      evidence: { edge: q("2 m"), density: q("1 kg/L") },
      draws: 100,
    });
    expect(likely.mass.in("t")).toBeCloseTo(8, 12);
    expect([spread.mass.p10, spread.mass.p50, spread.mass.p90].map((each) => each.in("kg"))).toEqual([
      8000, 8000, 8000,
    ]);
  });

  it("gives back the percentiles of an input that passes through, within the scatter of the draws", () => {
    const { spread } = propagate({
      model: cube,
      evidence: { edge: { low: q("1 m"), likely: q("2 m"), high: q("2.5 m") }, density: q("1 kg/m³") },
      draws: 50_000,
    });
    expect(spread.area.p10.in("m²")).toBeCloseTo(1, 1);
    expect(spread.area.p50.in("m²")).toBeCloseTo(4, 1);
    expect(spread.area.p90.in("m²")).toBeCloseTo(6.25, 1);
  });

  it("widens when an input widens", () => {
    const width = (share: number): number => {
      const { p10, p90 } = propagate({
        model: cube,
        evidence: { edge: around(q("1 m"), share), density: around(q("1 kg/L"), 0.05) },
      }).spread.mass;
      return p90.minus(p10).in("kg");
    };
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 20 }), (percent) => {
        expect(width((percent + 2) / 100)).toBeGreaterThan(width(percent / 100));
      }),
      { numRuns: 8 },
    );
  });

  it("draws each input alike whatever the others are called and in whichever order they stand", () => {
    const reordered = model({
      ...cube,
      inputs: { density: cube.inputs.density, extra: { unit: "1", meaning: "unused" }, edge: cube.inputs.edge },
    });
    const evidence = { edge: around(q("1 m"), 0.1), density: around(q("1 kg/L"), 0.1) };
    const a = propagate({ model: cube, evidence, draws: 500, seed: 7 });
    const b = propagate({ model: reordered, evidence: { ...evidence, extra: around(1, 0.1) }, draws: 500, seed: 7 });
    expect(b.samples("mass")).toEqual(a.samples("mass"));
    expect(propagate({ model: cube, evidence, draws: 500, seed: 8 }).samples("mass")).not.toEqual(a.samples("mass"));
  });

  it("draws inputs with places of their own alike, too, and refuses two at one place", () => {
    const at = (edge: number, density: number) =>
      model({
        ...cube,
        inputs: { density: { ...cube.inputs.density, place: density }, edge: { ...cube.inputs.edge, place: edge } },
      });
    const evidence = { edge: around(q("1 m"), 0.1), density: around(q("1 kg/L"), 0.1) };
    const edges = (edge: number, density: number) =>
      propagate({ model: at(edge, density), evidence, draws: 300 }).samples("area");
    expect(edges(3, 9)).toEqual(edges(3, 1));
    expect(edges(3, 9)).not.toEqual(edges(4, 9));
    expect(() => edges(3, 3)).toThrow("density and edge have the same place 3");
    for (const place of [0, 21, 1.5])
      expect(() => edges(3, place)).toThrow(expect.objectContaining({ code: "OUT_OF_RANGE" }));
  });

  it("counts draws that fail and keeps the rest", () => {
    const brittle = model({
      ...cube,
      evaluate: ({ edge, density }) => {
        if (edge > 1.05) throw new Error("too large");
        return { mass: edge < 0.95 ? Number.NaN : density, area: 1 };
      },
    });
    const { failed, draws, spread, samples } = propagate({
      model: brittle,
      evidence: { edge: around(q("1 m"), 0.08), density: q("5 kg/m³") },
      draws: 2000,
    });
    expect(failed).toBeGreaterThan(400);
    expect(failed).toBeLessThan(1600);
    expect(samples("mass")).toHaveLength(draws - failed);
    expect(spread.mass.p50.in("kg")).toBe(5);
  });

  it.each([
    ["UNKNOWN_OPTION", { edge: q("1 m"), density: q("1 kg/L"), colour: 3 }],
    ["MISSING_OPTION", { edge: q("1 m") }],
    ["WRONG_DIMENSION", { edge: q("1 s"), density: q("1 kg/L") }],
    ["NEGATIVE", { edge: q("-1 m"), density: q("1 kg/L") }],
  ])("refuses evidence with %s", (code, evidence) => {
    expect(() => propagate({ model: cube, evidence: evidence as never })).toThrow(expect.objectContaining({ code }));
  });

  it("refuses a study that makes no sense", () => {
    const evidence = { edge: q("1 m"), density: q("1 kg/L") };
    expect(() => propagate({ model: cube, evidence, draws: 3 })).toThrow("draws must be at least 100");
    expect(() => propagate({ model: cube, evidence, draws: 1000.5 })).toThrow("whole number");
    expect(() => propagate({ model: cube, evidence, sead: 3 } as never)).toThrow("did you mean 'seed'?");
    expect(() => propagate({ model: cube, evidence }).chanceOfAtLeast("weight" as never, q("1 kg") as never)).toThrow(
      "no output 'weight'",
    );
    const hopeless = model({ ...cube, evaluate: () => ({ mass: Number.NaN, area: 1 }) });
    expect(() => propagate({ model: hopeless, evidence })).toThrow(
      "no finite results at the likely inputs: mass is NaN",
    );
    const typo = model({
      ...cube,
      evaluate: () => {
        throw new Error("edge is not defined");
      },
    });
    expect(() => propagate({ model: typo, evidence })).toThrow("edge is not defined");
    for (const none of [undefined, null, 3, {}, { name: "x" }]) {
      expect(() => propagate({ model: none, evidence } as never)).toThrow(
        expect.objectContaining({ code: expect.any(String) }),
      );
    }
  });
});

describe("quantileOfSorted", () => {
  it("uses the R-7 definition, as the d3-array library does", () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -1e9, max: 1e9, noNaN: true }), { minLength: 1, maxLength: 50 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (values, share) => {
          const sorted = Float64Array.from(values).sort();
          expect(quantileOfSorted(sorted, share)).toBeCloseTo(oracle(sorted, share) as number, 5);
        },
      ),
    );
  });
});
