import { type Energy, type Frequency, type Power, type Quantity, q, type Speed, type Time } from "@tarewatt/units";
import { expectTypeOf, test } from "vitest";
import { type ChargingStation, chargeRate, chargeSession, directSupplyLimits, rangePerTime } from "../../src/index.js";

test("a charge gives time, energies by boundary and power", () => {
  const session = chargeSession({ station: { power: q("50 kW") }, usableEnergy: q("90 kWh"), from: 0.1, to: 0.8 });
  expectTypeOf(session.time).toEqualTypeOf<Quantity<Time>>();
  expectTypeOf(session.energy.atBattery).toEqualTypeOf<Quantity<Energy>>();
  expectTypeOf(session.energy.atWall).toEqualTypeOf<Quantity<Energy> | undefined>();
  expectTypeOf(session.meanPower).toEqualTypeOf<Quantity<Power>>();
  expectTypeOf(rangePerTime({ power: q("50 kW"), consumption: q("200 Wh/km") })).toEqualTypeOf<Quantity<Speed>>();
  expectTypeOf(chargeRate({ power: q("50 kW"), usableEnergy: q("90 kWh") })).toEqualTypeOf<Quantity<Frequency>>();
});

test("a limit of a standard can be given as a station", () => {
  expectTypeOf(directSupplyLimits.combined).toExtend<ChargingStation>();
});

test("what is not what it should be does not compile", () => {
  // @ts-expect-error an energy is no power
  chargeSession({ station: { power: q("50 kWh") }, usableEnergy: q("90 kWh"), from: 0.1, to: 0.8 });
  // @ts-expect-error there are two supplies
  chargeSession({ station: { power: q("50 kW"), supply: "dc" }, usableEnergy: q("90 kWh"), from: 0.1, to: 0.8 });
  // @ts-expect-error the end is needed
  chargeSession({ station: { power: q("50 kW") }, usableEnergy: q("90 kWh"), from: 0.1 });
});
