import type { ModelInput } from "../model/model.js";

/** The inputs of the standard vehicle model: units, ranges and what they are. */
export const vehicleInputs = {
  baseMass: { unit: "kg", above: 0, meaning: "base mass: curb mass without the pack" },
  packEnergy: { unit: "kWh", above: 0, meaning: "pack energy, total" },
  usableFraction: { unit: "1", above: 0, atMost: 1, meaning: "usable share of the pack energy" },
  cellMassFraction: { unit: "1", above: 0, atMost: 1, meaning: "cell share of the pack mass" },
  secondaryMass: { unit: "1", atLeast: 0, atMost: 1, meaning: "secondary mass for each kilogram of pack" },
  payload: { unit: "kg", atLeast: 0, meaning: "driver, passengers and luggage" },
  dragCoefficient: { unit: "1", atLeast: 0, atMost: 2, meaning: "drag coefficient" },
  frontalArea: { unit: "m²", above: 0, meaning: "frontal area" },
  rollingResistanceCoefficient: { unit: "1", atLeast: 0, atMost: 0.5, meaning: "rolling resistance coefficient" },
  airDensity: { unit: "kg/m³", above: 0, atMost: 2, meaning: "air density" },
  rotatingMassFraction: { unit: "1", atLeast: 0, atMost: 0.5, meaning: "rotating parts, as a share of the mass" },
  drivetrainEfficiency: { unit: "1", above: 0, atMost: 1, meaning: "drivetrain efficiency, battery to wheels" },
  recoveredShare: { unit: "1", atLeast: 0, atMost: 1, meaning: "share of the braking energy that the motors take" },
  accessories: { unit: "W", atLeast: 0, meaning: "accessory power" },
  chargingEfficiency: { unit: "1", above: 0, atMost: 1, meaning: "charging efficiency, wall to battery" },
} as const satisfies Readonly<Record<string, ModelInput>>;

/** The inputs of the standard vehicle model, as a type. */
export type VehicleInputs = typeof vehicleInputs;
