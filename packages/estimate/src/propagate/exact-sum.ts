/**
 * A sum of numbers without rounding, so that it does not matter in which order or on which machine its parts were added.
 *
 * The sum is kept as a few numbers that do not overlap (J. R. Shewchuk, Discrete & Computational Geometry 18 (1997), from memory). As long
 * as nothing overflows, any two ways to add the same numbers give the same {@link ExactSum.parts}.
 *
 * @internal
 */
export class ExactSum {
  private partials: number[] = [];

  /** Adds one number. */
  add(number: number): void {
    let x = number;
    let kept = 0;
    for (const partial of this.partials) {
      const [large, small] = Math.abs(x) < Math.abs(partial) ? [partial, x] : [x, partial];
      const sum = large + small;
      const lost = small - (sum - large);
      if (lost !== 0) this.partials[kept++] = lost;
      x = sum;
    }
    this.partials.length = kept;
    this.partials.push(x);
  }

  /** The sum as its nearest number, then what is left as its nearest number, until nothing is left: the same for equal sums. */
  parts(): readonly number[] {
    const rest = new ExactSum();
    rest.partials = [...this.partials];
    const parts: number[] = [];
    for (let next = rest.rounded(); next !== 0 && Number.isFinite(next); next = rest.rounded()) {
      parts.push(next);
      rest.add(-next);
    }
    return parts;
  }

  /** The sum, correctly rounded. */
  rounded(): number {
    const { partials } = this;
    let n = partials.length;
    if (n === 0) return 0;
    let high = partials[--n] as number;
    let low = 0;
    while (n > 0) {
      const x = high;
      const y = partials[--n] as number;
      high = x + y;
      low = y - (high - x);
      if (low !== 0) break;
    }
    // Half a last digit, and more of the same sign below it: the tie is none.
    const below = partials[n - 1] ?? 0;
    if (n > 0 && ((low < 0 && below < 0) || (low > 0 && below > 0))) {
      const y = low * 2;
      const x = high + y;
      if (y === x - high) high = x;
    }
    return high;
  }
}

/** @internal The sum of such parts. */
export function sumOf(lists: readonly (readonly number[])[]): ExactSum {
  const sum = new ExactSum();
  for (const list of lists) for (const part of list) sum.add(part);
  return sum;
}
