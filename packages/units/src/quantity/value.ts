import { describeGiven } from "../check/describe-given.js";
import { isRecord } from "../check/shapes.js";
import { type Dimension, quotients } from "../dimension/dimension.js";
import { NO_DIMENSION } from "../dimension/key.js";
import { isSame, labelOf, POINT, readingsOf } from "../dimension/table.js";
import { type Conversion, conversion, intervalOf, productUnit, type Unit, unitOf } from "../unit/unit.js";
import { BRAND, isQuantity } from "./brand.js";
import { fail } from "./errors.js";
import { formatNumber, shortNumber, withUnit } from "./format.js";
import { mismatch } from "./mismatch.js";
import type { AnyQuantity, FormatOptions, Quantity, QuantityJSON } from "./quantity.js";

/**
 * The one implementation behind {@link Quantity}; its types are checked at the interface, here only at run time.
 *
 * It is the result of a pure call, because a class with computed members stays in every bundle, used or not.
 */
const Value = /* @__PURE__ */ (() =>
  class Value {
    // Own properties, so that general-purpose comparisons of objects (deep equality in tests) see what differs.
    declare readonly value: number;
    declare readonly unit: string;
    declare readonly dimension: Dimension;
    readonly #unit: Unit;

    constructor(value: number, unit: Unit, kind = unit.dimension.kind) {
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
      const number = converted(this.value, known ? latest : this.#conversionTo(unit));
      return Number.isFinite(number) ? number : fail("NOT_FINITE", `${this} is too large to be given in ${unit}`);
    }

    to(unit: string): Value {
      return new Value(this.in(unit), unitOf(unit, this.#unit.system), this.dimension.kind);
    }

    plus(other: AnyQuantity): Value {
      return this.#sum(other, 1);
    }

    minus(other: AnyQuantity): Value {
      return this.#sum(other, -1);
    }

    times(factor: number | AnyQuantity): Value {
      return this.#product(factor, 1);
    }

    per(divisor: number | AnyQuantity): Value {
      return this.#product(divisor, -1);
    }

    inverse(): Value {
      return new Value(1, unitOf("1")).per(this as unknown as AnyQuantity);
    }

    ratioTo(other: AnyQuantity): number {
      noPoint(this);
      return this.value / this.#divisor(this.#numberOf(other, "compare"), other);
    }

    abs(): Value {
      noPoint(this);
      return this.#like(Math.abs(this.value));
    }

    compareTo(other: AnyQuantity): number {
      return this.value - this.#numberOf(other, "compare");
    }

    as(name: string): Value {
      // A point on a scale is no difference from another, whatever is stated of it
      const readings = readingsOf(this.dimension.key).filter(([each]) => !isPoint(this) || each === POINT);
      const stated = readings.find(([each]) => each === name);
      if (stated === undefined) {
        const names = readings.map(([each]) => each).join(" or ");
        return fail("WRONG_KIND", `${this} cannot be stated as ${describeGiven(name)}: it can be ${names}`);
      }
      return new Value(this.value, this.#unit, stated[2][0] === undefined ? "" : name);
    }

    format(options: FormatOptions = {}): string {
      if (!isRecord(options)) {
        fail("NOT_AN_OBJECT", `the options of format must be an object: got ${describeGiven(options)}`);
      }
      const { digits = 3, unit, ...unknown } = options as FormatOptions;
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

    /** Asked for by notebooks. Plain text is enough: the unit's own text has its dots and powers. */
    [Symbol.for("Jupyter.display")](): object {
      return { "text/plain": this.toString() };
    }

    #like(value: number): Value {
      return new Value(value, this.#unit, this.dimension.kind);
    }

    #conversionTo(unit: string): Conversion {
      const from = this.#unit;
      const to = unitOf(unit, from.system);
      const { key, kind } = to.dimension;
      if (!isSame(to.dimension, this.dimension)) {
        const reciprocal = key.replace(/-?\d+/g, (power) => String(-Number(power)));
        const hint =
          key !== this.dimension.key
            ? reciprocal === this.dimension.key && "; use .inverse() first"
            : isPoint(this)
              ? "; use .minus(another) first"
              : kind !== POINT && `; state it with .as("${labelOf(to.dimension)}")`;
        mismatch(
          to.dimension,
          this.dimension,
          (given, expected) => `'${to.text}' measures ${given}, not ${expected}${hint || ""}`,
        );
      }
      from.latest = conversion(from, to);
      return from.latest;
    }

    #sum(other: AnyQuantity, sign: 1 | -1): Value {
      const verb = sign === 1 ? "add" : "subtract";
      if (!isPoint(this)) return this.#like(this.value + sign * this.#numberOf(other, verb));
      const interval = intervalOf(this.#unit);
      if (!isPoint(assertQuantity(other))) {
        return this.#like(this.value + sign * this.#numberOf(other, verb, interval));
      }
      if (sign === 1) {
        fail(
          "TEMPERATURE_POINT",
          `cannot add two temperature points, ${this} and ${describeGiven(other)}: write the second as a difference, such as Δ10 K`,
        );
      }
      // Subtracted in the scale of this one: 20 °C − 10 °C is 10, not 293.15 − 283.15.
      return new Value(this.value - this.#numberOf(other, verb), interval);
    }

    /** The other's number in this unit, or in that of an interval on this scale. */
    #numberOf(other: AnyQuantity, verb: string, unit = this.#unit): number {
      const wanted = unit === this.#unit ? this.dimension : unit.dimension;
      if (!isSame(assertQuantity(other).dimension, wanted)) {
        mismatch(
          other.dimension,
          this.dimension,
          (given, expected) => `cannot ${verb} ${given} and ${expected}: ${this} and ${describeGiven(other)}`,
        );
      }
      return other.unit === unit.text ? other.value : converted(other.value, conversion(unitIn(other), unit));
    }

    #product(other: number | AnyQuantity, sign: 1 | -1): Value {
      const plain = typeof other === "number";
      const number = plain ? other : assertQuantity(other).value;
      const value = sign === 1 ? this.value * number : this.value / this.#divisor(number, other);
      noPoint(this);
      if (plain) {
        if (!Number.isFinite(other)) fail("NOT_FINITE", `${this} cannot be multiplied or divided by ${other}`);
        return this.#like(value);
      }
      noPoint(other);
      const { unit, scale } = productUnit(this.#unit, unitIn(other), sign);
      return new Value(value * scale, unit, kindOfProduct(this.dimension, other.dimension, sign));
    }

    #divisor(number: number, given: unknown): number {
      return number !== 0 ? number : fail("DIVISION_BY_ZERO", `${this} cannot be divided by ${describeGiven(given)}`);
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

/** What the conversion makes of a number. */
function converted(value: number, { n, c, d }: Conversion): number {
  return (value * n + c) / d;
}

function kindOfProduct(a: Dimension, b: Dimension, sign: 1 | -1): string {
  if (b.key === NO_DIMENSION && b.kind === "") return a.kind;
  if (sign === 1) return a.key === NO_DIMENSION && a.kind === "" ? b.kind : "";
  return quotients[`${labelOf(a)}/${labelOf(b)}` as keyof typeof quotients] ?? "";
}

function isPoint({ dimension }: { readonly dimension: Dimension }): boolean {
  return dimension.kind === POINT;
}

function noPoint(quantity: { readonly dimension: Dimension }): void {
  if (isPoint(quantity)) {
    fail(
      "TEMPERATURE_POINT",
      'a temperature point cannot be multiplied or divided: use a difference (Δ10 K), or its number in kelvin (.in("K"))',
    );
  }
}

/** @internal Refuses what is no quantity. */
export function assertQuantity(thing: AnyQuantity): AnyQuantity {
  if (Value.unitIn(thing) !== undefined || isQuantity(thing)) return thing;
  return fail("NOT_A_QUANTITY", `expected a quantity such as q("3 kg"): got ${describeGiven(thing)}`);
}

/** @internal The one place where the run-time class takes its compile-time type. */
export function makeQuantity<D extends Dimension>(value: number, unit: Unit, kind?: string): Quantity<D> {
  return new Value(value, unit, kind) as unknown as Quantity<D>;
}
