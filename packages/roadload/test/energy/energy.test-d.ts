import { type Energy, type EnergyPerDistance, type Length, type Power, type Quantity, q } from "@tarewatt/units";
import { expectTypeOf, test } from "vitest";
import {
  type Battery,
  type BatteryRun,
  type Cycle,
  cabinClimate,
  type Drivetrain,
  driveCycle,
  driveUntilEmpty,
  efficiencyDrivetrain,
  type Following,
  type Ledger,
  type RangeCurve,
  type RoadLoad,
  rangeCurve,
  rangeOn,
  route,
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

test("a battery is a model and how full it is", () => {
  const model: Battery = {
    ...{ name: "ideal", lossPower: () => 0, stateOfChargeRate: (power) => -power },
    ...{ maximumDischargePower: () => 1e5, maximumChargePower: () => 1e5 },
  };
  const battery = { model, stateOfCharge: 0.9 };
  const run = driveCycle({ ...options, accessories: q("350 W"), battery, series: true });
  expectTypeOf(run.battery).toEqualTypeOf<BatteryRun | undefined>();
  expectTypeOf(run.following).toEqualTypeOf<Following | undefined>();
  expectTypeOf(run.series?.speed).toEqualTypeOf<Float64Array | undefined>();
  const empty = driveUntilEmpty({ ...options, accessories: q("350 W"), battery, floor: 0.05 });
  expectTypeOf(empty.range).toEqualTypeOf<Quantity<Length>>();
  expectTypeOf(empty.endedBy).toEqualTypeOf<"state of charge" | "cannot follow">();
  // @ts-expect-error there is no end without a battery
  driveUntilEmpty({ ...options, accessories: q("350 W") });
  // @ts-expect-error a model alone does not say how full it is
  driveCycle({ ...options, accessories: q("350 W"), battery: model });
});

test("a curve of ranges has speeds and an energy", () => {
  const { cycle: _, ...driven } = options;
  const curve = rangeCurve({
    ...driven,
    speeds: [q("50 km/h"), q("70 mph")],
    usableEnergy: q("72 kWh"),
    accessories: q("0 W"),
  });
  expectTypeOf(curve).toEqualTypeOf<RangeCurve>();
  expectTypeOf(curve.best.range).toEqualTypeOf<Quantity<Length>>();
  // @ts-expect-error an energy is not a charge
  rangeCurve({ ...driven, speeds: [q("50 km/h")], usableEnergy: q("200 Ah"), accessories: q("0 W") });
});

test("a cabin's climate goes into a drive and into a steady speed", () => {
  const climate = cabinClimate({ ambient: q("-7 °C"), target: q("21 °C"), heater: "resistance" });
  expectTypeOf(climate.power).toEqualTypeOf<Quantity<Power>>();
  driveCycle({ ...options, accessories: q("350 W"), climate });
  steadySpeed({
    speed: q("110 km/h"),
    load: options.load,
    drivetrain: options.drivetrain,
    accessories: q("0 W"),
    climate,
  });
  // @ts-expect-error no such heater
  cabinClimate({ ambient: q("-7 °C"), target: q("21 °C"), heater: "stove" });
});

test("a route is a cycle", () => {
  expectTypeOf(
    route({ name: "there", segments: [{ length: q("12 km"), speed: q("50 km/h") }] }),
  ).toEqualTypeOf<Cycle>();
  // @ts-expect-error a segment has a speed
  route({ name: "there", segments: [{ length: q("12 km") }] });
});
