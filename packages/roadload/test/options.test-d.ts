import { type Density, type Quantity, q } from "@tarewatt/units";
import { test } from "vitest";
import {
  airDensity,
  type CertifiedRoadLoad,
  type Cycle,
  certifiedRoadLoad,
  type Drivetrain,
  driveCycle,
  efficiencyDrivetrain,
  type Fraction,
  type Loss,
  type RoadLoad,
  roadLoad,
  speedTrace,
  steadySpeed,
  toPhysical,
} from "../src/index.js";

/** Values that a program knows or does not know. */
const fraction = undefined as Fraction | undefined;
const density = undefined as Quantity<Density> | undefined;
const text = undefined as string | undefined;
const holds = undefined as readonly Loss[] | undefined;

test("an optional option may be given as undefined", () => {
  const tyres = { mass: q("2 t"), rollingResistanceCoefficient: 0.009, airDensity: q("1.2 kg/m³") };
  roadLoad({ ...tyres, dragArea: q("0.7 m²"), dragCoefficient: undefined, frontalArea: undefined });
  roadLoad({ ...tyres, dragArea: q("0.7 m²"), massBasis: text, rotatingMassFraction: fraction });
  roadLoad({ ...tyres, dragArea: undefined, dragCoefficient: 0.3, frontalArea: q("2.4 m²") });
  const load = {} as RoadLoad;
  load.at(q("10 m/s"), { grade: fraction });
  toPhysical({} as CertifiedRoadLoad, { airDensity: density });
  certifiedRoadLoad({
    ...load.coefficients,
    conditions: { testMass: q("2 t"), airDensity: density, temperature: undefined, standard: text },
    holds,
    inertia: undefined,
    rotatingMassFraction: fraction,
  });
  const parts = { load, drivetrain: {} as Drivetrain, accessories: q("0 W"), grade: fraction };
  driveCycle({ ...parts, cycle: {} as Cycle, chargingEfficiency: fraction });
  steadySpeed({ ...parts, speed: q("10 m/s"), chargingEfficiency: fraction });
  efficiencyDrivetrain({ efficiency: 0.9, regeneration: { share: 1, efficiency: fraction }, contains: [], name: text });
  speedTrace({ name: "t", time: [0, 1], speed: [0, 1], speedUnit: "m/s", timeUnit: undefined, source: undefined });
  airDensity({ temperature: q("20 °C"), altitude: q("0 m"), pressure: undefined, relativeHumidity: fraction });
});
