/** Bits of the fraction of a double. */
const FRACTION_BITS = 52;

/** Exponent of the smallest positive double. */
const LEAST_EXPONENT = -1074;

/**
 * @internal The numbers moved to the nearest points of one grid, so fine that nobody sees it (1e-13 of the largest, for a thousand numbers) and
 * so coarse that every difference of neighbours, and every sum of such differences in any order, is a double without rounding: parts of
 * a bridge then sum exactly.
 *
 * The spacing g is a power of two. With n numbers of at most 2^E, a sum of their differences is at most 2n·2^E, and below 2^53·g it is a
 * double when g ≥ 2^(E + 1 + log2 n − 52).
 */
export function onGrid(numbers: readonly number[]): readonly number[] {
  const largest = Math.max(0, ...numbers.map(Math.abs));
  if (largest === 0) return numbers;
  const exponent = Math.ceil(Math.log2(largest)) + 1 + Math.ceil(Math.log2(numbers.length)) - FRACTION_BITS;
  const spacing = 2 ** Math.max(LEAST_EXPONENT, exponent);
  // A zero without a sign
  return numbers.map((number) => Math.round(number / spacing) * spacing + 0);
}
