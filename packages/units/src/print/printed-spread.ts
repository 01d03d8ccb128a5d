import { InputError } from "../check/errors.js";
import { readNumber } from "../check/read-options.js";
import type { AnyQuantity } from "../quantity/quantity.js";
import { decimalOf, numberOf, placesFor, roundedTo } from "./decimal.js";
import { type PrintOptions, readPrint, readShown } from "./options.js";
import { numberAndUnit, print } from "./parts.js";
import { roundedBeside } from "./rounded-beside.js";

/** Options of {@link printedSpread}. */
export interface PrintedSpreadOptions extends PrintOptions {
  /** Half the width of the interval as a share of the value: 0.04, or `q("4 %")`. */
  readonly spread: number | AnyQuantity;
  /** Significant digits of the spread, 1 or 2; 2 when left out. */
  readonly digits?: number | undefined;
}

/**
 * A quantity with its spread in per cent. The value ends where the spread, turned into the unit of the value, has its last digit.
 *
 * @param quantity - best value, not zero; no temperature point, as that has no shares
 * @param options - spread, its digits; unit, locale and form
 * @throws InputError `MISSING_OPTION`, `NOT_A_QUANTITY`, `NOT_A_FRACTION`, `OUT_OF_RANGE`, `NOT_VALID_HERE` for a zero or a
 *   temperature point, and as {@link printed}
 * @example
 * printedSpread(q("2716 kg"), { spread: 0.04, unit: "t" }); // "2.72 t ± 4 %"
 */
export function printedSpread(quantity: AnyQuantity, options: PrintedSpreadOptions): string {
  const read = readPrint("printedSpread", options, { digits: [1, 2] }, ["spread"]);
  const { value, unit, dimension } = readShown("quantity", quantity, read.unit);
  const spread = readNumber("spread", options.spread, { unit: "1", above: 0, atMost: 1 });
  if (value === 0 || dimension.kind === "temperature") {
    const what = value === 0 ? "zero" : "a temperature point";
    throw new InputError("NOT_VALID_HERE", `${what} has no spread in per cent: give printedUncertain an uncertainty`, {
      value,
      unit,
    });
  }
  const { digits = 2 } = read.numbers;
  const best = roundedBeside(value, placesFor(Math.abs(value) * spread, digits));
  const percent = numberOf({ ...decimalOf(spread), places: decimalOf(spread).places - 2 });
  // Its trailing zeros say nothing that the value does not: 4 %, not 4.0 %.
  const shown = decimalOf(numberOf(roundedTo(percent, placesFor(percent, digits))));
  return print([...numberAndUnit(best, unit), { between: " ± " }, ...numberAndUnit(shown, "%")], read);
}
