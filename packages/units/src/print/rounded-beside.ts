import { InputError } from "../check/errors.js";
import { type Decimal, digitsOf, roundedTo } from "./decimal.js";

/** A double holds no more significant digits than this. @internal */
export const MOST_DIGITS = 17;

/** @internal A value to the places of its spread, unless these are more than a number holds. */
export function roundedBeside(value: number, places: number): Decimal {
  const rounded = roundedTo(value, places);
  if (digitsOf(rounded) <= MOST_DIGITS) return rounded;
  throw new InputError(
    "OUT_OF_RANGE",
    `the spread is lost beside ${value}, which holds ${MOST_DIGITS} digits at most`,
    {
      value,
    },
  );
}
