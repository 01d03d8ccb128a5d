import { interpolate } from "../check/interpolate.js";
import type { AcceptanceCurve } from "./acceptance.js";

/** Parts that a window is cut into: the curves are straight in between, so the error is of the order of one in a million. */
const PARTS = 2000;

/** @internal Mean C-rate in 1/h of a charge that follows a curve from one state of charge to another: charge over ∫ds/c. */
export function meanRateAlong({ stateOfCharge, rate }: AcceptanceCurve, from: number, to: number): number {
  const step = (to - from) / PARTS;
  let hours = 0;
  for (let i = 0; i < PARTS; i++) hours += step / interpolate(stateOfCharge, rate, from + (i + 0.5) * step);
  return (to - from) / hours;
}
