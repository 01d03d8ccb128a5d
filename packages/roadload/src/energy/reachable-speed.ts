import type { Pieces } from "../cycle/pieces.js";
import type { Drivetrain } from "../drivetrain/drivetrain.js";
import type { SplitNumbers } from "../resistance/road-load-numbers.js";
import { beginStep, mostDischarge, type Run } from "./run.js";
import { finitePower } from "./scope.js";

type Forces = Pick<SplitNumbers, "linear" | "quadratic" | "inertiaMass">;

/** Bisection to rounding of a speed. */
const HALVINGS = 45;

/**
 * Speed at the end of a step: that of the cycle, or what the limits allow. Notes what is missing.
 *
 * @param tabled - speed of the cycle at the start of the step, which a vehicle that fell behind does not have
 * @internal
 */
export function reachableSpeed(
  run: Run,
  first: number,
  wanted: number,
  seconds: number,
  constant: number,
  tabled: number,
): number {
  beginStep(run);
  let reached = wanted;
  if (!canDrive(run, first, wanted, seconds, constant)) {
    let low = 0;
    let high = wanted;
    for (let i = 0; i < HALVINGS; i++) {
      const middle = (low + high) / 2;
      if (canDrive(run, first, middle, seconds, constant)) low = middle;
      else high = middle;
    }
    reached = low;
    // What the cycle takes here: to be back at its speed within the step would take far more, and is asked of nobody.
    const lack =
      meanPower(run, tabled, wanted, seconds, constant) - Math.max(0, meanPower(run, first, low, seconds, constant));
    run.powerShortfall = Math.max(run.powerShortfall, lack);
  }
  if (wanted - reached > 1e-6) {
    run.behind += seconds;
    run.speedShortfall = Math.max(run.speedShortfall, wanted - reached);
  }
  return reached;
}

/** Whether a vehicle without a battery's limits drives all pieces as tabled. @internal */
export function canFollow(model: Drivetrain, { count, from, to, duration }: Pieces, numbers: SplitNumbers): boolean {
  if (model.maximumWheelPower === undefined) return true;
  const constant = numbers.constant + numbers.gradeForce;
  for (let i = 0; i < count; i++) {
    const first = from[i] as number;
    const last = to[i] as number;
    const power = meanPower(numbers, first, last, duration[i] as number, constant);
    if (power > 0 && !isWithinLimit(model, power, (first + last) / 2)) return false;
  }
  return true;
}

/** Power at the wheels at the mean speed of a step, in W. */
function meanPower(run: Forces, first: number, last: number, seconds: number, constant: number): number {
  const v = (first + last) / 2;
  return v * (constant + (run.inertiaMass * (last - first)) / seconds + v * (run.linear + run.quadratic * v));
}

function canDrive(run: Run, first: number, last: number, seconds: number, constant: number): boolean {
  const power = meanPower(run, first, last, seconds, constant);
  if (power <= 0) return true;
  const { model } = run;
  const speed = (first + last) / 2;
  if (!isWithinLimit(model, power, speed)) return false;
  const most = mostDischarge(run);
  if (most === Number.POSITIVE_INFINITY) return true;
  const drawn = finitePower(model, model.batteryPower(power, speed), power, speed);
  return drawn + run.auxiliary <= most * (1 + 1e-12);
}

function isWithinLimit(model: Drivetrain, power: number, speed: number): boolean {
  const most = model.maximumWheelPower?.(speed);
  // Rounding must not stop a vehicle that drives exactly at its limit.
  return most === undefined || power <= finitePowerOrLimit(model, most, speed) * (1 + 1e-12);
}

function finitePowerOrLimit(model: Drivetrain, most: number, speed: number): number {
  return most === Number.POSITIVE_INFINITY ? most : finitePower(model, most, 0, speed);
}
