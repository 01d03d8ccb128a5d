import { openCircuitCurves, openCircuitEnergy, packBattery } from "@tarewatt/pack";
import {
  type Battery,
  driveCycle,
  driveUntilEmpty,
  efficiencyDrivetrain,
  roadLoad,
  udds,
  us06,
  wltc3b,
} from "@tarewatt/roadload";
import { q, quantity } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

/** A battery of one package in the cycles of another, which know each other only by the shape of `Battery`. */

const load = roadLoad({
  ...{ mass: q("2200 kg"), dragArea: q("0.7 m²"), rollingResistanceCoefficient: 0.009, airDensity: q("1.189 kg/m³") },
});
const drivetrain = efficiencyDrivetrain({
  ...{ efficiency: 0.9, regeneration: { share: 0.9 } },
  contains: ["gears", "motor", "inverter"],
});
const driven = { load, drivetrain, accessories: q("350 W") };
const batteryOf = (milliohms: number, temperature = 25) =>
  packBattery({
    ...{
      arrangement: { series: 96, parallel: 2 },
      cellCapacity: q("140 Ah"),
      openCircuit: openCircuitCurves.nickelRich,
    },
    ...{ cellResistance: quantity(milliohms, "mΩ"), temperature: quantity(temperature, "°C") },
  });
const cycles = fc.constantFrom(udds, us06, wltc3b);
const charges = fc.double({ min: 0.35, max: 0.9, noNaN: true });

describe("a battery of the pack in a cycle of the road", () => {
  it("closes the ledger, and counts its loss once", () => {
    fc.assert(
      fc.property(cycles, charges, fc.double({ min: 0.2, max: 2, noNaN: true }), (cycle, stateOfCharge, milliohms) => {
        const run = driveCycle({ cycle, ...driven, battery: { model: batteryOf(milliohms), stateOfCharge } });
        const without = driveCycle({ cycle, ...driven });
        const sum = run.ledger.entries.reduce((total, { energy }) => total + energy.in("J"), 0);
        expect(sum / run.energy.atBattery.in("J")).toBeCloseTo(1, 9);
        const loss = run.battery?.loss.in("J") as number;
        expect(loss).toBeGreaterThan(0);
        expect((run.energy.atBattery.in("J") - loss) / without.energy.atBattery.in("J")).toBeCloseTo(1, 6);
        expect(run.batteryBoundary).toBe("cells");
      }),
      { numRuns: 20 },
    );
  });

  it("drives the same whether loss and rate are asked for together or one by one", () => {
    fc.assert(
      fc.property(cycles, charges, (cycle, stateOfCharge) => {
        const model = batteryOf(0.7);
        const drive = (each: Battery) => driveCycle({ cycle, ...driven, battery: { model: each, stateOfCharge } });
        const together = drive(model);
        const apart = drive({ ...model, lossAndRate: undefined });
        expect(together.battery).toEqual(apart.battery);
        expect(together.energy).toEqual(apart.energy);
      }),
      { numRuns: 10 },
    );
  });

  it("asks a copy with a loss or rate of its own for these", () => {
    const model = batteryOf(0.7);
    const drive = (each: Battery) =>
      driveCycle({ cycle: udds, ...driven, battery: { model: each, stateOfCharge: 0.8 } });
    const lossless = drive({ ...model, lossPower: () => 0 });
    expect(lossless.battery?.loss.in("J")).toBe(0);
    expect(lossless.battery?.stateOfCharge).toBe(drive(model).battery?.stateOfCharge);
    expect(drive({ ...model, stateOfChargeRate: () => 0 }).battery?.stateOfCharge).toBe(0.8);
  });

  it("takes from the charge what it takes from the energy between the two states", () => {
    for (const cycle of [udds, wltc3b]) {
      const model = batteryOf(0.7);
      const run = driveCycle({ cycle, ...driven, battery: { model, stateOfCharge: 0.8 } });
      const between = openCircuitEnergy({ battery: model, from: run.battery?.stateOfCharge as number, to: 0.8 });
      // Braking gives back at another voltage than it was taken at: the energies agree to that.
      expect(run.energy.atBattery.in("J") / between.in("J")).toBeCloseTo(1, 2);
    }
  });

  it("loses less the smaller its resistance, in proportion when it is small", () => {
    const loss = (milliohms: number) =>
      driveCycle({
        cycle: wltc3b,
        ...driven,
        battery: { model: batteryOf(milliohms), stateOfCharge: 0.7 },
      }).battery?.loss.in("J") as number;
    expect(loss(1e-3) / loss(2e-3)).toBeCloseTo(0.5, 3);
    expect(loss(0.5)).toBeLessThan(loss(0.6));
  });

  it("loses more in the cold, and goes less far on what it holds", () => {
    const range = (temperature: number) =>
      driveUntilEmpty({
        cycle: wltc3b,
        ...driven,
        battery: { model: batteryOf(0.7, temperature), stateOfCharge: 1 },
        floor: 0.05,
      }).range.in("km");
    expect(range(-10)).toBeLessThan(range(25));
  });

  it("takes nothing back from the brakes in frost, and little just above it", () => {
    const charged = (temperature: number) => {
      const model = batteryOf(0.7, temperature);
      let most = 0;
      const stateOfChargeRate: Battery["stateOfChargeRate"] = (power, state) => {
        most = Math.max(most, -power);
        return model.stateOfChargeRate(power, state);
      };
      driveCycle({ cycle: us06, ...driven, battery: { model: { ...model, stateOfChargeRate }, stateOfCharge: 0.6 } });
      return most;
    };
    expect(charged(25)).toBeGreaterThan(20e3);
    // What the brakes give covers the accessories, to a rounding error.
    expect(charged(-20)).toBeLessThan(1e-9);
    // 0.1 C of 280 Ah, at some 370 V.
    expect(charged(2)).toBeGreaterThan(9e3);
    expect(charged(2)).toBeLessThan(11e3);
  });
});
