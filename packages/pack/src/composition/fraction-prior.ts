import type { Source } from "@tarewatt/units";

/** One published value of a fraction. */
export interface FractionPoint {
  /** The value, 0 to 1. */
  readonly value: number;
  /** What it was published for, and how well. */
  readonly of: string;
}

/** What is known about a fraction before anything is known about the vehicle at hand. */
export interface FractionPrior {
  /** What is divided by what. */
  readonly meaning: string;
  /** Low end, 0 to 1; `extent` says of what. */
  readonly low: number;
  /** The value to expect, 0 to 1. */
  readonly likely: number;
  /** High end, 0 to 1; `extent` says of what. */
  readonly high: number;
  /** What `low` and `high` are: the ends of the published values, those with a low end that was widened, or quartiles. */
  readonly extent: "published ends" | "published ends, low end widened" | "quartiles";
  /** The published values behind it. */
  readonly points: readonly FractionPoint[];
  /** Where `low`, `high` and the points are from. */
  readonly source: Source;
  /** Where `low` is from, only where it is no published value. */
  readonly lowSource?: Source;
  /** Where `likely` is from. */
  readonly likelySource: Source;
  /** What to keep in mind. */
  readonly note: string;
}
