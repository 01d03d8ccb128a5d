import { type AnyQuantity, quantity, readNumber, readOptions, type Source } from "@tarewatt/units";
import type { AtLeast, AtMost, LowLikelyHigh } from "../evidence/forms.js";
import type { ValueIn } from "../model/model.js";
import { type Claim, type ClaimStatus, readClaim } from "./claim.js";
import { type ClaimQuantity, type ClaimRule, claimQuantities } from "./claim-quantities.js";

/** How far the truth may be from a claim, by its status. */
export interface ClaimSpreads {
  /** Half-width from the figure to the 90th percentile, as a share of it. */
  readonly shares: Readonly<Record<ClaimStatus, number>>;
  /** Where they are from. */
  readonly source: Source;
}

/** How far the truth may be from a claim, by its status: a convention of this library, not a finding. */
export const claimSpreads: ClaimSpreads = {
  shares: { target: 0.08, provisional: 0.04, certified: 0.015 },
  source: { document: "judgement, no source", status: "common practice" },
};

/** Options of {@link claimEvidence}. */
export interface ClaimEvidenceOptions<Q extends ClaimQuantity> {
  /** The claim. */
  readonly claim: Claim<Q>;
  /** Half-width as a share of the figure, 0 to 1; by the status when left out ({@link claimSpreads}). */
  readonly share?: number | undefined;
}

/**
 * What a claim says of its quantity, as evidence for a model: `about` and `exactly` put the figure in the middle; bounds, `up to` and
 * `from` are most likely just met and rarely missed by more than two half-widths.
 *
 * The evidence is of the figure as it was announced: its variant, procedure and boundary remain those of the claim.
 *
 * @param options - the claim, and its half-width
 * @throws InputError `NOT_A_FRACTION`, `NEGATIVE`, and what a wrong claim throws
 * @example
 * const range = claim({ quantity: "range", relation: "at least", value: q("500 km"), procedure: "WLTP", status: "provisional" });
 * distributionOf({ evidence: claimEvidence({ claim: range }), unit: "km" }).p90; // 540 km
 */
export function claimEvidence<const Q extends ClaimQuantity>(
  options: ClaimEvidenceOptions<Q>,
): ClaimAsEvidence<ValueIn<(typeof claimQuantities)[Q]["unit"]>> {
  readOptions("claimEvidence", options, {}, ["claim", "share?"]);
  const given = readClaim(options.claim);
  const share =
    options.share === undefined
      ? claimSpreads.shares[given.status]
      : readNumber("share", options.share, { unit: "1", atLeast: 0, atMost: 1 });
  const { unit, above, ...rule }: ClaimRule = claimQuantities[given.quantity];
  const number = readNumber("value", given.value, { unit });
  const inUnit = (value: number): unknown => (unit === "1" ? value : quantity<string>(value, unit));
  const limited = (value: number): unknown => inUnit(Math.min(Math.max(value, 0), rule.atMost ?? value));
  const provenance = {
    grade: given.status === "certified" ? "certified" : "announced",
    source: given.source ?? given.words,
    ...(given.date === undefined ? {} : { date: given.date }),
    ...(given.id === undefined ? {} : { id: given.id }),
    ...(given.derivedFrom === undefined ? {} : { derivedFrom: given.derivedFrom }),
  } as const;
  const evidence = (() => {
    switch (given.relation) {
      case "at least":
      case "from":
        return { atLeast: inUnit(number), rarelyAbove: limited(number * (1 + 2 * share)) };
      case "at most":
      case "up to":
        return { atMost: inUnit(number), rarelyBelow: inUnit(number * Math.max(0, 1 - 2 * share)) };
      default:
        return { low: inUnit(number * (1 - share)), likely: inUnit(number), high: limited(number * (1 + share)) };
    }
  })();
  return Object.freeze({ ...evidence, ...provenance }) as ClaimAsEvidence<ValueIn<(typeof claimQuantities)[Q]["unit"]>>;
}

/** The forms of evidence that a claim makes. */
export type ClaimAsEvidence<T extends AnyQuantity | number> = AtLeast<T> | AtMost<T> | LowLikelyHigh<T>;
