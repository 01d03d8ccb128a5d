import {
  type AnyQuantity,
  describeGiven,
  InputError,
  isQuantity,
  type NumberRule,
  nearest,
  readNumber,
  readOptions,
} from "@tarewatt/units";
import { REACH, reachWithin } from "./quantile.js";

/** How far a piece of evidence can be trusted, from the best to the least. */
export type Grade = "measured" | "certified" | "announced" | "reported" | "derived" | "assumed";

/** All grades, from the best to the least. */
export const grades: readonly Grade[] = ["measured", "certified", "announced", "reported", "derived", "assumed"];

/** Where a piece of evidence is from. */
export interface Provenance {
  /** How far it can be trusted; `assumed` when left out. */
  readonly grade?: Grade;
  /** Who said it and where, in words that can be printed. */
  readonly source?: string;
}

/** A value that is taken as exact, with its provenance. */
export interface ExactValue<T> extends Provenance {
  /** The value. */
  readonly value: T;
  /** Not here: a quantity, which has a unit, is a value by itself. */
  readonly unit?: never;
}

/**
 * A value known within a range: one time in ten it is below `low`, one time in ten above `high`, and as often below
 * `likely` as above it (its 10th, 90th and 50th percentiles).
 *
 * The tails beyond `low` and `high` end at 1.81 times their distance from `likely`, or at the limit of what makes sense for
 * the input (a fraction ends at 1) when that comes first.
 */
export interface LowLikelyHigh<T> extends Provenance {
  /** 10th percentile. */
  readonly low: T;
  /** Median: as likely to be too low as too high. */
  readonly likely: T;
  /** 90th percentile. */
  readonly high: T;
}

/**
 * What is known of an input: a plain value, a value with its provenance, or low/likely/high.
 *
 * @typeParam T - a quantity, or a number for a ratio
 */
export type Evidence<T> = T | ExactValue<T> | LowLikelyHigh<T>;

/** @internal Evidence read and checked: numbers in the unit of the rule. */
export interface EvidenceRead {
  readonly low: number;
  readonly likely: number;
  readonly high: number;
  /** Where the tails end, in half-widths from `likely`; see `quantile.ts`. */
  readonly reach: readonly [below: number, above: number];
  readonly grade: Grade;
  readonly source: string;
}

/**
 * A value within so much of itself on either side, as low/likely/high.
 *
 * @param likely - quantity or number; its 50th percentile
 * @param share - half-width as a share of the value, 0 to 1: the 10th and 90th percentiles are that far away
 * @param provenance - grade and source
 * @throws InputError `NOT_A_FRACTION`, `NEGATIVE`
 * @example
 * around(q("3.10 m²"), 0.03).low; // 3.007 m²
 */
export function around<T extends AnyQuantity | number>(
  likely: T,
  share: number,
  provenance?: Provenance,
): LowLikelyHigh<T extends number ? number : T>;
export function around(
  likely: AnyQuantity | number,
  share: number,
  provenance: Provenance = {},
): LowLikelyHigh<AnyQuantity | number> {
  if (typeof likely === "number" ? !Number.isFinite(likely) : !isQuantity(likely)) {
    throw new InputError(
      "NOT_A_QUANTITY",
      `around needs a quantity such as q("3.10 m²"), or a finite number: got ${describeGiven(likely)}`,
      {},
    );
  }
  readOptions("the provenance", provenance, {}, ["grade?", "source?"]);
  const width = readNumber("share", share, { unit: "1", atLeast: 0, atMost: 1 });
  const scaled = (factor: number): AnyQuantity | number =>
    typeof likely === "number" ? likely * factor : (likely as unknown as Scalable).times(factor);
  const [a, b] = [scaled(1 - width), scaled(1 + width)];
  const negative = (typeof likely === "number" ? likely : likely.value) < 0;
  return { low: negative ? b : a, likely, high: negative ? a : b, ...provenance };
}

interface Scalable {
  times(factor: number): AnyQuantity;
}

const keys = ["value", "low", "likely", "high", "grade", "source"];

/**
 * @internal Reads evidence into numbers, checked against the rule of the input.
 */
export function readEvidence(name: string, given: unknown, rule: NumberRule): EvidenceRead {
  if (typeof given !== "object" || given === null || isQuantity(given)) {
    return exact(readNumber(name, given, rule), {});
  }
  const parts = given as Readonly<Record<string, unknown>>;
  for (const key of Object.keys(parts)) {
    if (keys.includes(key)) continue;
    const [near] = nearest(key, keys);
    throw new InputError(
      "UNKNOWN_OPTION",
      `${name} has no part '${key}': ${near === undefined ? `it takes ${keys.join(", ")}` : `did you mean '${near}'?`}`,
      { name, part: key },
    );
  }
  const provenance = readProvenance(name, parts);
  if (parts.value !== undefined) {
    if (parts.low !== undefined || parts.likely !== undefined || parts.high !== undefined) {
      throw new InputError("INCONSISTENT", `${name} takes a value, or low, likely and high: got both`, { name });
    }
    return exact(readNumber(name, parts.value, rule), provenance);
  }
  const [low, likely, high] = (["low", "likely", "high"] as const).map((part) => {
    if (parts[part] === undefined) {
      throw new InputError("MISSING_OPTION", `${name} needs low, likely and high: '${part}' is missing`, {
        name,
        part,
      });
    }
    return readNumber(`${name}.${part}`, parts[part], rule);
  }) as [number, number, number];
  if (!(low <= likely && likely <= high)) {
    throw new InputError(
      "INCONSISTENT",
      `${name}: low must not exceed likely, nor likely high: got ${describeGiven(parts.low)}, ${describeGiven(parts.likely)}, ${describeGiven(parts.high)}`,
      { name },
    );
  }
  return { low, likely, high, reach: reachWithin({ low, likely, high }, rule), ...provenance };
}

function exact(value: number, { grade = "assumed", source = "" }: Provenance): EvidenceRead {
  return { low: value, likely: value, high: value, reach: [REACH, REACH], grade, source };
}

function readProvenance(name: string, { grade, source }: Readonly<Record<string, unknown>>): Required<Provenance> {
  if (grade !== undefined && !grades.includes(grade as Grade)) {
    throw new InputError(
      "WRONG_CHOICE",
      `${name}: the grade must be one of ${grades.join(", ")}: got ${describeGiven(grade)}`,
      {
        name,
        grade,
      },
    );
  }
  if (source !== undefined && typeof source !== "string") {
    throw new InputError("WRONG_CHOICE", `${name}: the source must be a text`, { name });
  }
  return { grade: (grade as Grade | undefined) ?? "assumed", source: source ?? "" };
}
