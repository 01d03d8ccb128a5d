import type { Pieces } from "../cycle/pieces.js";
import type { Drivetrain } from "../drivetrain/drivetrain.js";
import { energyOfPoints } from "../drivetrain/energy-of-points.js";
import type { SplitNumbers } from "../resistance/road-load-numbers.js";
import { simulate } from "./simulate.js";
import { fillWheelPoints, newWheelPoints } from "./wheel-points.js";

/** Energies of a drive as tabled, in J. @internal */
export interface ModelSums {
  /** At the wheels; not negative. */
  readonly driving: number;
  /** At the wheels; not positive. */
  readonly braking: number;
  /** Of the battery for the drivetrain alone. */
  readonly drivetrain: number;
  readonly brakes: number;
}

/**
 * What `simulate` does where nothing but the drivetrain is asked: no battery, no limit, no map's edge, no series, one grade.
 * The same numbers in a fraction of the time; a test holds the two equal.
 *
 * @internal
 */
export function driveModel(pieces: Pieces, begin: number, numbers: SplitNumbers, drivetrain: Drivetrain): ModelSums {
  const points = newWheelPoints(pieces);
  fillWheelPoints(pieces, numbers, points);
  let driving = 0;
  let braking = 0;
  let brakes = 0;
  for (let i = 0; i < points.count; i++) {
    const power = points.power[i] as number;
    const seconds = points.seconds[i] as number;
    if (power < 0) {
      brakes += drivetrain.frictionBrakePower(power, points.speed[i] as number) * seconds;
      braking += power * seconds;
    } else driving += power * seconds;
  }
  const battery = energyOfPoints(drivetrain, points) + energyAtRest(drivetrain, pieces);
  // Something was no number: the careful way finds out where, and says so.
  if (!Number.isFinite(battery + brakes)) {
    simulate({ pieces, begin, numbers, mass: 0, drivetrain, auxiliary: 0, stateOfCharge: 1 });
  }
  return { driving, braking, drivetrain: battery, brakes };
}

/** Energy of the battery while the vehicle stands, in J. @internal */
export function energyAtRest(drivetrain: Drivetrain, { standstill }: Pieces): number {
  return standstill > 0 ? drivetrain.batteryPower(0, 0) * standstill : 0;
}

/** Whether a drivetrain may be driven this way. @internal */
export function isPlainModel({ maximumWheelPower, covers }: Drivetrain): boolean {
  return maximumWheelPower === undefined && covers === undefined;
}
