import { incompleteBeta, logBeta } from "./gamma.js";
import type { Shape } from "./shape.js";

/** @internal Equally likely everywhere between its ends. */
export function uniformShape(from: number, to: number): Shape {
  const width = to - from;
  return {
    name: "uniform",
    quantile: (u) => from + width * u,
    cdf: (x) => (x >= to ? 1 : Math.max(0, (x - from) / width)),
    moments: () => ({ mean: (from + to) / 2, standardDeviation: width / Math.sqrt(12) }),
    ends: [from, to],
  };
}

/** @internal Density rising in a line to its mode and falling in a line after it. */
export function triangularShape(from: number, mode: number, to: number): Shape {
  const width = to - from;
  const atMode = (mode - from) / width;
  return {
    name: "triangular",
    quantile: (u) =>
      u < atMode ? from + Math.sqrt(u * width * (mode - from)) : to - Math.sqrt((1 - u) * width * (to - mode)),
    cdf: (x) => {
      if (x <= from) return 0;
      if (x >= to) return 1;
      return x < mode ? (x - from) ** 2 / (width * (mode - from)) : 1 - (to - x) ** 2 / (width * (to - mode));
    },
    moments: () => ({
      mean: (from + mode + to) / 3,
      // (a² + b² + c² − ab − ac − bc)/18, written so that nothing cancels
      standardDeviation: Math.sqrt((width ** 2 - (mode - from) * (to - mode)) / 18),
    }),
    ends: [from, to],
  };
}

/**
 * @internal The beta distribution of project planning: its mean is (from + 4·mode + to)/6. Source: Malcolm et al., Application of a
 * technique for research and development program evaluation, Operations Research 7 (1959), from memory; here with the shape
 * parameters that make this mean exact, and not with that article's fixed standard deviation of a sixth of the width.
 */
export function pertShape(from: number, mode: number, to: number): Shape {
  const width = to - from;
  const a = 1 + (4 * (mode - from)) / width;
  const b = 1 + (4 * (to - mode)) / width;
  const scale = logBeta(a, b);
  return {
    name: "PERT",
    quantile: (u) => from + width * betaQuantile(u, a, b, scale),
    cdf: (x) => incompleteBeta((x - from) / width, a, b),
    moments: () => ({
      mean: (from + 4 * mode + to) / 6,
      standardDeviation: width * Math.sqrt((a * b) / ((a + b) ** 2 * (a + b + 1))),
    }),
    ends: [from, to],
  };
}

/** Newton's method kept within a shrinking bracket. */
function betaQuantile(u: number, a: number, b: number, scale: number): number {
  if (u <= 0) return 0;
  if (u >= 1) return 1;
  let [low, high] = [0, 1];
  let x = a / (a + b);
  for (let i = 0; i < 100; i++) {
    const error = incompleteBeta(x, a, b) - u;
    if (error > 0) high = x;
    else low = x;
    const density = Math.exp((a - 1) * Math.log(x) + (b - 1) * Math.log1p(-x) - scale);
    const step = x - error / density;
    const next = step > low && step < high ? step : (low + high) / 2;
    if (Math.abs(next - x) <= 1e-15 * x || high - low <= 1e-15 * high) return next;
    x = next;
  }
  return x;
}

/** @internal As likely as the samples show: linear between them in order, as `quantileOfSorted` reads them. */
export function samplesShape(given: readonly number[]): Shape {
  const sorted = Float64Array.from(given).sort();
  const last = sorted.length - 1;
  const at = (i: number): number => sorted[i] as number;
  return {
    name: "samples",
    quantile: (u) => {
      const position = last * u;
      const below = Math.min(Math.floor(position), last - 1);
      return at(below) + (at(below + 1) - at(below)) * (position - below);
    },
    cdf: (x) => {
      if (x < at(0)) return 0;
      if (x >= at(last)) return 1;
      let [low, high] = [0, last];
      // The last sample that does not exceed x
      while (high - low > 1) {
        const middle = (low + high) >> 1;
        if (at(middle) <= x) low = middle;
        else high = middle;
      }
      return (low + (x - at(low)) / (at(high) - at(low))) / last;
    },
    moments: () => {
      // Each piece between two neighbours is uniform and holds the same share.
      const pieces = Array.from({ length: last }, (_, i) => [at(i), at(i + 1)] as const);
      const mean = pieces.reduce((sum, [a, b]) => sum + (a + b) / 2, 0) / last;
      const square = pieces.reduce(
        (sum, [a, b]) => sum + ((a - mean) ** 2 + (a - mean) * (b - mean) + (b - mean) ** 2) / 3,
        0,
      );
      return { mean, standardDeviation: Math.sqrt(square / last) };
    },
    ends: [at(0), at(last)],
  };
}
