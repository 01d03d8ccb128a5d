import { describeGiven } from "../check/describe-given.js";
import type { Dimension } from "../dimension/dimension.js";
import { BASE, keyOf } from "../dimension/key.js";
import { kindInText, POINT } from "../dimension/table.js";
import { fail } from "../quantity/errors.js";
import { type ExactProduct, gcd, productOf, single, toNumber } from "./exact-product.js";
import { canonical, parseUnit } from "./grammar.js";
import { raised } from "./superscripts.js";
import { unitTable } from "./table.js";

/** @internal A unit that was read: what it is called, what it measures, and its exact worth in SI base units. */
export interface Unit {
  readonly text: string;
  readonly system: UnitSystem;
  /** The dimension, with the kind that the text states. */
  readonly dimension: Dimension;
  /** The symbols of the text. */
  readonly parsed: ExactProduct;
  /** The same in base units. */
  readonly worth: ExactProduct;
  /** Hundredths of this unit to be added to count from absolute zero; none for everything but temperature scales. */
  readonly zero: bigint;
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
  readonly worths: Map<string, ExactProduct>;
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

/** @internal The built-in units, and others beside them; π is a unit like a base unit, so that it is never rounded. */
export function unitSystem(own: UnitSystem["own"]): UnitSystem {
  const builtIn = Object.values(unitTable).flatMap((group) => Object.entries(group));
  return { definitions: new Map([...builtIn, ["π", ""], ...own]), own, units: new Map(), worths: new Map() };
}

/** @internal */
export const builtIn: UnitSystem = /* @__PURE__ */ unitSystem([]);

/** @internal Texts may come from outside, so nothing that remembers them grows without bound. */
export const MOST_REMEMBERED = 500;

function remembered<T>(memory: Map<string, T>, key: string, make: () => T): T {
  let value = memory.get(key);
  if (value === undefined) {
    value = make();
    if (memory.size >= MOST_REMEMBERED) memory.clear();
    memory.set(key, value);
  }
  return value;
}

/** @internal Reads a unit text, or finds it among those already read. */
export function unitOf(given: string, system = builtIn): Unit {
  if (typeof given !== "string") fail("UNIT_SYNTAX", `a unit must be a text such as "kg": got ${describeGiven(given)}`);
  const text = given.trim();
  return remembered(system.units, text, () => readUnit(text, system));
}

function readUnit(given: string, system: UnitSystem): Unit {
  const parsed = parseUnit(given, system.definitions);
  const text = canonical(given);
  // "5" and "100 km" would print as "5 100 km", which reads as something else.
  if (/^\d/.test(text) && !/^1\s*(\/|$)/.test(text)) {
    fail("UNIT_SYNTAX", `a unit cannot start with a number: got '${text}'`);
  }
  const worth = worthOf(parsed, system);
  const key = keyOf(BASE.map((unit) => worth.terms.get(unit)));
  const dimension = Object.freeze({ key, kind: kindInText(text, key, system.own) });
  const zero = BigInt(system.definitions.get(text)?.split("+")[1]?.replace(".", "") ?? 0);
  const memories = { latest: undefined, conversions: new Map(), products: new Map() };
  return { text, system, dimension, parsed, worth, zero, ...memories };
}

/** A product of symbols as one of base units. */
function worthOf({ n, d, terms }: ExactProduct, system: UnitSystem): ExactProduct {
  const worths = [...terms].map(([symbol, power]) => [worthOfSymbol(symbol, system), power] as const);
  return productOf([{ ...single(), n, d }, 1], ...worths);
}

function worthOfSymbol(symbol: string, system: UnitSystem): ExactProduct {
  return remembered(system.worths, symbol, () => {
    const [definition] = (system.definitions.get(symbol) ?? "").split("+");
    return definition ? worthOf(parseUnit(definition, system.definitions), system) : single(symbol);
  });
}

/** @internal The unit of the differences between points on a temperature scale. */
export function intervalOf({ text }: Unit): Unit {
  return unitOf(`Δ${text.replace("deg", "°")}`);
}

/** @internal The conversion between two units of one dimension. */
export function conversion(from: Unit, to: Unit): Conversion {
  return remembered(from.conversions, to.text, () => {
    const ratio = productOf([from.worth, 1], [to.worth, -1]);
    // Over one denominator, then cut down
    const [n, d] = [ratio.n * 100n, ratio.d * 100n];
    const c = ratio.n * from.zero - ratio.d * to.zero;
    const common = gcd(gcd(n, c), d);
    const whole = [n, c, d].map((each) => Number(each / common)) as [number, number, number];
    const exact = ratio.terms.size === 0 && whole.every(Number.isSafeInteger);
    const [byN, andC, overD] = exact ? whole : [toNumber(ratio), toNumber({ ...ratio, n: c, d }), 1];
    return { n: byN, c: andC, d: overD, to: to.text, kind: to.dimension.kind };
  });
}

/** @internal The unit of a × b or a / b, with equal symbols cancelled and nothing else changed. */
export function productUnit(a: Unit, b: Unit, sign: 1 | -1): ProductUnit {
  return remembered(a.products, sign + b.text, () => {
    const whole = productOf([a.parsed, 1], [b.parsed, sign]);
    // Read like any other text, so its powers and its length are bounded as there
    const unit = unitOf(textOf(whole.terms), b.system === builtIn ? a.system : b.system);
    // What is left of W/K × K/W × ΔK is an interval, not a point on a scale.
    const named = unit.dimension.kind === POINT ? intervalOf(unit) : unit;
    return { unit: named, scale: toNumber(whole) };
  });
}

function textOf(terms: ExactProduct["terms"]): string {
  const [above, below] = [1, -1].map((sign) =>
    [...terms]
      .filter(([symbol, power]) => power * sign > 0 && symbol !== "π")
      .map(([symbol, power]) => symbol + (power === sign ? "" : raised(power * sign))),
  ) as [string[], string[]];
  const under = below.join("·");
  return (above.join("·") || "1") + (under && `/${below[1] ? `(${under})` : under}`);
}
