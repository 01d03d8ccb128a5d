import { describeGiven } from "../check/describe-given.js";
import { isRecord } from "../check/shapes.js";
import { isSame } from "../dimension/table.js";
import type { AnyUnit, UnitDimension } from "../unit/literal.js";
import { unitOf } from "../unit/unit.js";
import { fail } from "./errors.js";
import { mismatch } from "./mismatch.js";
import type { Quantity, QuantityJSON } from "./quantity.js";
import { makeQuantity } from "./value.js";

/**
 * A quantity from its JSON form.
 *
 * @param json - what `toJSON` gave, or anything: it is checked
 * @param like - any unit of the dimension wanted, such as `"kg"`
 * @throws QuantityError `BAD_JSON`, `WRONG_DIMENSION`, `WRONG_KIND`, `NOT_FINITE`, `UNIT_SYNTAX`, `UNKNOWN_UNIT`
 * @example
 * quantityFromJSON(JSON.parse('{"value":2.61,"unit":"t","kind":""}'), "kg").in("kg"); // 2610
 */
export function quantityFromJSON<const S extends string>(json: unknown, like: AnyUnit<S>): Quantity<UnitDimension<S>> {
  const { value, unit, kind } = (isRecord(json) ? json : {}) as Partial<QuantityJSON>;
  if (typeof value !== "number" || typeof unit !== "string" || typeof kind !== "string") {
    fail("BAD_JSON", `expected {"value": number, "unit": text, "kind": text}: got ${describeGiven(json)}`);
  }
  const read = unitOf(unit);
  const held = { key: read.dimension.key, kind };
  const wanted = unitOf(like).dimension;
  if (!isSame(held, wanted)) {
    mismatch(held, wanted, (given, expected) => `the JSON holds ${given}: expected ${expected}`);
  }
  return makeQuantity(value, read, kind);
}
