import { interpolate } from "../check/interpolate.js";
import type { PackBattery } from "../electrical/battery.js";
import type { AcceptanceCurve } from "./acceptance.js";
import type { ConverterRead } from "./converter.js";
import type { StationRead } from "./read-station.js";

/** @internal What may hold the power of a charge down, in the order in which a tie is named. */
export const limits = [
  "station power",
  "station current",
  "station voltage",
  "acceptance",
  "rate limit",
  "battery",
  "converter",
] as const satisfies readonly ChargeLimit[];

/** One of the limits of a charge. */
export type ChargeLimit =
  | "station power"
  | "station current"
  | "station voltage"
  | "acceptance"
  | "rate limit"
  | "battery"
  | "converter";

/** @internal What {@link chargeLimiter} looks at, in SI units. */
export interface LimitedCharge {
  /** The station. */
  readonly station: StationRead;
  /** The converter that lifts the station's voltage; absent when the station reaches that of the pack by itself. */
  readonly converter?: ConverterRead | undefined;
  /** What the accessories draw on the battery's side, in W. */
  readonly auxiliaryPower: number;
  /** Energy that C-rates refer to, in J. */
  readonly usableEnergy: number;
  /** The most that the battery takes. */
  readonly acceptance?: AcceptanceCurve | undefined;
  /** Greatest C-rate in 1/h; infinite when there is none. */
  readonly rateLimit: number;
  /** The battery, where one is modelled. */
  readonly battery?: PackBattery | undefined;
  /** Constant voltage that stands for the battery where no model of it is given, in V. */
  readonly packVoltage?: number | undefined;
}

/** @internal The least of the limits in turn. Reused from step to step, so that a thousand steps make no garbage. */
export interface LeastLimit {
  power: number;
  by: number;
  /** The least of the limits that fall towards full: when it has come down to nothing, the charge is over. */
  taper: number;
}

/** @internal Finds the power into the terminals of a battery, in W, at a state of charge. */
export function chargeLimiter(charge: LimitedCharge): (stateOfCharge: number, least: LeastLimit) => void {
  const { station, converter, auxiliaryPower, usableEnergy, acceptance, rateLimit, battery, packVoltage } = charge;
  // A converter takes the station's current at the station's highest voltage, whatever the pack has.
  const passed = converter === undefined ? 1 : (converter.efficiency ?? 1);
  const perHour = usableEnergy / 3600;
  const found = new Float64Array(limits.length);
  return (state, least) => {
    const volts = battery?.openCircuitVoltage(state) ?? packVoltage ?? 0;
    const ohms = battery?.resistance(state) ?? 0;
    // What the accessories draw, the battery does not get.
    found[0] = station.power * passed - auxiliaryPower;
    found[1] =
      station.current === Number.POSITIVE_INFINITY
        ? station.current
        : converter === undefined
          ? currentLimit(station.current, volts, ohms) - auxiliaryPower
          : station.current * station.maximumVoltage * passed - auxiliaryPower;
    // With a constant voltage there is nothing to taper; the two voltages are compared once, before.
    const room = (station.maximumVoltage - volts) / ohms;
    found[2] =
      battery === undefined || converter !== undefined || room === Number.POSITIVE_INFINITY
        ? Number.POSITIVE_INFINITY
        : Math.max(0, currentLimit(room, volts, ohms));
    found[3] =
      acceptance === undefined
        ? Number.POSITIVE_INFINITY
        : perHour * interpolate(acceptance.stateOfCharge, acceptance.rate, state);
    found[4] = perHour * rateLimit;
    found[5] = battery === undefined ? Number.POSITIVE_INFINITY : battery.maximumChargePower(state);
    found[6] = converter === undefined ? Number.POSITIVE_INFINITY : converter.power - auxiliaryPower;
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
