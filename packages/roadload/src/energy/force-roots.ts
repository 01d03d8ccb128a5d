/** Speeds at which the wheel force changes its sign within a piece, in the order in which they are driven. @internal */
export interface ForceRoots {
  /** The first; NaN when there is none. */
  low: number;
  /** The second; NaN when there is none. */
  high: number;
}

/**
 * Finds the roots of the wheel force k + b·v + c·v² strictly between the speeds of a piece.
 *
 * Within a piece the acceleration is constant, so m·a is part of k. The quadratic is solved in the form that does not
 * subtract nearly equal numbers (Numerical Recipes, section on quadratic and cubic equations; from memory).
 *
 * @param k - N, road load's constant term with m·a
 * @param b - N/(m/s)
 * @param c - N/(m/s)²
 * @param from - speed at the start of the piece, in m/s
 * @param to - speed at its end, in m/s
 * @param roots - where the answer is written
 * @internal
 */
export function findForceRoots(k: number, b: number, c: number, from: number, to: number, roots: ForceRoots): void {
  roots.low = Number.NaN;
  roots.high = Number.NaN;
  const discriminant = b * b - 4 * c * k;
  if (!(discriminant > 0)) return;
  const half = -(b + (b < 0 ? -1 : 1) * Math.sqrt(discriminant)) / 2;
  const one = c === 0 ? Number.NaN : half / c;
  const two = half === 0 ? Number.NaN : k / half;
  const hasOne = (one - from) * (to - one) > 0;
  const hasTwo = (two - from) * (to - two) > 0;
  if (hasOne && hasTwo) {
    const oneFirst = one < two === from < to;
    roots.low = oneFirst ? one : two;
    roots.high = oneFirst ? two : one;
  } else if (hasOne) roots.low = one;
  else if (hasTwo) roots.low = two;
}
