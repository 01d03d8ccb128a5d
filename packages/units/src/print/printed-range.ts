import { InputError } from "../check/errors.js";
import { readRecord, readWords } from "../check/shapes.js";
import type { AnyQuantity } from "../quantity/quantity.js";
import { type Decimal, exponentOf, placesFor, roundedTo } from "./decimal.js";
import { type PrintOptions, readPrint, readShown, readShownNumber } from "./options.js";
import { numberAndUnit, print } from "./parts.js";
import { roundedBeside } from "./rounded-beside.js";

/** The ends of a range. */
export interface PrintedEnds {
  /** Lower end. */
  readonly low: AnyQuantity;
  /** Upper end, not below the lower. */
  readonly high: AnyQuantity;
}

/** Options of {@link printedRange} and {@link printedEstimate}. */
export interface PrintedRangeOptions extends PrintOptions {
  /** Significant digits, 1 to 15; 3 when left out. More are printed where the ends would else run together. */
  readonly digits?: number | undefined;
  /** What stands between the ends. When left out: a dash, or `" to "` where a dash could be taken for a minus. */
  readonly between?: string | undefined;
}

/**
 * A range with its unit once, both ends to one place: that of the last digit of the larger, or of the first digit of the
 * width where that is finer, so that two ends never look the same. Equal ends are printed as one value.
 *
 * @param ends - low and high, in the unit of `low` unless the options name another
 * @param options - digits, between; unit, locale and form
 * @throws InputError `INCONSISTENT` when high is below low, `NOT_A_QUANTITY`, and as {@link printed}; QuantityError
 *   `WRONG_DIMENSION` and `WRONG_KIND`
 * @example
 * printedRange({ low: q("2.61 t"), high: q("2836 kg") }); // "2.61–2.84 t"
 * printedRange({ low: q("-10 °C"), high: q("35 °C") }, { digits: 2 }); // "−10 to 35 °C"
 */
export function printedRange(ends: PrintedEnds, options: PrintedRangeOptions = {}): string {
  const read = readPrint("printedRange", options, { digits: [1, 15] }, ["between?"]);
  const { low, high } = readRecord("ends", ends) as Partial<PrintedEnds>;
  const { value: bottom, unit } = readShown("low", low, read.unit);
  const top = readShownNumber("high", high, unit);
  if (top < bottom) {
    throw new InputError("INCONSISTENT", `high must not be below low: got ${bottom} and ${top} ${unit}`, {
      low: bottom,
      high: top,
    });
  }
  const places = placesOfRange(bottom, top, read.numbers.digits ?? 3);
  const first = roundedBeside(bottom, places);
  const last = roundedBeside(top, places);
  if (bottom === top) return print(numberAndUnit(last, unit), read);
  const between = betweenEnds(options.between, first, last);
  return print([{ number: first }, { between }, ...numberAndUnit(last, unit)], read);
}

/** @internal A dash, or a word where the numbers hold a sign or a power. */
export function betweenEnds(given: string | undefined, low: Decimal, high: Decimal): string {
  if (given !== undefined) return readWords("between", given);
  const plain = low.units >= 0n && [low, high].every((end) => end.units === 0n || isShort(end));
  return plain ? "–" : " to ";
}

function isShort(end: Decimal): boolean {
  const exponent = exponentOf(end);
  return exponent < 15 && exponent >= -6;
}

function placesOfRange(low: number, high: number, digits: number): number {
  const places = placesFor(Math.max(Math.abs(low), Math.abs(high)), digits);
  const width = high - low;
  if (width === 0) return places;
  const fine = Math.max(places, placesFor(width, 1));
  const apart = roundedTo(low, fine).units !== roundedTo(high, fine).units;
  return apart ? fine : fine + 1;
}
