import type { Pieces } from "../cycle/pieces.js";
import type { Drivetrain } from "../drivetrain/drivetrain.js";
import { powerAtLimit } from "../drivetrain/power-at-limit.js";
import { standardGravity } from "../resistance/gravity.js";
import type { SplitNumbers } from "../resistance/road-load-numbers.js";
import { cosineOf, sineOf } from "../resistance/rolling-resistance.js";
import { type Battery, batteryNumber, checkedLoss } from "./battery.js";
import { findForceRoots } from "./force-roots.js";
import { reachableSpeed } from "./reachable-speed.js";
import { mostCharge, newRun, type Run, type Simulation } from "./run.js";
import { finitePower } from "./scope.js";
import { type DriveSeries, isGap } from "./series.js";
import { GAUSS } from "./wheel-points.js";
import { emptyMarks, mark, writeRow } from "./write-row.js";

/** What is driven, in SI numbers. @internal */
export interface SimulationInputs {
  readonly pieces: Pieces;
  /** Time of the first row of the cycle, in s. */
  readonly begin: number;
  /** The load on the constant grade; level when the pieces have grades. */
  readonly numbers: SplitNumbers;
  /** Mass for the weight along the road, in kg; only read when the pieces have grades. */
  readonly mass: number;
  readonly drivetrain: Drivetrain;
  /** Power drawn all the time beside the drivetrain, in W. */
  readonly auxiliary: number;
  readonly battery?: Battery | undefined;
  /** At the start. */
  readonly stateOfCharge: number;
  readonly series?: DriveSeries | undefined;
  /** Ends the drive after the step in which one of these is passed. */
  readonly until?: { readonly stateOfCharge: number; readonly speedShortfall: number } | undefined;
}

/**
 * Drives the pieces of a cycle, one after the other.
 *
 * Within a piece the acceleration is constant, so the power at the wheels is a cubic of time. It is taken at the two points of
 * Gauss, which integrate a cubic exactly, on either side of a change of sign; drivetrain and battery are asked there. With
 * limits, the vehicle drives as much of the piece's change of speed as the mean power and mean speed of the piece allow, and
 * tries to be at the speed of the cycle again in the next piece.
 *
 * @internal
 */
export function simulate(inputs: SimulationInputs): Simulation {
  const { pieces, begin, numbers, drivetrain, battery, series, until } = inputs;
  const { count, start, duration, from, to, grade, total } = pieces;
  const run = newRun(inputs, count > 0 ? (from[0] as number) : 0);
  const limited = drivetrain.maximumWheelPower !== undefined || battery !== undefined;
  const weight = inputs.mass * standardGravity.value;
  let now = begin;
  let row = 0;
  if (series !== undefined) writeRow(series, row++, now, 0, run, emptyMarks());
  const marks = emptyMarks();
  for (let i = 0; i < count; i++) {
    const begins = start[i] as number;
    const seconds = duration[i] as number;
    if (isGap(begins, now)) {
      if (series !== undefined) mark(marks, run);
      standStill(run, begins - now);
      if (series !== undefined) writeRow(series, row++, begins, begins - now, run, marks);
    }
    if (series !== undefined) mark(marks, run);
    const slope = grade === undefined ? 0 : (grade[i] as number);
    const constant = grade === undefined ? numbers.constant : numbers.constant * cosineOf(slope);
    const along = grade === undefined ? numbers.gradeForce : weight * sineOf(slope);
    let first = from[i] as number;
    let last = to[i] as number;
    if (limited) {
      const tabled = first;
      first = run.speed;
      last = reachableSpeed(run, first, last, seconds, constant + along, tabled);
    }
    drivePiece(run, first, last, seconds, constant, along);
    now = begins + seconds;
    if (until !== undefined && isOver(run, until)) {
      run.stopped = now - begin;
      return run;
    }
    if (series !== undefined) writeRow(series, row++, now, seconds, run, marks);
  }
  const end = begin + total.duration;
  if (isGap(end, now)) {
    if (series !== undefined) mark(marks, run);
    standStill(run, end - now);
    if (series !== undefined) writeRow(series, row, end, end - now, run, marks);
  }
  return run;
}

function isOver(run: Run, { stateOfCharge, speedShortfall }: NonNullable<SimulationInputs["until"]>): boolean {
  return run.stateOfCharge <= stateOfCharge || run.speedShortfall > speedShortfall;
}

/** Drives from one speed to another at constant acceleration. */
function drivePiece(run: Run, first: number, last: number, seconds: number, constant: number, along: number): void {
  if (first === 0 && last === 0) {
    standStill(run, seconds);
    return;
  }
  const { linear, quadratic, inertiaMass } = run;
  const sum = first + last;
  const squares = first * first + last * last;
  const distance = (seconds * sum) / 2;
  run.distance += distance;
  run.speedSquared += (seconds * (squares + first * last)) / 3;
  run.speedCubed += (seconds * sum * squares) / 4;
  run.constant += constant * distance;
  run.grade += along * distance;
  run.speed = last;
  const k = constant + along + (inertiaMass * (last - first)) / seconds;
  const before = k + first * (linear + quadratic * first);
  const after = k + last * (linear + quadratic * last);
  if (linear >= 0 && quadratic >= 0 && before * after >= 0) {
    drivePart(run, k, first, last, seconds);
    return;
  }
  const { roots } = run;
  findForceRoots(k, linear, quadratic, first, last, roots);
  let v = first;
  for (let part = 0; part < 3; part++) {
    const next = part === 0 ? roots.low : part === 1 ? roots.high : last;
    if (Number.isNaN(next)) continue;
    drivePart(run, k, v, next, last === first ? seconds : (seconds * (next - v)) / (last - first));
    v = next;
    if (v === last) break;
  }
}

/** A part of a piece in which the wheel force keeps its sign. */
function drivePart(run: Run, k: number, first: number, last: number, seconds: number): void {
  const { linear, quadratic } = run;
  const middle = (first + last) / 2;
  const beside = ((last - first) / 2) * GAUSS;
  const v1 = middle - beside;
  const v2 = middle + beside;
  takePower(run, v1 * (k + v1 * (linear + quadratic * v1)), v1, seconds / 2);
  takePower(run, v2 * (k + v2 * (linear + quadratic * v2)), v2, seconds / 2);
}

/** Takes a power at the wheels for some time. */
function takePower(run: Run, wheelPower: number, speed: number, seconds: number): void {
  const { model, battery } = run;
  let drawn = finitePower(model, model.batteryPower(wheelPower, speed), wheelPower, speed);
  let braked = 0;
  if (wheelPower < 0) {
    let byMotors = wheelPower;
    const most = mostCharge(run);
    if (drawn + run.auxiliary < -most) {
      byMotors = powerAtLimit(model, wheelPower, Math.min(0, -most - run.auxiliary), speed);
      drawn = model.batteryPower(byMotors, speed);
      run.refusedCharge += (byMotors - wheelPower) * seconds;
    }
    braked = finitePower(model, model.frictionBrakePower(byMotors, speed), byMotors, speed) + (byMotors - wheelPower);
    run.braking += wheelPower * seconds;
  } else {
    run.driving += wheelPower * seconds;
  }
  run.drivetrain += drawn * seconds;
  run.brakes += braked * seconds;
  if (run.covers && model.covers?.(wheelPower, speed) === false) run.uncovered += seconds;
  if (battery !== undefined) charge(run, battery, drawn + run.auxiliary, seconds);
}

function standStill(run: Run, seconds: number): void {
  const { model, battery } = run;
  const drawn = finitePower(model, model.batteryPower(0, 0), 0, 0);
  run.drivetrain += drawn * seconds;
  run.speed = 0;
  if (battery !== undefined) charge(run, battery, drawn + run.auxiliary, seconds);
}

function charge(run: Run, battery: Battery, terminalPower: number, seconds: number): void {
  const { stateOfCharge, lossAndRate, answer } = run;
  let loss: number;
  let rate: number;
  if (lossAndRate === undefined) {
    loss = battery.lossPower(terminalPower, stateOfCharge);
    rate = battery.stateOfChargeRate(terminalPower, stateOfCharge);
  } else {
    lossAndRate.write(terminalPower, stateOfCharge, answer);
    loss = answer[0] as number;
    rate = answer[1] as number;
  }
  run.batteryLoss += checkedLoss(battery, loss, terminalPower, stateOfCharge) * seconds;
  const charged = stateOfCharge + batteryNumber(battery, "rate of the state of charge", rate, stateOfCharge) * seconds;
  run.stateOfCharge = charged;
  if (charged < run.lowestStateOfCharge) run.lowestStateOfCharge = charged;
}
