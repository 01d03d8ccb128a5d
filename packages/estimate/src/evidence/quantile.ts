import type { NumberRule } from "@tarewatt/units";
import type { EvidenceRead } from "./evidence.js";
import type { Shape } from "./shape.js";

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

type Percentiles = Pick<EvidenceRead, "low" | "likely" | "high" | "reach">;

/** @internal The value below which a share u of the distribution lies, 0 ≤ u ≤ 1. */
export function quantileOf(read: Percentiles & Pick<EvidenceRead, "shape">, u: number): number {
  if (read.shape !== undefined) return read.shape.quantile(u);
  const {
    low,
    likely,
    high,
    reach: [below, above],
  } = read;
  return u < 0.5
    ? likely - (likely - low) * halfWidths(2 * u, below)
    : likely + (high - likely) * halfWidths(2 * (1 - u), above);
}

/** @internal The same distribution with all that a shape knows. */
export function lowLikelyHighShape(read: Percentiles): Shape {
  const { low, likely, high, reach } = read;
  const [below, above] = [likely - low, high - likely];
  return {
    name: "low/likely/high",
    quantile: (u) => quantileOf(read, u),
    cdf: (x) =>
      x < likely
        ? shareBeyond((likely - x) / below, reach[0]) / 2
        : 1 - shareBeyond((x - likely) / above, reach[1]) / 2,
    moments: () => {
      const [down, up] = [halfMoments(reach[0]), halfMoments(reach[1])];
      const shift = (above * up.first - below * down.first) / 2;
      const square = (above ** 2 * up.second + below ** 2 * down.second) / 2;
      return { mean: likely + shift, standardDeviation: Math.sqrt(Math.max(0, square - shift ** 2)) };
    },
    ends: [likely - below * reach[0], likely + above * reach[1]],
  };
}

/** Distance from the median, in half-widths, of the point that a share v of its side lies beyond. */
function halfWidths(v: number, reach: number): number {
  const distance = REACH * (1 - Math.sqrt(v));
  return distance <= 1 ? distance : 1 + ((distance - 1) * (reach - 1)) / (REACH - 1);
}

/** The inverse of it; all of a side without width lies at the median. */
function shareBeyond(distance: number, reach: number): number {
  if (!(distance < reach)) return 0;
  const undisturbed = distance <= 1 ? distance : 1 + ((distance - 1) * (REACH - 1)) / (reach - 1);
  return (1 - undisturbed / REACH) ** 2;
}

/** Mean and mean square of the distance from the median, in half-widths, on one side. */
function halfMoments(reach: number): { readonly first: number; readonly second: number } {
  const stretch = (reach - 1) / (REACH - 1);
  // Integrals of (d − 1) and (d − 1)² over the outer fifth of the side, where d = r·(1 − √v)
  const outer = (REACH * 0.2 ** 1.5) / 3;
  const outerSquare = (REACH ** 2 * 0.2 ** 2) / 6;
  return {
    first: REACH / 3 + (stretch - 1) * outer,
    second: REACH ** 2 / 6 + 2 * (stretch - 1) * outer + (stretch ** 2 - 1) * outerSquare,
  };
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
