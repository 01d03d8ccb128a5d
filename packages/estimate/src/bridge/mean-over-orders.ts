/** @internal What one cause does over all orders in which the causes could be taken in. */
export interface OverOrders {
  readonly mean: number;
  readonly least: number;
  readonly most: number;
}

/**
 * @internal The mean change that each of n causes makes over all n! orders (L. S. Shapley, A value for n-person games, 1953, from memory), and
 * the smallest and largest. The means sum to the whole change.
 *
 * @param count - how many causes
 * @param figureOf - the figure with a set of causes taken in, as bits
 */
export function meanOverOrders(count: number, figureOf: (causes: number) => number): readonly OverOrders[] {
  const sets = 2 ** count;
  const figures = Array.from({ length: sets }, (_, set) => figureOf(set));
  return Array.from({ length: count }, (_, cause) => {
    const bit = 1 << cause;
    let mean = 0;
    let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
    for (let set = 0; set < sets; set++) {
      if ((set & bit) !== 0) continue;
      const change = (figures[set | bit] as number) - (figures[set] as number);
      mean += change * shareOfOrders(sizeOf(set), count);
      least = Math.min(least, change);
      most = Math.max(most, change);
    }
    return { mean, least, most };
  });
}

/** The share of all orders in which exactly a given set of this size stands before a given cause: s!·(n − s − 1)!/n!. */
function shareOfOrders(size: number, count: number): number {
  let share = 1 / count;
  // 1 divided by the number of ways to choose the set among the other causes
  for (let i = 1; i <= size; i++) share *= i / (count - i);
  return share;
}

function sizeOf(set: number): number {
  let size = 0;
  for (let rest = set; rest > 0; rest >>= 1) size += rest & 1;
  return size;
}
