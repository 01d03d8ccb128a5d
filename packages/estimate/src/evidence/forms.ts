import type { DifferenceOf, Dimension, Quantity } from "@tarewatt/units";
import type { Provenance } from "./provenance.js";

/** A value that is taken as exact, with its provenance. */
export interface ExactValue<T> extends Provenance {
  /** The value. */
  readonly value: T;
  /** Not here: a quantity, which has a unit, is a value by itself. */
  readonly unit?: never;
}

/**
 * A value known within a range: one time in ten it is below `low`, one time in ten above `high`, and as often below
 * `likely` as above it (its 10th, 90th and 50th percentiles).
 *
 * The tails beyond `low` and `high` end at 1.81 times their distance from `likely`, or at the limit of what makes sense for
 * the input (a fraction ends at 1) when that comes first.
 */
export interface LowLikelyHigh<T> extends Provenance {
  /** 10th percentile. */
  readonly low: T;
  /** Median: as likely to be too low as too high. */
  readonly likely: T;
  /** 90th percentile. */
  readonly high: T;
}

/** A value that is at least so much: most likely just that, and only one time in ten above `rarelyAbove`. */
export interface AtLeast<T> extends Provenance {
  /** The bound; nothing lies below it. */
  readonly atLeast: T;
  /** 90th percentile. */
  readonly rarelyAbove: T;
}

/** A value that is at most so much: most likely just that, and only one time in ten below `rarelyBelow`. */
export interface AtMost<T> extends Provenance {
  /** The bound; nothing lies above it. */
  readonly atMost: T;
  /** 10th percentile. */
  readonly rarelyBelow: T;
}

/** Equally likely everywhere between two ends. */
export interface Uniform<T> extends Provenance {
  /** The shape. */
  readonly distribution: "uniform";
  /** Nothing lies below it. */
  readonly from: T;
  /** Nothing lies above it. */
  readonly to: T;
}

/** Between two ends and most likely at its mode: straight lines, or the smooth bell of project planning (PERT). */
export interface Peaked<T> extends Provenance {
  /** The shape. The PERT has the mean (from + 4·mode + to)/6. */
  readonly distribution: "triangular" | "PERT";
  /** Nothing lies below it. */
  readonly from: T;
  /** Where the density is largest. */
  readonly mode: T;
  /** Nothing lies above it. */
  readonly to: T;
}

/** The normal distribution; what of it lies outside what the input can be is cut off. */
export interface Normal<T> extends Provenance {
  /** The shape. */
  readonly distribution: "normal";
  /** Mean, before anything is cut off. */
  readonly mean: T;
  /** Standard deviation; for a temperature a difference such as `q("Δ5 K")`. */
  readonly standardDeviation: T extends Quantity<infer D extends Dimension> ? Quantity<DifferenceOf<D>> : T;
  /** Cut off below this. */
  readonly atLeast?: T | undefined;
  /** Cut off above this. */
  readonly atMost?: T | undefined;
}

/** A positive value whose logarithm has a normal distribution. */
export interface LogNormal<T> extends Provenance {
  /** The shape. */
  readonly distribution: "log-normal";
  /** Median, before anything is cut off. */
  readonly median: T;
  /** Geometric standard deviation, above 1: about two thirds lie between median/factor and median·factor. */
  readonly factor: number;
  /** Cut off below this. */
  readonly atLeast?: T | undefined;
  /** Cut off above this. */
  readonly atMost?: T | undefined;
}

/** A value distributed as these samples are, with straight lines between them in order; 2 to 100,000 of them. */
export interface Samples<T> extends Provenance {
  /** The shape. */
  readonly distribution: "samples";
  /** The samples, in any order. */
  readonly values: readonly T[];
}

/**
 * What is known of an input: a plain value, a value with its provenance, low/likely/high, a bound, or a distribution.
 *
 * @typeParam T - a quantity, or a number for a ratio
 */
export type Evidence<T> =
  | T
  | ExactValue<T>
  | LowLikelyHigh<T>
  | AtLeast<T>
  | AtMost<T>
  | Uniform<T>
  | Peaked<T>
  | Normal<T>
  | LogNormal<T>
  | Samples<T>;
