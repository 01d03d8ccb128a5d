import { type AnyQuantity, describeGiven, InputError, isQuantity, quantity, readNumber } from "@tarewatt/units";
import { readKeys, readText } from "../check/read.js";
import type { ValueAxis } from "./figure.js";

// Beyond this an axis is surely in the wrong unit, and the arithmetic of ticks loses digits.
const LARGEST = 1e15;

/** @internal A number in the unit of its axis: a bare number is in that unit already, a quantity is converted. */
export function readMeasure(name: string, value: AnyQuantity | number, unit: string): number {
  if (typeof value !== "number" && !isQuantity(value)) {
    throw new InputError(
      "NOT_A_NUMBER",
      `${name} must be a number in the unit of its axis or a quantity: got ${describeGiven(value)}`,
      { name },
    );
  }
  const bare = typeof value === "number" ? value : readNumber(name, value, { unit });
  return readNumber(name, bare, { unit: "1", atLeast: -LARGEST, atMost: LARGEST });
}

/** @internal */
export function readOptionalMeasure(
  name: string,
  value: AnyQuantity | number | undefined,
  unit: string,
): number | undefined {
  return value === undefined ? undefined : readMeasure(name, value, unit);
}

/** @internal An axis of values, with a second unit when one is named. */
export function readValueAxis(name: string, axis: ValueAxis): ValueAxis {
  readKeys(name, axis, ["title", "unit", "also?"]);
  const title = readText(`${name}.title`, axis.title);
  const unit = readText(`${name}.unit`, axis.unit);
  if (axis.also === undefined) return Object.freeze({ title, unit });
  const also = readText(`${name}.also`, axis.also);
  // Refuses here, by name, a unit that measures something else.
  readNumber(`${name}.also`, quantity(1, unit), { unit: also });
  return Object.freeze({ title, unit, also });
}

/** @internal Converts numbers of an axis to its second unit, which may have another zero. */
export function alsoIn({ unit, also }: ValueAxis): ((value: number) => number) | undefined {
  if (also === undefined) return undefined;
  const at = (value: number) => readNumber("value", quantity(value, unit), { unit: also });
  const zero = at(0);
  const slope = at(1) - zero;
  return (value) => zero + slope * value;
}
