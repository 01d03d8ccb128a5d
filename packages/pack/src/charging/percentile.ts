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

/** Mean C-rates by power over a window, in 1/h, of charges that follow the published curves from point to point. */
export interface RatesAlong {
  /** Along the tenth percentile. */
  readonly p10: number;
  /** Along the median. */
  readonly median: number;
  /** Along the ninetieth percentile. */
  readonly p90: number;
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

/** @internal Places a mean rate among the means along the three published curves, which are quantiles point by point. */
export function standingAlong(value: number, along: RatesAlong): Standing {
  const { p10, median, p90 } = along;
  const percentile = interpolate([p10, median, p90], [0.1, 0.5, 0.9], value);
  const of = `of ${publishedAcceptance.curves} published curves`;
  if (value > p90) {
    const inWords = `faster than along the 90th percentile ${of}, point by point`;
    return Object.freeze({ percentile, beyond: "above", beyondBy: value / p90 - 1, inWords });
  }
  if (value < p10) {
    const inWords = `slower than along the 10th percentile ${of}, point by point`;
    return Object.freeze({ percentile, beyond: "below", beyondBy: 1 - value / p10, inWords });
  }
  const between = value < median ? "the 10th percentile and the median" : "the median and the 90th percentile";
  return Object.freeze({ percentile, inWords: `between ${between} ${of}, point by point` });
}
