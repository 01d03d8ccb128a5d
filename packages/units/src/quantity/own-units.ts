import { describeGiven } from "../check/describe-given.js";
import { readRecord } from "../check/shapes.js";
import type { Dimension } from "../dimension/dimension.js";
import { isSame, type OwnUnits } from "../dimension/table.js";
import { parseUnit } from "../unit/grammar.js";
import type { AnyUnit, QuantityLiteral, UnitDimension, UnitOf, UnitText } from "../unit/literal.js";
import { builtIn, conversion, unitOf, unitSystem } from "../unit/unit.js";
import { fail } from "./errors.js";
import type { Quantity } from "./quantity.js";
import { readLiteral } from "./read-literal.js";
import { assertQuantity, makeQuantity } from "./value.js";

/** Readers that know units of your own beside the built-in ones. */
export interface OwnUnitReaders<Own extends OwnUnits> {
  /**
   * As `q`.
   * @param text - number and unit
   */
  q<const S extends string>(text: QuantityLiteral<S, Own>): Quantity<UnitDimension<UnitText<S>, Own>>;
  /**
   * As `quantity`.
   * @param value - finite number
   * @param unit - text of the unit
   */
  quantity<const S extends string>(value: number, unit: AnyUnit<S, Own>): Quantity<UnitDimension<S, Own>>;
  /**
   * The number of a quantity in a unit that may be your own.
   * @param quantity - any quantity
   * @param unit - text of a unit of the same dimension and kind
   */
  in<D extends Dimension, const S extends string>(quantity: Quantity<D>, unit: UnitOf<S, D, Own>): number;
}

/**
 * Readers for units of your own, typed like the built-in ones. Nothing is registered: only these readers know them, and the
 * quantities they make mix with all others.
 *
 * @param own - definitions by symbol, in built-in units and exact decimals, such as `{ furlong: "660 ft" }`; a symbol is
 *   letters, and none that is built in
 * @throws QuantityError `UNIT_SYNTAX` for a symbol that cannot be one, and what reading a unit throws; InputError
 *   `NOT_AN_OBJECT`
 * @example
 * const mine = unitsWith({ furlong: "660 ft", pallet: "25 kg" });
 * mine.q("8 furlong").in("mi"); // 1
 * mine.in(q("500 kg"), "pallet"); // 20
 */
export function unitsWith<const Own extends OwnUnits>(own: Own): OwnUnitReaders<Own> {
  const definitions = Object.entries(readRecord("the units of your own", own));
  for (const [symbol, definition] of definitions) {
    if (!/^\p{L}+$/u.test(symbol) || builtIn.definitions.has(symbol)) {
      fail("UNIT_SYNTAX", `'${symbol}' cannot be a unit of your own: use letters, and no symbol that is built in`);
    }
    if (typeof definition !== "string") {
      fail(
        "UNIT_SYNTAX",
        `the unit '${symbol}' must be defined by a text such as "660 ft": got ${describeGiven(definition)}`,
      );
    }
    // Read here once, by built-in units alone, so that a mistake or a circle shows now and not where the unit is used
    parseUnit(definition, builtIn.definitions);
  }
  const system = unitSystem(definitions as [string, string][]);
  return Object.freeze({
    q: (text: string) => {
      const { value, unit } = readLiteral(text, system);
      return makeQuantity(value, unit);
    },
    quantity: (value: number, unit: string) => {
      const read = unitOf(unit, system);
      return makeQuantity(value, read);
    },
    in: (quantity: Quantity<Dimension>, unit: string) => {
      const to = unitOf(unit, system);
      // Its own conversion refuses what does not fit, with the reason; only a fitting one may name a unit it does not know.
      if (!isSame(assertQuantity(quantity).dimension, to.dimension)) return quantity.in(unit);
      const { n, c, d } = conversion(unitOf(quantity.unit, system), to);
      const number = (quantity.value * n + c) / d;
      return Number.isFinite(number) ? number : fail("NOT_FINITE", `${quantity} is too large to be given in ${unit}`);
    },
  }) as OwnUnitReaders<Own>;
}
