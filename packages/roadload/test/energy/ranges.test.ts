import { q, quantity } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  batteryEnergies,
  cabinClimate,
  type DriveUntilEmptyOptions,
  driveCycle,
  driveUntilEmpty,
  efficiencyDrivetrain,
  type RangeCurveOptions,
  type RoadLoadNumbers,
  rangeCurve,
  rangeOn,
  roadLoadNumbers,
  speedTrace,
  steadySpeed,
  udds,
  wltc3b,
} from "../../src/index.js";
import { lossy as lossyDrive, plainBattery } from "../drivetrain/models.js";
import { between, close, codeOf, loads, physicalLoads, plainDrivetrain, plainLoad } from "../support.js";

const accessories = q("350 W");
const usableEnergy = q("72 kWh");
const speeds = [20, 50, 80, 110, 140, 170].map((v) => quantity(v, "km/h"));
const curve: RangeCurveOptions = { speeds, usableEnergy, load: plainLoad, drivetrain: plainDrivetrain, accessories };

describe("range over steady speed", () => {
  it("is that of each speed by itself", () => {
    const { rows } = rangeCurve(curve);
    expect(rows.map(({ speed }) => speed)).toEqual(speeds);
    for (const { speed, range, consumption } of rows) {
      const { speeds: _, usableEnergy: __, ...driven } = curve;
      const result = steadySpeed({ ...driven, speed });
      expect(range.in("km")).toBe(rangeOn({ usableEnergy, result }).range.in("km"));
      expect(consumption.in("Wh/km")).toBe(result.consumption.atBattery.in("Wh/km"));
    }
  });

  it("is longest where 2·C·v³ = η·P, by calculus", () => {
    // Consumption (A + C·v²)/η + P/v has its minimum where 2·C·v³/η = P.
    fc.assert(
      fc.property(physicalLoads, between(100, 5000), (load, watts) => {
        const { quadratic } = roadLoadNumbers(load);
        const wanted = Math.cbrt((watts * plainDrivetrain.efficiency) / (2 * quadratic));
        const { best } = rangeCurve({
          ...{ ...curve, load, accessories: quantity(watts, "W") },
          speeds: [quantity(wanted / 3, "m/s"), quantity(wanted * 3, "m/s")],
        });
        expect(close(best.speed.in("m/s"), wanted, undefined, 1e-5)).toBe(true);
      }),
      { numRuns: 30 },
    );
  });

  it("is longest at a higher speed in the cold, whose heating runs while the vehicle drives", () => {
    const cold = rangeCurve({ ...curve, climate: { power: q("3 kW") } });
    const mild = rangeCurve(curve);
    expect(cold.best.speed.in("km/h")).toBeGreaterThan(mild.best.speed.in("km/h") + 10);
    expect(cold.best.range.in("km")).toBeLessThan(mild.best.range.in("km"));
  });

  it("has the ends that the climate of a cabin gives it, widest where the vehicle is slow", () => {
    const climate = cabinClimate({ ambient: q("-10 °C"), target: q("21 °C"), heater: "heat pump", soak: q("-10 °C") });
    const { rows, best } = rangeCurve({ ...curve, climate });
    const { power, warmUpEnergy } = climate.spread;
    for (const row of [...rows, best]) {
      const with_ = (end: "low" | "high") =>
        rangeOn({
          usableEnergy,
          result: steadySpeed({
            ...{ load: plainLoad, drivetrain: plainDrivetrain, accessories, speed: row.speed },
            climate: { power: power[end], warmUpEnergy: warmUpEnergy[end] },
          }),
        }).range.in("km");
      expect(row.rangeEnds?.low.in("km")).toBeCloseTo(with_("high"), 9);
      expect(row.rangeEnds?.high.in("km")).toBeCloseTo(with_("low"), 9);
      expect(row.rangeEnds?.low.in("km")).toBeLessThan(row.range.in("km"));
      expect(row.rangeEnds?.high.in("km")).toBeGreaterThan(row.range.in("km"));
    }
    const widths = rows.map(({ rangeEnds: ends, range }) => ends?.high.minus(ends.low).ratioTo(range));
    expect([...widths].sort((a, b) => (b ?? 0) - (a ?? 0))).toEqual(widths);
    expect(rangeCurve({ ...curve, climate: { power: climate.power } }).rows[0]?.rangeEnds).toBeUndefined();
    const bad = (spread: unknown) =>
      codeOf(() => rangeCurve({ ...curve, climate: { power: q("1 kW"), spread } as never }));
    expect(bad(5)).toBe("NOT_AN_OBJECT");
    expect(bad({ power: {}, warmUpEnergy: {} })).toBe("NOT_A_QUANTITY");
  });

  it("leaves out the speeds that cannot be held, and names them", () => {
    const drivetrain = { ...plainDrivetrain, maximumWheelPower: () => 20_000 };
    const { rows, unreachable, best } = rangeCurve({ ...curve, drivetrain });
    expect(unreachable.map((v) => v.in("km/h"))).toEqual([140, 170]);
    expect(rows).toHaveLength(4);
    expect(best.speed.in("km/h")).toBeLessThan(110);
    const none = { ...plainDrivetrain, maximumWheelPower: () => 10 };
    expect(codeOf(() => rangeCurve({ ...curve, drivetrain: none }))).toBe("NOT_VALID_HERE");
  });

  it("refuses speeds that do not rise", () => {
    expect(codeOf(() => rangeCurve({ ...curve, speeds: [q("50 km/h"), q("50 km/h")] }))).toBe("INCONSISTENT");
    expect(codeOf(() => rangeCurve({ ...curve, speeds: [q("50 km/h")] }))).toBe("EMPTY");
    expect(codeOf(() => rangeCurve({ ...curve, speed: [] } as never))).toBe("UNKNOWN_OPTION");
  });
});

describe("driving until the battery is empty", () => {
  const battery = { model: plainBattery({ ohms: 0 }), stateOfCharge: 1 };
  const options: DriveUntilEmptyOptions = {
    cycle: wltc3b,
    load: plainLoad,
    drivetrain: lossyDrive,
    accessories,
    battery,
  };

  it("with an ideal battery goes as far as its energy per consumption, to a cycle's unevenness", () => {
    const run = driveUntilEmpty(options);
    const { range } = rangeOn({
      usableEnergy: q("75 kWh"),
      result: driveCycle({ cycle: wltc3b, load: plainLoad, drivetrain: lossyDrive, accessories }),
    });
    expect(run.endedBy).toBe("state of charge");
    expect(Math.abs(run.range.in("km") - range.in("km"))).toBeLessThan(wltc3b.distance.in("km"));
    expect(run.energy.atTerminals.in("kWh")).toBeCloseTo(75, 2);
    expect(run.energy.loss.in("kWh")).toBe(0);
  });

  it("at a steady speed is exactly that, to a second", () => {
    const cycle = speedTrace({ name: "steady", time: [0, 600], speed: [90, 90], speedUnit: "km/h" });
    const run = driveUntilEmpty({ ...options, cycle });
    const result = steadySpeed({ speed: q("90 km/h"), load: plainLoad, drivetrain: lossyDrive, accessories });
    const { range } = rangeOn({ usableEnergy: q("75 kWh"), result });
    expect(Math.abs(run.range.in("m") - range.in("m"))).toBeLessThan(26);
    expect(run.duration.in("h")).toBeCloseTo(run.range.in("km") / 90, 4);
  });

  it("takes warm-up in the first cycle only, and counts every cycle's loss and part", () => {
    const cycle = speedTrace({ name: "steady", time: [0, 600], speed: [90, 90], speedUnit: "km/h" });
    const lossy = plainBattery();
    const steady = { ...options, cycle };
    // At constant power everything is proportional to time: 75 kWh at the cells.
    const run = driveUntilEmpty({ ...steady, battery: { ...battery, model: lossy } });
    const hours = run.duration.in("h");
    expect(run.cycles).toBeCloseTo(hours * 6, 9);
    expect(run.cycles % 1).toBeGreaterThan(0.05);
    const power = steadySpeed({ speed: q("90 km/h"), load: plainLoad, drivetrain: lossyDrive, accessories }).power;
    const watts = power.atBattery.in("W");
    expect(run.energy.atTerminals.in("Wh")).toBeCloseTo(watts * hours, 3);
    expect(run.energy.loss.in("Wh")).toBeCloseTo(lossy.lossPower(watts, 0.5) * hours, 3);
    expect(run.energy.loss.in("kWh")).toBeGreaterThan(0.5);
    expect(run.batteryBoundary).toBe("cells");
    const cells = run.energy.atTerminals.plus(run.energy.loss).in("Wh");
    expect(run.consumption?.atBattery.in("Wh/km")).toBeCloseTo(cells / run.range.in("km"), 6);
    // 75 kWh, to the energy of a second.
    expect(Math.abs(cells - 75_000)).toBeLessThan(watts / 3600);
    const cold = driveUntilEmpty({ ...steady, climate: { power: q("0 W"), warmUpEnergy: q("2 kWh") } });
    const warm = driveUntilEmpty(steady);
    expect(warm.duration.in("h") - cold.duration.in("h")).toBeCloseTo(2000 / watts, 3);
  });

  it("is shorter with a higher floor, with loss, and with heating", () => {
    const km = (more: object) => driveUntilEmpty({ ...options, ...more }).range.in("km");
    const once = km({});
    expect(km({ floor: 0.1 })).toBeLessThan(once * 0.93);
    expect(km({ battery: { ...battery, model: plainBattery() } })).toBeLessThan(once);
    expect(km({ climate: { power: q("2 kW"), warmUpEnergy: q("2 kWh") } })).toBeLessThan(once);
  });

  it("ends where the vehicle can no longer follow", () => {
    const model = { ...plainBattery({ ohms: 0 }), maximumDischargePower: (soc: number) => 15_000 + soc * 120_000 };
    const run = driveUntilEmpty({ ...options, battery: { model, stateOfCharge: 1 } });
    expect(run.endedBy).toBe("cannot follow");
    expect(run.stateOfCharge).toBeGreaterThan(0.02);
    expect(run.procedure).toContain("cannot follow by 2 km/h");
  });

  it("refuses a battery that is empty or not drained", () => {
    const bad = (more: object) => codeOf(() => driveUntilEmpty({ ...options, ...more }));
    expect(bad({ floor: 1 })).toBe("NOT_VALID_HERE");
    expect(bad({ grade: -0.2 })).toBe("NOT_VALID_HERE");
    expect(bad({ floor: 20 })).toBe("NOT_A_FRACTION");
  });
});

describe("energies of many vehicles at the battery", () => {
  const arrays = (numbers: readonly RoadLoadNumbers[]) => {
    const list = (key: keyof RoadLoadNumbers) => Float64Array.from(numbers, (vehicle) => vehicle[key]);
    return {
      ...{ constant: list("constant"), linear: list("linear") },
      ...{ quadratic: list("quadratic"), inertiaMass: list("inertiaMass") },
    };
  };

  it("are those of driveCycle, for every drivetrain", () => {
    fc.assert(
      fc.property(fc.array(loads, { minLength: 1, maxLength: 4 }), (fleet) => {
        const vehicles = arrays(fleet.map((load) => roadLoadNumbers(load)));
        for (const drivetrain of [plainDrivetrain, { ...lossyDrive, contains: ["gears"] as const }]) {
          const { battery, driven } = batteryEnergies({ cycle: udds, vehicles, drivetrain, accessories });
          fleet.forEach((load, i) => {
            const run = driveCycle({ cycle: udds, load, drivetrain, accessories });
            expect(close(battery[i] as number, run.energy.atBattery.in("J"), undefined, 1e-9)).toBe(true);
            expect(close(driven[i] as number, run.distance.in("m"), undefined, 1e-9)).toBe(true);
          });
        }
      }),
      { numRuns: 15 },
    );
  });

  it("refuse what makes no sense", () => {
    const vehicles = arrays([roadLoadNumbers(plainLoad)]);
    const bad = (more: object) =>
      codeOf(() => batteryEnergies({ cycle: udds, vehicles, drivetrain: lossyDrive, accessories, ...more }));
    expect(bad({ vehicles: { ...vehicles, linear: new Float64Array(2) } })).toBe("INCONSISTENT");
    expect(bad({ vehicles: { ...vehicles, inertiaMass: Float64Array.of(-1) } })).toBe("NEGATIVE");
    expect(bad({ vehicles: { ...vehicles, inertiaMass: Float64Array.of(0) } })).toBe("OUT_OF_RANGE");
    const broken = efficiencyDrivetrain({ efficiency: 0.9, regeneration: { share: 1 }, contains: ["gears"] });
    expect(bad({ drivetrain: { ...broken, form: "own", batteryPower: () => Number.NaN } })).toBe("NOT_A_NUMBER");
  });
});
