import {
  type AnyUnit,
  describeGiven,
  InputError,
  type NumberRule,
  quantity,
  readNumber,
  readOptions,
} from "@tarewatt/units";
import type { ValueIn } from "../model/model.js";
import { type EvidenceRead, readEvidence } from "./evidence.js";
import type { Evidence } from "./forms.js";
import type { Grade } from "./provenance.js";
import { lowLikelyHighShape } from "./quantile.js";
import { differenceUnit } from "./read-shape.js";
import { exactShape, type Shape, type ShapeName } from "./shape.js";

/** What {@link distributionOf} needs; the limits are numbers in the unit. */
export interface DistributionOptions<Unit extends string> extends Omit<NumberRule, "unit" | "optional"> {
  /** What is known. */
  readonly evidence: Evidence<ValueIn<Unit>>;
  /** The unit of the answers; `"1"` for a ratio. */
  readonly unit: AnyUnit<Unit>;
}

/**
 * The distribution that a piece of evidence stands for.
 *
 * @typeParam T - a quantity, or a number for a ratio
 */
export interface Distribution<T> {
  /** How its spread is shaped. */
  readonly shape: ShapeName;
  /** Mean. */
  readonly mean: T;
  /** Standard deviation, in the unit of the evidence; the number alone, as a temperature's is a difference. */
  readonly standardDeviation: number;
  /** Unit of the standard deviation. */
  readonly standardDeviationUnit: string;
  /** 10th percentile. */
  readonly p10: T;
  /** Median. */
  readonly p50: T;
  /** 90th percentile. */
  readonly p90: T;
  /** How far it can be trusted. */
  readonly grade: Grade;
  /** Where it is from; empty when that was not said. */
  readonly source: string;
  /**
   * The value that a share of the distribution lies below: feed it a number that is uniform between 0 and 1, and it gives a draw.
   * @param share - 0 to 1; at 0 and 1 a distribution without ends has no value
   */
  quantile(share: number): T;
  /**
   * The share of the distribution at or below a value.
   * @param value - any value of the same dimension
   */
  shareBelow(value: T): number;
}

/** @internal The shape of any evidence. */
export function shapeOf(read: EvidenceRead): Shape {
  return read.shape ?? (read.low === read.high ? exactShape(read.likely) : lowLikelyHighShape(read));
}

/**
 * The distribution that a piece of evidence stands for: what `propagate` draws from. What lies outside the limits is cut off.
 *
 * @param options - evidence, unit and limits
 * @returns percentiles, moments, quantile and its inverse
 * @throws InputError as the evidence is wrong: `UNKNOWN_OPTION`, `MISSING_OPTION`, `INCONSISTENT`, `WRONG_CHOICE`, `OUT_OF_RANGE`
 * @example
 * const range = distributionOf({ evidence: { atLeast: q("500 km"), rarelyAbove: q("540 km") }, unit: "km" });
 * range.p50; // 517 km
 * range.shareBelow(q("540 km")); // 0.90
 */
export function distributionOf<const Unit extends string>(
  options: DistributionOptions<Unit>,
): Distribution<ValueIn<Unit>> {
  readOptions("distributionOf", options, {}, ["evidence", "unit", "atLeast?", "above?", "atMost?"]);
  const { evidence, atLeast, above, atMost } = options;
  const unit: unknown = options.unit;
  if (typeof unit !== "string") {
    throw new InputError("WRONG_CHOICE", `unit must be a text such as "kg": got ${describeGiven(unit)}`, {});
  }
  const read = readEvidence("evidence", evidence, { unit, atLeast, above, atMost });
  const shape = shapeOf(read);
  const { mean, standardDeviation } = shape.moments();
  const inUnit = (value: number): ValueIn<Unit> =>
    (unit === "1" ? value : quantity<string>(value, unit)) as unknown as ValueIn<Unit>;
  return Object.freeze({
    shape: shape.name,
    mean: inUnit(mean),
    standardDeviation,
    standardDeviationUnit: differenceUnit(unit),
    p10: inUnit(read.low),
    p50: inUnit(read.likely),
    p90: inUnit(read.high),
    grade: read.grade,
    source: read.source,
    quantile: (share: number) => {
      const u = readNumber("share", share, { unit: "1", atLeast: 0, atMost: 1 });
      const value = shape.quantile(u);
      if (Number.isFinite(value)) return inUnit(value);
      throw new InputError("OUT_OF_RANGE", `a ${shape.name} distribution has no end: share must lie between 0 and 1`, {
        share,
      });
    },
    shareBelow: (value: ValueIn<Unit>) => shape.cdf(readNumber("value", value, { unit })),
  });
}
