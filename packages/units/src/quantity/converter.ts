import { labelOf } from "../dimension/table.js";
import type { AnyUnit, UnitDimension, UnitOf } from "../unit/literal.js";
import { conversion, unitOf } from "../unit/unit.js";
import { fail } from "./errors.js";

/** Converts numbers, for loops and tables where a quantity object a value would be too much. */
export interface Converter {
  /** One number. */
  (value: number): number;
  /**
   * Many numbers.
   * @param values - numbers in the first unit; left as they are unless also given as `target`
   * @param target - filled and returned; a new Float64Array when left out
   * @throws QuantityError `NUMBER_SYNTAX` when the lengths differ
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
  if (source.dimension.key !== target.dimension.key || source.dimension.kind !== target.dimension.kind) {
    const given = labelOf(source.dimension);
    const expected = labelOf(target.dimension);
    fail(
      source.dimension.key === target.dimension.key ? "WRONG_KIND" : "WRONG_DIMENSION",
      `'${source.text}' measures ${given}, '${target.text}' measures ${expected}: there is no conversion between them`,
      { given, expected },
    );
  }
  const { n, c, d } = conversion(source, target);
  const convert = (value: number): number => (value * n + c) / d;
  const array = <A extends number[] | Float64Array | Float32Array>(values: ArrayLike<number>, out?: A): A => {
    const filled = (out ?? new Float64Array(values.length)) as A;
    if (filled.length !== values.length) {
      fail("NUMBER_SYNTAX", `the target must be as long as the values: got ${filled.length} for ${values.length}`);
    }
    for (let i = 0; i < values.length; i++) filled[i] = ((values[i] as number) * n + c) / d;
    return filled;
  };
  return Object.assign(convert, { array });
}
