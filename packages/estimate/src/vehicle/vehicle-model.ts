import { packMassOf, usableEnergy } from "@tarewatt/pack";
import {
  accessoryEnergy,
  aerodynamicDrag,
  batteryEnergy,
  batteryPowerDriving,
  consumptionAtBattery,
  consumptionAtWall,
  dragArea,
  drivingEnergy,
  effectiveMass,
  netWheelEnergy,
  quadraticCoefficient,
  rangeFromConsumption,
  rollingResistance,
  steadyConsumptionAtBattery,
  steadyConsumptionAtWall,
  totalResistance,
  wallEnergy,
  wallPower,
  wheelEnergy,
  wheelPower,
} from "@tarewatt/roadload";
import type { Working } from "@tarewatt/units";
import { curbMass, loadedMass } from "../mass/relations.js";
import type { Model, ModelNumbers, ModelOutput } from "../model/model.js";
import type { ConditionRead } from "./condition.js";
import { type VehicleInputs, vehicleInputs } from "./inputs.js";

/** @internal What the standard vehicle model takes as exact. */
export interface VehicleConstants {
  /** Specific energy of the cell, Wh/kg. */
  readonly cellSpecificEnergy: number;
  /** Pack mass that the base was built to carry, kg. */
  readonly referencePackMass: number;
}

/** @internal Names of the outputs that belong to a condition. */
export const outputNames = {
  atBattery: (label: string) => `consumption at the battery, ${label}` as const,
  atWall: (label: string) => `consumption at the wall, ${label}` as const,
  range: (label: string) => `range, ${label}` as const,
};

const massOutputs = {
  packMass: { unit: "kg", meaning: "mass of the pack" },
  curbMass: { unit: "kg", meaning: "curb mass, without driver" },
  massInRunningOrder: { unit: "kg", meaning: "mass in running order: curb mass and a driver of 75 kg" },
  loadedMass: { unit: "kg", meaning: "mass on the road: curb mass and payload" },
  usableEnergy: { unit: "kWh", meaning: "usable energy of the pack" },
} as const satisfies Readonly<Record<string, ModelOutput>>;

/** @internal Masses by name, and for each condition what {@link outputNames} calls. */
type VehicleOutputs = typeof massOutputs & {
  readonly [Name in `consumption at ${"the battery" | "the wall"}, ${string}`]: {
    readonly unit: "Wh/km";
    readonly meaning: string;
  };
} & { readonly [Name in `range, ${string}`]: { readonly unit: "km"; readonly meaning: string } };

/** @internal The standard vehicle model for the given conditions. */
export type VehicleModel = Model<VehicleInputs, VehicleOutputs>;

/** Driver of the mass in running order, kg: Regulation (EU) 1230/2012 article 2 (4) and UN GTR No. 15, 3.2.6 (seen). */
const DRIVER = 75;

/**
 * @internal From base mass and pack to mass, road load, consumption and range, for each condition.
 *
 * Every published relation is the one of its own package, so that a working shows the same steps as the parts do alone.
 */
export function vehicleModel(conditions: readonly ConditionRead[], constants: VehicleConstants): VehicleModel {
  const outputs = Object.fromEntries(
    conditions.flatMap(({ label, procedure }) => [
      [outputNames.atBattery(label), { unit: "Wh/km", meaning: `consumption at the battery (DC), ${procedure}` }],
      [outputNames.atWall(label), { unit: "Wh/km", meaning: `consumption at the wall (AC), ${procedure}` }],
      [outputNames.range(label), { unit: "km", meaning: `range from full to empty, ${procedure}` }],
    ]),
  );
  // Names are put together once, not for every draw.
  const named = conditions.map((condition) => ({
    condition,
    atBatteryName: outputNames.atBattery(condition.label),
    atWallName: outputNames.atWall(condition.label),
    rangeName: outputNames.range(condition.label),
  }));
  return {
    name: "standard vehicle model",
    inputs: vehicleInputs,
    outputs: { ...massOutputs, ...outputs } as VehicleOutputs,
    evaluate: (inputs, working) => {
      const masses = massesOf(inputs, constants, working);
      const results: Record<string, number> = { ...masses };
      for (const { condition, atBatteryName, atWallName, rangeName } of named) {
        const { atBattery, atWall } =
          condition.form === "cycle"
            ? onCycle(condition, inputs, masses.loadedMass, working)
            : atSpeed(condition, inputs, masses.loadedMass, working);
        results[atBatteryName] = atBattery;
        results[atWallName] = atWall;
        results[rangeName] = rangeFromConsumption.of(
          { usableEnergy: masses.usableEnergy, consumption: atBattery },
          working,
        );
      }
      return results as ModelNumbers<VehicleOutputs>;
    },
  };
}

type Inputs = ModelNumbers<VehicleInputs>;

function massesOf(inputs: Inputs, constants: VehicleConstants, working?: Working): ModelNumbers<typeof massOutputs> {
  const { packEnergy, cellMassFraction, baseMass, secondaryMass, payload, usableFraction } = inputs;
  const packMass = packMassOf.of(
    { energy: packEnergy, cellSpecificEnergy: constants.cellSpecificEnergy, cellMassFraction },
    working,
  );
  const curb = curbMass.of(
    { baseMass, packMass, referencePackMass: constants.referencePackMass, secondaryMass },
    working,
  );
  return {
    packMass,
    curbMass: curb,
    massInRunningOrder: curb + DRIVER,
    loadedMass: loadedMass.of({ curbMass: curb, payload }, working),
    usableEnergy: usableEnergy.of({ totalEnergy: packEnergy, usableFraction }, working),
  };
}

/** Energy per distance, Wh/km. */
interface Consumption {
  readonly atBattery: number;
  readonly atWall: number;
}

function atSpeed(
  { metresPerSecond: speed }: Extract<ConditionRead, { form: "steady" }>,
  inputs: Inputs,
  mass: number,
  working?: Working,
): Consumption {
  const { rollingResistanceCoefficient, airDensity, accessories, chargingEfficiency } = inputs;
  const efficiency = inputs.drivetrainEfficiency;
  const rolling = rollingResistance.of({ mass, rollingResistanceCoefficient, grade: 0 }, working);
  const area = dragArea.of(inputs, working);
  const aerodynamic = aerodynamicDrag.of({ airDensity, dragArea: area, airSpeed: speed }, working);
  const force = totalResistance.of({ rolling, aerodynamic, grade: 0 }, working);
  const power = batteryPowerDriving.of(
    { wheelPower: wheelPower.of({ force, speed }, working), efficiency, accessories },
    working,
  );
  const atBattery = steadyConsumptionAtBattery.of({ power, speed }, working);
  const atWall = steadyConsumptionAtWall.of(
    { power: wallPower.of({ battery: power, chargingEfficiency }, working), speed },
    working,
  );
  return { atBattery, atWall };
}

function onCycle(
  { cycle }: Extract<ConditionRead, { form: "cycle" }>,
  inputs: Inputs,
  mass: number,
  working?: Working,
): Consumption {
  const { rollingResistanceCoefficient, airDensity, accessories, chargingEfficiency } = inputs;
  const efficiency = inputs.drivetrainEfficiency;
  const constant = rollingResistance.of({ mass, rollingResistanceCoefficient, grade: 0 }, working);
  const area = dragArea.of(inputs, working);
  const quadratic = quadraticCoefficient.of({ airDensity, dragArea: area }, working);
  const { rotatingMassFraction } = inputs;
  const inertiaMass = effectiveMass.of({ mass, rotatingMassFraction }, working);
  const { driving, braking } = wheelEnergy(cycle, { constant, linear: 0, quadratic, inertiaMass });
  const { total } = cycle.segments;
  if (working !== undefined) {
    // What the kernel summed, as steps that a reader can follow.
    const net = netWheelEnergy.of(
      {
        ...{ constant, gradeForce: 0, linear: 0, quadratic, inertiaMass },
        distance: total.distance,
        speedSquaredIntegral: total.speedSquared,
        speedCubedIntegral: total.speedCubed,
        kineticChange: total.kineticChange,
      },
      working,
    );
    drivingEnergy.of({ net, braking }, working);
  }
  const battery = batteryEnergy.of(
    {
      driving,
      braking,
      efficiency,
      share: inputs.recoveredShare,
      regenerationEfficiency: efficiency,
      accessories: accessoryEnergy.of({ power: accessories, duration: total.duration }, working),
    },
    working,
  );
  const { distance } = total;
  const atBattery = consumptionAtBattery.of({ energy: battery, distance }, working);
  const energy = wallEnergy.of({ battery, chargingEfficiency }, working);
  return { atBattery, atWall: consumptionAtWall.of({ energy, distance }, working) };
}
