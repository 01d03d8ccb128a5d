import { q, quantity } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  cabinClimate,
  driveCycle,
  driveUntilEmpty,
  rangeAfterWarmUp,
  rangeCurve,
  rangeOn,
  speedTrace,
  steadySpeed,
  udds,
} from "../../src/index.js";
import { plainBattery } from "../drivetrain/models.js";
import { between, codeOf, plainDrivetrain, plainLoad } from "../support.js";

const options = { load: plainLoad, drivetrain: plainDrivetrain, accessories: q("350 W") };
const usableEnergy = q("60 kWh");

describe("energy to warm up", () => {
  it("is taken once in a range: what is left, at the consumption without it", () => {
    fc.assert(
      fc.property(between(0, 5), between(0.001, 4), (kilowatts, kilowattHours) => {
        const power = quantity(kilowatts, "kW");
        const warmUpEnergy = quantity(kilowattHours, "kWh");
        const warm = driveCycle({ ...options, cycle: udds, climate: { power } });
        const cold = driveCycle({ ...options, cycle: udds, climate: { power, warmUpEnergy } });
        const expected = rangeOn({ usableEnergy: usableEnergy.minus(warmUpEnergy), result: warm }).range.in("km");
        expect(rangeOn({ usableEnergy, result: cold }).range.in("km")).toBeCloseTo(expected, 6);
        expect(cold.warmUp?.energy.in("kWh")).toBeCloseTo(kilowattHours, 12);
      }),
      { numRuns: 30 },
    );
  });

  it("goes as far as driving until empty does, which takes it in the first cycle", () => {
    const climate = { power: q("1 kW"), warmUpEnergy: q("2 kWh") };
    const battery = { model: plainBattery({ ohms: 0, energy: 60 * 3.6e6 }), stateOfCharge: 1 };
    const cycle = speedTrace({ name: "steady", time: [0, 600], speed: [90, 90], speedUnit: "km/h" });
    const driven = driveUntilEmpty({ ...options, cycle, climate, battery });
    const { range } = rangeOn({ usableEnergy, result: driveCycle({ ...options, cycle, climate }) });
    // To one step of a second, and the lists of steps end with the cycles; a second warm-up would cost 12 km.
    expect(Math.abs(driven.range.in("m") - range.in("m"))).toBeLessThan(26);
    expect(driven.range.in("km")).toBeGreaterThan(10 * cycle.distance.in("km"));
  });

  it("is in no power, and in every range at a steady speed", () => {
    const [warm, cold] = [{ power: q("1 kW") }, { power: q("1 kW"), warmUpEnergy: q("3 kWh") }];
    const at = (climate: typeof warm) => steadySpeed({ ...options, speed: q("90 km/h"), climate });
    expect(at(cold).power.atBattery.in("W")).toBe(at(warm).power.atBattery.in("W"));
    expect(at(warm).warmUp).toBeUndefined();
    const expected = rangeOn({ usableEnergy: q("57 kWh"), result: at(warm) }).range.in("km");
    expect(rangeOn({ usableEnergy, result: at(cold) }).range.in("km")).toBeCloseTo(expected, 9);
    const speeds = [q("50 km/h"), q("90 km/h")];
    const curve = rangeCurve({ ...options, usableEnergy, speeds, climate: cold });
    expect(curve.rows[1]?.range.in("km")).toBeCloseTo(expected, 9);
  });

  it("that is more than there is leaves nothing, and says how the range came about", () => {
    const climate = { power: q("0 W"), warmUpEnergy: q("2 kWh") };
    const result = driveCycle({ ...options, cycle: udds, climate });
    expect(rangeOn({ usableEnergy: q("1.5 kWh"), result }).range.in("km")).toBe(0);
    const [step] = rangeOn({ usableEnergy: q("52 kWh"), result }).working();
    expect(step?.operands.map(({ symbol }) => symbol)).toEqual(["E_u", "E_w", "e_bat"]);
    // By hand: 50 kWh at 125 Wh/km.
    const warmUpEnergy = q("2 kWh");
    const range = rangeAfterWarmUp({ usableEnergy: q("52 kWh"), warmUpEnergy, consumption: q("125 Wh/km") });
    expect(range.in("km")).toBe(400);
  });

  it("of a result that does not say the consumption without it is refused", () => {
    const result = driveCycle({ ...options, cycle: udds });
    const bad = (warmUp: unknown) => codeOf(() => rangeOn({ usableEnergy, result: { ...result, warmUp } as never }));
    expect(bad({ energy: q("1 kWh") })).toBe("WRONG_CHOICE");
    expect(bad({ energy: q("-1 kWh"), consumptionThereafter: q("150 Wh/km") })).toBe("NEGATIVE");
    expect(bad(null)).toBe("WRONG_CHOICE");
  });
});

describe("what a result and a climate say of doubts and dangers", () => {
  const load = { ...plainLoad, warnings: ["an invented doubt"], cautions: ["an invented danger"] };

  it("is carried on to every result that is made from them", () => {
    const climate = { power: q("1 kW"), warnings: ["heating is a guess"] };
    const given = { ...options, load, climate };
    const speeds = [q("50 km/h"), q("90 km/h")];
    const battery = { model: plainBattery(), stateOfCharge: 0.3 };
    const driven = driveCycle({ ...given, cycle: udds });
    const steady = steadySpeed({ ...given, speed: q("90 km/h") });
    const results = [
      ...[driven, steady, rangeOn({ usableEnergy, result: driven }), rangeOn({ usableEnergy, result: steady })],
      ...[rangeCurve({ ...given, speeds, usableEnergy }), driveUntilEmpty({ ...given, cycle: udds, battery })],
    ];
    for (const { warnings, cautions } of results) {
      expect(warnings).toContain("an invented doubt");
      expect(warnings).toContain("heating is a guess");
      expect(warnings).toHaveLength(new Set(warnings).size);
      expect(cautions).toEqual(["an invented danger"]);
    }
    expect(driveCycle({ ...options, cycle: udds }).cautions).toEqual([]);
  });

  it("comes from the climate model, too", () => {
    const climate = cabinClimate({ ambient: q("-40 °C"), target: q("25 °C"), heater: "resistance", occupants: 1 });
    expect(climate.warnings).not.toEqual([]);
    expect(driveCycle({ ...options, cycle: udds, climate }).warnings).toEqual(
      expect.arrayContaining([...climate.warnings]),
    );
  });

  it("doubts figures of a drive that no car has: all common practice, no source", () => {
    const drive = (more: object) => driveCycle({ ...options, cycle: udds, ...more }).warnings.join();
    expect(drive({ accessories: q("20 kW") })).toContain("accessory power of 20000 W");
    expect(drive({ chargingEfficiency: 0.1 })).toContain("charging efficiency of 0.1");
    expect(drive({ accessories: q("3 kW"), chargingEfficiency: 0.7 })).not.toContain("usual");
    const fast = steadySpeed({ ...options, speed: q("100 m/s") }).warnings.join();
    expect(fast).toContain("driven speed of 100 m/s");
    const result = driveCycle({ ...options, cycle: udds });
    expect(rangeOn({ usableEnergy: q("104 MWh"), result }).warnings.join()).toContain("usable energy of 104000 kWh");
    expect(rangeOn({ usableEnergy: q("250 kWh"), result }).warnings).toEqual(result.warnings);
  });
});

describe("a changed copy of a cycle", () => {
  it("is driven by its table, with its own distance and duration, and says so", () => {
    const cycle = { ...udds, speed: udds.speed.map((v) => 1.2 * v), time: udds.time.map((t) => 1.5 * t) };
    const run = driveCycle({ ...options, cycle });
    expect(run.distance.in("mi")).toBeCloseTo(udds.distance.in("mi") * 1.8, 9);
    expect(run.duration.in("s")).toBeCloseTo(udds.duration.in("s") * 1.5, 9);
    expect(run.consumption.atBattery.in("J/m")).toBeCloseTo(run.energy.atBattery.in("J") / run.distance.in("m"), 6);
    expect(run.warnings.join()).toContain("the table was driven, under the old name");
    expect(driveCycle({ ...options, cycle: { ...udds } }).warnings.join()).not.toContain("old name");
  });
});
