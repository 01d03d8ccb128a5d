import { q, quantity } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  adjustmentsBetween,
  baseMassOfRecords,
  fitSizeEffect,
  usualAdjustments,
  type VehicleRecord,
} from "../../src/index.js";

const size = { length: q("4.7 m"), width: q("1.9 m") };
const car: VehicleRecord = {
  name: "car (invented)",
  curbMass: q("2300 kg"),
  packMass: q("500 kg"),
  motors: 1,
  ...size,
};
const likely = (vehicle: object, rules = {}) =>
  baseMassOfRecords({ records: [car], vehicle, rules, scatter: 0.05 }).mass.likely.in("kg");

describe("differences between vehicles", () => {
  it("are none between a vehicle and itself", () => {
    const { name: _, curbMass: __, packMass: ___, ...vehicle } = car;
    expect(adjustmentsBetween({ comparator: car, vehicle })).toEqual({ adjustments: [], warnings: [] });
    expect(likely(vehicle)).toBeCloseTo(1800, 9);
  });

  it("weigh what the rules say: motors, size as a power law, equipment either way", () => {
    expect(likely({ motors: 2, ...size })).toBeCloseTo(1800 + usualAdjustments.motor.likely, 9);
    expect(likely({ motors: 2, ...size }, { motor: q("60 kg") })).toBeCloseTo(1860, 9);
    const longer = { motors: 1, length: q("5.17 m"), width: q("1.9 m") };
    expect(likely(longer, { size: 1 })).toBeCloseTo(1980, 9);
    expect(likely(longer, { size: 0.5 })).toBeCloseTo(1800 * Math.sqrt(1.1), 9);
    expect(likely({ motors: 1, ...size, equipment: ["tow bar"] })).toBeCloseTo(1822, 9);
    const equipped = { ...car, equipment: ["tow bar"] };
    const without = baseMassOfRecords({ records: [equipped], vehicle: { motors: 1, ...size }, scatter: 0.05 });
    expect(without.mass.likely.in("kg")).toBeCloseTo(1778, 9);
    expect(without.adjustments[0]?.low.in("kg")).toBe(-30);
  });

  it("count a construction with its sign, of the mass that the rule names", () => {
    const rules = { construction: { structural: { share: -0.1, of: "pack mass" as const } } };
    expect(likely({ motors: 1, ...size, construction: "structural" }, rules)).toBeCloseTo(1750, 9);
    const built = { ...car, construction: "structural" };
    const usual = baseMassOfRecords({ records: [built], vehicle: { motors: 1, ...size }, rules, scatter: 0.05 });
    expect(usual.mass.likely.in("kg")).toBeCloseTo(1850, 9);
  });

  it("say what they rest on, and what could not be compared", () => {
    const { adjustments } = adjustmentsBetween({ comparator: car, vehicle: { motors: 2 } });
    expect(adjustments[0]).toMatchObject({
      reason: "motors",
      mass: { grade: "assumed", source: "judgement, no source" },
    });
    const vehicle = { equipment: ["ski rack"], construction: "structural" };
    const { warnings } = adjustmentsBetween({ comparator: car, vehicle });
    expect(warnings.join("\n")).toContain("the number of motors of one of the two is not known");
    expect(warnings.join("\n")).toContain("length or width of one of the two is not known");
    expect(warnings.join("\n")).toContain("nothing says what 'ski rack' weighs");
    expect(warnings.join("\n")).toContain("nothing says what the construction 'structural' weighs");
    expect(
      adjustmentsBetween({ comparator: car, vehicle: { ...size, motors: 1, equipment: ["constructor"] } }).adjustments,
    ).toEqual([]);
  });

  it("of size go up with a larger vehicle and down with a smaller one, low before high", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.7, max: 1.4, noNaN: true }), (ratio) => {
        const vehicle = { motors: 1, length: size.length.times(ratio), width: size.width };
        const result = baseMassOfRecords({ records: [car], vehicle, scatter: 0 });
        const { low, likely: middle, high } = result.adjustments[0] ?? result.mass;
        expect(low.in("kg")).toBeLessThanOrEqual(middle.in("kg"));
        expect(middle.in("kg")).toBeLessThanOrEqual(high.in("kg"));
        if (result.adjustments.length > 0) expect(Math.sign(middle.in("kg"))).toBe(Math.sign(ratio - 1));
      }),
    );
  });

  it.each<[string, object]>([
    ["MISSING_OPTION", { records: [{ name: "a", curbMass: q("2 t") }], vehicle: {} }],
    ["WRONG_CHOICE", { records: car, vehicle: {} }],
    ["WRONG_CHOICE", { records: [car], vehicle: { curbMass: q("2 t") } }],
    ["UNKNOWN_OPTION", { records: [car], vehicle: { moters: 2 } }],
    ["UNKNOWN_OPTION", { records: [car], vehicle: {}, rules: { motr: q("60 kg") } }],
    ["WRONG_DIMENSION", { records: [car], vehicle: { motors: 2 }, rules: { motor: q("60 kW") } }],
  ])("are refused with %s: %o", (code, options) => {
    expect(() => baseMassOfRecords({ scatter: 0.05, ...options } as never)).toThrow(expect.objectContaining({ code }));
  });
});

describe("the effect of size, fitted", () => {
  const made = (name: string, length: number, base: number): VehicleRecord => ({
    ...{ name, curbMass: quantity(base + 500, "kg"), packMass: q("500 kg") },
    ...{ length: quantity(length, "m"), width: q("1.9 m") },
  });

  it("is the power of a power law, without spread", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.2, max: 2, noNaN: true }), (power) => {
        const records = [3.9, 4.3, 4.6, 5.1].map((length, i) => made(`${i}`, length, 300 * length ** power));
        const { low, likely: slope, high } = fitSizeEffect({ records });
        expect(slope).toBeCloseTo(power, 9);
        expect(high - low).toBeLessThan(1e-6);
      }),
    );
  });

  it("leaves residuals that know nothing of the size, and a spread that grows with them", () => {
    const bases = [1500, 1720, 1690, 1930];
    const lengths = [3.9, 4.3, 4.6, 5.1];
    const { likely: slope, low } = fitSizeEffect({
      records: lengths.map((length, i) => made(`${i}`, length, bases[i] as number)),
    });
    const x = lengths.map((length) => Math.log(length * 1.9));
    const mean = x.reduce((sum, each) => sum + each, 0) / 4;
    const residual = bases.map((base, i) => Math.log(base) - slope * (x[i] as number));
    // The normal equation of least squares
    expect(residual.reduce((sum, each, i) => sum + each * ((x[i] as number) - mean), 0)).toBeCloseTo(0, 12);
    expect(low).toBeLessThan(slope);
  });

  it("needs four vehicles, and of different sizes", () => {
    const records = [4, 4.2, 4.4].map((length, i) => made(`${i}`, length, 1700));
    expect(() => fitSizeEffect({ records })).toThrow(expect.objectContaining({ code: "EMPTY" }));
    const alike = ["a", "b", "c", "d"].map((name) => made(name, 4.4, 1700));
    expect(() => fitSizeEffect({ records: alike })).toThrow(expect.objectContaining({ code: "NOT_VALID_HERE" }));
  });
});
