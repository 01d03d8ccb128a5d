import { interpolate } from "../check/interpolate.js";
import { publishedAcceptance, type Quantiles } from "./published-acceptance.js";

/** Where a figure stands among published ones. */
export interface Standing {
  /** Share of the published curves below it, 0.1 to 0.9; nothing is known further out. */
  readonly percentile: number;
  /** Whether it lies beyond the 10th or the 90th percentile, where the percentile is only a bound. */
  readonly beyond?: "below" | "above";
  /** By how much, as a share of that percentile: 0.2 above is a fifth more. Absent within them. */
  readonly beyondBy?: number;
  /** The same in words. */
  readonly inWords: string;
}

/** @internal Places a value among quantiles, linearly between them, and says so in words. */
export function percentileAmong(value: number, quantiles: Quantiles, more: string, less: string): Standing {
  const { p10, p25, median, p75, p90 } = quantiles;
  const percentile = interpolate([p10, p25, median, p75, p90], [0.1, 0.25, 0.5, 0.75, 0.9], value);
  const among = `of ${publishedAcceptance.curves} published curves`;
  if (value > p90) {
    const beyondBy = value / p90 - 1;
    return Object.freeze({ percentile, beyond: "above", beyondBy, inWords: `${more} than at least 90 % ${among}` });
  }
  if (value < p10) {
    const beyondBy = 1 - value / p10;
    return Object.freeze({ percentile, beyond: "below", beyondBy, inWords: `${less} than at least 90 % ${among}` });
  }
  const percent = Math.round(percentile * 100);
  const inWords = percent >= 50 ? `${more} than ${percent} % ${among}` : `${less} than ${100 - percent} % ${among}`;
  return Object.freeze({ percentile, inWords });
}
