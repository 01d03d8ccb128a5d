/** @internal Value at `x` of the line through the points; beyond the first and the last point it stays at their values. */
export function interpolate(xs: readonly number[], ys: readonly number[], x: number): number {
  const last = xs.length - 1;
  if (x <= (xs[0] as number)) return ys[0] as number;
  if (x >= (xs[last] as number)) return ys[last] as number;
  let low = 0;
  let high = last;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((xs[middle] as number) <= x) low = middle;
    else high = middle;
  }
  const from = xs[low] as number;
  const share = (x - from) / ((xs[high] as number) - from);
  return (ys[low] as number) + share * ((ys[high] as number) - (ys[low] as number));
}
