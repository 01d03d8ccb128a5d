import { type AnyQuantity, InputError, readNumber } from "@tarewatt/units";

/**
 * An answer with its spread: its 10th, 50th and 90th percentiles over the draws.
 *
 * @typeParam T - a quantity, or a number for a ratio
 */
export interface Spread<T = AnyQuantity | number> {
  /** One time in ten the answer is below this. */
  readonly p10: T;
  /** As often above as below. */
  readonly p50: T;
  /** One time in ten the answer is above this. */
  readonly p90: T;
}

/**
 * The value below which a share of sorted numbers lies: the R-7 definition, linear between order statistics.
 *
 * @param sorted - numbers in ascending order, at least one
 * @param share - 0 to 1
 * @throws InputError `EMPTY` without numbers, `NOT_A_FRACTION`, `NEGATIVE`
 * @example
 * quantileOfSorted([1, 2, 3, 4], 0.5); // 2.5
 */
export function quantileOfSorted(sorted: ArrayLike<number>, share: number): number {
  if (!(sorted?.length > 0)) throw new InputError("EMPTY", "there is no quantile without numbers", {});
  readNumber("share", share, { unit: "1", atLeast: 0, atMost: 1 });
  const position = (sorted.length - 1) * share;
  const below = Math.floor(position);
  const a = sorted[below] as number;
  const b = sorted[Math.min(below + 1, sorted.length - 1)] as number;
  return a === b ? a : a + (b - a) * (position - below);
}
