import type { Drivetrain } from "../drivetrain/drivetrain.js";
import { type Battery, batteryNumber, type LossAndRate, lossAndRateOf } from "./battery.js";
import type { ForceRoots } from "./force-roots.js";
import type { SimulationInputs } from "./simulate.js";

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
  readonly lossAndRate: LossAndRate | undefined;
  /** Takes what the battery answers: loss in W, rate of the state of charge in 1/s. */
  readonly answer: Float64Array;
  readonly covers: boolean;
  readonly roots: ForceRoots;
  /** State of charge that the step began with: the limits of the battery are those there. */
  chargeAtStep: number;
  /** The limits in W, infinite without a battery; not a number until the step asks for them, which it seldom does for both. */
  dischargeLimit: number;
  chargeLimit: number;
}

/** Begins a step: the limits of the one before are forgotten. @internal */
export function beginStep(run: Run): void {
  if (run.battery === undefined) return;
  run.chargeAtStep = run.stateOfCharge;
  run.dischargeLimit = Number.NaN;
  run.chargeLimit = Number.NaN;
}

/** The most that the battery gives in this step, in W. @internal */
export function mostDischarge(run: Run): number {
  const { battery, chargeAtStep: at, dischargeLimit } = run;
  if (battery === undefined || !Number.isNaN(dischargeLimit)) return dischargeLimit;
  run.dischargeLimit = batteryNumber(battery, "largest power", battery.maximumDischargePower(at), at);
  return run.dischargeLimit;
}

/** The most that the battery takes in this step, in W. @internal */
export function mostCharge(run: Run): number {
  const { battery, chargeAtStep: at, chargeLimit } = run;
  if (battery === undefined || !Number.isNaN(chargeLimit)) return chargeLimit;
  run.chargeLimit = batteryNumber(battery, "largest power of charging", battery.maximumChargePower(at), at);
  return run.chargeLimit;
}

/** @internal */
export function newRun(
  { numbers, drivetrain, auxiliary, battery, stateOfCharge }: SimulationInputs,
  speed: number,
): Run {
  return {
    driving: 0,
    braking: 0,
    drivetrain: 0,
    brakes: 0,
    batteryLoss: 0,
    grade: 0,
    constant: 0,
    distance: 0,
    speedSquared: 0,
    speedCubed: 0,
    stateOfCharge,
    lowestStateOfCharge: stateOfCharge,
    uncovered: 0,
    behind: 0,
    speedShortfall: 0,
    powerShortfall: 0,
    refusedCharge: 0,
    speed,
    stopped: undefined,
    model: drivetrain,
    linear: numbers.linear,
    quadratic: numbers.quadratic,
    inertiaMass: numbers.inertiaMass,
    auxiliary,
    battery,
    lossAndRate: battery === undefined ? undefined : lossAndRateOf(battery),
    answer: Float64Array.of(Number.NaN, Number.NaN),
    covers: drivetrain.covers !== undefined,
    roots: { low: Number.NaN, high: Number.NaN },
    chargeAtStep: stateOfCharge,
    dischargeLimit: Number.POSITIVE_INFINITY,
    chargeLimit: Number.POSITIVE_INFINITY,
  };
}
