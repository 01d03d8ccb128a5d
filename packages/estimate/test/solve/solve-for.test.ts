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
        expect(likely.reached && likely.value.in("kWh")).toBeCloseTo(expected, 3);
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
    expect(likely).toMatchObject({ reached: false, limit: expect.stringContaining("spent on carrying it") });
    expect(!likely.reached && likely.at.in("kWh")).toBe(250);
    expect(chanceReachable).toBe(0);
    expect(needed).toEqual({});
    expect(limits).toEqual([{ limit: !likely.reached && likely.limit, share: 1 }]);
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
    expect(likely).toMatchObject({ reached: false, limit: "the largest packEnergy considered" });
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
    expect(likely).toMatchObject({ reached: false, limit: because });
    expect(!likely.reached && likely.at.in("kWh")).toBeCloseTo(500 * 0.17, 2);
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

  it.each([
    ["INCONSISTENT", { between: [q("250 kWh"), q("20 kWh")] }],
    ["INCONSISTENT", { between: [q("250 kWh")] }],
    ["WRONG_DIMENSION", { between: [q("20 kg"), q("30 kg")] }],
    ["WRONG_CHOICE", { unknown: "packMass" }],
    ["WRONG_CHOICE", { output: "weight" }],
    ["WRONG_DIMENSION", { target: q("500 kg") }],
    ["WRONG_CHOICE", { limits: [{ output: "volume", atMost: q("1 L"), because: "x" }] }],
    ["UNKNOWN_OPTION", { limit: [] }],
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
