import type { PublishedRange } from "./nominal-voltages.js";

/** @internal Where a figure lies among the published ranges of a chemistry. */
export interface PlaceAmong {
  readonly place: "within" | "between" | "above" | "below";
  /** The range that it lies within; absent when it lies within none. */
  readonly era?: PublishedRange;
  /** Ends of all ranges taken together. */
  readonly least: number;
  readonly most: number;
}

/** @internal Places a figure among ranges, of which there must be one at least; the newest of those that hold it is named. */
export function placeAmong(value: number, ranges: readonly PublishedRange[]): PlaceAmong {
  const least = Math.min(...ranges.map(({ low }) => low));
  const most = Math.max(...ranges.map(({ high }) => high));
  const era = ranges.findLast(({ low, high }) => value >= low && value <= high);
  if (era !== undefined) return { place: "within", era, least, most };
  return { place: value > most ? "above" : value < least ? "below" : "between", least, most };
}
