import { prismaticCell } from "@tarewatt/pack";
import { hwfet, udds, wltc3b } from "@tarewatt/roadload";
import { q } from "@tarewatt/units";
import { around, baseMass, type VehicleOptions } from "../../src/index.js";

/** An invented cell. */
const cell = prismaticCell({
  thickness: q("52 mm"),
  width: q("148 mm"),
  height: q("102 mm"),
  capacity: q("140 Ah"),
  nominalVoltage: q("3.65 V"),
  maximumVoltage: q("4.25 V"),
  mass: q("2.03 kg"),
});

/** An invented van, every input with a spread where it can have one. */
export const van: VehicleOptions = {
  name: "van (invented)",
  base: baseMass({
    comparators: [
      { name: "A (invented)", curbMass: q("2480 kg"), packMass: q("560 kg") },
      { name: "B (invented)", curbMass: q("2390 kg"), packMass: q("520 kg") },
      { name: "C (invented)", curbMass: q("5600 lb"), packMass: q("550 kg") },
    ],
  }),
  cell,
  pack: {
    energy: around(q("98 kWh"), 0.02),
    nominalVoltage: q("350 V"),
    cellMassFraction: around(0.72, 0.04),
    usableFraction: around(0.93, 0.02),
  },
  secondaryMass: { low: 0.1, likely: 0.2, high: 0.3 },
  payload: q("150 kg"),
  dragCoefficient: around(0.29, 0.05),
  frontalArea: around(q("2.9 m²"), 0.04),
  rollingResistanceCoefficient: around(0.0095, 0.1),
  airDensity: q("1.189 kg/m³"),
  drivetrain: {
    efficiency: around(0.87, 0.03),
    recoveredShare: around(0.85, 0.05),
    contains: ["gears", "motor", "inverter", "driveline spin", "wheel bearings"],
  },
  accessories: around(q("400 W"), 0.3),
  chargingEfficiency: around(0.89, 0.03),
  conditions: [udds, hwfet, wltc3b, q("80 km/h"), q("110 km/h")],
  draws: 2000,
};

/** The same van with every input exact. */
export function exactVan(): VehicleOptions {
  return {
    ...van,
    base: { mass: q("1940 kg"), referencePackMass: q("540 kg") },
    pack: { ...van.pack, energy: q("98 kWh"), cellMassFraction: 0.72, usableFraction: 0.93 },
    secondaryMass: 0.2,
    dragCoefficient: 0.29,
    frontalArea: q("2.9 m²"),
    rollingResistanceCoefficient: 0.0095,
    drivetrain: { ...van.drivetrain, efficiency: 0.87, recoveredShare: 0.85 },
    accessories: q("400 W"),
    chargingEfficiency: 0.89,
    draws: 100,
  };
}
