import type { ExponentNegation, ExponentSum } from "./exponent-sum.js";

/**
 * A dimension as one readable string: the exponents of metre, kilogram, second, ampere and kelvin, for example
 * `"m2 kg1 s-2 A0 K0"` for energy. One string costs the compiler less than an object of exponents.
 */
export type DimensionKey = string;

/** @internal The base units, in the order of a key. */
export const BASE = ["m", "kg", "s", "A", "K"] as const;

/** @internal The key of a pure number. */
export const NO_DIMENSION = "m0 kg0 s0 A0 K0";

/** @internal The key with these exponents; those left out are zero. */
export function keyOf(exponents: readonly (number | string | undefined)[]): DimensionKey {
  return BASE.map((unit, i) => unit + (exponents[i] ?? 0)).join(" ");
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

/** An exponent of a row of the table of dimensions, and what is left of the row. */
type FirstExponent<Row extends string> = Row extends `-${infer Digit}${infer Rest}`
  ? [`-${Digit}`, Rest]
  : Row extends `${infer Digit}${infer Rest}`
    ? [Digit, Rest]
    : ["0", ""];

/** @internal Key of a row of the table of dimensions: its exponents, where zeros at the end are left out. */
export type KeyOfRow<Row extends string, Units = typeof BASE> = Units extends readonly [
  infer Unit extends string,
  ...infer Others,
]
  ? FirstExponent<Row> extends [infer Exponent extends string, infer Rest extends string]
    ? Others extends readonly []
      ? `${Unit}${Exponent}`
      : `${Unit}${Exponent} ${KeyOfRow<Rest, Others>}`
    : never
  : never;
