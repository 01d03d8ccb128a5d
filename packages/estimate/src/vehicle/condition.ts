import type { Cycle } from "@tarewatt/roadload";
import { InputError, isQuantity, type Quantity, readNumber, type Speed } from "@tarewatt/units";

/** A way of driving: a cycle, or a steady speed on a level road. */
export type Condition = Cycle | Quantity<Speed>;

/** @internal A condition read and named. */
export type ConditionRead =
  | { readonly form: "cycle"; readonly label: string; readonly procedure: string; readonly cycle: Cycle }
  | {
      readonly form: "steady";
      readonly label: string;
      readonly procedure: string;
      readonly speed: Quantity<Speed>;
      readonly metresPerSecond: number;
    };

/**
 * Below this speed a drivetrain of one mean efficiency flatters: at a few kilowatts real ones lose a larger share (common
 * practice, no source). Metres per second; 60 km/h.
 */
export const SLOW = 60 / 3.6;

/** @internal Whether two conditions are the same way of driving: the same table, or the same speed in any unit. */
export function sameCondition(a: ConditionRead, b: ConditionRead): boolean {
  if (a.form === "steady") return b.form === "steady" && Math.abs(a.metresPerSecond / b.metresPerSecond - 1) < 1e-9;
  if (b.form === "steady") return false;
  const [one, other] = [a.cycle, b.cycle];
  if (one === other) return true;
  const equal = (x: readonly number[], y: readonly number[]): boolean =>
    x.length === y.length && x.every((each, i) => each === y[i]);
  return one.name === other.name && equal(one.time, other.time) && equal(one.speed, other.speed);
}

/** @internal */
export function readCondition(condition: Condition): ConditionRead {
  if (isQuantity(condition)) {
    const metresPerSecond = readNumber("speed", condition, { unit: "m/s", above: 0, atMost: 100 });
    return {
      form: "steady",
      label: String(condition),
      procedure: `steady ${condition}, level road, still air`,
      speed: condition,
      metresPerSecond,
    };
  }
  if (typeof condition?.name !== "string" || condition.segments === undefined) {
    throw new InputError(
      "WRONG_CHOICE",
      'a way of driving is a cycle, such as wltc3b, or a speed, such as q("110 km/h")',
      {},
    );
  }
  return {
    form: "cycle",
    label: condition.name,
    procedure: `${condition.name}, driven once as tabled, no label adjustment`,
    cycle: condition,
  };
}
