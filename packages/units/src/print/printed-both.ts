import { readWords } from "../check/shapes.js";
import { quantity as quantityOf } from "../quantity/construct.js";
import type { AnyQuantity } from "../quantity/quantity.js";
import { type Decimal, digitsOf, placesFor, roundedTo } from "./decimal.js";
import { readPrint, readShown, readShownNumber } from "./options.js";
import { numberAndUnit, print } from "./parts.js";
import { type PrintedOptions, ROUNDING, roundedBy } from "./printed.js";
import { MOST_DIGITS } from "./rounded-beside.js";

/** Options of {@link printedBoth}. */
export interface PrintedBothOptions extends PrintedOptions {
  /** The second unit, such as `"lb"`. */
  readonly beside: string;
}

/**
 * A quantity in two units side by side, the second no more exact than the first: as many significant digits, and one more where
 * its first digit is smaller. Both are rounded from the quantity itself, never one from the other.
 *
 * Source: NIST SP 1038, section 4.4, rounding of converted values, remembered. A temperature point has no such digits: its step
 * is converted, and the nearest power of ten to it is taken.
 *
 * @param quantity - of any dimension
 * @param options - beside, the second unit; unit, the first; digits or decimals of the first; locale and form
 * @throws InputError `MISSING_OPTION`, `WRONG_CHOICE`, and as {@link printed}; QuantityError as {@link Quantity.in}
 * @example
 * printedBoth(q("2720 kg"), { beside: "lb" }); // "2720 kg (6000 lb)"
 * printedBoth(q("66 mi"), { beside: "km", digits: 2 }); // "66 mi (106 km)"
 */
export function printedBoth(quantity: AnyQuantity, options: PrintedBothOptions): string {
  const read = readPrint("printedBoth", options, ROUNDING, ["beside"]);
  const { value, unit, dimension } = readShown("quantity", quantity, read.unit);
  const beside = readWords("beside", options.beside);
  const other = readShownNumber("quantity", quantity, beside);
  const first = roundedBy(value, read.numbers);
  const places = dimension.kind === "temperature" ? placesOfPoint(first, unit, beside) : placesBeside(first, other);
  const second = [{ between: " (" }, ...numberAndUnit(roundedTo(other, places), beside), { between: ")" }];
  return print([...numberAndUnit(first, unit), ...second], read);
}

/** The place of the power of ten that is nearest to the converted step: 20 °C to the degree is 68 °F to the degree. */
function placesOfPoint({ places }: Decimal, unit: string, beside: string): number {
  const degree = quantityOf<string>(1, `Δ${unit.replace("deg", "°")}`).in<string>(`Δ${beside.replace("deg", "°")}`);
  return places - Math.round(Math.log10(degree));
}

function placesBeside(first: Decimal, other: number): number {
  if (first.units === 0n) return first.places;
  const digits = digitsOf(first);
  const smaller = firstDigit(roundedTo(other, placesFor(other, digits))) < firstDigit(first);
  return placesFor(other, Math.min(MOST_DIGITS, digits + (smaller ? 1 : 0)));
}

function firstDigit({ units }: Decimal): string {
  return String(units).replace("-", "").charAt(0);
}
