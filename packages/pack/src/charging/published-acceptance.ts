import type { Source } from "@tarewatt/units";
import { frozen } from "../check/frozen.js";
import type { AcceptanceCurve } from "./acceptance.js";

/** Quantiles of a figure over the published curves. */
export interface Quantiles {
  /** A tenth of the curves lie below. */
  readonly p10: number;
  /** A quarter lie below. */
  readonly p25: number;
  /** Half lie below. */
  readonly median: number;
  /** Three quarters lie below. */
  readonly p75: number;
  /** Nine tenths lie below. */
  readonly p90: number;
}

/** Charging curves as they were published, as a prior. Computed here from an open data set. */
export interface PublishedAcceptance {
  /** How many curves they are made of. */
  readonly curves: number;
  /** Tenth percentile of the C-rate at each state of charge. No vehicle need follow it. */
  readonly p10: AcceptanceCurve;
  /** Median at each state of charge. */
  readonly median: AcceptanceCurve;
  /** Ninetieth percentile. */
  readonly p90: AcceptanceCurve;
  /** Median share of the curve's own peak power at each state of charge: for a vehicle of which only the peak is known. */
  readonly shareOfPeak: {
    /** States of charge, 0 to 1, rising. */
    readonly stateOfCharge: readonly number[];
    /** Power over peak power at each, 0 to 1. */
    readonly share: readonly number[];
  };
  /** The charge from 10 to 80 %. */
  readonly from10To80: {
    /** Time in minutes. */
    readonly minutes: Quantiles;
    /** Mean C-rate by power in 1/h. */
    readonly meanRate: Quantiles;
    /** Peak C-rate by power in 1/h. */
    readonly peakRate: Quantiles;
    /** Mean over peak power, 0 to 1. */
    readonly meanOverPeak: Quantiles;
  };
  /** Where the curves are from. */
  readonly source: Source;
  /** What to keep in mind. */
  readonly traps: readonly string[];
}

const source: Source = {
  document: "open vehicle data set, frozen in April 2022, 74 explicit curves of cars of 2011 to 2021",
  section: "curves of the default shape left out; quantiles computed here",
  status: "seen",
};

const traps = [
  "Many of the curves are capped by a port of 50 kW, not by the cells.",
  "Cars after 2021 are missing, among them those of 800 V and of 3 to 5 C.",
  "The data set does not say where each curve is from, nor at which temperature it was read.",
  "Below 10 % the value at 10 % is kept: that is our assumption.",
] as const;

/** Below a tenth of the charge nothing is published; the first value is held. */
const stateOfCharge = [0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1];

/** A curve from its values at 10, 20 … 100 %. */
function curve(name: string, from10: readonly number[]): AcceptanceCurve {
  const rate = [from10[0] as number, ...from10];
  const warnings = [
    `the ${name} of 74 published charging curves of 2011 to 2021 stands for the battery: many were capped by a port of 50 kW, newer cars are faster`,
  ];
  return { name: `${name} of 74 published curves`, stateOfCharge, rate, source, warnings };
}

/**
 * How fast cars took a direct charge: quantiles of 74 published curves of 2011 to 2021.
 *
 * Dimensions: C-rate by power over usable energy, 1/h; state of charge, 0 to 1; minutes. Read `traps` before use. The
 * quantile curves are point by point, and no car's; a car that follows the median at every point is not the median car.
 *
 * @example
 * publishedAcceptance.from10To80.minutes.median; // 33.1
 */
export const publishedAcceptance: PublishedAcceptance = /* @__PURE__ */ frozen({
  curves: 74,
  p10: /* @__PURE__ */ curve("10th percentile", [1.02, 1.05, 1.07, 1.12, 1.09, 0.9, 0.65, 0.43, 0.26, 0.11]),
  median: /* @__PURE__ */ curve("median", [1.69, 1.64, 1.65, 1.54, 1.33, 1.18, 0.97, 0.83, 0.49, 0.23]),
  p90: /* @__PURE__ */ curve("90th percentile", [2.36, 2.28, 2.27, 2.32, 2.06, 1.79, 1.71, 1.31, 0.82, 0.42]),
  shareOfPeak: { stateOfCharge, share: [0.97, 0.97, 0.96, 0.97, 0.95, 0.86, 0.74, 0.62, 0.49, 0.3, 0.12] },
  from10To80: {
    minutes: { p10: 23.2, p25: 26.2, median: 33.1, p75: 38.4, p90: 46.7 },
    meanRate: { p10: 0.9, p25: 1.09, median: 1.27, p75: 1.6, p90: 1.81 },
    peakRate: { p10: 1.18, p25: 1.4, median: 1.72, p75: 2.07, p90: 2.54 },
    meanOverPeak: { p10: 0.63, p25: 0.69, median: 0.78, p75: 0.87, p90: 0.94 },
  },
  source,
  traps,
});
