import { q, quantity } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  type Battery,
  driveUntilEmpty,
  type RangeCurveOptions,
  rangeCurve,
  rangeOn,
  speedTrace,
  steadyDistance,
  steadySpeed,
} from "../../src/index.js";
import { lossy as lossyDrive, plainBattery } from "../drivetrain/models.js";
import { between, close, codeOf, physicalLoads, plainDrivetrain, plainLoad } from "../support.js";

/** The laws of energy, and batteries whose emptying can be written down: derived here, no other source. */

const accessories = q("350 W");
const driven = { load: plainLoad, drivetrain: lossyDrive, accessories };
const ends = [q("60 km/h"), q("120 km/h")];
const curveWith = (model: Battery, more: Partial<RangeCurveOptions> = {}) =>
  rangeCurve({ ...driven, speeds: ends, battery: { model, stateOfCharge: 1 }, ...more });

describe("a battery at a steady speed", () => {
  it("closes the ledger up hill and down, at any state of charge", () => {
    fc.assert(
      fc.property(
        physicalLoads,
        between(1, 60),
        between(-0.15, 0.1),
        between(0, 1),
        (load, v, grade, stateOfCharge) => {
          const model = plainBattery({ most: 1e9, mostCharge: 5000, ohms: 0.001 });
          const battery = { model: { ...model, maximumDischargePower: () => 1e9 }, stateOfCharge };
          const result = steadySpeed({
            ...driven,
            drivetrain: plainDrivetrain,
            load,
            grade,
            battery,
            speed: quantity(v, "m/s"),
          });
          const sum = result.ledger.entries.reduce((total, { power }) => total + power.in("W"), 0);
          const scale = result.ledger.entries.reduce((total, { power }) => total + Math.abs(power.in("W")), 0);
          expect(close(sum, result.power.atBattery.in("W"), scale, 1e-9)).toBe(true);
          const { atTerminals, loss, refused } = result.battery ?? expect.fail("no battery");
          expect(close(atTerminals.plus(loss).in("W"), result.power.atBattery.in("W"), scale)).toBe(true);
          expect(loss.in("W")).toBeGreaterThanOrEqual(0);
          expect(refused.in("W")).toBeGreaterThanOrEqual(0);
          expect(atTerminals.in("W")).toBeGreaterThanOrEqual(stateOfCharge < 1 ? -5000 * (1 + 1e-6) : -1);
          expect(result.batteryBoundary).toBe("cells");
          expect(result.working().at(-1)?.result.value).toBeCloseTo(result.consumption.atBattery.in("Wh/km"), 6);
        },
      ),
    );
  });

  it("adds the loss of its current: I²·R from the quadratic of power, by hand", () => {
    const without = steadySpeed({ ...driven, speed: q("110 km/h") }).power.atBattery.in("W");
    const model = plainBattery({ volts: 400, ohms: 0.1 });
    const result = steadySpeed({ ...driven, speed: q("110 km/h"), battery: { model, stateOfCharge: 0.5 } });
    const amps = (400 - Math.sqrt(400 ** 2 - 4 * 0.1 * without)) / 0.2;
    expect(result.battery?.atTerminals.in("W")).toBeCloseTo(without, 6);
    expect(result.battery?.loss.in("W")).toBeCloseTo(amps ** 2 * 0.1, 6);
    expect(result.power.atBattery.in("W")).toBeCloseTo(400 * amps, 6);
  });

  it("leaves to the friction brakes what it cannot be charged with", () => {
    const downhill = { ...driven, speed: q("80 km/h"), grade: -0.08 };
    const free = steadySpeed({ ...downhill, battery: { model: plainBattery(), stateOfCharge: 0.5 } });
    expect(free.battery?.refused.in("W")).toBe(0);
    expect(free.power.atBattery.in("W")).toBeLessThan(-5000);
    const full = steadySpeed({ ...downhill, battery: { model: plainBattery(), stateOfCharge: 1 } });
    expect(full.battery?.atTerminals.in("W")).toBeCloseTo(0, 3);
    expect(full.battery?.refused.in("W")).toBeGreaterThan(5000);
    const brakes = full.ledger.entries.find(({ cause }) => cause === "friction brakes")?.power.in("W") as number;
    expect(brakes).toBeGreaterThanOrEqual(full.battery?.refused.in("W") as number);
  });

  it("refuses a speed that the battery gives too little power for, and a loss that is counted twice", () => {
    const weak = plainBattery({ most: 5000 });
    const call = () => steadySpeed({ ...driven, speed: q("110 km/h"), battery: { model: weak, stateOfCharge: 0.5 } });
    expect(codeOf(call)).toBe("NOT_VALID_HERE");
    expect(call).toThrow("which gives 5 kW at a state of charge of 0.5");
    const holds = { ...plainDrivetrain, contains: [...plainDrivetrain.contains, "battery"] } as const;
    const battery = { model: plainBattery(), stateOfCharge: 0.5 };
    expect(codeOf(() => steadySpeed({ ...driven, drivetrain: holds, speed: q("50 km/h"), battery }))).toBe(
      "COUNTED_TWICE",
    );
  });
});

describe("range over steady speed with a battery", () => {
  it("of constant voltage is the energy of the cells per power of the cells", () => {
    for (const { speed, range, power, consumption, endedBy } of curveWith(plainBattery()).rows) {
      const result = steadySpeed({ ...driven, speed, battery: { model: plainBattery(), stateOfCharge: 0.5 } });
      expect(power.in("W")).toBeCloseTo(result.power.atBattery.in("W"), 6);
      expect(consumption.in("Wh/km")).toBeCloseTo(result.consumption.atBattery.in("Wh/km"), 9);
      expect(range.in("km")).toBeCloseTo(75_000 / result.consumption.atBattery.in("Wh/km"), 6);
      const { range: byEnergy } = rangeOn({ usableEnergy: q("75 kWh"), result });
      expect(range.in("km")).toBeCloseTo(byEnergy.in("km"), 6);
      expect(endedBy).toBe("state of charge");
    }
  });

  it("of a voltage that falls agrees with driving second by second, and with the integral in closed form", () => {
    // u(s) = 300 + 100·s volts, no resistance: ∫ Q·u ds / P.
    const coulombs = 2e5;
    const falling: Battery = {
      ...{ name: "invented", lossPower: () => 0, maximumDischargePower: () => 2e5, maximumChargePower: () => 0 },
      stateOfChargeRate: (power, soc) => -power / (300 + 100 * soc) / coulombs,
    };
    const { best, rows } = curveWith(falling, { floor: 0.2 });
    const watts = steadySpeed({ ...driven, speed: q("60 km/h") }).power.atBattery.in("W");
    const seconds = (coulombs * (300 * 0.8 + 50 * (1 - 0.04))) / watts;
    expect(rows[0]?.range.in("m")).toBeCloseTo((seconds * 60) / 3.6, 3);
    expect(best.range.in("km")).toBeGreaterThanOrEqual(rows[0]?.range.in("km") as number);
    const cycle = speedTrace({ name: "steady", time: [0, 600], speed: [60, 60], speedUnit: "km/h" });
    const run = driveUntilEmpty({ ...driven, cycle, battery: { model: falling, stateOfCharge: 1 }, floor: 0.2 });
    expect(Math.abs(run.range.in("m") - (rows[0]?.range.in("m") as number))).toBeLessThan(17);
  });

  it("ends where the battery gives too little power, and says so", () => {
    // At a state of charge s it gives 50 kW·s.
    const fading: Battery = { ...plainBattery({ ohms: 0 }), maximumDischargePower: (soc) => 50_000 * soc };
    const { rows, working } = curveWith(fading);
    for (const { speed, power, stateOfCharge, endedBy, range } of rows) {
      const watts = steadySpeed({ ...driven, speed }).power.atBattery.in("W");
      expect(power.in("W")).toBeCloseTo(watts, 6);
      expect(stateOfCharge).toBeCloseTo(watts / 50_000, 6);
      expect(endedBy).toBe("power");
      expect(range.in("km")).toBeCloseTo(((1 - watts / 50_000) * 75_000 * speed.in("km/h")) / watts, 4);
    }
    expect(working().at(-1)?.result.value).toBeCloseTo(curveWith(fading).best.range.in("km"), 6);
  });

  it("leaves out the speeds that the battery does not give the power for", () => {
    const { rows, unreachable } = curveWith(plainBattery({ most: 15_000 }));
    expect(rows.map(({ speed }) => speed.in("km/h"))).toEqual([60]);
    expect(unreachable.map((speed) => speed.in("km/h"))).toEqual([120]);
  });

  it("takes energy to warm up once, from the time that is driven", () => {
    const climate = { power: q("0 W"), warmUpEnergy: q("2 kWh") };
    const [cold, warm] = [curveWith(plainBattery(), { climate }), curveWith(plainBattery())].map(({ rows }) => rows[0]);
    const watts = steadySpeed({ ...driven, speed: q("60 km/h") }).power.atBattery.in("W");
    const lost = (warm?.range.in("km") as number) - (cold?.range.in("km") as number);
    expect(lost).toBeCloseTo((2000 / watts) * 60, 6);
    const tooMuch = { ...climate, warmUpEnergy: q("200 kWh") };
    expect(curveWith(plainBattery(), { climate: tooMuch }).rows[0]?.range.in("km")).toBe(0);
  });

  it("refuses an energy beside a battery, neither, a floor without one, an empty one and a descent", () => {
    const battery = { model: plainBattery(), stateOfCharge: 0.5 };
    const bad = (more: object) => codeOf(() => rangeCurve({ ...driven, speeds: ends, ...more }));
    expect(bad({ battery, usableEnergy: q("70 kWh") })).toBe("INCONSISTENT");
    expect(bad({})).toBe("MISSING_OPTION");
    expect(bad({ usableEnergy: q("70 kWh"), floor: 0.1 })).toBe("INCONSISTENT");
    expect(bad({ battery, floor: 0.5 })).toBe("NOT_VALID_HERE");
    expect(bad({ battery, grade: -0.2 })).toBe("NOT_VALID_HERE");
    expect(bad({ battery: { ...battery, model: { ...battery.model, stateOfChargeRate: () => Number.NaN } } })).toBe(
      "NOT_A_NUMBER",
    );
  });

  it("holds distance to speed and time", () => {
    expect(steadyDistance({ speed: q("60 mph"), duration: q("30 min") }).in("mi")).toBeCloseTo(30, 9);
  });
});
