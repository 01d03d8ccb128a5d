import type { Dimension } from "../dimension/dimension.js";
import { labelOf } from "../dimension/names.js";
import type { AnyUnit, QuantityLiteral, UnitDimension, UnitText } from "../unit/literal.js";
import { type Unit, unitOf } from "../unit/unit.js";
import { QuantityError } from "./errors.js";
import type { Quantity, QuantityJSON } from "./quantity.js";
import { describe, makeQuantity } from "./value.js";

/** Longest text that {@link q} reads. */
export const MAX_QUANTITY_LENGTH = 120;

const SPACE = "[ \\u00a0\\u202f]";
const NUMBER = new RegExp(
  `^(Δ?)\\s*([+\\-−]?)((?:\\d{1,3}(?:(?:${SPACE}|,)\\d{3})+|\\d+)(?:\\.\\d+)?|\\.\\d+)` +
    "(?:[eE]([+\\-−]?\\d{1,3})|×10(⁻?[⁰¹²³⁴⁵⁶⁷⁸⁹]{1,3}))?",
);

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
  const { value, unit } = read(text);
  return makeQuantity(value, unit, unit.kind);
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
  if (typeof value !== "number") {
    throw new QuantityError("NOT_FINITE", `the value of a quantity must be a number: got ${describe(value)}`, {});
  }
  const read = unitOf(asText(unit, "unit"));
  return makeQuantity(value, read, read.kind);
}

/**
 * A quantity from a text that is only known at run time, checked to be of the dimension of a given unit.
 *
 * @param text - number and unit, at most 120 characters
 * @param like - any unit of the dimension wanted, such as `"kg"`
 * @throws QuantityError `WRONG_DIMENSION`, `WRONG_KIND`, `NUMBER_SYNTAX`, `UNIT_SYNTAX`, `UNKNOWN_UNIT`
 * @example
 * parseQuantity("5,974 lb", "kg").in("kg"); // 2709.8...
 */
export function parseQuantity<const S extends string>(text: string, like: AnyUnit<S>): Quantity<UnitDimension<S>> {
  const { value, unit } = read(text);
  const wanted = unitOf(like);
  if (unit.key !== wanted.key || unit.kind !== wanted.kind) {
    const given = labelOf(unit.key, unit.kind);
    const expected = labelOf(wanted.key, wanted.kind);
    throw new QuantityError(
      unit.key === wanted.key ? "WRONG_KIND" : "WRONG_DIMENSION",
      `'${text}' measures ${given}: expected ${expected}, for example in ${wanted.text}`,
      { given, expected },
    );
  }
  return makeQuantity(value, unit, unit.kind);
}

/**
 * A quantity from its JSON form.
 *
 * @param json - what `toJSON` gave, or anything: it is checked
 * @param like - any unit of the dimension wanted, such as `"kg"`
 * @throws QuantityError `BAD_JSON`, and what {@link parseQuantity} throws
 * @example
 * quantityFromJSON(JSON.parse('{"value":2.61,"unit":"t","kind":""}'), "kg").in("kg"); // 2610
 */
export function quantityFromJSON<const S extends string>(json: unknown, like: AnyUnit<S>): Quantity<UnitDimension<S>> {
  const { value, unit, kind } = (typeof json === "object" && json !== null ? json : {}) as Partial<QuantityJSON>;
  if (typeof value !== "number" || typeof unit !== "string" || typeof kind !== "string") {
    throw new QuantityError(
      "BAD_JSON",
      `expected {"value": number, "unit": text, "kind": text}: got ${describe(json)}`,
      {},
    );
  }
  const read = unitOf(unit);
  const wanted = unitOf(like);
  if (read.key !== wanted.key || kind !== wanted.kind) {
    const given = labelOf(read.key, kind);
    const expected = labelOf(wanted.key, wanted.kind);
    throw new QuantityError(
      read.key === wanted.key ? "WRONG_KIND" : "WRONG_DIMENSION",
      `the JSON holds ${given}: expected ${expected}`,
      { given, expected },
    );
  }
  return makeQuantity<Dimension>(value, read, kind) as unknown as Quantity<UnitDimension<S>>;
}

function asText(text: unknown, what: string): string {
  if (typeof text === "string") return text;
  throw new QuantityError("UNIT_SYNTAX", `the ${what} must be a text such as "kg": got ${describe(text)}`, {});
}

function read(given: string): { value: number; unit: Unit } {
  const text = asText(given, "quantity").trim();
  if (text.length > MAX_QUANTITY_LENGTH) {
    throw new QuantityError("NUMBER_SYNTAX", `a quantity has at most ${MAX_QUANTITY_LENGTH} characters`, {});
  }
  const match = NUMBER.exec(text);
  if (match === null) {
    throw new QuantityError("NUMBER_SYNTAX", `'${text}' does not start with a number, such as "12.5 kg"`, { text });
  }
  const [all, delta = "", sign = "", digits = "", exponent, raised] = match;
  const rest = text.slice(all.length);
  if (/^,\d/.test(rest)) {
    throw new QuantityError(
      "NUMBER_SYNTAX",
      `'${text}': a comma groups digits in threes, the decimal sign is a point: write ${text.replace(",", ".")}`,
      { text },
    );
  }
  if (/^[ \u00a0\u202f]+\d/.test(rest) && !/^[ \u00a0\u202f]+1\s*\//.test(rest)) {
    throw new QuantityError("NUMBER_SYNTAX", `'${text}': spaces group digits in threes, such as "12 345 kg"`, { text });
  }
  if (/^[.\d]/.test(rest)) {
    throw new QuantityError("NUMBER_SYNTAX", `'${text}': the number cannot be read after '${all}'`, { text });
  }
  const power = raised === undefined ? (exponent ?? "0").replace("−", "-") : fromSuperscript(raised);
  const value = Number(`${digits.replace(/[^\d.]/g, "")}e${power}`);
  return { value: sign === "-" || sign === "−" ? -value : value, unit: unitOf(delta + rest.trim() || "1") };
}

function fromSuperscript(text: string): string {
  return [...text].map((c) => (c === "⁻" ? "-" : "⁰¹²³⁴⁵⁶⁷⁸⁹".indexOf(c))).join("");
}
