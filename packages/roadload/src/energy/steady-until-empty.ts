import { type Battery, batteryNumber } from "./battery.js";
import { isGiven, lossAt } from "./steady-point.js";

/** Parts that a state of charge is cut into: at the two points of Gauss, the error is far below that of any battery's table. */
const PARTS = 100;
/** 1/√3, written out. */
const GAUSS = 0.577_350_269_189_625_8;
const HALVINGS = 50;
/** A battery that gives nothing exactly at its floor is ended by the floor. */
const ROUNDING = 1e-9;

/** How a constant power at the terminals empties a battery. @internal */
export interface Emptying {
  /** In s. */
  readonly seconds: number;
  /** Heat in the battery, in J. */
  readonly loss: number;
  /** At the end. */
  readonly stateOfCharge: number;
  /** What ended it. */
  readonly endedBy: "state of charge" | "power";
}

/**
 * Empties a battery at a constant power at its terminals, down to a floor or to where it no longer gives that power. Undefined where it
 * is not drained.
 *
 * Time is the integral of the inverse of the rate over the state of charge.
 *
 * @internal
 */
export function emptyAt(battery: Battery, terminals: number, from: number, floor: number): Emptying | undefined {
  const sums = { seconds: 0, loss: 0 };
  const step = (from - floor) / PARTS;
  for (let part = 0; part < PARTS; part++) {
    const high = from - step * part;
    const low = part === PARTS - 1 ? floor : high - step;
    const end = isGiven(battery, terminals, low) ? low : lastGiven(battery, terminals, low, high);
    if (!drain(battery, terminals, high, end, sums)) return undefined;
    if (end - low > ROUNDING) return { ...sums, stateOfCharge: end, endedBy: "power" };
  }
  return { ...sums, stateOfCharge: floor, endedBy: "state of charge" };
}

/** Lowest state of charge, between two, at which the battery still gives a power. */
function lastGiven(battery: Battery, terminals: number, low: number, high: number): number {
  let [not, given] = [low, high];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (not + given) / 2;
    if (isGiven(battery, terminals, middle)) given = middle;
    else not = middle;
  }
  return given;
}

/** Adds time and loss between two states of charge; false when the battery is not drained there. */
function drain(
  battery: Battery,
  terminals: number,
  high: number,
  low: number,
  sums: { seconds: number; loss: number },
): boolean {
  const middle = (high + low) / 2;
  const beside = ((high - low) / 2) * GAUSS;
  for (const at of [middle - beside, middle + beside]) {
    const rate = batteryNumber(battery, "rate of the state of charge", battery.stateOfChargeRate(terminals, at), at);
    if (!(rate < 0)) return false;
    const seconds = (high - low) / 2 / -rate;
    sums.seconds += seconds;
    sums.loss += lossAt(battery, terminals, at) * seconds;
  }
  return true;
}
