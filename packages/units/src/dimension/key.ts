import type { ExponentNegation, ExponentSum } from "./exponent-sum.js";

/**
 * A dimension as one readable string: the exponents of metre, kilogram, second, ampere and kelvin, for example
 * `"m2 kg1 s-2 A0 K0"` for energy. One string costs the compiler less than an object of exponents.
 */
export type DimensionKey = string;

/** The exponents behind a {@link DimensionKey}: metre, kilogram, second, ampere, kelvin. */
export type Exponents = readonly [m: number, kg: number, s: number, A: number, K: number];

/** @internal The key of a pure number. */
export const NO_DIMENSION = "m0 kg0 s0 A0 K0";

/** @internal */
export function keyOf([m, kg, s, A, K]: Exponents): DimensionKey {
  return `m${m} kg${kg} s${s} A${A} K${K}`;
}

type Sum<A extends string, B extends string> = A extends keyof ExponentSum
  ? B extends keyof ExponentSum[A]
    ? ExponentSum[A][B] & string
    : "too large"
  : "too large";
type Negated<A extends string> = A extends keyof ExponentNegation ? ExponentNegation[A] : "too large";

/** @internal Key of a product. A key that is not written out (plain `string`) stays unknown. */
export type KeyProduct<
  X extends string,
  Y extends string,
> = X extends `m${infer a} kg${infer b} s${infer c} A${infer d} K${infer e}`
  ? Y extends `m${infer f} kg${infer g} s${infer h} A${infer i} K${infer j}`
    ? `m${Sum<a, f>} kg${Sum<b, g>} s${Sum<c, h>} A${Sum<d, i>} K${Sum<e, j>}`
    : string
  : string;

/** @internal Key of a reciprocal. */
export type KeyReciprocal<X extends string> = X extends `m${infer a} kg${infer b} s${infer c} A${infer d} K${infer e}`
  ? `m${Negated<a>} kg${Negated<b>} s${Negated<c>} A${Negated<d>} K${Negated<e>}`
  : string;
