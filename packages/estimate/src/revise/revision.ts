import type { Bridge, DifferenceIn } from "../bridge/bridge-result.js";
import type { ModelOutput, ValueIn } from "../model/model.js";
import type { Spread } from "../propagate/spread.js";

/** A fact that was changed. */
export interface RevisedFact {
  /** Name of the input. */
  readonly input: string;
  /** What it is, in words. */
  readonly meaning: string;
  /** What was known of it: its 10th, 50th and 90th percentiles. */
  readonly old: Spread;
  /** What is known now. */
  readonly new: Spread;
}

/** An output before and after. */
export interface RevisedOutput<T> {
  /** Name of the output. */
  readonly output: string;
  /** What it is, in words. */
  readonly meaning: string;
  /** Its spread before. */
  readonly old: Spread<T>;
  /** Its spread now. */
  readonly new: Spread<T>;
  /** By how much its median moved. */
  readonly moved: DifferenceIn<T>;
  /**
   * By which share the distance from the 10th to the 90th percentile became smaller; negative when it grew, missing when there was none before.
   */
  readonly narrowing?: number;
  /** What moved the median: one part for each changed fact, summing exactly. */
  readonly bridge: Bridge<T>;
  /** All of it in one sentence. */
  readonly words: string;
}

/** The place of an unknown in the ranking, 1 the first; missing when its value is exact, so that it does not matter. */
export interface RankingChange {
  /** Name of the input. */
  readonly input: string;
  /** What it is, in words. */
  readonly meaning: string;
  /** Its place before. */
  readonly before?: number;
  /** Its place now. */
  readonly after?: number;
}

/** What a change of facts does to an estimate. */
export interface Revision<Outputs extends Readonly<Record<string, ModelOutput>>> {
  /** How many draws each spread rests on. */
  readonly draws: number;
  /** The seed that chose them, the same for old and new. */
  readonly seed: number;
  /** The changed facts, in the order of `changes`. */
  readonly facts: readonly RevisedFact[];
  /** The outputs asked for. */
  readonly outputs: { readonly [K in keyof Outputs]?: RevisedOutput<ValueIn<Outputs[K]["unit"]>> };
  /** Names of the outputs that stayed where they were, to the last bit. */
  readonly unmoved: readonly string[];
  /** What to measure next, before and now, in the order of now; empty when it was not asked for. */
  readonly ranking: readonly RankingChange[];
  /** What is doubtful; empty when nothing is. */
  readonly warnings: readonly string[];
  /** The revision in a few sentences. */
  readonly words: readonly string[];
}
