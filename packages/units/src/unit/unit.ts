import type { Dimension } from "../dimension/dimension.js";
import { type Exponents, keyOf } from "../dimension/key.js";
import { kindInText } from "../dimension/kind.js";
import { QuantityError } from "../quantity/errors.js";
import { combine, type ParsedUnit, parseUnit } from "./grammar.js";
import { decimal, divide, multiply, ONE, power, type Rational, rational, subtract, toNumber } from "./rational.js";
import { type UnitDefinition, type UnitSymbol, unitTable } from "./table.js";

/** @internal A unit that was read: what it is called, what it measures, and its exact worth in SI base units. */
export interface Unit {
  readonly text: string;
  readonly key: string;
  readonly exponents: Exponents;
  /** The kind that the text states. */
  readonly kind: string;
  readonly dimension: Dimension;
  readonly parsed: ParsedUnit;
  readonly factor: Rational;
  /** What must be added, in this unit, to count from absolute zero; undefined for everything but temperature scales. */
  readonly zero: Rational | undefined;
  /** The conversion asked for last: most programs ask for the same one again, and comparing one text beats a look-up. */
  latest: Conversion | undefined;
  /** Conversions from this unit and products with it that were already worked out. */
  readonly conversions: Map<string, Conversion>;
  readonly products: Map<string, ProductUnit>;
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

/** Texts may come from outside, so nothing that remembers them grows without bound. */
const MOST_REMEMBERED = 2000;

function remember<T>(memory: Map<string, T>, key: string, value: T): T {
  if (memory.size >= MOST_REMEMBERED) memory.clear();
  memory.set(key, value);
  return value;
}

const units = new Map<string, Unit>();

/** @internal Reads a unit text, or finds it among those already read. */
export function unitOf(text: string): Unit {
  return units.get(text) ?? remember(units, text, readUnit(text));
}

function readUnit(text: string): Unit {
  if (typeof text !== "string") {
    throw new QuantityError("UNIT_SYNTAX", `a unit must be a text such as "kg": got ${String(text)}`, {});
  }
  const trimmed = text.trim();
  // "5" and "100 km" would print as "5 100 km", which reads as something else.
  if (/^\d/.test(trimmed) && !/^1\s*(\/|$)/.test(trimmed)) {
    throw new QuantityError("UNIT_SYNTAX", `a unit cannot start with a number: got '${trimmed}'`, { unit: trimmed });
  }
  return compile(trimmed, parseUnit(trimmed));
}

interface Worth {
  readonly exponents: Exponents;
  readonly factor: Rational;
}

const baseExponents: Readonly<Partial<Record<UnitSymbol, Exponents>>> = {
  m: [1, 0, 0, 0, 0],
  kg: [0, 1, 0, 0, 0],
  s: [0, 0, 1, 0, 0],
  A: [0, 0, 0, 1, 0],
  K: [0, 0, 0, 0, 1],
};

const worths = new Map<UnitSymbol, Worth>();

function worthOfSymbol(symbol: UnitSymbol): Worth {
  const known = worths.get(symbol);
  if (known !== undefined) return known;
  const base = baseExponents[symbol];
  const worth = base === undefined ? worthOf(parseUnit(unitTable[symbol].is)) : { exponents: base, factor: ONE };
  worths.set(symbol, worth);
  return worth;
}

function worthOf({ terms, scale }: ParsedUnit): Worth {
  const sum: [number, number, number, number, number] = [0, 0, 0, 0, 0];
  let factor = scale;
  for (const [symbol, exponent] of terms) {
    // "1" is the only symbol that would be worth itself
    if (symbol === "1") continue;
    const worth = worthOfSymbol(symbol);
    for (let i = 0; i < 5; i++) (sum[i] as number) += (worth.exponents[i] as number) * exponent;
    factor = multiply(factor, power(worth.factor, exponent));
  }
  return { exponents: sum, factor };
}

function compile(text: string, parsed: ParsedUnit): Unit {
  const { exponents, factor } = worthOf(parsed);
  const key = keyOf(exponents);
  const kind = kindInText(text, key);
  const definition: UnitDefinition | undefined = Object.hasOwn(unitTable, text)
    ? unitTable[text as UnitSymbol]
    : undefined;
  return {
    text,
    key,
    exponents,
    kind,
    dimension: Object.freeze({ key, kind }),
    parsed,
    factor,
    zero: definition?.zero === undefined ? undefined : decimal(definition.zero),
    latest: undefined,
    conversions: new Map(),
    products: new Map(),
  };
}

/** @internal The conversion between two units of one dimension. */
export function conversion(from: Unit, to: Unit): Conversion {
  const known = from.conversions.get(to.text);
  if (known !== undefined) return known;
  const ratio = divide(from.factor, to.factor);
  const zero = rational(0n, 1n);
  const shift =
    from.zero === undefined && to.zero === undefined
      ? zero
      : subtract(multiply(from.zero ?? zero, ratio), to.zero ?? zero);
  return remember(from.conversions, to.text, exactly(ratio, shift, to));
}

function exactly(ratio: Rational, shift: Rational, { text: to, kind }: Unit): Conversion {
  const d = (ratio.d * shift.d) / commonFactor(ratio.d, shift.d);
  const n = (ratio.n * d) / ratio.d;
  const c = (shift.n * d) / shift.d;
  const largest = BigInt(Number.MAX_SAFE_INTEGER);
  if (ratio.pi === 0 && n <= largest && d <= largest && c <= largest && -c <= largest) {
    return { n: Number(n), c: Number(c), d: Number(d), to, kind };
  }
  return { n: toNumber(ratio), c: toNumber(shift), d: 1, to, kind };
}

function commonFactor(a: bigint, b: bigint): bigint {
  while (b !== 0n) [a, b] = [b, a % b];
  return a;
}

/** @internal The unit of a × b or a / b, with equal symbols cancelled and nothing else changed. */
export function productUnit(a: Unit, b: Unit, sign: 1 | -1): ProductUnit {
  const id = sign === 1 ? `*${b.text}` : `/${b.text}`;
  const known = a.products.get(id);
  if (known !== undefined) return known;
  const { terms, scale } = combine(a.parsed, b.parsed, sign);
  return remember(a.products, id, { unit: unitOf(textOf(terms)), scale: toNumber(scale) });
}

const SUPERSCRIPT = "⁰¹²³⁴⁵⁶⁷⁸⁹";

function textOf(terms: ParsedUnit["terms"]): string {
  const above: string[] = [];
  const below: string[] = [];
  const [only] = terms;
  // What is left of W/K × ΔK × 1/W is an interval, not a point on a scale.
  if (terms.size === 1 && only?.[1] === 1 && unitTable[only[0]].key === unitTable.K.key) {
    return `Δ${only[0].replace("deg", "°")}`;
  }
  for (const [symbol, exponent] of terms) {
    if (symbol === "1") continue;
    const size = Math.abs(exponent);
    (exponent > 0 ? above : below).push(size === 1 ? symbol : symbol + SUPERSCRIPT.charAt(size));
  }
  if (below.length === 0) return above.join("·") || "1";
  const denominator = below.length === 1 ? below[0] : `(${below.join("·")})`;
  return `${above.join("·") || "1"}/${denominator}`;
}
