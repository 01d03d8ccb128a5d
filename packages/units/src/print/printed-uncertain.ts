import { describeGiven } from "../check/describe-given.js";
import { InputError } from "../check/errors.js";
import type { AnyQuantity } from "../quantity/quantity.js";
import { placesFor, roundedTo } from "./decimal.js";
import { type PrintOptions, readPrint, readShown, readShownNumber } from "./options.js";
import { numberAndUnit, print } from "./parts.js";
import { roundedBeside } from "./rounded-beside.js";

/** Options of {@link printedUncertain}. */
export interface PrintedUncertainOptions extends PrintOptions {
  /** Half the width of the interval, above zero; of a temperature point, a temperature difference. */
  readonly uncertainty: AnyQuantity;
  /** Significant digits of the uncertainty, 1 or 2; 2 when left out. */
  readonly digits?: number | undefined;
}

/**
 * A quantity with its uncertainty, both to the place that the uncertainty justifies: its one or two significant digits.
 * Both are rounded to the nearest.
 *
 * Source: JCGM 100:2008, 7.2.6, remembered; the unit stands behind both numbers as NIST SP 811, 7.7 wants it, remembered.
 *
 * @param quantity - best value
 * @param options - uncertainty, its digits; unit, locale and form
 * @throws InputError `MISSING_OPTION`, `NOT_A_QUANTITY`, `OUT_OF_RANGE` when the uncertainty is not above zero or is lost beside
 *   so large a value, and as {@link printed}; QuantityError `WRONG_DIMENSION` and `WRONG_KIND`
 * @example
 * printedUncertain(q("2716 kg"), { uncertainty: q("108 kg") }); // "2720 kg ± 110 kg"
 * printedUncertain(q("28.42 °C"), { uncertainty: q("Δ0.2 K"), digits: 1 }); // "28.4 °C ± 0.2 °C"
 */
export function printedUncertain(quantity: AnyQuantity, options: PrintedUncertainOptions): string {
  const read = readPrint("printedUncertain", options, { digits: [1, 2] }, ["uncertainty"]);
  const { value, unit, dimension } = readShown("quantity", quantity, read.unit);
  const { uncertainty } = options;
  const point = dimension.kind === "temperature";
  const half = readShownNumber("uncertainty", uncertainty, point ? `Δ${unit.replace("deg", "°")}` : unit);
  if (half <= 0) {
    const got = describeGiven(uncertainty);
    throw new InputError("OUT_OF_RANGE", `uncertainty must be greater than zero: got ${got}`, { name: "uncertainty" });
  }
  const places = placesFor(half, read.numbers.digits ?? 2);
  const [best, spread] = [roundedBeside(value, places), roundedTo(half, places)];
  return print([...numberAndUnit(best, unit), { between: " ± " }, ...numberAndUnit(spread, unit)], read);
}
