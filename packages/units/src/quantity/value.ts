import { describeGiven, nameOf } from "../check/describe-given.js";
import { readRecord } from "../check/shapes.js";
import { type Dimension, quotients } from "../dimension/dimension.js";
import { NO_DIMENSION } from "../dimension/key.js";
import { kindNamed, labelOf, namesOf } from "../dimension/table.js";
import { type Conversion, conversion, productUnit, type Unit, unitOf } from "../unit/unit.js";
import { BRAND, isQuantity } from "./brand.js";
import { fail } from "./errors.js";
import { formatNumber, shortNumber, withUnit } from "./format.js";
import type { AnyQuantity, FormatOptions, Quantity, QuantityJSON } from "./quantity.js";

/**
 * The one implementation behind {@link Quantity}; its types are checked at the interface, here only at run time.
 *
 * It is the result of a pure call, because a class with computed members stays in every bundle, used or not.
 */
const Value = /* @__PURE__ */ (() =>
  class Value {
    // Own properties, so that general-purpose comparisons of objects (deep equality in tests) see what differs.
    readonly value: number;
    readonly unit: string;
    readonly dimension: Dimension;
    readonly #unit: Unit;

    constructor(value: number, unit: Unit, kind: string) {
      const { text, dimension } = unit;
      if (!Number.isFinite(value)) fail("NOT_FINITE", `a quantity must be finite: got ${describeGiven(value)} ${text}`);
      this.value = value;
      this.unit = text;
      this.dimension = kind === dimension.kind ? dimension : Object.freeze({ key: dimension.key, kind });
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
      return Number.isFinite(number) ? number : fail("NOT_FINITE", `${this} is too large to be given in ${unit}`);
    }

    to(unit: string): Value {
      return new Value(this.in(unit), unitOf(unit, this.#unit.system), this.dimension.kind);
    }

    plus(other: AnyQuantity): Value {
      return this.#like(this.value + this.#addend(other, "add"));
    }

    minus(other: AnyQuantity): Value {
      const points = this.dimension.kind === "temperature" && assertQuantity(other).dimension.kind === "temperature";
      if (!points) return this.#like(this.value - this.#addend(other, "subtract"));
      // Subtracted in the scale of this one: 20 °C − 10 °C is 10, not 293.15 − 283.15.
      const { text } = this.#unit;
      return new Value(this.value - this.#sameKind(other, "subtract"), unitOf(`Δ${text.replace("deg", "°")}`), "");
    }

    times(factor: number | AnyQuantity): Value {
      return typeof factor === "number" ? this.#scaled(factor, this.value * factor) : this.#product(factor, 1);
    }

    per(divisor: number | AnyQuantity): Value {
      const number = typeof divisor === "number" ? divisor : assertQuantity(divisor).value;
      if (number === 0) fail("DIVISION_BY_ZERO", `${this} cannot be divided by ${describeGiven(divisor)}`);
      return typeof divisor === "number" ? this.#scaled(divisor, this.value / divisor) : this.#product(divisor, -1);
    }

    inverse(): Value {
      return new Value(1, unitOf("1"), "").per(this as unknown as AnyQuantity);
    }

    ratioTo(other: AnyQuantity): number {
      this.#noPoint();
      const number = this.#sameKind(other, "compare");
      return number === 0
        ? fail("DIVISION_BY_ZERO", `${this} cannot be divided by ${describeGiven(other)}`)
        : this.value / number;
    }

    abs(): Value {
      this.#noPoint();
      return this.#like(Math.abs(this.value));
    }

    compareTo(other: AnyQuantity): number {
      return this.value - this.#sameKind(other, "compare");
    }

    as(name: string): Value {
      const { key } = this.dimension;
      const kind = kindNamed(name, key);
      if (kind === undefined || this.dimension.kind === "temperature") {
        fail("WRONG_KIND", `${this} cannot be stated as '${nameOf(name)}': it can be ${namesOf(key).join(" or ")}`);
      }
      return new Value(this.value, this.#unit, kind);
    }

    format(options: FormatOptions = {}): string {
      const { digits = 3, unit, ...unknown } = readRecord("the options of format", options) as FormatOptions;
      const [extra] = Object.keys(unknown);
      if (extra !== undefined) fail("UNKNOWN_OPTION", `format has no option '${extra}': it takes digits and unit`);
      const shown = unit === undefined ? this : this.to(unit);
      return withUnit(formatNumber(shown.value, digits), shown.unit);
    }

    toJSON(): QuantityJSON {
      return { value: this.value, unit: this.unit, kind: this.dimension.kind };
    }

    toString(): string {
      return withUnit(shortNumber(this.value), this.unit);
    }

    /** Text where a text is wanted; operators get an error, as they would compare the texts: "10 kg" < "9 kg" is true. */
    [Symbol.toPrimitive](hint: string): string {
      if (hint === "string") return this.toString();
      return fail(
        "NOT_A_PLAIN_NUMBER",
        `${this} is no plain number, so operators such as < and + cannot take it: use .compareTo(), .plus() and their like, or its number, .in("${this.unit}")`,
        { given: this.toString(), hint },
      );
    }

    /** Shown by Node and Deno consoles in place of the fields. */
    [Symbol.for("nodejs.util.inspect.custom")](): string {
      return this.toString();
    }

    [Symbol.for("Deno.customInspect")](): string {
      return this.toString();
    }

    #like(value: number): Value {
      return new Value(value, this.#unit, this.dimension.kind);
    }

    #conversionTo(unit: string): Conversion {
      const from = this.#unit;
      const to = unitOf(unit, from.system);
      const { key, kind } = to.dimension;
      if (key !== this.dimension.key || kind !== this.dimension.kind) {
        const reciprocal = to.exponents.every((each, i) => each === -(from.exponents[i] as number));
        const stated = key === this.dimension.key && kind !== "temperature";
        const hint = stated
          ? `; state it with .as("${labelOf(to.dimension)}")`
          : reciprocal
            ? "; use .inverse() first"
            : "";
        mismatch(
          to.dimension,
          this.dimension,
          `'${to.text}' measures ${labelOf(to.dimension)}, not ${labelOf(this.dimension)}${hint}`,
        );
      }
      from.latest = conversion(from, to);
      return from.latest;
    }

    /** The other's number in this unit, when it may be added to this. */
    #addend(other: AnyQuantity, verb: string): number {
      if (this.dimension.kind !== "temperature") return this.#sameKind(other, verb);
      const { key, kind } = assertQuantity(other).dimension;
      if (key !== this.dimension.key) this.#mismatch(other, verb);
      if (kind === "temperature") {
        fail(
          "TEMPERATURE_POINT",
          `cannot ${verb} two temperature points, ${this} and ${describeGiven(other)}: write the second as a difference, such as Δ10 K`,
        );
      }
      const { n, d } = conversion(unitIn(other), unitOf(`Δ${this.unit.replace("deg", "°")}`));
      return (other.value * n) / d;
    }

    #sameKind(other: AnyQuantity, verb: string): number {
      const { key, kind } = assertQuantity(other).dimension;
      if (key !== this.dimension.key || kind !== this.dimension.kind) this.#mismatch(other, verb);
      if (other.unit === this.unit) return other.value;
      const { n, c, d } = conversion(unitIn(other), this.#unit);
      return (other.value * n + c) / d;
    }

    #scaled(factor: number, value: number): Value {
      if (!Number.isFinite(factor)) fail("NOT_FINITE", `${this} cannot be multiplied or divided by ${factor}`);
      this.#noPoint();
      return this.#like(value);
    }

    #product(other: AnyQuantity, sign: 1 | -1): Value {
      this.#noPoint();
      if (assertQuantity(other).dimension.kind === "temperature") noPoint();
      const { unit, scale } = productUnit(this.#unit, unitIn(other), sign);
      const value = (sign === 1 ? this.value * other.value : this.value / other.value) * scale;
      return new Value(value, unit, kindOfProduct(this.dimension, other.dimension, sign));
    }

    #noPoint(): void {
      if (this.dimension.kind === "temperature") noPoint();
    }

    #mismatch(other: AnyQuantity, verb: string): never {
      const given = other.dimension;
      return mismatch(
        given,
        this.dimension,
        `cannot ${verb} ${labelOf(given)} and ${labelOf(this.dimension)}: ${this} and ${describeGiven(other)}`,
      );
    }

    static unitIn(thing: AnyQuantity): Unit | undefined {
      const mine = typeof thing === "object" && thing !== null && #unit in thing;
      return mine ? (thing as unknown as Value).#unit : undefined;
    }
  })();

/** The unit of a quantity; that of another copy of the package is read again from its text. */
function unitIn(thing: AnyQuantity): Unit {
  const mine = Value.unitIn(thing);
  if (mine !== undefined) return mine;
  const read = unitOf(thing.unit);
  if (read.dimension.key === thing.dimension.key) return read;
  return fail(
    "NOT_A_QUANTITY",
    `a quantity in ${thing.unit} measures ${labelOf(read.dimension)}: got ${labelOf(thing.dimension)}`,
  );
}

function kindOfProduct(a: Dimension, b: Dimension, sign: 1 | -1): string {
  if (b.key === NO_DIMENSION && b.kind === "") return a.kind;
  if (sign === 1) return a.key === NO_DIMENSION && a.kind === "" ? b.kind : "";
  const id = `${labelOf(a)}/${labelOf(b)}`;
  return Object.hasOwn(quotients, id) ? quotients[id as keyof typeof quotients] : "";
}

function mismatch(given: Dimension, expected: Dimension, message: string): never {
  const code = given.key === expected.key ? "WRONG_KIND" : "WRONG_DIMENSION";
  return fail(code, message, { given: labelOf(given), expected: labelOf(expected) });
}

function noPoint(): never {
  return fail(
    "TEMPERATURE_POINT",
    'a temperature point cannot be multiplied or divided: use a difference (Δ10 K), or its number in kelvin (.in("K"))',
  );
}

/** @internal Refuses what is no quantity. */
export function assertQuantity(thing: AnyQuantity): AnyQuantity {
  if (Value.unitIn(thing) !== undefined || isQuantity(thing)) return thing;
  return fail("NOT_A_QUANTITY", `expected a quantity such as q("3 kg"): got ${describeGiven(thing)}`);
}

/** @internal The one place where the run-time class takes its compile-time type. */
export function makeQuantity<D extends Dimension>(value: number, unit: Unit, kind: string): Quantity<D> {
  return new Value(value, unit, kind) as unknown as Quantity<D>;
}
