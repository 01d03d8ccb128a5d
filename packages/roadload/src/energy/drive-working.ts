import type { Step, Working } from "@tarewatt/units";
import type { CycleTotals } from "../cycle/cycle.js";
import { isEfficiencyDrivetrain } from "../drivetrain/efficiency-drivetrain.js";
import { dragArea } from "../resistance/drag-area.js";
import { effectiveMass } from "../resistance/effective-mass.js";
import { gradeResistance } from "../resistance/grade-resistance.js";
import { quadraticCoefficient } from "../resistance/quadratic-coefficient.js";
import { rollingResistance } from "../resistance/rolling-resistance.js";
import { accessoryEnergy, batteryEnergy, batteryEnergyOfModel } from "./battery-energy.js";
import { batteryEnergyOfParts } from "./battery-energy-of-parts.js";
import { consumptionAtBattery, consumptionAtWall, wallEnergy } from "./consumption.js";
import { drivingEnergy, netWheelEnergy } from "./net-wheel-energy.js";
import type { Scope } from "./scope.js";

/** Energies of a drive in J, and its distance in m. @internal */
export interface DriveSums {
  readonly driving: number;
  readonly braking: number;
  readonly distance: number;
  /** Whether the cycle was driven as it stands, on one grade: then its integrals are those of the drive. */
  readonly followed: boolean;
  readonly constant: number;
  readonly linear: number;
  readonly quadratic: number;
  readonly grade: number;
  readonly kinetic: number;
  /** Of the battery for the drivetrain alone. */
  readonly drivetrain: number;
  readonly brakes: number;
  /** Between wheels and battery. */
  readonly loss: number;
  readonly accessories: number;
  readonly climate: number;
  readonly batteryLoss: number;
}

/** How the energies of a drive came about. @internal */
export function explainDrive(scope: Scope, total: CycleTotals, sums: DriveSums): Step[] {
  const { load, numbers, accessories, grade, chargingEfficiency } = scope;
  const working: Working = [];
  const mass = load.mass.in("kg");
  if (load.form === "physical") {
    const airDensity = load.conditions.airDensity.in("kg/m³");
    const { dragCoefficient, frontalArea, rollingResistanceCoefficient } = load;
    rollingResistance.of({ mass, rollingResistanceCoefficient, grade }, working);
    if (dragCoefficient !== undefined && frontalArea !== undefined) {
      dragArea.of({ dragCoefficient, frontalArea: frontalArea.in("m²") }, working);
    }
    quadraticCoefficient.of({ airDensity, dragArea: load.dragArea.in("m²") }, working);
  }
  if (grade !== 0) gradeResistance.of({ mass, grade }, working);
  const inertiaMass = effectiveMass.of({ mass, rotatingMassFraction: load.rotatingMassFraction }, working);
  // A vehicle that fell behind, or drove over hills, has other integrals than the cycle: its net is the sum of what it took.
  const net = sums.followed
    ? netWheelEnergy.of(
        {
          ...numbers,
          inertiaMass,
          distance: total.distance,
          speedSquaredIntegral: total.speedSquared,
          speedCubedIntegral: total.speedCubed,
          kineticChange: total.kineticChange,
        },
        working,
      )
    : sums.driving + sums.braking;
  const driving = drivingEnergy.of({ net, braking: sums.braking }, working);
  const forAccessories = accessoryEnergy.of({ power: accessories, duration: total.duration }, working);
  const battery = batteryStep(scope, sums, driving, forAccessories, working);
  consumptionAtBattery.of({ energy: battery, distance: sums.distance }, working);
  if (chargingEfficiency !== undefined) {
    const energy = wallEnergy.of({ battery, chargingEfficiency }, working);
    consumptionAtWall.of({ energy, distance: sums.distance }, working);
  }
  return working;
}

function batteryStep(
  { drivetrain: model, climate, battery }: Scope,
  { braking, drivetrain, climate: forClimate, batteryLoss }: DriveSums,
  driving: number,
  accessories: number,
  working: Working,
): number {
  if (climate !== undefined || battery !== undefined) {
    return batteryEnergyOfParts.of({ drivetrain, accessories, climate: forClimate, batteryLoss }, working);
  }
  if (!isEfficiencyDrivetrain(model)) return batteryEnergyOfModel.of({ drivetrain, accessories }, working);
  const { efficiency, share, regenerationEfficiency } = model;
  return batteryEnergy.of({ driving, braking, efficiency, share, regenerationEfficiency, accessories }, working);
}
