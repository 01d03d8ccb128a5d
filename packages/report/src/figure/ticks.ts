/** @internal Ticks of an axis and how to print them. */
export interface Ticks {
  readonly values: readonly number[];
  /** d3 format of the labels. */
  readonly format: string;
}

/** @internal Round values (1, 2 or 5 times a power of ten) from at or below `low` to at or above `high`. */
export function roundTicks(low: number, high: number, wanted: number): Ticks {
  const rough = (high - low) / wanted;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = ([1, 2, 5, 10].find((factor) => factor * power >= rough * (1 - 1e-9)) ?? 10) * power;
  // A bound that misses a tick only by rounding is on it.
  const first = Math.floor(low / step + 1e-9);
  const last = Math.ceil(high / step - 1e-9);
  const places = Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
  const values = Array.from({ length: last - first + 1 }, (_, index) => clean((first + index) * step, places));
  const largest = Math.max(Math.abs(first), Math.abs(last)) * step;
  // Digits are grouped from five on, as ISO 80000-1 recommends and the tables do.
  const format = places > 6 || largest >= 1e9 ? "~e" : `${largest >= 10_000 ? "," : ""}.${places}f`;
  return { values, format };
}

// Below this the arithmetic of doubles has no digits left for steps.
const SMALLEST = 1e-200;

/** @internal Bounds that are apart: a single value gets room on both sides. */
export function apart(low: number, high: number): readonly [number, number] {
  const size = Math.max(Math.abs(low), Math.abs(high));
  if (high - low > Math.max(1e-9 * size, SMALLEST)) return [low, high];
  const room = size < SMALLEST ? 1 : 0.1 * size;
  return [low - room, high + room];
}

function clean(value: number, places: number): number {
  return places > 15 ? value : Number(value.toFixed(places));
}

/** @internal Least and greatest of some numbers. A loop and not `Math.min(...values)`: the arguments of a call are limited. */
export function boundsOf(values: readonly number[]): readonly [number, number] {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const value of values) {
    low = Math.min(low, value);
    high = Math.max(high, value);
  }
  return [low, high];
}
