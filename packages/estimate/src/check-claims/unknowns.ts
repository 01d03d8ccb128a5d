import { quantity } from "@tarewatt/units";
import { cholesky, solveWith } from "../calibrate/cholesky.js";
import type { AnyModel } from "../propagate/block.js";
import type { UnknownIfAllTrue } from "./claim-check.js";
import type { Drawn } from "./draws.js";
import { type Fit, misfit, normalMatrix } from "./least-disagreement.js";
import { numberIn, rounded } from "./print.js";
import type { ClaimRead } from "./read-claims.js";
import { dot, type Scores } from "./scores.js";

/** Score of the 90th percentile. */
const Z90 = 1.2815515655446004;
/** Fewer draws in effect than this say too little. */
export const ENOUGH = 200;

/** @internal A score of one input: its 10th, 50th and 90th percentiles. */
type ScoreSpread = readonly [p10: number, p50: number, p90: number];

/** @internal What the scores must be by the least squares: their posterior is taken as normal. */
export function scoresByLeastSquares(scores: Scores, counted: readonly ClaimRead[], fit: Fit): readonly ScoreSpread[] {
  const active = counted.flatMap((each, i) =>
    each.side === "both" || misfit(each, fit.values[i] as number) !== 0 ? [i] : [],
  );
  const lower = cholesky(normalMatrix(fit.slopes, active, fit.scores.length, 1));
  return scores.weights.map((row) => {
    const middle = dot(row, fit.scores);
    const deviation = Math.sqrt(dot(row, solveWith(lower, row)));
    return [middle - Z90 * deviation, middle, middle + Z90 * deviation];
  });
}

/** @internal The same by the weighted draws. */
export function scoresByDraws(scores: Scores, { rows, weights }: Drawn): readonly ScoreSpread[] {
  return scores.weights.map((row) => {
    const pairs = rows.map((each, i) => [dot(row, each), weights[i] as number] as const).sort(([a], [b]) => a - b);
    const at = (share: number): number => {
      let below = 0;
      for (const [score, weight] of pairs) {
        below += weight;
        if (below >= share) return score;
      }
      return pairs.at(-1)?.[0] ?? 0;
    };
    return [at(0.1), at(0.5), at(0.9)];
  });
}

/** @internal What the inputs must be, those that moved most first. */
export function unknownsOf(
  model: AnyModel,
  scores: Scores,
  found: readonly ScoreSpread[],
): readonly UnknownIfAllTrue[] {
  const unknowns = scores.names.map((input, i) => {
    const { unit = "1", meaning = input } = model.inputs[input] ?? {};
    const numbers = (spread: ScoreSpread) => spread.map((score) => scores.valueAt(input, score));
    const spreadOf = ([p10, p50, p90]: readonly number[]) => {
      const inUnit = (value: number | undefined) =>
        unit === "1" ? (value as number) : quantity(value as number, unit);
      return Object.freeze({ p10: inUnit(p10), p50: inUnit(p50), p90: inUnit(p90) });
    };
    const [before, after] = [numbers([-Z90, 0, Z90]), numbers(found[i] as ScoreSpread)];
    const moved = found[i]?.[1] ?? 0;
    const [from, to] = [numberIn(before[1] as number, "1"), numberIn(after[1] as number, unit)];
    return Object.freeze({
      ...{ input, meaning, before: spreadOf(before), after: spreadOf(after), moved },
      words: `${meaning} ${from} → ${to} (${signed(moved)} sd)`,
    });
  });
  return Object.freeze(unknowns.sort((a, b) => Math.abs(b.moved) - Math.abs(a.moved)));
}

/** To one decimal, with its sign unless that decimal is nought. */
function signed(deviations: number): string {
  const size = rounded(Math.abs(deviations), 1);
  return Number(size) === 0 ? size : `${deviations > 0 ? "+" : "−"}${size}`;
}
