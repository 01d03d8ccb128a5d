import { describeGiven, InputError, isQuantity, type NumberRule, readNumber } from "@tarewatt/units";
import { shapeOf } from "./distribution.js";
import { readEvidence } from "./evidence.js";
import { gradedSpreads } from "./graded-spread.js";
import { type ProvenanceRead, provenanceKeys, readProvenance } from "./provenance.js";
import type { Shape } from "./shape.js";

/** @internal A piece of evidence, read. */
export interface PieceRead {
  readonly name: string;
  readonly provenance: ProvenanceRead;
  readonly low: number;
  readonly likely: number;
  readonly high: number;
  readonly shape: Shape | undefined;
  readonly bound: { readonly side: "atLeast" | "atMost"; readonly value: number } | undefined;
  readonly usualSpread: boolean;
}

/** @internal */
export function readPieces(given: unknown, rule: NumberRule): readonly PieceRead[] {
  if (!Array.isArray(given) || given.length === 0) {
    throw new InputError(
      "EMPTY",
      `pieces must be a list of at least one piece of evidence: got ${describeGiven(given)}`,
      {},
    );
  }
  return given.map((each: unknown, i) => readPiece(`pieces[${i}]`, `piece ${i + 1}`, each, rule));
}

function readPiece(path: string, place: string, given: unknown, rule: NumberRule): PieceRead {
  const bound = boundIn(path, given, rule);
  if (bound !== undefined) {
    const provenance = readProvenance(path, given as Readonly<Record<string, unknown>>);
    const { value } = bound;
    return {
      ...{ name: nameOf(provenance, place), provenance, low: value, likely: value, high: value },
      shape: undefined,
      bound,
      usualSpread: false,
    };
  }
  const read = readEvidence(path, given, rule);
  const { grade, source, date, id, derivedFrom = [] } = read;
  const provenance = { grade, source, date, id, derivedFrom };
  const shape = shapeOf(read);
  const shared = { name: nameOf(provenance, place), provenance, bound: undefined };
  if (shape.moments().standardDeviation > 0) {
    const { low, likely, high } = read;
    return { ...shared, low, likely, high, shape, usualSpread: false };
  }
  const width = Math.abs(read.likely) * gradedSpreads.shares[read.grade];
  if (width === 0) {
    throw new InputError("INCONSISTENT", `${path} is zero and has no spread: state one to merge it`, { path });
  }
  const spread = readEvidence(path, percentiles(read.likely - width, read.likely, read.likely + width), { unit: "1" });
  return {
    ...shared,
    low: spread.low,
    likely: spread.likely,
    high: spread.high,
    shape: shapeOf(spread),
    usualSpread: true,
  };
}

function percentiles(low: number, likely: number, high: number) {
  return { low, likely, high };
}

function nameOf({ id, source }: ProvenanceRead, place: string): string {
  return id ?? (source === "" ? place : source);
}

/** A bound alone: one of the two limits, its provenance, and nothing else. */
function boundIn(path: string, given: unknown, rule: NumberRule): PieceRead["bound"] {
  if (typeof given !== "object" || given === null || isQuantity(given)) return undefined;
  const own = Object.entries(given).filter(
    ([key, value]) => value !== undefined && !provenanceKeys.includes(key as never),
  );
  const [side, value] = own[0] ?? [];
  if (own.length !== 1 || (side !== "atLeast" && side !== "atMost")) return undefined;
  return { side, value: readNumber(`${path}.${side}`, value, rule) };
}

/** @internal The tightest bounds of all. */
export function boundsOf(pieces: readonly PieceRead[]): { readonly from: number; readonly to: number } {
  const of = (side: "atLeast" | "atMost"): number[] =>
    pieces.flatMap(({ bound }) => (bound?.side === side ? [bound.value] : []));
  const [from, to] = [
    Math.max(Number.NEGATIVE_INFINITY, ...of("atLeast")),
    Math.min(Number.POSITIVE_INFINITY, ...of("atMost")),
  ];
  if (from < to) return { from, to };
  throw new InputError("INCONSISTENT", `no value is at least ${from} and at most ${to}`, { atLeast: from, atMost: to });
}
