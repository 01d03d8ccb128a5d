import { describeGiven } from "../check/describe-given.js";
import { isSame } from "../dimension/table.js";
import type { AnyUnit, UnitDimension, UnitOf } from "../unit/literal.js";
import { type Conversion, conversion, unitOf } from "../unit/unit.js";
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
   * Many numbers. Nothing is allocated when a target is given; with a Float64Array for both it is as fast as a bare loop.
   * @param values - numbers in the first unit; left as they are unless the target is the same array or shares its memory
   * @param target - filled and returned; a new Float64Array when left out. The values themselves, to convert in place
   * @throws QuantityError `NUMBER_SYNTAX` when the lengths differ, and nothing was changed; `NOT_FINITE`, with the index, when
   *   a value is no finite number or becomes too large, and what the target holds then is of no use
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
  const known = conversion(source, target);
  const { n, c, d } = known;
  const convert = (value: number, index?: number): number => {
    const number = typeof value === "number" ? (value * n + c) / d : Number.NaN;
    return Number.isFinite(number) ? number : refuse(value, index);
  };
  const array = <A extends number[] | Float64Array | Float32Array>(values: ArrayLike<number>, out?: A): A => {
    const length = lengthOf("the values", values);
    const filled = (out ?? new Float64Array(length)) as A;
    const room = lengthOf("the target", filled);
    if (room !== length) fail("NUMBER_SYNTAX", `the target must be as long as the values: got ${room} for ${length}`);
    if (values instanceof Float64Array && filled instanceof Float64Array) fill(values, filled, known);
    else for (let i = 0; i < length; i++) filled[i] = convert(values[i] as number, i);
    return filled;
  };
  return Object.freeze(Object.assign((value: number) => convert(value), { array }));
}

/** A length beyond this is a mistake, and would end in an error of the engine. */
const LONGEST = 1e8;

function lengthOf(name: string, numbers: unknown): number {
  const { length } = Object(typeof numbers === "object" ? numbers : undefined) as { length?: unknown };
  if (typeof length === "number" && Number.isInteger(length) && length >= 0 && length <= LONGEST) return length;
  return fail("NUMBER_SYNTAX", `${name} must be an array of at most ${LONGEST} numbers: got ${describeGiven(numbers)}`);
}

/** Converts doubles; those that overlap are moved first, as the copy knows in which order. */
function fill(values: Float64Array, target: Float64Array, known: Conversion): void {
  if (values !== target && values.buffer === target.buffer) {
    target.set(values);
    fill(target, target, known);
    return;
  }
  const { n, c, d } = known;
  // What is no finite number makes its sum NaN. Two sums, as one would wait for its last addition at every value.
  let even = 0;
  let odd = 0;
  for (let i = 0; i < values.length; i += 2) {
    const one = ((values[i] as number) * n + c) / d;
    const other = ((values[i + 1] ?? 0) * n + c) / d;
    target[i] = one;
    target[i + 1] = other; // beyond the end of a typed array nothing is written
    even += one - one;
    odd += other - other;
  }
  if (even + odd !== 0) {
    const index = target.findIndex((number) => !Number.isFinite(number));
    refuse(values[index], index);
  }
}

function refuse(value: unknown, index?: number): never {
  const size = typeof value === "number" && Number.isFinite(value) ? "too large" : "no finite number";
  const where = index === undefined ? "" : ` at index ${index}`;
  return fail("NOT_FINITE", `a number to convert${where} is ${size}: got ${describeGiven(value)}`);
}
