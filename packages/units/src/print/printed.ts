import { InputError } from "../check/errors.js";
import type { AnyQuantity } from "../quantity/quantity.js";
import { type Decimal, placesFor, roundedTo } from "./decimal.js";
import { type PrintOptions, readPrint, readShown } from "./options.js";
import { numberAndUnit, print } from "./parts.js";
import { MOST_DIGITS } from "./rounded-beside.js";

/** Options of {@link printed}. */
export interface PrintedOptions extends PrintOptions {
  /** Significant digits, 1 to 15; 3 when left out. Trailing zeros are kept: they are a statement. */
  readonly digits?: number | undefined;
  /** Digits behind the decimal sign, 0 to 12, instead of `digits`. */
  readonly decimals?: number | undefined;
}

const USUAL_DIGITS = 3;

/** @internal Ranges of the options that say how far to round. */
export const ROUNDING = { digits: [1, 15], decimals: [0, 12] } as const;

/**
 * A quantity as it stands in a text, a table or a page: rounded, with its unit.
 *
 * What is rounded is the decimal that the number prints as, and a tie goes away from zero: 2.675 with three digits is 2.68. A minus
 * is a true one, zero has none, and numbers from 10¹⁵ on and below 10⁻⁶ are written with a power of ten. The degree sign stands
 * at its number, every other unit behind a space, the per cent sign, too (ISO 80000-1). The plain text without a locale is
 * read back by {@link parseQuantity}. The unit is printed as the quantity has it, except that markup sets its powers.
 *
 * @param quantity - of any dimension; a temperature difference keeps its Δ
 * @param options - unit, digits or decimals, locale and form
 * @throws InputError `NOT_A_QUANTITY`, `NOT_AN_OBJECT`, `UNKNOWN_OPTION`, `NEGATIVE`, `OUT_OF_RANGE`, `WRONG_CHOICE`, and `INCONSISTENT` for
 *   digits together with decimals; QuantityError as {@link Quantity.in}
 * @example
 * printed(q("2716 kg"), { unit: "lb", digits: 2 }); // "6000 lb"
 * printed(q("2.675 m²"), { locale: "de", form: "html" }); // "2,68\u00a0m<sup>2</sup>"
 */
export function printed(quantity: AnyQuantity, options: PrintedOptions = {}): string {
  const read = readPrint("printed", options, ROUNDING);
  const { value, unit } = readShown("quantity", quantity, read.unit);
  return print(numberAndUnit(roundedBy(value, read.numbers), unit), read);
}

/** @internal Rounds as `digits` or `decimals` say. */
export function roundedBy(value: number, { digits, decimals }: PrintedOptions): Decimal {
  if (digits !== undefined && decimals !== undefined) {
    throw new InputError("INCONSISTENT", `give digits or decimals, not both: got ${digits} and ${decimals}`, {
      digits,
      decimals,
    });
  }
  // No more decimals than the number holds: 10²⁰ has none.
  const most = placesFor(value, MOST_DIGITS);
  return roundedTo(value, decimals === undefined ? placesFor(value, digits ?? USUAL_DIGITS) : Math.min(decimals, most));
}
