import { describeGiven } from "../check/describe-given.js";
import { isSame, POINT } from "../dimension/table.js";
import type { AnyUnit, QuantityLiteral, UnitDimension, UnitText } from "../unit/literal.js";
import { unitOf } from "../unit/unit.js";
import { fail } from "./errors.js";
import { mismatch } from "./mismatch.js";
import type { Quantity } from "./quantity.js";
import { readLiteral } from "./read-literal.js";
import { makeQuantity } from "./value.js";

/**
 * A quantity from a literal such as `"255 Wh/kg"`. The compiler reads the unit, so its type is known; so does the run time.
 *
 * Digits may be grouped in threes by spaces or commas (`"1 200 kg"`, `"3,500 lb"`); the decimal sign is a point. A leading
 * `Δ` makes a temperature a difference: `q("Δ10 K")`. A text without a unit is a pure number. A text that the compiler does
 * not know gives a quantity of unknown dimension: use {@link parseQuantity}.
 *
 * @param text - number and unit, at most 120 characters
 * @returns a quantity that keeps the unit it was given in
 * @throws QuantityError `NUMBER_SYNTAX`, `UNIT_SYNTAX`, `UNKNOWN_UNIT`
 * @example
 * q("15 kWh/100 km").in("Wh/km"); // 150
 */
export function q<const S extends string>(text: QuantityLiteral<S>): Quantity<UnitDimension<UnitText<S>>> {
  const { value, unit } = readLiteral(text);
  return makeQuantity(value, unit);
}

/**
 * A quantity from a number and a unit.
 *
 * @param value - finite number
 * @param unit - text of the unit
 * @throws QuantityError `NOT_FINITE`, `UNIT_SYNTAX`, `UNKNOWN_UNIT`
 * @example
 * quantity(255, "Wh/kg").in("kWh/kg"); // 0.255
 */
export function quantity<const S extends string>(value: number, unit: AnyUnit<S>): Quantity<UnitDimension<S>> {
  if (typeof value !== "number")
    fail("NOT_FINITE", `the value of a quantity must be a number: got ${describeGiven(value)}`);
  const read = unitOf(unit);
  return makeQuantity(value, read);
}

/**
 * A quantity from a text that is only known at run time, checked to be of the dimension of a given unit.
 *
 * @param text - number and unit, at most 120 characters
 * @param like - any unit of the dimension wanted, such as `"kg"`
 * @throws QuantityError `WRONG_DIMENSION`, `WRONG_KIND`, `NUMBER_SYNTAX`, `UNIT_SYNTAX`, `UNKNOWN_UNIT`
 * @example
 * parseQuantity("5,974 lb", "kg").in("kg"); // 2709.7608...
 */
export function parseQuantity<const S extends string>(text: string, like: AnyUnit<S>): Quantity<UnitDimension<S>> {
  const { value, unit } = readLiteral(text);
  const { text: example, dimension } = unitOf(like);
  if (!isSame(unit.dimension, dimension)) {
    const scale = dimension.kind === POINT && /^[CF]$/.test(unit.text) ? `: did you mean °${unit.text}?` : "";
    mismatch(
      unit.dimension,
      dimension,
      (given, expected) => `'${text}' measures ${given}: expected ${expected}, for example in ${example}${scale}`,
    );
  }
  return makeQuantity(value, unit);
}
