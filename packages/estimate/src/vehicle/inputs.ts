import type { ModelInput } from "../model/model.js";

/** The inputs of the standard vehicle model: units, ranges and what they are. */
export const vehicleInputs = {
  baseMass: { unit: "kg", place: 5, above: 0, meaning: "base mass: curb mass without the pack" },
  packEnergy: { unit: "kWh", place: 4, above: 0, meaning: "pack energy, total" },
  usableFraction: { unit: "1", place: 7, above: 0, atMost: 1, meaning: "usable share of the pack energy" },
  cellMassFraction: { unit: "1", place: 11, above: 0, atMost: 1, meaning: "cell share of the pack mass" },
  secondaryMass: { unit: "1", place: 12, atLeast: 0, atMost: 1, meaning: "secondary mass for each kilogram of pack" },
  payload: { unit: "kg", place: 13, atLeast: 0, meaning: "driver, passengers and luggage" },
  dragCoefficient: { unit: "1", place: 2, atLeast: 0, atMost: 2, meaning: "drag coefficient" },
  frontalArea: { unit: "m²", place: 6, above: 0, meaning: "frontal area" },
  rollingResistanceCoefficient: {
    unit: "1",
    place: 1,
    atLeast: 0,
    atMost: 0.5,
    meaning: "rolling resistance coefficient",
  },
  airDensity: { unit: "kg/m³", place: 14, above: 0, atMost: 2, meaning: "air density" },
  rotatingMassFraction: {
    unit: "1",
    place: 15,
    atLeast: 0,
    atMost: 0.5,
    meaning: "rotating parts, as a share of the mass",
  },
  drivetrainEfficiency: {
    unit: "1",
    place: 3,
    above: 0,
    atMost: 1,
    meaning: "drivetrain efficiency, battery to wheels",
  },
  recoveredShare: {
    unit: "1",
    place: 9,
    atLeast: 0,
    atMost: 1,
    meaning: "share of the braking energy that the motors take",
  },
  accessories: { unit: "W", place: 8, atLeast: 0, meaning: "accessory power" },
  chargingEfficiency: { unit: "1", place: 10, above: 0, atMost: 1, meaning: "charging efficiency, wall to battery" },
} as const satisfies Readonly<Record<string, ModelInput>>;

/** The inputs of the standard vehicle model, as a type. */
export type VehicleInputs = typeof vehicleInputs;
