import type { KeyProduct, KeyReciprocal } from "./key.js";
import type { NamedDimensions, Ratio } from "./names.js";
import type { DimensionName, DimensionNamed, LabelOf } from "./table.js";

/**
 * What a quantity measures: its dimension and, where several things share a dimension, which of them it is.
 *
 * @typeParam Key - exponents of the SI base units, such as `"m2 kg1 s-2 A0 K0"`.
 * @typeParam Kind - `""` for the plain reading of the dimension (energy), otherwise the other thing it can be (torque).
 */
export interface Dimension<Key extends string = string, Kind extends string = string> {
  /** Exponents of metre, kilogram, second, ampere and kelvin. */
  readonly key: Key;
  /** Which of the things that share this dimension; empty for the plain one. */
  readonly kind: Kind;
}

/** @internal The dimension with this key and kind, under its name when it has one, so that editors show the name. */
export type DimensionOf<Key extends string, Kind extends string> = `${Key}|${Kind}` extends infer Id extends
  keyof NamedDimensions
  ? NamedDimensions[Id]
  : Dimension<Key, Kind>;

/** Dimension of a product: it drops the kind, except that a pure number changes nothing. */
export type Product<X extends Dimension, Y extends Dimension> = Y extends Ratio
  ? X
  : X extends Ratio
    ? Y
    : DimensionOf<KeyProduct<X["key"], Y["key"]>, "">;

/**
 * @internal What a quotient is by definition, where that is not the plain reading of its dimension: an energy per a length is an
 * energy per distance.
 */
export const quotients = {
  "energy/length": "energy per distance",
  "energy/mass": "specific energy",
  "energy/volume": "energy density",
  "length/energy": "distance per energy",
  "ratio/energy per distance": "distance per energy",
  "ratio/distance per energy": "energy per distance",
  "angle/time": "angular velocity",
} as const satisfies Readonly<Record<string, DimensionName>>;

/** Dimension of a quotient. It has the kind that its two sides define. */
export type Quotient<X extends Dimension, Y extends Dimension> = Y extends Ratio
  ? X
  : DimensionOf<
      KeyProduct<X["key"], KeyReciprocal<Y["key"]>>,
      `${LabelOf<X["key"], X["kind"]>}/${LabelOf<Y["key"], Y["kind"]>}` extends infer Id extends keyof typeof quotients
        ? (typeof quotients)[Id]
        : ""
    >;

/** What may be added to D: a difference to a temperature, otherwise the same thing. */
export type Addend<D extends Dimension> = D["kind"] extends "temperature" ? DimensionOf<D["key"], ""> : D;

/** What the difference of two D is. */
export type DifferenceOf<D extends Dimension> = Addend<D>;

/** The reading of a dimension that has this name. */
export type Stated<Name extends DimensionName> = DimensionNamed<Name>;
