import type { Addend, DifferenceOf, Dimension, Product, Quotient, Stated } from "../dimension/dimension.js";
import type { Ratio } from "../dimension/names.js";
import type { KindName } from "../dimension/table.js";
import type { UnitOf } from "../unit/literal.js";

/**
 * What every quantity shows, whatever it measures; accepted where any quantity will do.
 *
 * As a text, in `${quantity}` and `String(quantity)`, it prints itself; so it does in consoles and notebooks.
 */
export interface AnyQuantity {
  /** The number, in {@link AnyQuantity.unit}. Finite. */
  readonly value: number;
  /** The unit that it was given in, or that a calculation left. */
  readonly unit: string;
  /** What it measures. */
  readonly dimension: Dimension;
  /** A plain object for JSON. */
  toJSON(): QuantityJSON;
  /** The value with its unit, with at most six significant digits. */
  toString(): string;
}

/** A quantity as JSON: value, unit and kind; the kind is empty for the plain reading of the dimension. */
export interface QuantityJSON {
  /** The number, in `unit`. */
  readonly value: number;
  /** The unit's text. */
  readonly unit: string;
  /** The kind, as in {@link Dimension}. */
  readonly kind: string;
}

/** How to print a quantity. */
export interface FormatOptions {
  /** Significant digits, 1 to 15; 3 when left out. Trailing zeros are kept: they are a statement. */
  readonly digits?: number | undefined;
  /** Print in this unit instead of the quantity's own. */
  readonly unit?: string | undefined;
}

type IsPoint<D extends Dimension> = D["kind"] extends "temperature" ? true : false;
/** What keeps temperature points out of products: `unknown` where a product makes sense, otherwise the reason it does not. */
export type NotPoints<X extends Dimension, Y extends Dimension> = true extends IsPoint<X> | IsPoint<Y>
  ? "⚠ a temperature point cannot be multiplied: use a difference, or its number in kelvin"
  : unknown;

/**
 * A number with a unit, and what it measures. Immutable; it keeps the unit that it was given in until told otherwise.
 *
 * Make one with {@link q} or {@link quantity}. Arithmetic checks dimensions and kinds in the type system and at run time.
 *
 * Operators do not work on quantities: `<`, `>`, `+`, `-` and `==` with a text or a number throw a QuantityError
 * `NOT_A_PLAIN_NUMBER`, as they would compare or join texts; the compiler cannot forbid them. Compare with
 * {@link Quantity.compareTo}, and give it to `sort`, too: `masses.sort((a, b) => a.compareTo(b))`. Without a comparator
 * `sort` orders by the printed texts, where 10 kg stands before 9 kg.
 *
 * A copy made by spreading or by `structuredClone` (a worker's message) is no quantity, as it loses the methods: send what
 * {@link AnyQuantity.toJSON} gives and read it with {@link quantityFromJSON}.
 *
 * @typeParam D - the dimension, such as `Energy`
 * @example
 * q("255 Wh/kg").times(q("400 kg")).in("kWh"); // 102
 */
export interface Quantity<in out D extends Dimension> extends AnyQuantity {
  readonly dimension: D;
  /**
   * The number in another unit of the same dimension and kind.
   * @param unit - text of a unit, such as `"Wh/km"`
   * @throws QuantityError `WRONG_DIMENSION`, `WRONG_KIND`, `UNKNOWN_UNIT`, `UNIT_SYNTAX`
   */
  in<const S extends string>(unit: UnitOf<S, D>): number;
  /**
   * The same quantity, shown in another unit.
   * @param unit - text of a unit, such as `"Wh/km"`
   * @throws QuantityError as {@link Quantity.in}
   */
  to<const S extends string>(unit: UnitOf<S, D>): Quantity<D>;
  /**
   * Sum, in the unit of this quantity. A temperature takes a temperature difference.
   * @param other - what to add
   * @throws QuantityError `WRONG_DIMENSION`, `WRONG_KIND`, `TEMPERATURE_POINT`
   */
  plus(other: Quantity<Addend<D>>): Quantity<D>;
  /**
   * Difference, in the unit of this quantity. Two temperatures leave a temperature difference.
   * @param other - what to subtract
   * @throws QuantityError `WRONG_DIMENSION`, `WRONG_KIND`, `TEMPERATURE_POINT`
   */
  minus(other: Quantity<Addend<D>>): Quantity<D>;
  /** Difference of two quantities; of two temperatures, a temperature difference. */
  minus(other: Quantity<D>): Quantity<DifferenceOf<D>>;
  /**
   * Product with a number or a quantity; units are kept as symbols, equal ones cancel (Wh/kg × kg = Wh).
   * @param factor - a finite number, or a quantity that is not a temperature point
   * @throws QuantityError `TEMPERATURE_POINT`, `NOT_FINITE`
   */
  times(factor: number): Quantity<D>;
  /** Product with another quantity. */
  times<E extends Dimension>(factor: Quantity<E> & NotPoints<D, E>): Quantity<Product<D, E>>;
  /**
   * Quotient by a number or a quantity. An energy per a distance, a mass or a volume is what it says.
   * @param divisor - a number or quantity that is not zero
   * @throws QuantityError `DIVISION_BY_ZERO`, `TEMPERATURE_POINT`, `NOT_FINITE`
   */
  per(divisor: number): Quantity<D>;
  /** Quotient by another quantity. */
  per<E extends Dimension>(divisor: Quantity<E> & NotPoints<D, E>): Quantity<Quotient<D, E>>;
  /** The reciprocal: Wh/mi becomes mi/Wh. Never done silently. */
  inverse(): Quantity<Quotient<Ratio, D>>;
  /** This divided by another of the same kind, as a plain number. */
  ratioTo(other: Quantity<D>): number;
  /** The same size without its sign. */
  abs(): Quantity<D>;
  /** Below zero, zero or above zero as this is less than, equal to or more than the other. */
  compareTo(other: Quantity<D>): number;
  /**
   * States which of the things that share this dimension is meant: a newton metre that is a torque.
   * @param kind - its name, such as `"torque"`
   * @throws QuantityError `WRONG_KIND` when the dimension has no such kind
   */
  as<const N extends KindName<D>>(kind: N): Quantity<Stated<N>>;
  /**
   * Prints with a stated number of significant digits, digits grouped by thin spaces.
   * @param options - digits and unit
   * @throws QuantityError `UNKNOWN_OPTION`, `NUMBER_SYNTAX` for digits that are no whole number from 1 to 15, and as
   *   {@link Quantity.in}; `NOT_AN_OBJECT`
   */
  format(options?: FormatOptions): string;
}
