import { q } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { around, model, solveFor } from "../../src/index.js";

/**
 * A vehicle in one line: range = E / (a + b·m), m = base + E/σ. With mass feedback the range tends to σ/b as E grows:
 * E/(a + b·base + b·E/σ) → σ/b.
 */
const van = model({
  name: "one-line vehicle",
  inputs: {
    packEnergy: { unit: "kWh", meaning: "pack energy", above: 0 },
    baseMass: { unit: "kg", meaning: "base mass", above: 0 },
  },
  outputs: {
    range: { unit: "km", meaning: "range" },
    mass: { unit: "kg", meaning: "mass" },
  },
  evaluate: ({ packEnergy, baseMass }) => {
    const mass = baseMass + packEnergy / 0.17;
    return { mass, range: packEnergy / (0.1 + 3e-5 * mass) };
  },
});
const evidence = { packEnergy: q("90 kWh"), baseMass: around(q("2000 kg"), 0.05) };
const between = [q("20 kWh"), q("250 kWh")] as const;

/** The same, solved on paper: E = R(a + b·base)/(1 − R·b/σ). */
const closedForm = (range: number, base: number): number => (range * (0.1 + 3e-5 * base)) / (1 - (range * 3e-5) / 0.17);

describe("solveFor", () => {
  it("meets the closed form with mass feedback, and back again", () => {
    fc.assert(
      fc.property(fc.integer({ min: 150, max: 900 }), fc.integer({ min: 1000, max: 2500 }), (range, base) => {
        const expected = closedForm(range, base);
        fc.pre(expected > 20 && expected < 250);
        const { likely } = solveFor({
          model: van,
          evidence: { ...evidence, baseMass: q(`${base} kg` as "1 kg") },
          unknown: "packEnergy",
          between,
          output: "range",
          target: q(`${range} km` as "1 km"),
          draws: 100,
        });
        expect(likely.outcome === "reached" && likely.value.in("kWh")).toBeCloseTo(expected, 3);
      }),
    );
  });

  it("gives percentiles and chances that agree with each other", () => {
    const { needed, chanceThatEnough, chanceReachable } = solveFor({
      model: van,
      evidence,
      unknown: "packEnergy",
      between,
      output: "range",
      target: q("500 km"),
      draws: 4000,
    });
    expect(chanceReachable).toBe(1);
    if (needed.p10 === undefined || needed.p50 === undefined || needed.p90 === undefined)
      throw new Error("reached by all");
    expect(needed.p50.in("kWh")).toBeCloseTo(closedForm(500, 2000), 0);
    expect(needed.p10.in("kWh")).toBeCloseTo(closedForm(500, 1900), 0);
    expect(needed.p90.in("kWh")).toBeCloseTo(closedForm(500, 2100), 0);
    expect(chanceThatEnough(needed.p90)).toBeCloseTo(0.9, 3);
    expect(chanceThatEnough(q("20 kWh"))).toBe(0);
    expect(chanceThatEnough(q("250 kWh"))).toBe(1);
  });

  it("says that the feedback stands in the way when no pack would do", () => {
    const { likely, chanceReachable, needed, limits } = solveFor({
      model: van,
      evidence,
      unknown: "packEnergy",
      between,
      output: "range",
      target: q("6000 km"), // beyond σ/b = 5667 km
      draws: 100,
    });
    expect(likely).toMatchObject({ outcome: "not reached", limit: expect.stringContaining("spent on carrying it") });
    expect(likely.outcome === "not reached" && likely.at.in("kWh")).toBe(250);
    expect(chanceReachable).toBe(0);
    expect(needed).toEqual({});
    expect(limits).toEqual([{ limit: likely.outcome === "not reached" && likely.limit, share: 1 }]);
  });

  it("says that the bracket ends when a larger pack would do", () => {
    const { likely } = solveFor({
      model: van,
      evidence,
      unknown: "packEnergy",
      between,
      output: "range",
      target: q("1500 km"),
      draws: 100,
    });
    expect(likely).toMatchObject({ outcome: "not reached", limit: "the largest packEnergy considered" });
  });

  it("stops at a stated limit, names it, and says how far it gets there", () => {
    const because = "gross mass of the licence class";
    const { likely, limits } = solveFor({
      model: van,
      evidence,
      unknown: "packEnergy",
      between,
      output: "range",
      target: q("600 km"),
      limits: [{ output: "mass", atMost: q("2500 kg"), because }],
      draws: 500,
    });
    expect(likely).toMatchObject({ outcome: "not reached", limit: because });
    expect(likely.outcome === "not reached" && likely.at.in("kWh")).toBeCloseTo(500 * 0.17, 2);
    expect(limits[0]?.limit).toBe(because);
  });

  it("leaves out percentiles that fall among draws that do not reach the target", () => {
    const { needed, chanceReachable } = solveFor({
      model: van,
      evidence,
      unknown: "packEnergy",
      between,
      output: "range",
      target: q("500 km"),
      limits: [{ output: "mass", atMost: q("2521 kg"), because: "axle load" }],
      draws: 2000,
    });
    expect(chanceReachable).toBeGreaterThan(0.1);
    expect(chanceReachable).toBeLessThan(0.9);
    expect(needed.p10).toBeDefined();
    expect(needed.p90).toBeUndefined();
  });

  it("does not call the end of the bracket needed when every value considered is enough", () => {
    const options = { model: van, evidence, unknown: "packEnergy", output: "range", draws: 200 } as const;
    const easy = solveFor({ ...options, between: [q("120 kWh"), q("200 kWh")], target: q("400 km") });
    expect(easy.likely).toEqual({ outcome: "always reached" });
    expect(easy.needed).toEqual({});
    expect(easy.chanceReachable).toBe(1);
    expect(easy.chanceThatEnough(q("120 kWh"))).toBe(1);
    expect(() => easy.chanceThatEnough(q("119 kWh"))).toThrow(expect.objectContaining({ code: "OUT_OF_RANGE" }));
    // The median lies inside, a tenth below the bracket: that percentile is left open.
    const cut = solveFor({ ...options, between: [q("84 kWh"), q("200 kWh")], target: q("480 km"), draws: 1000 });
    expect(cut.needed.p10).toBeUndefined();
    expect(cut.needed.p90?.in("kWh")).toBeCloseTo(closedForm(480, 2100), 0);
  });

  describe("with an output that falls with the unknown", () => {
    const use = model({
      name: "use of a body",
      inputs: {
        dragArea: { unit: "m²", meaning: "drag area", above: 0 },
        rolling: { unit: "Wh/km", meaning: "rolling" },
      },
      outputs: { use: { unit: "Wh/km", meaning: "use" }, range: { unit: "km", meaning: "range" } },
      evaluate: ({ dragArea, rolling }) => ({
        use: rolling + 100 * dragArea,
        range: 90_000 / (rolling + 100 * dragArea),
      }),
    });
    const known = { dragArea: q("0.7 m²"), rolling: around(q("100 Wh/km"), 0.05) };
    const shared = {
      model: use,
      evidence: known,
      unknown: "dragArea",
      between: [q("0.3 m²"), q("0.9 m²")],
      draws: 1000,
    } as const;

    it("finds the largest value that is enough", () => {
      const { likely, chanceThatEnough } = solveFor({ ...shared, output: "range", target: q("562.5 km") });
      expect(likely).toMatchObject({ outcome: "reached", enough: "from here down" });
      expect(likely.outcome === "reached" && likely.value.in("m²")).toBeCloseTo(0.6, 4);
      expect(chanceThatEnough(q("0.4 m²"))).toBe(1);
      expect(chanceThatEnough(q("0.6 m²"))).toBeCloseTo(0.5, 1);
      expect(chanceThatEnough(q("0.9 m²"))).toBe(0);
    });

    it("takes a target that must not be exceeded", () => {
      const { likely, needed } = solveFor({ ...shared, output: "use", target: q("160 Wh/km"), sense: "at most" });
      expect(likely.outcome === "reached" && likely.value.in("m²")).toBeCloseTo(0.6, 4);
      expect(needed.p10?.in("m²")).toBeCloseTo(0.55, 2);
      expect(needed.p90?.in("m²")).toBeCloseTo(0.65, 2);
    });

    it("says that all or none will do, whichever way it goes", () => {
      expect(solveFor({ ...shared, output: "range", target: q("300 km") }).likely).toEqual({
        outcome: "always reached",
      });
      const none = solveFor({ ...shared, output: "range", target: q("900 km") }).likely;
      expect(none).toMatchObject({ outcome: "not reached", limit: "the smallest dragArea considered" });
      expect(none.outcome === "not reached" && none.at.in("m²")).toBe(0.3);
    });
  });

  it("says what the last unit adds: the derivative of the closed form", () => {
    const { lastUnit, likely } = solveFor({
      ...{
        model: van,
        evidence: { ...evidence, baseMass: q("2000 kg") },
        unknown: "packEnergy",
        between,
        output: "range",
      },
      ...{ target: q("500 km"), draws: 100 },
    });
    const energy = likely.outcome === "reached" ? likely.value.in("kWh") : Number.NaN;
    const range = (of: number): number => of / (0.1 + 3e-5 * (2000 + of / 0.17));
    expect(lastUnit?.of.in("kWh")).toBe(1);
    expect(lastUnit?.adds.p50.in("km")).toBeCloseTo(500 - range(energy - 1), 3);
    // Less than its share of the range, since it is carried along
    expect(lastUnit?.adds.p50.in("km")).toBeLessThan(500 / energy);
    expect(lastUnit?.adds.p10.in("km")).toBeGreaterThan(0);
  });

  it("counts draws that cannot be solved, shows why, and keeps them out", () => {
    const brittle = model({
      ...van,
      evaluate: (inputs) => {
        if (inputs.baseMass > 2080) throw new Error("too heavy");
        return van.evaluate(inputs);
      },
    });
    const options = {
      evidence,
      unknown: "packEnergy",
      between,
      output: "range",
      target: q("500 km"),
      draws: 1000,
    } as const;
    const { failed, failures, warnings, chanceThatEnough, chanceReachable, needed } = solveFor({
      model: brittle,
      ...options,
    });
    expect(failed).toBeGreaterThan(100);
    expect(failed).toBeLessThan(200);
    expect(failures.map(({ reason }) => reason)).toEqual(["too heavy", "too heavy", "too heavy"]);
    expect(warnings).toEqual([`${failed} of 1000 draws gave no result and are left out of the answer`]);
    expect([chanceReachable, chanceThatEnough(q("250 kWh"))]).toEqual([1, 1]);
    expect(needed.p90?.in("kWh")).toBeLessThan(closedForm(500, 2080));
  });

  it("takes at most fifteen times the evaluations of a propagation", () => {
    let evaluations = 0;
    const counted = model({
      ...van,
      evaluate: (inputs) => {
        evaluations++;
        return van.evaluate(inputs);
      },
    });
    const options = { model: counted, evidence, unknown: "packEnergy", between, output: "range" } as const;
    for (const [target, limits] of [
      [q("300 km"), []],
      [q("500 km"), []],
      [q("900 km"), []],
      [q("500 km"), [{ output: "mass", atMost: q("2521 kg"), because: "axle load" } as const]],
    ] as const) {
      evaluations = 0;
      solveFor({ ...options, target, limits, draws: 1000 });
      expect(evaluations / 1000).toBeLessThan(15);
    }
  });

  it("takes inputs that go together: fuller vehicles that are heavier need more", () => {
    const two = model({
      ...van,
      inputs: { ...van.inputs, rolling: { unit: "1", meaning: "rolling share" } },
      evaluate: ({ packEnergy, baseMass, rolling }) => {
        const mass = baseMass + packEnergy / 0.17;
        return { mass, range: packEnergy / (0.1 + 3e-5 * rolling * mass) };
      },
    });
    const both = { ...evidence, rolling: around(1, 0.1) };
    const spread = (rank: number): number => {
      const { needed } = solveFor({
        ...{ model: two, evidence: both, unknown: "packEnergy", between, output: "range", target: q("500 km") },
        correlations: [{ between: ["baseMass", "rolling"], rank }],
      });
      return (needed.p90?.in("kWh") ?? Number.NaN) - (needed.p10?.in("kWh") ?? Number.NaN);
    };
    expect(spread(0.9)).toBeGreaterThan(spread(0));
    expect(spread(-0.9)).toBeLessThan(spread(0));
  });

  it.each([
    ["INCONSISTENT", { between: [q("250 kWh"), q("20 kWh")] }],
    ["INCONSISTENT", { between: [q("250 kWh")] }],
    ["WRONG_DIMENSION", { between: [q("20 kg"), q("30 kg")] }],
    ["WRONG_CHOICE", { unknown: "packMass" }],
    ["WRONG_CHOICE", { output: "weight" }],
    ["WRONG_DIMENSION", { target: q("500 kg") }],
    ["WRONG_CHOICE", { limits: [{ output: "volume", atMost: q("1 L"), because: "x" }] }],
    ["UNKNOWN_OPTION", { limit: [] }],
    ["WRONG_CHOICE", { sense: "about" }],
    ["INCONSISTENT", { correlations: [{ between: ["packEnergy", "baseMass"], rank: 0.5 }] }],
    ["WRONG_CHOICE", { model: {} }],
    ["NOT_AN_OBJECT", { limits: {} }],
  ])("refuses with %s: %o", (code, change) => {
    const options = {
      model: van,
      evidence,
      unknown: "packEnergy",
      between,
      output: "range",
      target: q("500 km"),
      draws: 100,
    };
    expect(() => solveFor({ ...options, ...change } as never)).toThrow(expect.objectContaining({ code }));
  });
});
