import { describeGiven } from "../check/describe-given.js";
import type { Dimension } from "../dimension/dimension.js";
import { type Exponents, keyOf } from "../dimension/key.js";
import { kindInText } from "../dimension/table.js";
import { QuantityError } from "../quantity/errors.js";
import { combine, type ParsedUnit, parseUnit } from "./grammar.js";
import { decimal, divide, gcd, multiply, ONE, power, type Rational, rational, subtract, toNumber } from "./rational.js";
import { SUPERSCRIPTS } from "./superscripts.js";
import { unitTable } from "./table.js";

/** @internal A unit that was read: what it is called, what it measures, and its exact worth in SI base units. */
export interface Unit {
  readonly text: string;
  readonly system: UnitSystem;
  readonly exponents: Exponents;
  /** The dimension, with the kind that the text states. */
  readonly dimension: Dimension;
  readonly parsed: ParsedUnit;
  readonly factor: Rational;
  /** What must be added, in this unit, to count from absolute zero; zero for everything but temperature scales. */
  readonly zero: Rational;
  /** The conversion asked for last: most programs ask for the same one again, and comparing one text beats a look-up. */
  latest: Conversion | undefined;
  /** Conversions from this unit and products with it that were already worked out. */
  readonly conversions: Map<string, Conversion>;
  readonly products: Map<string, ProductUnit>;
}

/** @internal Units that belong together: the definitions, and what was already read of them. */
export interface UnitSystem {
  /** What each symbol is worth. */
  readonly definitions: ReadonlyMap<string, string>;
  /** The definitions that are not built in. */
  readonly own: readonly (readonly [symbol: string, definition: string])[];
  readonly units: Map<string, Unit>;
  readonly worths: Map<string, Worth>;
}

/** @internal y = (x · n + c) / d, with whole numbers wherever doubles hold them, so that 12 in is exactly 1 ft. */
export interface Conversion {
  readonly n: number;
  readonly c: number;
  readonly d: number;
  /** Text and kind of the unit converted to. */
  readonly to: string;
  readonly kind: string;
}

/** @internal The unit of a product or quotient, and the number that its texts left behind ("100" in "kWh/100 km"). */
export interface ProductUnit {
  readonly unit: Unit;
  readonly scale: number;
}

interface Worth {
  readonly exponents: Exponents;
  readonly factor: Rational;
  readonly zero: Rational;
}

const ZERO = rational(0n, 1n);
const BASE = ["m", "kg", "s", "A", "K"];

/** @internal The built-in units, and others beside them. */
export function unitSystem(own: UnitSystem["own"]): UnitSystem {
  const builtIn = Object.values(unitTable).flatMap((group) => Object.entries(group));
  return { definitions: new Map([...builtIn, ...own]), own, units: new Map(), worths: new Map() };
}

/** @internal */
export const builtIn: UnitSystem = /* @__PURE__ */ unitSystem([]);

/** Texts may come from outside, so nothing that remembers them grows without bound. */
const MOST_REMEMBERED = 2000;

function remember<T>(memory: Map<string, T>, key: string, value: T): T {
  if (memory.size >= MOST_REMEMBERED) memory.clear();
  memory.set(key, value);
  return value;
}

/** @internal Reads a unit text, or finds it among those already read. */
export function unitOf(text: string, system = builtIn): Unit {
  return system.units.get(text) ?? remember(system.units, text, readUnit(text, system));
}

function readUnit(given: string, system: UnitSystem): Unit {
  if (typeof given !== "string") {
    throw new QuantityError("UNIT_SYNTAX", `a unit must be a text such as "kg": got ${describeGiven(given)}`);
  }
  const text = given.trim();
  // "5" and "100 km" would print as "5 100 km", which reads as something else.
  if (/^\d/.test(text) && !/^1\s*(\/|$)/.test(text)) {
    throw new QuantityError("UNIT_SYNTAX", `a unit cannot start with a number: got '${text}'`);
  }
  const parsed = parseUnit(text, system.definitions);
  const { exponents, factor } = worthOf(parsed, system);
  const key = keyOf(exponents);
  const dimension = Object.freeze({ key, kind: kindInText(text, key, system.own) });
  const zero = system.definitions.has(text) && !text.startsWith("Δ") ? worthOfSymbol(text, system).zero : ZERO;
  const memories = { latest: undefined, conversions: new Map(), products: new Map() };
  return { text, system, exponents, dimension, parsed, factor, zero, ...memories };
}

function worthOfSymbol(symbol: string, system: UnitSystem): Worth {
  const known = system.worths.get(symbol);
  if (known !== undefined) return known;
  const base = BASE.indexOf(symbol);
  const [definition = "", zero] = (system.definitions.get(symbol) ?? "").split(" + ");
  const worth =
    base < 0
      ? worthOf(parseUnit(definition, system.definitions), system)
      : { exponents: BASE.map((_, i) => Number(i === base)) as unknown as Exponents, factor: ONE };
  const whole = { ...worth, zero: zero === undefined ? ZERO : decimal(zero) };
  system.worths.set(symbol, whole);
  return whole;
}

function worthOf({ terms, scale }: ParsedUnit, system: UnitSystem): Omit<Worth, "zero"> {
  let exponents: readonly number[] = BASE.map(() => 0);
  let factor = scale;
  for (const [symbol, exponent] of terms) {
    // "1" is the only symbol that would be worth itself
    if (symbol === "1") continue;
    const worth = worthOfSymbol(symbol, system);
    exponents = exponents.map((sum, i) => sum + (worth.exponents[i] as number) * exponent);
    factor = multiply(factor, power(worth.factor, exponent));
  }
  return { exponents: exponents as unknown as Exponents, factor };
}

/** @internal The conversion between two units of one dimension. */
export function conversion(from: Unit, to: Unit): Conversion {
  const known = from.conversions.get(to.text);
  if (known !== undefined) return known;
  const ratio = divide(from.factor, to.factor);
  const shift = subtract(multiply(from.zero, ratio), to.zero);
  return remember(from.conversions, to.text, exactly(ratio, shift, to));
}

function exactly(ratio: Rational, shift: Rational, { text: to, dimension: { kind } }: Unit): Conversion {
  // Over one denominator: the product of the two, cut down again by rational().
  const n = ratio.n * shift.d;
  const c = shift.n * ratio.d;
  const d = ratio.d * shift.d;
  const common = gcd(gcd(n, c), d);
  const whole = [n / common, c / common, d / common] as const;
  const fits = ratio.pi === 0 && whole.every((each) => BigInt.asIntN(54, each) === each);
  const [wholeN, wholeC, wholeD] = whole.map(Number) as [number, number, number];
  return fits
    ? { n: wholeN, c: wholeC, d: wholeD, to, kind }
    : { n: toNumber(ratio), c: toNumber(shift), d: 1, to, kind };
}

/** @internal The unit of a × b or a / b, with equal symbols cancelled and nothing else changed. */
export function productUnit(a: Unit, b: Unit, sign: 1 | -1): ProductUnit {
  const id = sign + b.text;
  const known = a.products.get(id);
  if (known !== undefined) return known;
  const { terms, scale } = combine(a.parsed, b.parsed, sign);
  const system = b.system === builtIn ? a.system : b.system;
  return remember(a.products, id, { unit: unitOf(textOf(terms, system), system), scale: toNumber(scale) });
}

function textOf(terms: ParsedUnit["terms"], system: UnitSystem): string {
  const [only] = terms;
  // What is left of W/K × K/W × ΔK is an interval, not a point on a scale.
  if (terms.size === 1 && only?.[1] === 1 && worthOfSymbol(only[0], system).exponents[4] === 1) {
    return `Δ${only[0].replace("deg", "°")}`;
  }
  const side = (sign: number): string[] =>
    [...terms].flatMap(([symbol, exponent]) => {
      const size = exponent * sign;
      return size > 0 && symbol !== "1" ? [size === 1 ? symbol : symbol + SUPERSCRIPTS.charAt(size)] : [];
    });
  const above = side(1).join("·") || "1";
  const below = side(-1);
  if (below.length === 0) return above;
  return `${above}/${below.length === 1 ? below[0] : `(${below.join("·")})`}`;
}
