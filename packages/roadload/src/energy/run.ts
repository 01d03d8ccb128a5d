import type { Drivetrain } from "../drivetrain/drivetrain.js";
import { type Battery, batteryNumber } from "./battery.js";
import type { ForceRoots } from "./force-roots.js";

/** What came of it, in SI numbers: energies in J unless said. It is written while driving. @internal */
export interface Simulation {
  /** At the wheels; not negative. */
  driving: number;
  /** At the wheels; not positive. */
  braking: number;
  /** Of the battery's terminals for the drivetrain alone. */
  drivetrain: number;
  brakes: number;
  batteryLoss: number;
  /** Energy of the weight along the road. */
  grade: number;
  /** Energy of the constant force, on the grade. */
  constant: number;
  /** Integrals of speed, of its square and cube, in SI units. */
  distance: number;
  speedSquared: number;
  speedCubed: number;
  stateOfCharge: number;
  lowestStateOfCharge: number;
  /** Time in s outside of what the drivetrain's model covers. */
  uncovered: number;
  /** Time in s in which the vehicle was slower than the cycle. */
  behind: number;
  /** Largest lack of speed at the end of a step, in m/s. */
  speedShortfall: number;
  /** Largest lack of power at the wheels, in W. */
  powerShortfall: number;
  /** Braking energy at the wheels that the battery could not be charged with. */
  refusedCharge: number;
  /** Speed now, in m/s. */
  speed: number;
  /** Time in s after which the drive was ended before its cycle; undefined when it was not. */
  stopped: number | undefined;
}

/** The parts of a run that the innermost functions need. @internal */
export interface Run extends Simulation {
  readonly model: Drivetrain;
  readonly linear: number;
  readonly quadratic: number;
  readonly inertiaMass: number;
  readonly auxiliary: number;
  readonly battery: Battery | undefined;
  readonly covers: boolean;
  readonly roots: ForceRoots;
  /** Limits of the battery at the state of charge that the step began with, in W. */
  mostDischarge: number;
  mostCharge: number;
}

/** The limits of the battery, once a step. @internal */
export function askBattery(run: Run): void {
  const { battery, stateOfCharge } = run;
  if (battery === undefined) return;
  const discharge = battery.maximumDischargePower(stateOfCharge);
  const most = battery.maximumChargePower(stateOfCharge);
  run.mostDischarge = batteryNumber(battery, "largest power", discharge, stateOfCharge);
  run.mostCharge = batteryNumber(battery, "largest power of charging", most, stateOfCharge);
}
