import { InputError } from "@tarewatt/units";
import type { EvidenceRead } from "./evidence.js";

/**
 * The distribution behind low/likely/high: two half-triangles that meet at the median. Its 10th, 50th and 90th percentiles are
 * exactly the three figures given, its tails end, and its quantile needs a square root only, which every engine rounds alike,
 * so that the same draws come out everywhere.
 *
 * From the median (mass ½ on each side) the density falls linearly to zero at a distance r, so the quantile below the
 * median is `likely − r·(1 − √(2u))`; the 10th percentile fixes r = (likely − low)/(1 − √0.2).
 */

const REACH = 1 / (1 - Math.sqrt(0.2));

/** @internal The value below which a share u of the distribution lies, 0 ≤ u ≤ 1. */
export function quantileOf({ low, likely, high }: EvidenceRead, u: number): number {
  return u < 0.5
    ? likely - (likely - low) * REACH * (1 - Math.sqrt(2 * u))
    : likely + (high - likely) * REACH * (1 - Math.sqrt(2 * (1 - u)));
}

/** @internal Refuses evidence whose tails leave the range in which the input makes sense. */
export function checkReach(
  name: string,
  evidence: EvidenceRead,
  { unit, atLeast, above, atMost }: { unit: string; atLeast?: number; above?: number; atMost?: number },
): void {
  const smallest = quantileOf(evidence, 0);
  const largest = quantileOf(evidence, 1);
  const tooLow = (atLeast !== undefined && smallest < atLeast) || (above !== undefined && smallest <= above);
  if (!tooLow && (atMost === undefined || largest <= atMost)) return;
  const [end, limit] = tooLow ? [smallest, atLeast ?? above] : [largest, atMost];
  const suffix = unit === "1" ? "" : ` ${unit}`;
  throw new InputError(
    "OUT_OF_RANGE",
    `${name}: with low ${evidence.low}, likely ${evidence.likely} and high ${evidence.high}${suffix} the tail reaches ` +
      `${Number(end.toPrecision(3))}${suffix}, beyond the limit of ${limit}${suffix}; bring ${tooLow ? "low" : "high"} closer to likely`,
    { name, end, limit },
  );
}
