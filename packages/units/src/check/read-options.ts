import type { Dimension } from "../dimension/dimension.js";
import { isSame, labelOf } from "../dimension/table.js";
import { isQuantity } from "../quantity/brand.js";
import type { AnyQuantity, Quantity } from "../quantity/quantity.js";
import { nearest } from "../unit/nearest.js";
import { unitOf } from "../unit/unit.js";
import { describeGiven, nameOf } from "./describe-given.js";
import { InputError } from "./errors.js";
import { isRecord, readList, readRecord } from "./shapes.js";

/** What a number given as an option must be. */
export interface NumberRule {
  /** Unit that the number is wanted in; `"1"` for a ratio or fraction, which may be given as a plain number. */
  readonly unit: string;
  /** Smallest value allowed, in `unit`. */
  readonly atLeast?: number | undefined;
  /** The value must be greater than this, in `unit`. */
  readonly above?: number | undefined;
  /** Largest value allowed, in `unit`. */
  readonly atMost?: number | undefined;
  /** The option may be left out. */
  readonly optional?: boolean | undefined;
}

/** The numbers read by {@link readOptions}, by option name. */
export type NumbersRead<Rules extends Readonly<Record<string, NumberRule>>> = {
  readonly [K in keyof Rules]: Rules[K]["optional"] extends true ? number | undefined : number;
};

/**
 * Reads and checks the options of a function: nothing unknown, nothing missing, every number a finite one of the right
 * dimension and range. Use it at the door of your own models, too.
 *
 * @param where - name of the function, for the message
 * @param given - the options object
 * @param rules - what each number must be
 * @param others - names of options that are not numbers; a name that ends in `?` may be left out
 * @returns the numbers, each in the unit of its rule
 * @throws InputError `NOT_AN_OBJECT`, `UNKNOWN_OPTION`, `MISSING_OPTION`, and what {@link readNumber} throws
 * @example
 * readOptions("kineticEnergy", { mass: q("1 t") }, { mass: { unit: "kg", above: 0 } }); // { mass: 1000 }
 */
export function readOptions<const Rules extends Readonly<Record<string, NumberRule>>>(
  where: string,
  given: object,
  rules: Rules,
  others: readonly string[] = [],
): NumbersRead<Rules> {
  const called = nameOf(where);
  if (!isRecord(given)) {
    throw new InputError(
      "NOT_AN_OBJECT",
      `${called} takes an object of named options: got ${describeGiven(given)}`,
      {},
    );
  }
  const known = readRecord(`the rules of ${called}`, rules) as Readonly<Record<string, NumberRule>>;
  const beside = readList(`the other options of ${called}`, others).map(nameOf);
  const names = [...Object.keys(known), ...beside.map((name) => name.replace("?", ""))];
  for (const name of Object.keys(given)) {
    if (!names.includes(name)) {
      const [near] = nearest(name, names);
      const hint = near === undefined ? `it takes ${names.join(", ")}` : `did you mean '${near}'?`;
      throw new InputError("UNKNOWN_OPTION", `${called} has no option '${name}': ${hint}`, {
        option: name,
        known: names,
      });
    }
  }
  for (const name of beside) {
    if (!name.endsWith("?") && given[name] === undefined) missing(called, name);
  }
  const numbers: Record<string, number | undefined> = {};
  for (const [name, rule] of Object.entries(known)) {
    const value = given[name];
    if (value === undefined) {
      const { unit, optional } = readRecord(`the rule of ${name}`, rule);
      if (optional !== true) missing(called, name, unit);
      numbers[name] = undefined;
    } else {
      numbers[name] = readNumber(name, value, rule);
    }
  }
  return numbers as NumbersRead<Rules>;
}

/**
 * Reads and checks one number.
 *
 * @param name - how the input is called, for the message
 * @param value - a quantity, or a plain number when the rule's unit is `"1"`
 * @param rule - what it must be
 * @returns the number in the unit of the rule
 * @throws InputError `NOT_A_QUANTITY`, `NOT_A_NUMBER`, `WRONG_DIMENSION`, `NEGATIVE`, `NOT_A_FRACTION`, `OUT_OF_RANGE`
 * @example
 * readNumber("speed", q("90 km/h"), { unit: "m/s", atLeast: 0 }); // 25
 */
export function readNumber(name: string, value: unknown, rule: NumberRule): number {
  const called = nameOf(name);
  if (!isRecord(rule)) {
    throw new InputError("NOT_AN_OBJECT", `the rule of ${called} must be an object: got ${describeGiven(rule)}`, {});
  }
  const number = inUnitOf(called, value, rule);
  const {
    atLeast = Number.NEGATIVE_INFINITY,
    above = Number.NEGATIVE_INFINITY,
    atMost = Number.POSITIVE_INFINITY,
  } = rule;
  const bounded = typeof atLeast === "number" && typeof above === "number" && typeof atMost === "number";
  if (!bounded) {
    const wrong = [atLeast, above, atMost].find((bound) => typeof bound !== "number");
    throw new InputError("NOT_A_NUMBER", `the bounds of ${called} must be numbers: got ${describeGiven(wrong)}`, {});
  }
  if (number >= atLeast && number > above && number <= atMost) return number;
  return refuse(called, value, rule, number);
}

function inUnitOf(name: string, value: unknown, { unit }: NumberRule): number {
  const { dimension } = unitOf(unit);
  if (typeof value === "number") {
    if (!Number.isFinite(value)) {
      throw new InputError("NOT_A_NUMBER", `${name} must be a finite number: got ${value}`, { name });
    }
    if (unit === "1") return value;
    throw new InputError(
      "NOT_A_QUANTITY",
      `${name} needs a unit: got the bare number ${value}, write q("${value} ${unit}") or another unit of ${labelOf(dimension)}`,
      { name },
    );
  }
  if (!isQuantity(value)) {
    const example = unit === "1" ? "a number" : `a quantity in ${unit} or another unit of ${labelOf(dimension)}`;
    throw new InputError("NOT_A_QUANTITY", `${name} must be ${example}: got ${describeGiven(value)}`, { name });
  }
  return numberOf(name, value, unit);
}

function numberOf(name: string, value: AnyQuantity, unit: string): number {
  const wanted = unitOf(unit).dimension;
  if (!isSame(value.dimension, wanted)) {
    const expected = labelOf(wanted);
    const given = labelOf(value.dimension);
    throw new InputError(
      "WRONG_DIMENSION",
      `${name} must be ${expected}, for example in ${unit}: got ${describeGiven(value)}, ${given}`,
      { name, given, expected },
    );
  }
  // Its own method, because only it knows the units that its copy of the package, or its maker, added.
  const number: unknown = (value as Quantity<Dimension>).in(unit);
  if (typeof number === "number" && Number.isFinite(number)) return number;
  throw new InputError("NOT_A_NUMBER", `${name} is no finite number in ${unit}: got ${describeGiven(value)}`, { name });
}

function refuse(name: string, value: unknown, rule: NumberRule, number: number): never {
  const given = typeof value === "number" ? String(value) : describeGiven(value);
  const details = { name, given, rule };
  if (rule.unit === "1" && rule.atMost === 1 && number > 1) {
    const percent = typeof value === "number" && number <= 100;
    const hint = percent ? `: for ${number} % write ${Number((number / 100).toPrecision(12))} or q("${number} %")` : "";
    throw new InputError("NOT_A_FRACTION", `${name} must be a fraction of at most 1: got ${given}${hint}`, details);
  }
  if (rule.atLeast === 0 && number < 0) {
    throw new InputError("NEGATIVE", `${name} must not be negative: got ${given}`, details);
  }
  if (rule.above === 0 && number <= 0) {
    const code = number < 0 ? "NEGATIVE" : "OUT_OF_RANGE";
    throw new InputError(code, `${name} must be greater than zero: got ${given}`, details);
  }
  const unit = rule.unit === "1" ? "" : ` ${rule.unit}`;
  const limits = [
    rule.atLeast === undefined ? "" : `at least ${rule.atLeast}${unit}`,
    rule.above === undefined ? "" : `more than ${rule.above}${unit}`,
    rule.atMost === undefined ? "" : `at most ${rule.atMost}${unit}`,
  ].filter((limit) => limit !== "");
  throw new InputError("OUT_OF_RANGE", `${name} must be ${limits.join(" and ")}: got ${given}`, details);
}

function missing(where: string, name: string, unit?: unknown): never {
  const hint = unit === undefined || unit === "1" ? "" : `, a quantity in ${nameOf(unit)} for example`;
  throw new InputError("MISSING_OPTION", `${where} needs the option '${name}'${hint}`, { option: name });
}
