import { describeGiven } from "../check/describe-given.js";
import { isSame } from "../dimension/table.js";
import type { AnyUnit, UnitDimension, UnitOf } from "../unit/literal.js";
import { conversion, unitOf } from "../unit/unit.js";
import { fail } from "./errors.js";
import { mismatch } from "./mismatch.js";

/** Converts numbers, for loops and tables where a quantity object a value would be too much. */
export interface Converter {
  /**
   * One number.
   * @param value - finite number in the first unit
   * @throws QuantityError `NOT_FINITE` when it is none, or becomes too large
   */
  (value: number): number;
  /**
   * Many numbers.
   * @param values - numbers in the first unit; left as they are unless also given as `target`
   * @param target - filled and returned; a new Float64Array when left out
   * @throws QuantityError `NUMBER_SYNTAX` when the lengths differ, `NOT_FINITE` when a value is no finite number; the target
   *   is then filled up to that value
   */
  array<T extends number[] | Float64Array | Float32Array = Float64Array>(values: ArrayLike<number>, target?: T): T;
}

/**
 * A function that converts plain numbers from one unit to another, as fast as the multiplication.
 *
 * @param from - text of the unit of the numbers given
 * @param to - text of the unit wanted, of the same dimension and kind
 * @throws QuantityError `WRONG_DIMENSION`, `WRONG_KIND`, `UNKNOWN_UNIT`, `UNIT_SYNTAX`
 * @example
 * converter("mph", "m/s")(100); // 44.704
 */
export function converter<const F extends string, const T extends string>(
  from: AnyUnit<F>,
  to: UnitOf<T, UnitDimension<F>>,
): Converter {
  const source = unitOf(from);
  const target = unitOf(to);
  if (!isSame(source.dimension, target.dimension)) {
    mismatch(
      source.dimension,
      target.dimension,
      (given, expected) =>
        `'${source.text}' measures ${given}, '${target.text}' measures ${expected}: there is no conversion between them`,
    );
  }
  const { n, c, d } = conversion(source, target);
  const convert = (value: number): number => {
    const number = typeof value === "number" ? (value * n + c) / d : Number.NaN;
    return Number.isFinite(number) ? number : refuse(value);
  };
  const array = <A extends number[] | Float64Array | Float32Array>(values: ArrayLike<number>, out?: A): A => {
    const length = lengthOf("the values", values);
    const filled = (out ?? new Float64Array(length)) as A;
    const room = lengthOf("the target", filled);
    if (room !== length) fail("NUMBER_SYNTAX", `the target must be as long as the values: got ${room} for ${length}`);
    for (let i = 0; i < length; i++) filled[i] = convert(values[i] as number);
    return filled;
  };
  return Object.freeze(Object.assign(convert, { array }));
}

/** A length beyond this is a mistake, and would end in an error of the engine. */
const LONGEST = 1e8;

function lengthOf(name: string, numbers: unknown): number {
  const { length } = Object(typeof numbers === "object" ? numbers : undefined) as { length?: unknown };
  if (typeof length === "number" && Number.isInteger(length) && length >= 0 && length <= LONGEST) return length;
  return fail("NUMBER_SYNTAX", `${name} must be an array of at most ${LONGEST} numbers: got ${describeGiven(numbers)}`);
}

function refuse(value: unknown): never {
  const size = typeof value === "number" && Number.isFinite(value) ? "too large" : "no finite number";
  return fail("NOT_FINITE", `a number to convert is ${size}: got ${describeGiven(value)}`);
}
