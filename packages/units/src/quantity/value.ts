import type { Dimension } from "../dimension/dimension.js";
import { NO_DIMENSION } from "../dimension/key.js";
import { quotientKinds, statedKinds } from "../dimension/kind.js";
import { labelOf } from "../dimension/names.js";
import { type Conversion, conversion, productUnit, type Unit, unitOf } from "../unit/unit.js";
import { QuantityError } from "./errors.js";
import { formatNumber, shortNumber } from "./format.js";
import type { AnyQuantity, FormatOptions, Quantity, QuantityJSON } from "./quantity.js";

/** Marks quantities of every copy and version of this package: objects are recognised by it, never by their class. */
const BRAND = Symbol.for("tarewatt.quantity");

/** The one implementation behind {@link Quantity}; its types are checked at the interface, here only at run time. */
class Value {
  // Own properties, so that general-purpose comparisons of objects (deep equality in tests) see what differs.
  readonly value: number;
  readonly unit: string;
  readonly dimension: Dimension;
  readonly #unit: Unit;

  constructor(value: number, unit: Unit, kind: string) {
    if (!Number.isFinite(value)) {
      throw new QuantityError("NOT_FINITE", `a quantity must be finite: got ${value} ${unit.text}`, { value });
    }
    this.value = value;
    this.unit = unit.text;
    this.dimension = kind === unit.dimension.kind ? unit.dimension : { key: unit.key, kind };
    this.#unit = unit;
    Object.freeze(this);
  }

  get [BRAND](): true {
    return true;
  }

  in(unit: string): number {
    const { latest } = this.#unit;
    const known = latest !== undefined && latest.to === unit && latest.kind === this.dimension.kind;
    const { n, c, d } = known ? latest : this.#conversionTo(unit);
    const number = (this.value * n + c) / d;
    if (Number.isFinite(number)) return number;
    throw new QuantityError("NOT_FINITE", `${this} is too large to be given in ${unit}`, { unit });
  }

  to(unit: string): Value {
    return new Value(this.in(unit), unitOf(unit), this.dimension.kind);
  }

  plus(other: AnyQuantity): Value {
    return new Value(this.value + this.#addend(other, "add"), this.#unit, this.dimension.kind);
  }

  minus(other: AnyQuantity): Value {
    if (this.dimension.kind === "temperature" && kindOf(other) === "temperature") {
      const kelvin = inUnit(this, "K") - inUnit(other, "K");
      const step = unitOf(this.#unit.text === "K" ? "ΔK" : this.#unit.text.endsWith("F") ? "Δ°F" : "Δ°C");
      const { n, c, d } = conversion(unitOf("ΔK"), step);
      // Subtract in the scale itself when it is shared: 20 °C − 10 °C is 10, not 293.15 − 283.15.
      const same = other.unit === this.unit;
      return new Value(same ? this.value - other.value : (kelvin * n + c) / d, step, "");
    }
    return new Value(this.value - this.#addend(other, "subtract"), this.#unit, this.dimension.kind);
  }

  times(factor: number | AnyQuantity): Value {
    return typeof factor === "number" ? this.#scaled(factor) : this.#product(factor, 1);
  }

  per(divisor: number | AnyQuantity): Value {
    const size = typeof divisor === "number" ? divisor : assertQuantity(divisor).value;
    if (size === 0) throw new QuantityError("DIVISION_BY_ZERO", `${this} cannot be divided by ${divisor}`, {});
    return typeof divisor === "number" ? this.#scaled(divisor, this.value / divisor) : this.#product(divisor, -1);
  }

  inverse(): Value {
    return new Value(1, unitOf("1"), "").per(this as unknown as AnyQuantity);
  }

  ratioTo(other: AnyQuantity): number {
    if (this.dimension.kind === "temperature") this.#point();
    if (assertQuantity(other).value === 0) {
      throw new QuantityError("DIVISION_BY_ZERO", `${this} cannot be divided by ${other}`, {});
    }
    return this.value / this.#addend(other, "compare");
  }

  abs(): Value {
    if (this.dimension.kind === "temperature") this.#point();
    return new Value(Math.abs(this.value), this.#unit, this.dimension.kind);
  }

  compareTo(other: AnyQuantity): number {
    return this.value - this.#sameKind(other, "compare");
  }

  as(kind: string): Value {
    const names = Object.hasOwn(statedKinds, this.#unit.key)
      ? (statedKinds[this.#unit.key as keyof typeof statedKinds] as Readonly<Record<string, string>>)
      : {};
    if (!Object.hasOwn(names, kind)) {
      const known = Object.keys(names).join(" or ");
      throw new QuantityError(
        "WRONG_KIND",
        `${this} cannot be stated as '${kind}'${known ? `: it can be ${known}` : ": only one thing has its dimension"}`,
        { kind, expected: Object.keys(names) },
      );
    }
    return new Value(this.value, this.#unit, names[kind] as string);
  }

  format(options: FormatOptions = {}): string {
    const { digits = 3, unit, ...unknown } = options;
    const [extra] = Object.keys(unknown);
    if (extra !== undefined) {
      throw new QuantityError("UNKNOWN_OPTION", `format has no option '${extra}': it takes digits and unit`, {
        option: extra,
      });
    }
    const shown = unit === undefined ? this : this.to(unit);
    return withUnit(formatNumber(shown.value, digits), shown.unit);
  }

  toJSON(): QuantityJSON {
    return { value: this.value, unit: this.unit, kind: this.dimension.kind };
  }

  toString(): string {
    return withUnit(shortNumber(this.value), this.unit);
  }

  /** Shown by Node and Deno consoles in place of the fields. */
  [Symbol.for("nodejs.util.inspect.custom")](): string {
    return this.toString();
  }

  [Symbol.for("Deno.customInspect")](): string {
    return this.toString();
  }

  #conversionTo(unit: string): Conversion {
    const target = unitOf(unit);
    if (target.key !== this.#unit.key || target.kind !== this.dimension.kind) this.#refuse(target);
    this.#unit.latest = conversion(this.#unit, target);
    return this.#unit.latest;
  }

  /** The other's number in this unit, when it may be added to this. */
  #addend(other: AnyQuantity, verb: string): number {
    if (this.dimension.kind !== "temperature") return this.#sameKind(other, verb);
    const { key, kind } = assertQuantity(other).dimension;
    if (key !== this.#unit.key) this.#mismatch(other, verb);
    if (kind === "temperature") {
      throw new QuantityError(
        "TEMPERATURE_POINT",
        `cannot ${verb} two temperature points, ${this} and ${other}: write the second as a difference, such as Δ10 K`,
        { given: String(other) },
      );
    }
    const step = unitOf(this.#unit.text.endsWith("F") ? "Δ°F" : "ΔK");
    const { n, d } = conversion(unitOf(other.unit), step);
    return (other.value * n) / d;
  }

  #sameKind(other: AnyQuantity, verb: string): number {
    const { key, kind } = assertQuantity(other).dimension;
    if (key !== this.#unit.key || kind !== this.dimension.kind) this.#mismatch(other, verb);
    if (other.unit === this.#unit.text) return other.value;
    const { n, c, d } = conversion(unitOf(other.unit), this.#unit);
    return (other.value * n + c) / d;
  }

  #scaled(factor: number, value = this.value * factor): Value {
    if (!Number.isFinite(factor)) {
      throw new QuantityError(
        "NOT_FINITE",
        `${this} cannot be multiplied or divided by a number that is not finite`,
        {},
      );
    }
    if (this.dimension.kind === "temperature") this.#point();
    return new Value(value, this.#unit, this.dimension.kind);
  }

  #product(other: AnyQuantity, sign: 1 | -1): Value {
    const { key, kind } = assertQuantity(other).dimension;
    if (this.dimension.kind === "temperature" || kind === "temperature") this.#point();
    const { unit, scale } = productUnit(this.#unit, unitOf(other.unit), sign);
    const value = (sign === 1 ? this.value * other.value : this.value / other.value) * scale;
    return new Value(value, unit, this.#kindOfProduct(key, kind, sign));
  }

  #kindOfProduct(key: string, kind: string, sign: 1 | -1): string {
    if (key === NO_DIMENSION && kind === "") return this.dimension.kind;
    if (sign === 1) return this.#unit.key === NO_DIMENSION && this.dimension.kind === "" ? kind : "";
    const id = `${this.#unit.key}|${this.dimension.kind}/${key}|${kind}`;
    return Object.hasOwn(quotientKinds, id) ? quotientKinds[id as keyof typeof quotientKinds] : "";
  }

  #point(): never {
    throw new QuantityError(
      "TEMPERATURE_POINT",
      'a temperature point cannot be multiplied or divided: use a difference (Δ10 K), or its number in kelvin (.in("K"))',
      {},
    );
  }

  #refuse(target: Unit): never {
    const given = labelOf(target.key, target.kind);
    const own = labelOf(this.#unit.key, this.dimension.kind);
    const code = target.key === this.#unit.key ? "WRONG_KIND" : "WRONG_DIMENSION";
    const hint = this.#hint(target);
    throw new QuantityError(code, `'${target.text}' measures ${given}, not ${own}${hint}`, {
      unit: target.text,
      given,
      expected: own,
    });
  }

  #hint(target: Unit): string {
    if (target.key === this.#unit.key)
      return target.kind === "temperature" ? "" : `; state it with .as("${labelFor(target)}")`;
    const reciprocal = target.exponents.every((e, i) => e === -(this.#unit.exponents[i] as number));
    return reciprocal ? "; use .inverse() first" : "";
  }

  #mismatch(other: AnyQuantity, verb: string): never {
    const given = labelOf(other.dimension.key, other.dimension.kind);
    const own = labelOf(this.#unit.key, this.dimension.kind);
    const code = other.dimension.key === this.#unit.key ? "WRONG_KIND" : "WRONG_DIMENSION";
    throw new QuantityError(code, `cannot ${verb} ${given} and ${own}: ${this} and ${other}`, { given, expected: own });
  }
}

function labelFor(unit: Unit): string {
  const names = statedKinds[unit.key as keyof typeof statedKinds] as Readonly<Record<string, string>> | undefined;
  return Object.entries(names ?? {}).find(([, kind]) => kind === unit.kind)?.[0] ?? unit.kind;
}

function withUnit(number: string, unit: string): string {
  if (unit === "1") return number;
  return unit === "°" ? `${number}°` : `${number} ${unit}`;
}

function kindOf(other: AnyQuantity): string {
  return assertQuantity(other).dimension.kind;
}

/** Number of a quantity of any copy of the package in a unit of its own dimension. */
function inUnit(other: { readonly value: number; readonly unit: string }, unit: string): number {
  const { n, c, d } = conversion(unitOf(other.unit), unitOf(unit));
  return (other.value * n + c) / d;
}

/**
 * Whether something is a quantity, of this or any other copy of the package.
 *
 * @param thing - anything
 * @example
 * isQuantity(q("3 kg")); // true
 */
export function isQuantity(thing: unknown): thing is AnyQuantity {
  return typeof thing === "object" && thing !== null && (thing as Record<symbol, unknown>)[BRAND] === true;
}

function assertQuantity(thing: AnyQuantity): AnyQuantity {
  if (isQuantity(thing)) return thing;
  throw new QuantityError("NOT_A_QUANTITY", `expected a quantity such as q("3 kg"): got ${describe(thing)}`, {});
}

/** @internal */
export function describe(thing: unknown): string {
  if (isQuantity(thing)) return String(thing);
  if (typeof thing === "string") return `the text '${thing.slice(0, 60)}'`;
  if (typeof thing === "number" || typeof thing === "boolean" || thing == null) return String(thing);
  return Array.isArray(thing) ? "an array" : `a ${typeof thing}`;
}

/** @internal The one place where the run-time class takes its compile-time type. */
export function makeQuantity<D extends Dimension>(value: number, unit: Unit, kind: string): Quantity<D> {
  return new Value(value, unit, kind) as unknown as Quantity<D>;
}
