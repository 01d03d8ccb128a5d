import type { Pieces } from "../cycle/pieces.js";
import type { SplitNumbers } from "../resistance/road-load-numbers.js";
import { findForceRoots } from "./force-roots.js";

/** Two-point Gauss quadrature: the points lie this part, 1/√3, of half the step beside its middle. @internal */
export const GAUSS = 0.577_350_269_189_625_8;

/** Moments of a drive that stand for all of it: power at the wheels, speed, and for how long. SI units. @internal */
export interface WheelPoints {
  /** Number of points that are filled. */
  count: number;
  readonly power: Float64Array;
  readonly speed: Float64Array;
  readonly seconds: Float64Array;
}

/** Room for the points of any vehicle; kept by the caller, so that no vehicle allocates. @internal */
export function newWheelPoints({ count }: Pieces): WheelPoints {
  // A piece has three parts at most, of two points each.
  const list = () => new Float64Array(6 * count);
  return { count: 0, power: list(), speed: list(), seconds: list() };
}

/**
 * Fills in the two points of Gauss of every piece of a cycle, driven as tabled, or of its parts on either side of a change of
 * sign of the force. What is not covered is standstill.
 *
 * @internal
 */
export function fillWheelPoints(pieces: Pieces, numbers: SplitNumbers, points: WheelPoints): void {
  const { duration, from, to } = pieces;
  const { linear, quadratic, inertiaMass } = numbers;
  const { power, speed, seconds } = points;
  const constant = numbers.constant + numbers.gradeForce;
  const monotone = linear >= 0 && quadratic >= 0;
  const roots = { low: Number.NaN, high: Number.NaN };
  let count = 0;
  for (let i = 0; i < pieces.count; i++) {
    const first = from[i] as number;
    const last = to[i] as number;
    const dt = duration[i] as number;
    const k = constant + (inertiaMass * (last - first)) / dt;
    const before = k + first * (linear + quadratic * first);
    const after = k + last * (linear + quadratic * last);
    const whole = monotone && before * after >= 0;
    if (!whole) findForceRoots(k, linear, quadratic, first, last, roots);
    let v = first;
    for (let part = whole ? 2 : 0; part < 3; part++) {
      const next = part === 0 ? roots.low : part === 1 ? roots.high : last;
      if (Number.isNaN(next)) continue;
      const half = (next === last && v === first ? dt : (dt * (next - v)) / (last - first)) / 2;
      const middle = (v + next) / 2;
      const beside = ((next - v) / 2) * GAUSS;
      const one = middle - beside;
      const other = middle + beside;
      speed[count] = one;
      power[count] = one * (k + one * (linear + quadratic * one));
      seconds[count++] = half;
      speed[count] = other;
      power[count] = other * (k + other * (linear + quadratic * other));
      seconds[count++] = half;
      v = next;
    }
  }
  points.count = count;
}
