import { type Energy, InputError, type Quantity, quantity, type Step } from "@tarewatt/units";
import { type BatteryState, readBattery, warningsOfCharge } from "./battery.js";
import { rangeOn } from "./range.js";
import type { RangeCurveRow } from "./range-curve.js";
import { steadyDistance } from "./steady-distance.js";
import type { SteadyResult } from "./steady-result.js";
import { emptyAt } from "./steady-until-empty.js";

/** A row of a curve, what to doubt about it and how it came about. @internal */
export interface SteadyRange {
  readonly row: RangeCurveRow;
  readonly warnings: readonly string[];
  steps(): Step[];
}

/** How far a usable energy takes a vehicle at a steady speed. @internal */
export function rangeByEnergy(usableEnergy: Quantity<Energy>, result: SteadyResult): SteadyRange {
  const { range, warnings, working } = rangeOn({ usableEnergy, result });
  const { speed, power, consumption } = result;
  return {
    row: Object.freeze({ speed, power: power.atBattery, consumption: consumption.atBattery, range }),
    warnings,
    steps: () => [...result.working(), ...working()],
  };
}

/**
 * How far a battery takes a vehicle at a steady speed, down to a floor or to where it gives too little power. Energy to warm up is
 * taken as some of the time at that power: it goes through the battery with the same loss, and drives nowhere.
 *
 * @internal
 */
export function rangeByBattery(given: BatteryState, floor: number, result: SteadyResult): SteadyRange {
  const { model, stateOfCharge } = readBattery(given);
  const { speed, warmUp } = result;
  const terminals = result.battery?.atTerminals.in("W") as number;
  const end = terminals > 0 && stateOfCharge > floor ? emptyAt(model, terminals, stateOfCharge, floor) : undefined;
  if (end === undefined) {
    throw new InputError(
      "NOT_VALID_HERE",
      `there is no range where the battery is not drained, or already at its floor: at ${speed} it gives ${Number(terminals.toPrecision(4))} W, from a state of charge of ${stateOfCharge} down to ${floor}`,
      { terminals, stateOfCharge, floor },
    );
  }
  const seconds = Math.max(0, end.seconds - (warmUp?.energy.in("J") ?? 0) / terminals);
  const power = terminals + end.loss / end.seconds;
  const hours = seconds / 3600;
  return {
    row: Object.freeze({
      speed,
      power: quantity(power, "W"),
      consumption: quantity(power / speed.in("m/s") / 3.6, "Wh/km"),
      range: quantity(speed.in("km/h") * hours, "km"),
      ...{ endedBy: end.endedBy, stateOfCharge: end.stateOfCharge },
    }),
    warnings: [
      ...result.warnings,
      ...warningsOfCharge(model, power * end.seconds, power * end.seconds, stateOfCharge - end.stateOfCharge),
    ],
    steps: () => [...result.working(), steadyDistance.explain({ speed, duration: quantity(hours, "h") })],
  };
}
