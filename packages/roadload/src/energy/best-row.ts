import type { RangeCurveRow } from "./range-curve.js";

/** Parts of the span that are looked at before the best one is searched more closely. */
const PARTS = 64;

/** (√5 − 1)/2 */
const GOLDEN = 0.618_033_988_749_894_9;

const NARROWINGS = 40;

/** The row of the longest range: the best of some parts, then golden sections around it. @internal */
export function bestOf(
  rowAt: (speed: number) => RangeCurveRow | undefined,
  from: number,
  to: number,
): RangeCurveRow | undefined {
  const metres = (speed: number): number => rowAt(speed)?.range.in("m") ?? 0;
  const step = (to - from) / PARTS;
  let best = from;
  for (let i = 1; i <= PARTS; i++) {
    const speed = i === PARTS ? to : from + step * i;
    if (metres(speed) > metres(best)) best = speed;
  }
  let low = Math.max(from, best - step);
  let high = Math.min(to, best + step);
  for (let i = 0; i < NARROWINGS; i++) {
    const left = high - GOLDEN * (high - low);
    const right = low + GOLDEN * (high - low);
    if (metres(left) < metres(right)) low = left;
    else high = right;
  }
  const middle = (low + high) / 2;
  return rowAt(metres(middle) >= metres(best) ? middle : best);
}
