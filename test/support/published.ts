import type { AnyQuantity, Dimension, Quantity } from "@tarewatt/units";
import { expect, it } from "vitest";

/** A value that a check compares: a pure number, or a quantity of any dimension. */
type Comparable = number | AnyQuantity;

/** How well the origin of a published value is known; the legend of docs/validation.md explains each. */
export type PublishedStatus = "seen" | "quoted" | "memory" | "common practice" | "regression";

/** A value from outside the project, and what the project makes of it. */
export interface PublishedCheck {
  /** What is compared, in words. */
  readonly quantity: string;
  /** Document and section, or "common practice, no source". */
  readonly source: string;
  readonly status: PublishedStatus;
  /** The inputs, in words. */
  readonly given?: string;
  /** The value as the source prints it; several values of one kind as an array. */
  readonly published: Comparable | readonly Comparable[];
  /** Computes the same, in the same shape. A quantity is compared in the unit of the published one. */
  readonly computed: () => Comparable | readonly Comparable[];
  /** Largest difference allowed: absolute, in the unit of the published value, or relative to it. */
  readonly tolerance: number | { readonly relative: number };
  /** Why the tolerance is what it is: the last printed digit, a rounding rule, another constant used by the source. */
  readonly why: string;
}

/** A row of docs/validation.md, as plain text: it travels from the worker of a test to the reporter. */
export interface PublishedRow {
  readonly quantity: string;
  readonly given: string;
  readonly published: string;
  readonly computed: string;
  readonly tolerance: string;
  readonly why: string;
  readonly source: string;
  readonly status: PublishedStatus;
  readonly holds: boolean;
}

declare module "vitest" {
  interface TaskMeta {
    published?: PublishedRow;
  }
}

/** Declares a test that compares a published value with ours, and hands its row to docs/validation.md. */
export function published(check: PublishedCheck): void {
  const { quantity, source, status, given = "", why, tolerance } = check;
  it(`${quantity} (${source})`, ({ task }) => {
    expect(tolerance, "the tolerance must be a finite number, not negative").toSatisfy(isTolerance);
    expect([quantity, source, why], "quantity, source and reason must be said").not.toContain("");
    const wanted = [check.published].flat() as readonly Comparable[];
    const got = [check.computed()].flat() as readonly Comparable[];
    expect(wanted.length, "nothing is published").toBeGreaterThan(0);
    expect(got.length, "as many values must be computed as are published").toBe(wanted.length);
    const pairs = wanted.map((value, index) => pairOf(value, got[index] as Comparable));
    const holds = pairs.every((pair) => differs(pair) <= allowed(pair, tolerance));
    task.meta.published = {
      quantity,
      given,
      published: pairs.map((pair) => withUnit(plain(pair.wanted), pair.unit)).join("; "),
      computed: pairs.map((pair) => withUnit(asPrinted(pair), pair.unit)).join("; "),
      tolerance: typeof tolerance === "number" ? absolute(tolerance, pairs) : relative(tolerance.relative),
      why,
      source,
      status,
      holds,
    };
    for (const pair of pairs) {
      expect(
        differs(pair),
        `published ${withUnit(plain(pair.wanted), pair.unit)}, computed ${withUnit(plain(pair.got), pair.unit)}: the difference`,
      ).toBeLessThanOrEqual(allowed(pair, tolerance));
    }
  });
}

/** Two numbers in one unit. */
interface Pair {
  readonly wanted: number;
  readonly got: number;
  readonly unit: string;
}

function pairOf(wanted: Comparable, got: Comparable): Pair {
  if (typeof wanted === "number" || typeof got === "number") {
    expect(typeof got, "a number is compared with a number, a quantity with a quantity").toBe(typeof wanted);
    const pair = { wanted: wanted as number, got: got as number, unit: "1" };
    expect([pair.wanted, pair.got], "both values must be finite").toSatisfy((both: number[]) =>
      both.every(Number.isFinite),
    );
    return pair;
  }
  expect(got.dimension, "the computed value must be of the published dimension and kind").toEqual(wanted.dimension);
  const { value, unit } = wanted;
  return { wanted: value, got: got.unit === unit ? got.value : (got as Quantity<Dimension>).in(unit), unit };
}

function isTolerance(tolerance: PublishedCheck["tolerance"]): boolean {
  const size = typeof tolerance === "number" ? tolerance : tolerance.relative;
  return Number.isFinite(size) && size >= 0;
}

function differs({ wanted, got }: Pair): number {
  return Math.abs(got - wanted);
}

function allowed({ wanted }: Pair, tolerance: PublishedCheck["tolerance"]): number {
  if (typeof tolerance !== "number") return tolerance.relative * Math.abs(wanted);
  // A tolerance of half a unit in the last digit must not fail on the binary form of a decimal number: 0.15 − 0.1 > 0.05.
  return tolerance === 0 ? 0 : tolerance + 2 * Number.EPSILON * Math.abs(wanted);
}

function plain(value: number): string {
  return String(value).replace("-", "−");
}

/** At least six digits, more when the published value has more: enough to compare, few enough to be equal on every engine. */
function asPrinted({ wanted, got }: Pair): string {
  const given = String(wanted).replace(/e.*$/, "").replace(/\D/g, "").replace(/^0+/, "").length;
  return plain(Number(got.toPrecision(Math.min(12, Math.max(6, given)))));
}

function withUnit(number: string, unit: string): string {
  return unit === "1" ? number : `${number} ${unit}`;
}

function absolute(tolerance: number, pairs: readonly Pair[]): string {
  const units = new Set(pairs.map(({ unit }) => unit));
  const [unit = "1"] = units;
  return tolerance === 0 ? "exact" : `± ${units.size === 1 ? withUnit(String(tolerance), unit) : tolerance}`;
}

function relative(tolerance: number): string {
  return tolerance === 0 ? "exact" : `± ${Number((tolerance * 100).toPrecision(6))} %`;
}
