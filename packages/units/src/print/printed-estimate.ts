import { InputError } from "../check/errors.js";
import { readRecord } from "../check/shapes.js";
import type { AnyQuantity } from "../quantity/quantity.js";
import { placesFor } from "./decimal.js";
import { readPrint, readShown, readShownNumber } from "./options.js";
import { print, unitPart } from "./parts.js";
import { betweenEnds, type PrintedEnds, type PrintedRangeOptions } from "./printed-range.js";
import { roundedBeside } from "./rounded-beside.js";

/** A likely value between a low and a high one. */
export interface PrintedLikely extends PrintedEnds {
  /** Best value, from low to high. */
  readonly likely: AnyQuantity;
}

/**
 * A likely value with its low and its high one, all to the place that the spread justifies: half the width keeps two
 * significant digits, or as many as are asked for.
 *
 * @param estimate - low, likely and high, in the unit of `likely` unless the options name another
 * @param options - digits of half the width, 2 when left out, and where the width is zero, digits of the value, then 3; between;
 *   unit, locale and form
 * @throws InputError `INCONSISTENT` when they are out of order, `NOT_A_QUANTITY`, and as {@link printed}; QuantityError
 *   `WRONG_DIMENSION` and `WRONG_KIND`
 * @example
 * printedEstimate({ low: q("2.61 t"), likely: q("2.716 t"), high: q("2.84 t") }); // "2.72 (2.61–2.84) t"
 */
export function printedEstimate(estimate: PrintedLikely, options: PrintedRangeOptions = {}): string {
  const read = readPrint("printedEstimate", options, { digits: [1, 15] }, ["between?"]);
  const { low, likely, high } = readRecord("estimate", estimate) as Partial<PrintedLikely>;
  const { value, unit } = readShown("likely", likely, read.unit);
  const bottom = readShownNumber("low", low, unit);
  const top = readShownNumber("high", high, unit);
  if (!(bottom <= value && value <= top)) {
    throw new InputError("INCONSISTENT", `low ≤ likely ≤ high must hold: got ${bottom}, ${value} and ${top} ${unit}`, {
      ...{ low: bottom, likely: value, high: top },
    });
  }
  const half = top / 2 - bottom / 2;
  const { digits } = read.numbers;
  const places = half === 0 ? placesFor(value, digits ?? 3) : placesFor(half, digits ?? 2);
  const first = roundedBeside(bottom, places);
  const last = roundedBeside(top, places);
  const between = betweenEnds(options.between, first, last);
  const best = { number: roundedBeside(value, places) };
  const ends = [{ between: " (" }, { number: first }, { between }, { number: last }, { between: ")" }];
  return print([best, ...ends, ...unitPart(unit)], read);
}
