import {
  type AnyUnit,
  describeGiven,
  InputError,
  type NumberRule,
  quantity,
  readOptions,
  type Working,
} from "@tarewatt/units";
import type { ValueIn } from "../model/model.js";
import { chanceOfChiSquared } from "./gamma.js";
import { groupsByOrigin } from "./lineage.js";
import type { EvidencePiece, MergedEvidence, MergedPiece } from "./merged-evidence.js";
import { precisionWeighted, type Weighed } from "./precision-weighted.js";
import { boundsOf, type PieceRead, readPieces } from "./read-pieces.js";
import { differenceUnit, LEAST_SHARE } from "./read-shape.js";
import { cutShape, momentsOf, type Shape } from "./shape.js";
import { logNormalShape, normalShape } from "./unbounded-shapes.js";

/** What {@link mergeEvidence} needs; the limits are numbers in the unit. */
export interface MergeEvidenceOptions<Unit extends string> extends Omit<NumberRule, "unit" | "optional"> {
  /** All that is known of the quantity. */
  readonly pieces: readonly EvidencePiece<ValueIn<Unit>>[];
  /** The unit of the answers; `"1"` for a ratio. */
  readonly unit: AnyUnit<Unit>;
  /**
   * `linear`, when left out, weighs means and standard deviations; `logarithmic` those of the logarithms, for positive quantities that
   * are known to a factor.
   */
  readonly scale?: "linear" | "logarithmic" | undefined;
}

/** Below this chance a disagreement is called one. */
const SURPRISING = 0.05;

/**
 * Several pieces of evidence for one quantity as one: each weighted by its precision, 1/s². Pieces that go back to one origin count once.
 *
 * A plain figure gets the usual spread of its grade ({@link gradedSpreads}). Every piece is weighed by its mean and
 * standard deviation, a one-sided one too; a bound alone cuts the result. Pieces that scatter more than their spreads say widen the result by
 * the Birge ratio and are reported: no arithmetic tells which of them is wrong. The pieces are taken as independent unless their
 * lineage says otherwise.
 *
 * @param options - pieces, unit, scale and limits
 * @returns the merged evidence, what became of each piece, and how well they agree
 * @throws InputError `EMPTY` when nothing has a spread to weigh, `INCONSISTENT` when an id comes twice, lineage runs in a circle or a bound
 *   leaves nothing, `NEGATIVE` or `OUT_OF_RANGE` for a logarithm of what is not positive, and as evidence is refused
 * @example
 * const merged = mergeEvidence({
 *   unit: "kWh",
 *   pieces: [
 *     { low: q("96 kWh"), likely: q("98 kWh"), high: q("100 kWh"), id: "report", grade: "reported" },
 *     { value: q("98 kWh"), derivedFrom: ["report"], grade: "reported" },
 *     { distribution: "normal", mean: q("94 kWh"), standardDeviation: q("2 kWh"), grade: "derived" },
 *   ],
 * });
 * merged.pieces.map(({ role }) => role); // ["weighed", "repeats", "weighed"]
 * merged.likely; // 96.6 kWh
 * merged.agreement.chance; // 0.11
 */
export function mergeEvidence<const Unit extends string>(
  options: MergeEvidenceOptions<Unit>,
): MergedEvidence<ValueIn<Unit>> {
  readOptions("mergeEvidence", options, {}, ["pieces", "unit", "scale?", "atLeast?", "above?", "atMost?"]);
  const { atLeast, above, atMost, scale = "linear" } = options;
  const unit: unknown = options.unit;
  if (typeof unit !== "string") {
    throw new InputError("WRONG_CHOICE", `unit must be a text such as "kg": got ${describeGiven(unit)}`, {});
  }
  if (scale !== "linear" && scale !== "logarithmic") {
    throw new InputError("WRONG_CHOICE", `scale must be linear or logarithmic: got ${describeGiven(scale)}`, {});
  }
  const logarithmic = scale === "logarithmic";
  const rule = { unit, atLeast, above: logarithmic && above === undefined ? 0 : above, atMost };
  const pieces = readPieces(options.pieces, rule);
  const groups = groupsByOrigin(pieces.map(({ provenance }) => provenance));
  const counted = new Set(groups.flatMap(({ kept }) => kept));
  const weighed = pieces.flatMap((piece, i) =>
    counted.has(i) && piece.shape !== undefined ? [{ piece, i, ...onScale(piece.shape, logarithmic) }] : [],
  );
  if (weighed.length === 0) {
    throw new InputError("EMPTY", "mergeEvidence needs at least one piece that is more than a bound", {});
  }
  const stepUnit = logarithmic ? "1" : unit;
  const merged = precisionWeighted(weighed, stepUnit);
  const back = (value: number): number => (logarithmic ? Math.exp(value) : value);
  const whole = logarithmic
    ? logNormalShape(back(merged.value), Math.exp(merged.deviation))
    : normalShape(merged.value, merged.deviation);
  const bounds = boundsOf(pieces.filter((_, i) => counted.has(i)));
  const cut = cutShape(whole, bounds.from, bounds.to, LEAST_SHARE);
  if (cut === undefined) {
    throw new InputError(
      "INCONSISTENT",
      `the bounds, ${bounds.from} to ${bounds.to} ${unit}, and the other pieces, about ${Number(back(merged.value).toPrecision(4))} ${unit}, cannot both be true`,
      { ...bounds },
    );
  }
  const degreesOfFreedom = weighed.length - 1;
  const agreement = Object.freeze({
    chiSquared: merged.chiSquared,
    degreesOfFreedom,
    birgeRatio: merged.birgeRatio,
    chance: degreesOfFreedom === 0 ? 1 : chanceOfChiSquared(merged.chiSquared, degreesOfFreedom),
    chanceOfBounds: whole.cdf(bounds.to) - (bounds.from === Number.NEGATIVE_INFINITY ? 0 : whole.cdf(bounds.from)),
  });
  const inUnit = (value: number): unknown => (unit === "1" ? value : quantity<string>(value, unit));
  const precision = weighed.reduce((sum, { deviation }) => sum + deviation ** -2, 0);
  const rows = pieces.map((piece, i) => {
    const own = weighed.find((each) => each.i === i);
    const others = weighed.filter((each) => each.i !== i);
    const { low, likely, high, provenance, usualSpread, bound, name } = piece;
    const role = !counted.has(i) ? "repeats" : bound === undefined ? "weighed" : "cuts";
    return Object.freeze({
      ...{
        name,
        grade: provenance.grade,
        low: inUnit(low),
        likely: inUnit(likely),
        high: inUnit(high),
        role,
        usualSpread,
      },
      weight: own === undefined ? 0 : own.deviation ** -2 / precision,
      offBy:
        bound === undefined
          ? distance(
              onScale(piece.shape as Shape, logarithmic),
              others.length === 0 ? undefined : precisionWeighted(others, stepUnit),
            )
          : ((bound.side === "atLeast" ? 1 : -1) * (merged.value - (logarithmic ? Math.log(likely) : likely))) /
            merged.deviation,
    });
  }) as unknown as readonly MergedPiece<ValueIn<Unit>>[];
  const limits = {
    ...(bounds.from === Number.NEGATIVE_INFINITY ? {} : { atLeast: inUnit(bounds.from) }),
    ...(bounds.to === Number.POSITIVE_INFINITY ? {} : { atMost: inUnit(bounds.to) }),
  };
  const evidence = {
    ...(logarithmic
      ? { distribution: "log-normal", median: inUnit(back(merged.value)), factor: Math.exp(merged.deviation) }
      : {
          distribution: "normal",
          mean: inUnit(merged.value),
          standardDeviation: unit === "1" ? merged.deviation : quantity<string>(merged.deviation, differenceUnit(unit)),
        }),
    ...limits,
    grade: "derived",
    source: `${weighed.length} independent piece${weighed.length === 1 ? "" : "s"} of evidence, weighted by precision`,
  };
  return Object.freeze({
    evidence: Object.freeze(evidence),
    low: inUnit(cut.quantile(0.1)),
    likely: inUnit(cut.quantile(0.5)),
    high: inUnit(cut.quantile(0.9)),
    pieces: Object.freeze(rows),
    agreement,
    warnings: Object.freeze(warningsOf(rows, agreement, pieces)),
    working: () => {
      const working: Working = [];
      precisionWeighted(weighed, stepUnit, working);
      return working;
    },
  }) as unknown as MergedEvidence<ValueIn<Unit>>;
}

function onScale(shape: Shape, logarithmic: boolean): Weighed {
  const { mean, standardDeviation } = logarithmic ? momentsOf((u) => Math.log(shape.quantile(u))) : shape.moments();
  return { value: mean, deviation: standardDeviation };
}

function distance(own: Weighed, others: Weighed | undefined): number {
  return others === undefined ? 0 : (own.value - others.value) / Math.hypot(own.deviation, others.deviation);
}

function warningsOf(
  rows: readonly MergedPiece<unknown>[],
  { chance, chanceOfBounds, birgeRatio }: MergedEvidence<unknown>["agreement"],
  pieces: readonly PieceRead[],
): string[] {
  const percent = (share: number): string => `${Number((100 * share).toPrecision(2))} %`;
  const odd = rows.filter(({ role }) => role === "weighed").sort((a, b) => Math.abs(b.offBy) - Math.abs(a.offBy))[0];
  const sources = pieces
    .filter(({ provenance }, i) => provenance.source !== "" && rows[i]?.role === "weighed")
    .map(({ provenance }) => provenance.source);
  const shared = sources.find((source, i) => sources.indexOf(source) < i);
  return [
    ...(chance < SURPRISING && odd !== undefined
      ? [
          `the pieces disagree: so much scatter comes by chance ${percent(chance)} of the time; the oddest is '${odd.name}', off the others by ${Math.abs(odd.offBy).toFixed(1)} standard deviations; the result is ${birgeRatio.toFixed(1)} times as wide as the spreads alone would make it`,
        ]
      : []),
    ...(chanceOfBounds < SURPRISING
      ? [`the bounds contradict the other pieces, which would keep them ${percent(chanceOfBounds)} of the time`]
      : []),
    ...(shared === undefined
      ? []
      : [`two pieces have the source '${shared}' and count as independent: say derivedFrom if one repeats the other`]),
  ];
}
