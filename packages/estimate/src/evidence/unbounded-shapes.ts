import { normalCdf, normalQuantile } from "./normal.js";
import type { Shape } from "./shape.js";

/** @internal The normal distribution. */
export function normalShape(mean: number, standardDeviation: number): Shape {
  return {
    name: "normal",
    quantile: (u) => mean + standardDeviation * normalQuantile(u),
    cdf: (x) => normalCdf((x - mean) / standardDeviation),
    moments: () => ({ mean, standardDeviation }),
    ends: [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY],
  };
}

/** @internal A distribution whose logarithm is normal; `factor` is the exponential of the deviation of that logarithm. */
export function logNormalShape(median: number, factor: number): Shape {
  const deviation = Math.log(factor);
  return {
    name: "log-normal",
    quantile: (u) => median * Math.exp(deviation * normalQuantile(u)),
    cdf: (x) => (x <= 0 ? 0 : normalCdf(Math.log(x / median) / deviation)),
    moments: () => {
      const mean = median * Math.exp(deviation ** 2 / 2);
      return { mean, standardDeviation: mean * Math.sqrt(Math.expm1(deviation ** 2)) };
    },
    ends: [0, Number.POSITIVE_INFINITY],
  };
}
