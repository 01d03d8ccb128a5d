import { type AnyQuantity, quantity, type Working } from "@tarewatt/units";
import type { AnyModel } from "../propagate/block.js";
import { type CheckedClaim, type ClaimCheck, type ClaimVerdict, claimVerdictLimits } from "./claim-check.js";
import type { Drawn, Expected } from "./draws.js";
import type { Fit } from "./least-disagreement.js";
import { numberIn, rounded } from "./print.js";
import type { ClaimRead } from "./read-claims.js";
import { disagreementOfClaims, standardDeviationOfClaim, tensionOfClaim } from "./relations.js";
import { dot, type Scores } from "./scores.js";
import { ENOUGH, scoresByDraws, scoresByLeastSquares, unknownsOf } from "./unknowns.js";
import { sentencesOf } from "./words.js";

/** @internal All that was found. */
export interface Found {
  readonly model: AnyModel;
  readonly scores: Scores;
  readonly claims: readonly ClaimRead[];
  readonly counted: readonly ClaimRead[];
  readonly fit: Fit;
  readonly drawn: Drawn;
  readonly chance: number;
  readonly without: ReadonlyMap<ClaimRead, number>;
  readonly against: ReadonlyMap<ClaimRead, number>;
  readonly verdict: ClaimVerdict;
  /** The claimed numbers at the fit. */
  readonly allTrue: readonly number[];
}

/** The two ways are said to differ from so many standard deviations of an input on. */
const APART = 0.5;

/** An input is said to be at the end of its evidence from so many standard deviations on. */
const FAR = 2.5;

/** @internal */
export function reportOf(found: Found): ClaimCheck {
  const { model, scores, claims, counted, fit, drawn, chance, verdict } = found;
  const checked = claims.map((each, i) => checkedOf(found, each, i));
  const consistent = verdict === "can all be true";
  const odd = consistent
    ? []
    : checked
        .filter(({ counts, chanceWithoutIt }) => counts && chanceWithoutIt >= claimVerdictLimits.strained)
        .sort((a, b) => b.chanceWithoutIt - a.chanceWithoutIt);
  const [bySquares, byDraws] = [scoresByLeastSquares(scores, counted, fit), scoresByDraws(scores, drawn)];
  const enough = drawn.effective >= ENOUGH;
  const method = enough && counted.some(({ side }) => side !== "both") ? "weighted draws" : "least squares";
  const unknowns = unknownsOf(model, scores, method === "least squares" ? bySquares : byDraws);
  const apart = scores.names.filter((_, i) => Math.abs((bySquares[i]?.[1] ?? 0) - (byDraws[i]?.[1] ?? 0)) > APART);
  const oddOne = odd.length === 1 ? odd[0] : undefined;
  const words = sentencesOf({ verdict, chance, checked, odd, unknowns, counted: counted.length });
  return Object.freeze({
    ...{ verdict, consistent, chance, disagreement: fit.total, counted: counted.length },
    ...{ claims: Object.freeze(checked), oddOne, oddOnes: Object.freeze(odd), unknownsIfAllTrue: unknowns },
    ...({ method, effectiveDraws: drawn.effective, words: Object.freeze(words) } as const),
    warnings: Object.freeze(warningsOf(found, enough ? apart : [], enough)),
    working: () => workingOf(found),
  });
}

function checkedOf({ claims, counted, drawn, against, without, chance, allTrue }: Found, read: ClaimRead, i: number) {
  const { claim, about, unit, side, value } = read;
  const inUnit = (number: number): AnyQuantity | number => (unit === "1" ? number : quantity(number, unit));
  const { p10, p50, p90, ...expected } = drawn.expected[i] as Expected;
  const signed = tensionOf(read, expected);
  const tension = side === "at least" ? Math.max(0, signed) : side === "at most" ? Math.min(0, signed) : signed;
  const counts = counted.includes(claims[i] as ClaimRead);
  const range = `${numberIn(p50, unit)} (${numberIn(p10, "1")} to ${numberIn(p90, unit)})`;
  const far =
    Math.abs(tension) < 0.05
      ? "which agrees"
      : `and the claim is ${rounded(Math.abs(tension), 1)} standard deviations too ${tension > 0 ? "high" : "low"} for that`;
  return Object.freeze({
    ...{ claim, about, expected: Object.freeze({ p10: inUnit(p10), p50: inUnit(p50), p90: inUnit(p90) }) },
    ...{ ifAllTrue: inUnit(allTrue[i] ?? value), tension, chance: chanceOf(read, expected.below) },
    ...{ againstTheRest: counts ? (against.get(read) ?? 0) : 0, chanceWithoutIt: without.get(read) ?? chance, counts },
    words: `${claim.words}: the model expects ${range}, ${far}${counts ? "" : "; it repeats what counts already"}.`,
  }) satisfies CheckedClaim;
}

function tensionOf(
  { value, deviation }: ClaimRead,
  { mean, deviation: modelDeviation }: Omit<Expected, "p10" | "p50" | "p90">,
) {
  return tensionOfClaim.of({ figure: value, expected: mean, modelDeviation, claimDeviation: deviation });
}

function chanceOf({ side }: ClaimRead, below: number): number {
  if (side === "at least") return 1 - below;
  return side === "at most" ? below : 2 * Math.min(below, 1 - below);
}

function warningsOf(
  { model, scores, claims, counted, fit, drawn }: Found,
  apart: readonly string[],
  enough: boolean,
): string[] {
  const repeats = claims.filter((each) => !counted.includes(each));
  return [
    ...repeats.map(({ claim }) => `'${claim.words}' goes back to what counts already, and does not count`),
    ...(fit.settled ? [] : ["the least squares did not settle: the disagreement may be smaller than stated"]),
    ...(apart.length > 0
      ? [`least squares and weighted draws differ on ${apart.join(", ")}: the model bends, or a one-sided claim is met`]
      : []),
    ...(enough || counted.length === 0
      ? []
      : [
          `only ${Math.round(drawn.effective)} draws are left in effect: they cannot confirm the least squares; more draws help`,
        ]),
    ...scores.names
      .filter((_, i) => Math.abs(dot(scores.weights[i] as readonly number[], fit.scores)) > FAR)
      .map((name) => `${name} is pressed to the end of its evidence: give it wider evidence if it can be farther out`),
    ...(drawn.failed > 0 ? [`${model.name} gave no finite result for ${drawn.failed} draws, left out`] : []),
    ...new Set(claims.flatMap(({ claim }) => claim.warnings)),
  ];
}

function workingOf({ claims, drawn, fit }: Found): Working {
  const working: Working = [];
  claims.forEach((read, i) => {
    standardDeviationOfClaim.of({ share: read.share, figure: Math.abs(read.value) }, working);
    const { mean, deviation } = drawn.expected[i] as Expected;
    tensionOfClaim.of(
      { figure: read.value, expected: mean, modelDeviation: deviation, claimDeviation: read.deviation },
      working,
    );
  });
  disagreementOfClaims.of({ ofUnknowns: fit.ofUnknowns, ofClaims: fit.ofClaims }, working);
  return working;
}
