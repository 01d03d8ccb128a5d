import type { FailedDraw } from "../propagate/block.js";
import type { Spread } from "../propagate/spread.js";

/** The target is reached on one side of a value. */
export interface Reached<X> {
  /** Says that the target is reached. */
  readonly outcome: "reached";
  /** The value of the unknown input that just reaches it. */
  readonly value: X;
  /** On which side of the value it is reached. */
  readonly enough: "from here up" | "from here down";
}

/** Every value considered reaches the target: what is needed lies outside the bracket. */
export interface AlwaysReached {
  /** Says that any value considered is enough. */
  readonly outcome: "always reached";
}

/** No allowed value of the unknown input reaches the target. */
export interface NotReached<X, Y> {
  /** Says that the target is not reached. */
  readonly outcome: "not reached";
  /** What stands in the way, in words. */
  readonly limit: string;
  /** How far it gets. */
  readonly best: Y;
  /** The value of the unknown input that gets there. */
  readonly at: X;
}

/** A limit that stands in the way, and how often. */
export interface LimitShare {
  /** The limit, in words. */
  readonly limit: string;
  /** Share of the draws that it stops. */
  readonly share: number;
}

/** What the last unit of the unknown input is worth where the target is just reached. */
export interface LastUnit<X, Y> {
  /** How much that is: one of the input's unit, a hundredth for a ratio. */
  readonly of: X;
  /** By how much the output changes over it, over the draws that reach the target. */
  readonly adds: Spread<Y>;
}

/** What `solveFor` finds. */
export interface Solution<X, Y> {
  /** The answer with every other input at its likely value. */
  readonly likely: Reached<X> | AlwaysReached | NotReached<X, Y>;
  /** The share of draws in which some allowed value reaches the target. */
  readonly chanceReachable: number;
  /** Why the other draws do not reach it: each limit with its share of the draws. */
  readonly limits: readonly LimitShare[];
  /**
   * Percentiles of the value that just reaches the target, over all draws. A percentile that falls among draws in which no
   * allowed value reaches it, or in which every value considered does, is undefined: it lies outside the bracket.
   */
  readonly needed: Partial<Spread<X>>;
  /**
   * The chance that a given value of the unknown input is allowed and reaches the target.
   * @param value - value of the unknown input, inside the bracket
   * @throws InputError `OUT_OF_RANGE` outside the bracket, where nothing was looked at
   */
  chanceThatEnough(value: X): number;
  /** What the last unit on the way to the target is worth; missing when no draw reaches it inside the bracket. */
  readonly lastUnit?: LastUnit<X, Y>;
  /** How many draws were made. */
  readonly draws: number;
  /** For how many of them the model gave no finite result, or none that moves; they are left out of everything. */
  readonly failed: number;
  /** The first three of those, with the reason. */
  readonly failures: readonly FailedDraw[];
  /** What is doubtful; empty when nothing is. */
  readonly warnings: readonly string[];
}
