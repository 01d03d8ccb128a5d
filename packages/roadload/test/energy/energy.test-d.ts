import { type Energy, type EnergyPerDistance, type Length, type Power, type Quantity, q } from "@tarewatt/units";
import { expectTypeOf, test } from "vitest";
import {
  type Cycle,
  type Drivetrain,
  driveCycle,
  efficiencyDrivetrain,
  type Ledger,
  type RoadLoad,
  rangeOn,
  speedTrace,
  steadySpeed,
} from "../../src/index.js";

const options = { cycle: {} as Cycle, load: {} as RoadLoad, drivetrain: {} as Drivetrain };

test("a cycle is driven with stated accessories", () => {
  const run = driveCycle({ ...options, accessories: q("350 W") });
  expectTypeOf(run.energy.atBattery).toEqualTypeOf<Quantity<Energy>>();
  expectTypeOf(run.consumption.atBattery).toEqualTypeOf<Quantity<EnergyPerDistance>>();
  expectTypeOf(run.consumption.atWall).toEqualTypeOf<Quantity<EnergyPerDistance> | undefined>();
  expectTypeOf(run.ledger).toEqualTypeOf<Ledger>();
  expectTypeOf(rangeOn({ usableEnergy: q("75 kWh"), result: run }).range).toEqualTypeOf<Quantity<Length>>();
  // @ts-expect-error accessories must be said
  driveCycle(options);
  // @ts-expect-error a consumption is not a force
  run.consumption.atBattery.in("N");
  // @ts-expect-error a result cannot be changed
  run.procedure = "another";
});

test("a steady speed gives powers", () => {
  const steady = steadySpeed({
    speed: q("110 km/h"),
    load: {} as RoadLoad,
    drivetrain: {} as Drivetrain,
    accessories: q("0 W"),
  });
  expectTypeOf(steady.power.atWheel).toEqualTypeOf<Quantity<Power>>();
});

test("a drivetrain states its scope", () => {
  // @ts-expect-error what it contains is missing
  efficiencyDrivetrain({ efficiency: 0.88, regeneration: { share: 0.9 } });
});

test("a trace has a unit of speed that is known", () => {
  // @ts-expect-error knots are not for roads
  speedTrace({ name: "sea", time: [0, 1], speed: [0, 1], speedUnit: "kn" });
});
