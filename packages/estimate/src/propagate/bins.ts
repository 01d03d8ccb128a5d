/**
 * Counts of numbers in narrow bins: a summary of a distribution that stays small however many numbers there are, and that merges exactly.
 *
 * A bin holds the numbers that agree in sign, power of two and the first twelve binary digits after the leading one, so it is at most
 * 1/4096 of the number wide, and a percentile read from the bins is wrong by no more than that.
 *
 * @internal
 */
export class Bins {
  private readonly counts = new Map<number, number>();
  private readonly view = new DataView(new ArrayBuffer(8));

  /** Counts a number. */
  add(number: number): void {
    this.view.setFloat64(0, number);
    const word = this.view.getInt32(0);
    // The first word of a number is sign, power and 20 digits. For negative numbers it rises as they fall, which is turned round.
    const key = word >= 0 ? word >>> 8 : ~((word & 0x7fffffff) >>> 8);
    this.counts.set(key, (this.counts.get(key) ?? 0) + 1);
  }

  /** Keys and counts in ascending order of the numbers. */
  entries(): readonly (readonly [key: number, count: number])[] {
    return [...this.counts].sort(([a], [b]) => a - b);
  }
}

/** @internal Relative width of a bin. */
export const BIN_WIDTH = 1 / 4096;

/** @internal */
export type BinCounts = readonly (readonly [key: number, count: number])[];

/** @internal All counts together. */
export function mergedBins(lists: readonly BinCounts[]): BinCounts {
  const counts = new Map<number, number>();
  for (const list of lists) for (const [key, count] of list) counts.set(key, (counts.get(key) ?? 0) + count);
  return [...counts].sort(([a], [b]) => a - b);
}

/** @internal Lower and upper end of a bin. */
export function binEnds(key: number): readonly [low: number, high: number] {
  return key >= 0 ? [numberAt(key), numberAt(key + 1)] : [-numberAt(~key + 1), -numberAt(~key)];
}

function numberAt(key: number): number {
  const view = new DataView(new ArrayBuffer(8));
  view.setInt32(0, key << 8);
  return Math.min(view.getFloat64(0), Number.MAX_VALUE);
}

/** @internal The value below which a share of the counted numbers lies: R-7, with each number known to its bin. */
export function quantileOfBins(bins: BinCounts, count: number, share: number): number {
  const position = (count - 1) * share;
  const rank = Math.floor(position);
  const below = valueAt(bins, rank);
  return below + (valueAt(bins, Math.min(rank + 1, count - 1)) - below) * (position - rank);
}

/** The number of a rank, from 0, as if those of a bin were spread evenly over it. */
function valueAt(bins: BinCounts, rank: number): number {
  let below = 0;
  for (const [key, here] of bins) {
    if (rank < below + here) {
      const [low, high] = binEnds(key);
      return low + ((high - low) * (rank - below + 0.5)) / here;
    }
    below += here;
  }
  return Number.NaN;
}

/** @internal The share of the counted numbers that reach a value. */
export function shareOfBins(bins: BinCounts, count: number, value: number): number {
  let reach = 0;
  for (const [key, here] of bins) {
    const [low, high] = binEnds(key);
    reach += low >= value ? here : high <= value ? 0 : (here * (high - value)) / (high - low);
  }
  return reach / count;
}
