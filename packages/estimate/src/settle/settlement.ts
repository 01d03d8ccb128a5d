import type { AnyQuantity } from "@tarewatt/units";
import type { Bridge } from "../bridge/bridge-result.js";

/** A figure with its unit; a plain number for a ratio. */
export type Figure = AnyQuantity | number;

/** Whether an outcome fell inside a central interval of its spread. */
export interface JudgedInterval {
  /** Share of the spread that the interval holds. */
  readonly share: number;
  /** Its lower end. */
  readonly low: Figure;
  /** Its upper end. */
  readonly high: Figure;
  /** Whether the outcome lies in it, ends included. */
  readonly inside: boolean;
  /** The interval score, in the unit of the figure: see {@link intervalScore}. */
  readonly score: Figure;
}

/** One outcome beside its spread. */
export interface SettledOutcome {
  /** Name of the output. */
  readonly output: string;
  /** What it is, in words. */
  readonly meaning: string;
  /** Unit of the numbers below that are plain. */
  readonly unit: string;
  /** What came out. */
  readonly outcome: Figure;
  /** The median that was sealed. */
  readonly median: Figure;
  /** Outcome less median: positive when more came out than was said. */
  readonly miss: Figure;
  /**
   * The share of the spread below the outcome (probability integral transform); 0.0005 or 0.9995 when it lies beyond all but one in a thousand.
   */
  readonly shareBelow: number;
  /** Outcome less mean, in standard deviations of the spread; missing when there was no spread. */
  readonly deviations?: number;
  /** The central intervals of 50, 80 and 90 %. */
  readonly intervals: readonly JudgedInterval[];
  /** Continuous ranked probability score, in the unit of the figure: the less the better. */
  readonly rankedProbabilityScore: Figure;
  /** What the miss is attributed to; only with a model and facts that became known. */
  readonly attribution?: Bridge<Figure>;
  /** All of it in one sentence. */
  readonly words: string;
}

/** How a sealed estimate fared. Made by {@link settle}. */
export interface Settlement {
  /** What was estimated. */
  readonly name: string;
  /** Digest of the sealed estimate. */
  readonly digest: string;
  /** The day that it was sealed. */
  readonly sealedOn: string;
  /** The day that the outcomes are from. */
  readonly settledOn: string;
  /** What it is counted with in a running record, such as a class of vehicles; empty when that was not said. */
  readonly group: string;
  /** The outcomes, in the order in which they were given. */
  readonly outcomes: readonly SettledOutcome[];
  /** What is doubtful; empty when nothing is. */
  readonly warnings: readonly string[];
}

/** @internal Shares of the central intervals that are judged. */
export const judgedShares = [0.5, 0.8, 0.9] as const;
