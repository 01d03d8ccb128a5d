import { labelOf } from "../dimension/table.js";
import type { AnyQuantity } from "../quantity/quantity.js";
import { describe, isQuantity } from "../quantity/value.js";
import { nearest } from "../unit/nearest.js";
import { conversion, unitOf } from "../unit/unit.js";
import { InputError } from "./errors.js";

/** What a number given as an option must be. */
export interface NumberRule {
  /** Unit that the number is wanted in; `"1"` for a ratio or fraction, which may be given as a plain number. */
  readonly unit: string;
  /** Smallest value allowed, in `unit`. */
  readonly atLeast?: number;
  /** The value must be greater than this, in `unit`. */
  readonly above?: number;
  /** Largest value allowed, in `unit`. */
  readonly atMost?: number;
  /** The option may be left out. */
  readonly optional?: boolean;
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
  if (typeof given !== "object" || given === null || Array.isArray(given)) {
    throw new InputError("NOT_AN_OBJECT", `${where} takes an object of named options: got ${describe(given)}`, {});
  }
  const names = [...Object.keys(rules), ...others.map((name) => name.replace("?", ""))];
  for (const name of Object.keys(given)) {
    if (!names.includes(name)) {
      const [near] = nearest(name, names);
      const hint = near === undefined ? `it takes ${names.join(", ")}` : `did you mean '${near}'?`;
      throw new InputError("UNKNOWN_OPTION", `${where} has no option '${name}': ${hint}`, {
        option: name,
        known: names,
      });
    }
  }
  const values = given as Readonly<Record<string, unknown>>;
  for (const name of others) {
    if (!name.endsWith("?") && values[name] === undefined) missing(where, name);
  }
  const numbers: Record<string, number | undefined> = {};
  for (const [name, rule] of Object.entries(rules)) {
    const value = values[name];
    if (value === undefined) {
      if (rule.optional !== true) missing(where, name, rule.unit);
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
  const number = inUnitOf(name, value, rule);
  const {
    atLeast = Number.NEGATIVE_INFINITY,
    above = Number.NEGATIVE_INFINITY,
    atMost = Number.POSITIVE_INFINITY,
  } = rule;
  if (number >= atLeast && number > above && number <= atMost) return number;
  return refuse(name, value, rule, number);
}

function inUnitOf(name: string, value: unknown, { unit }: NumberRule): number {
  const wanted = unitOf(unit);
  if (typeof value === "number") {
    if (!Number.isFinite(value)) {
      throw new InputError("NOT_A_NUMBER", `${name} must be a finite number: got ${value}`, { name });
    }
    if (unit === "1") return value;
    throw new InputError(
      "NOT_A_QUANTITY",
      `${name} needs a unit: got the bare number ${value}, write q("${value} ${unit}") or another unit of ${labelOf(wanted.dimension)}`,
      { name },
    );
  }
  if (!isQuantity(value)) {
    const example = unit === "1" ? "a number" : `a quantity in ${unit} or another unit of ${labelOf(wanted.dimension)}`;
    throw new InputError("NOT_A_QUANTITY", `${name} must be ${example}: got ${describe(value)}`, { name });
  }
  return numberOf(name, value, unit);
}

function numberOf(name: string, value: AnyQuantity, unit: string): number {
  const wanted = unitOf(unit);
  const given = unitOf(value.unit);
  if (value.dimension.key !== wanted.dimension.key || value.dimension.kind !== wanted.dimension.kind) {
    const expected = labelOf(wanted.dimension);
    const got = labelOf(value.dimension);
    throw new InputError(
      "WRONG_DIMENSION",
      `${name} must be ${expected}, for example in ${unit}: got ${value}, ${got}`,
      {
        name,
        given: got,
        expected,
      },
    );
  }
  const { n, c, d } = conversion(given, wanted);
  const number = (value.value * n + c) / d;
  if (Number.isFinite(number)) return number;
  throw new InputError("NOT_A_NUMBER", `${name} is too large: got ${value}`, { name });
}

function refuse(name: string, value: unknown, rule: NumberRule, number: number): never {
  const details = { name, given: String(value), rule };
  if (rule.unit === "1" && rule.atMost === 1 && number > 1) {
    const percent = typeof value === "number" && number <= 100;
    const hint = percent ? `: for ${number} % write ${Number((number / 100).toPrecision(12))} or q("${number} %")` : "";
    throw new InputError("NOT_A_FRACTION", `${name} must be a fraction of at most 1: got ${value}${hint}`, details);
  }
  if (rule.atLeast === 0 && number < 0) {
    throw new InputError("NEGATIVE", `${name} must not be negative: got ${value}`, details);
  }
  if (rule.above === 0 && number <= 0) {
    const code = number < 0 ? "NEGATIVE" : "OUT_OF_RANGE";
    throw new InputError(code, `${name} must be greater than zero: got ${value}`, details);
  }
  const unit = rule.unit === "1" ? "" : ` ${rule.unit}`;
  const limits = [
    rule.atLeast === undefined ? "" : `at least ${rule.atLeast}${unit}`,
    rule.above === undefined ? "" : `more than ${rule.above}${unit}`,
    rule.atMost === undefined ? "" : `at most ${rule.atMost}${unit}`,
  ].filter((limit) => limit !== "");
  throw new InputError("OUT_OF_RANGE", `${name} must be ${limits.join(" and ")}: got ${value}`, details);
}

function missing(where: string, name: string, unit?: string): never {
  const hint = unit === undefined || unit === "1" ? "" : `, a quantity in ${unit} for example`;
  throw new InputError("MISSING_OPTION", `${where} needs the option '${name}'${hint}`, { option: name });
}
