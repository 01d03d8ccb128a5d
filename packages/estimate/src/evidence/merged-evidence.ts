import type { Working } from "@tarewatt/units";
import type { Evidence, LogNormal, Normal } from "./forms.js";
import type { Grade, Provenance } from "./provenance.js";

/** A lower bound alone, without a word on how far beyond it the value may lie: it only cuts. */
export interface LowerBound<T> extends Provenance {
  /** The value lies here or above. */
  readonly atLeast: T;
  /** An upper bound is a piece of its own. */
  readonly atMost?: undefined;
}

/** An upper bound alone. */
export interface UpperBound<T> extends Provenance {
  /** The value lies here or below. */
  readonly atMost: T;
  /** A lower bound is a piece of its own. */
  readonly atLeast?: undefined;
}

/** A bound alone. */
export type Bound<T> = LowerBound<T> | UpperBound<T>;

/** One piece of evidence for a quantity: any evidence, or a bound alone. */
export type EvidencePiece<T> = Evidence<T> | Bound<T>;

/** What became of one piece. */
export interface MergedPiece<T> {
  /** Its id, or its source, or its place in the list. */
  readonly name: string;
  /** How far it can be trusted. */
  readonly grade: Grade;
  /** 10th percentile; of a bound alone, the bound. */
  readonly low: T;
  /** Median; of a bound alone, the bound. */
  readonly likely: T;
  /** 90th percentile; of a bound alone, the bound. */
  readonly high: T;
  /**
   * `weighed` by its precision; `repeats` an origin that another piece stands for, and counts no more; `cuts` as a bound.
   */
  readonly role: "weighed" | "repeats" | "cuts";
  /** Its share of the merged mean, 0 to 1. */
  readonly weight: number;
  /** True when it came without a spread, and was given the usual one of its grade. */
  readonly usualSpread: boolean;
  /**
   * How far it is off all other weighed pieces together, in standard deviations of that difference; of a bound, how far the merged
   * mean is on its right side. Beyond ± 2 one of them is odd.
   */
  readonly offBy: number;
}

/** How well the pieces agree. */
export interface Agreement {
  /** Sum over the weighed pieces of the squared distance from their mean, in standard deviations. */
  readonly chiSquared: number;
  /** One fewer than the weighed pieces. */
  readonly degreesOfFreedom: number;
  /** √(χ²/degrees of freedom); zero for a single piece. Above one the pieces scatter more than their spreads say. */
  readonly birgeRatio: number;
  /** How often pieces with these spreads would disagree at least as much by chance, 0 to 1. */
  readonly chance: number;
  /** How often the weighed pieces alone would keep all bounds, 0 to 1. */
  readonly chanceOfBounds: number;
}

/** Several pieces of evidence for one quantity, as one. */
export interface MergedEvidence<T> {
  /** The merged evidence: give it to a model. */
  readonly evidence: Normal<T> | LogNormal<T>;
  /** 10th percentile. */
  readonly low: T;
  /** Median. */
  readonly likely: T;
  /** 90th percentile. */
  readonly high: T;
  /** What became of each piece, in the order given. */
  readonly pieces: readonly MergedPiece<T>[];
  /** How well they agree. */
  readonly agreement: Agreement;
  /** Conflicts, and pieces that may repeat each other. */
  readonly warnings: readonly string[];
  /** The steps of the weighing. */
  working(): Working;
}
