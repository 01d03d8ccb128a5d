import type { NumberRule } from "@tarewatt/units";
import type { EvidenceRead } from "./evidence.js";

/**
 * The distribution behind low/likely/high: two half-triangles that meet at the median. Its 10th, 50th and 90th percentiles are
 * exactly the three figures given, its tails end, and its quantile needs a square root only, which every engine rounds alike,
 * so that the same draws come out everywhere.
 *
 * From the median (mass ½ on each side) the density falls linearly to zero at a distance r, so the quantile below the
 * median is `likely − r·(1 − √(2u))`; the 10th percentile fixes r = (likely − low)/(1 − √0.2). Where a limit of what makes sense
 * comes first, the outermost tenth is drawn in to end there, and the three figures stay what they are.
 */

/** @internal Where an undisturbed tail ends, in half-widths: 1.81. */
export const REACH = 1 / (1 - /* @__PURE__ */ Math.sqrt(0.2));

/** @internal The value below which a share u of the distribution lies, 0 ≤ u ≤ 1. */
export function quantileOf(
  { low, likely, high, reach: [below, above] }: Omit<EvidenceRead, "grade" | "source">,
  u: number,
): number {
  return u < 0.5
    ? likely - (likely - low) * halfWidths(2 * u, below)
    : likely + (high - likely) * halfWidths(2 * (1 - u), above);
}

/** Distance from the median, in half-widths, of the point that a share v of its side lies beyond. */
function halfWidths(v: number, reach: number): number {
  const distance = REACH * (1 - Math.sqrt(v));
  return distance <= 1 ? distance : 1 + ((distance - 1) * (reach - 1)) / (REACH - 1);
}

/** @internal Where the tails end, in half-widths, so that they stay within the rule. */
export function reachWithin(
  { low, likely, high }: { readonly low: number; readonly likely: number; readonly high: number },
  { atLeast, above, atMost }: NumberRule,
): readonly [below: number, above: number] {
  const floor = Math.max(atLeast ?? Number.NEGATIVE_INFINITY, above ?? Number.NEGATIVE_INFINITY);
  const within = (room: number, halfWidth: number): number =>
    halfWidth === 0 ? REACH : Math.min(REACH, room / halfWidth);
  return [within(likely - floor, likely - low), within((atMost ?? Number.POSITIVE_INFINITY) - likely, high - likely)];
}
