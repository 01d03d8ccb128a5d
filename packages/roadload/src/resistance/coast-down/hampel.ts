/** A sample is an outlier beyond so many robust standard deviations: 40 CFR 1037.528 (g), seen. */
const LIMIT = 3;
/** Median absolute deviation to standard deviation, of a normal distribution: printed there, too. */
const MAD_TO_SIGMA = 1.4826;

/**
 * Hampel filter: which values lie further from the median than three robust standard deviations (1.4826 times the median
 * absolute deviation).
 *
 * @param values - finite numbers
 * @param floor - standard deviation below which nothing is told apart, such as the resolution of the instrument
 * @internal
 */
export function hampelOutliers(values: readonly number[], floor: number): boolean[] {
  const middle = median(values);
  const sigma = Math.max(floor, MAD_TO_SIGMA * median(values.map((value) => Math.abs(value - middle))));
  return values.map((value) => Math.abs(value - middle) > LIMIT * sigma);
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const half = sorted.length >> 1;
  const upper = sorted[half] ?? 0;
  return sorted.length % 2 === 1 ? upper : (upper + (sorted[half - 1] ?? upper)) / 2;
}
