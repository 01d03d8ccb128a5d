import { InputError } from "@tarewatt/units";
import { chargeLimiter, type LeastLimit, type LimitedCharge, limits } from "./charge-limit.js";

/** Steps of a charge, equal in state of charge. */
const STEPS = 1000;
/** C-rate at which a charge is over: between C/20 and C/50, as chargers are set (common practice, no source). */
const OVER = 0.02;

/** @internal What stepping through a charge finds, in SI units. */
export interface ChargeRun {
  readonly seconds: number;
  readonly reached: number;
  /** Energy into the terminals, and lost behind them, in J. */
  readonly atBattery: number;
  readonly lost: number;
  /** Greatest power, in W. */
  readonly peak: number;
  /** Seconds that each of the limits held. */
  readonly secondsBy: Float64Array;
  readonly curve: {
    /** State of charge, 0 to 1. */
    readonly stateOfCharge: readonly number[];
    /** Time since the beginning in s. */
    readonly time: readonly number[];
    /** Power at the battery in W. */
    readonly power: readonly number[];
  };
}

/** @internal Steps through a charge, at the middle of each step. */
export function chargeRun(charge: LimitedCharge, from: number, to: number): ChargeRun {
  const { battery, usableEnergy, station } = charge;
  const limit = chargeLimiter(charge);
  const least: LeastLimit = { power: 0, by: 0, taper: 0 };
  const step = (to - from) / STEPS;
  const over = (OVER * usableEnergy) / 3600;
  const secondsBy = new Float64Array(limits.length);
  const curve = { stateOfCharge: [] as number[], time: [] as number[], power: [] as number[] };
  let [seconds, atBattery, lost, peak, steps] = [0, 0, 0, 0, 0];
  for (; steps < STEPS; steps++) {
    const middle = from + (steps + 0.5) * step;
    limit(middle, least);
    const { power, by, taper } = least;
    if (taper < over) break;
    if (!(power > 0)) {
      throw new InputError(
        "NOT_VALID_HERE",
        `${station.name} leaves no power for the battery once heating, cooling and electronics have theirs: lower auxiliaryPower`,
        {},
      );
    }
    const duration =
      battery === undefined ? (step * usableEnergy) / power : step / battery.stateOfChargeRate(-power, middle);
    curve.stateOfCharge.push(middle);
    curve.time.push(seconds + duration / 2);
    curve.power.push(power);
    seconds += duration;
    atBattery += power * duration;
    if (battery !== undefined) lost += battery.lossPower(-power, middle) * duration;
    if (power > peak) peak = power;
    secondsBy[by] = (secondsBy[by] as number) + duration;
  }
  for (const part of Object.values(curve)) Object.freeze(part);
  const reached = steps === STEPS ? to : from + steps * step;
  return { seconds, reached, atBattery, lost, peak, secondsBy, curve: Object.freeze(curve) };
}
