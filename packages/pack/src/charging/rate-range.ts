import { InputError, readOptions, type Source } from "@tarewatt/units";
import { readSource } from "../check/read-source.js";
import { readText } from "../check/read-text.js";

/** Mean C-rates by power that cells or vehicles like the claimed one take, as somebody published them. */
export interface RateRange {
  /** Lower end in 1/h. Greater than zero. */
  readonly low: number;
  /** Upper end in 1/h, not below `low`. */
  readonly high: number;
  /** What they were published for: a chemistry, a class of vehicles. */
  readonly of: string;
  /** Where they are from. */
  readonly source: Source;
}

/** Where a mean rate lies against a range. */
export interface RateRangeStanding {
  /** Where it lies. */
  readonly place: "below" | "within" | "above";
  /** The same in words, with both figures. */
  readonly inWords: string;
  /** Where the range is from. */
  readonly source: Source;
}

/** @internal Reads a range, and places a rate against it. */
export function againstRange(meanRate: number, given: RateRange): RateRangeStanding {
  const rate = { unit: "1", above: 0, atMost: 1000 } as const;
  const { low, high } = readOptions("rateRange", given, { low: rate, high: rate }, ["of", "source"]);
  const of = readText("rateRange.of", given.of) as string;
  const source = readSource(given.source) as Source;
  if (low > high) {
    throw new InputError("INCONSISTENT", `rateRange.low must not be above rateRange.high: got ${low} and ${high}`, {});
  }
  const place = meanRate < low ? "below" : meanRate > high ? "above" : "within";
  const shown = Number(meanRate.toPrecision(3));
  const inWords = `a mean C-rate of ${shown} is ${place} the ${low} to ${high} of ${of}`;
  return Object.freeze({ place, inWords, source });
}
