import { interpolate } from "../check/interpolate.js";
import type { PackBattery } from "../electrical/battery.js";
import type { AcceptanceCurve } from "./acceptance.js";
import type { StationRead } from "./read-station.js";

/** @internal What may hold the power of a charge down, in the order in which a tie is named. */
export const limits = [
  "station power",
  "station current",
  "station voltage",
  "acceptance",
  "rate limit",
  "battery",
] as const;

/** One of the limits of a charge. */
export type ChargeLimit = (typeof limits)[number];

/** @internal What {@link chargeLimiter} looks at, in SI units. */
export interface LimitedCharge {
  readonly station: StationRead;
  readonly auxiliaryPower: number;
  /** Energy that C-rates refer to, in J. */
  readonly usableEnergy: number;
  readonly acceptance?: AcceptanceCurve | undefined;
  readonly rateLimit: number;
  readonly battery?: PackBattery | undefined;
  /** Constant voltage that stands for the battery where no model of it is given, in V. */
  readonly packVoltage?: number | undefined;
}

/** @internal The least of six limits in turn. Reused from step to step, so that a thousand steps make no garbage. */
export interface LeastLimit {
  power: number;
  by: number;
  /** The least of the limits that fall towards full: when it has come down to nothing, the charge is over. */
  taper: number;
}

/** @internal Finds the power into the terminals of a battery, in W, at a state of charge. */
export function chargeLimiter(charge: LimitedCharge): (stateOfCharge: number, least: LeastLimit) => void {
  const { station, auxiliaryPower, usableEnergy, acceptance, rateLimit, battery, packVoltage } = charge;
  const perHour = usableEnergy / 3600;
  const found = new Float64Array(limits.length);
  return (state, least) => {
    const volts = battery?.openCircuitVoltage(state) ?? packVoltage ?? 0;
    const ohms = battery?.resistance(state) ?? 0;
    // What the accessories draw, the battery does not get.
    found[0] = station.power - auxiliaryPower;
    found[1] =
      station.current === Number.POSITIVE_INFINITY
        ? station.current
        : currentLimit(station.current, volts, ohms) - auxiliaryPower;
    // With a constant voltage there is nothing to taper; the two voltages are compared once, before.
    const room = (station.maximumVoltage - volts) / ohms;
    found[2] =
      battery === undefined || room === Number.POSITIVE_INFINITY
        ? Number.POSITIVE_INFINITY
        : Math.max(0, currentLimit(room, volts, ohms));
    found[3] =
      acceptance === undefined
        ? Number.POSITIVE_INFINITY
        : perHour * interpolate(acceptance.stateOfCharge, acceptance.rate, state);
    found[4] = perHour * rateLimit;
    found[5] = battery === undefined ? Number.POSITIVE_INFINITY : battery.maximumChargePower(state);
    let by = 0;
    for (let i = 1; i < found.length; i++) if ((found[i] as number) < (found[by] as number)) by = i;
    least.by = by;
    least.power = found[by] as number;
    least.taper = Math.min(found[2], found[3], found[5]);
  };
}

/** Power at the terminals of a battery that takes a current, the loss inside included. */
function currentLimit(amperes: number, volts: number, ohms: number): number {
  return amperes * (volts + amperes * ohms);
}
