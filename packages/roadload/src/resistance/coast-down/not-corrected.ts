import type { RunRead } from "./read-runs.js";

/** Cross wind up to which a test is valid, in km/h: SAE J1263, seen in a summary. */
const MOST_CROSS_WIND = 8;
/** What a cross wind is judged at, in km/h: SAE J1263 looks at it first (seen in a summary). */
const JUDGED_AT = 80;

/** Why drag at an angle is not corrected: without the angle nothing can be, with it the vehicle's own curve is missing. */
const YAW =
  "yaw: correcting it (SAE J2263, from memory) needs the angle of the air at every row and the vehicle's drag over it";

/** What a coast-down analysis leaves in its coefficients, for its result. @internal */
export function notCorrected(runs: readonly RunRead[]): string[] {
  return [
    YAW,
    ...(runs.every(({ windGiven }) => windGiven)
      ? []
      : ["wind along the path that was not given: opposite runs leave C·w² of it in A"]),
  ];
}

/** A warning when the wind from the side is more than a procedure allows, or unknown to it. @internal */
export function crossWindWarning(runs: readonly RunRead[]): string[] {
  const strongest = 3.6 * Math.max(0, ...runs.map(({ crossWind }) => Math.abs(crossWind ?? 0)));
  if (strongest <= MOST_CROSS_WIND) return [];
  const angle = (Math.atan2(strongest, JUDGED_AT) * 180) / Math.PI;
  const faster = 100 * (Math.hypot(1, strongest / JUDGED_AT) - 1);
  return [
    `a cross wind of ${strongest.toFixed(1)} km/h is more than the ${MOST_CROSS_WIND} km/h of SAE J1263: at ${JUDGED_AT} km/h the air comes at ` +
      `${angle.toFixed(1)}°, ${faster.toFixed(1)} % faster, and drag can rise by 10 % within small angles: yaw is not corrected`,
  ];
}
