import { type Energy, type Power, type Quantity, q, type Voltage } from "@tarewatt/units";
import { expectTypeOf, test } from "vitest";
import {
  type Battery,
  batteryPoint,
  openCircuitCurves,
  openCircuitEnergy,
  type PackBattery,
  packBattery,
} from "../../src/index.js";

/** What a simulation of a vehicle asks of a battery, written out: this package does not know those that simulate. */
interface Needed {
  readonly name: string;
  readonly warnings?: readonly string[] | undefined;
  lossPower(terminalPower: number, stateOfCharge: number): number;
  stateOfChargeRate(terminalPower: number, stateOfCharge: number): number;
  maximumDischargePower(stateOfCharge: number): number;
  maximumChargePower(stateOfCharge: number): number;
}

const cells = { cellCapacity: q("140 Ah"), openCircuit: openCircuitCurves.nickelRich };
const arrangement = { series: 96, parallel: 2 };

test("a battery fits where a simulation takes one", () => {
  expectTypeOf<PackBattery>().toExtend<Battery>();
  expectTypeOf<Battery>().toExtend<Needed>();
});

test("results are quantities of what they are", () => {
  const battery = packBattery({ arrangement, ...cells, cellResistance: q("0.7 mΩ") });
  expectTypeOf(openCircuitEnergy({ battery })).toEqualTypeOf<Quantity<Energy>>();
  expectTypeOf(batteryPoint({ battery, power: q("50 kW"), stateOfCharge: 0.5 }).loss).toEqualTypeOf<Quantity<Power>>();
  expectTypeOf(battery.maximumVoltage).toEqualTypeOf<Quantity<Voltage>>();
});

test("what is not what it should be does not compile", () => {
  // @ts-expect-error a resistance is no number
  packBattery({ arrangement, ...cells, cellResistance: 0.0007 });
  // @ts-expect-error a voltage is no resistance
  packBattery({ arrangement, ...cells, cellResistance: q("0.7 mV") });
  // @ts-expect-error the temperature is a point, not a difference
  packBattery({ arrangement, ...cells, cellResistance: q("0.7 mΩ"), temperature: q("5 ΔK") });
});
