import { cholesky, solveWith } from "../calibrate/cholesky.js";
import { chanceOfChiSquared } from "../evidence/gamma.js";
import { normalQuantile } from "../evidence/normal.js";
import { evenUniforms } from "../propagate/sequence.js";
import type { Side } from "./least-disagreement.js";
import { dot } from "./scores.js";

const ROWS = 2048;
const MOST_SWEEPS = 500;

/** @internal Covariance of what claims and model say of the same numbers, in the claims' standard deviations: J·Jᵀ + 1. */
export function covarianceOf(slopes: readonly (readonly number[])[]): number[][] {
  return slopes.map((a, i) => slopes.map((b, j) => dot(a, b) + (i === j ? 1 : 0)));
}

/** @internal The inverse of a positive definite matrix. */
export function inverseOf(matrix: readonly (readonly number[])[]): number[][] {
  const lower = cholesky(matrix);
  return matrix.map((_, i) =>
    solveWith(
      lower,
      matrix.map((__, j) => (i === j ? 1 : 0)),
    ),
  );
}

/**
 * @internal The chance that true claims disagree by at least so much with the evidence and each other.
 *
 * With claims on both sides only, χ² with one degree of freedom for each. A one-sided claim may lie anywhere on its free side, and where it does it
 * has no degree of freedom: the chance is then a mixture of χ² with as many degrees as claims press, the share of each found from draws
 * (chi-bar-square: A. Shapiro, International Statistical Review 56 (1988) 49, from memory). The truth is taken to lie at the bound, where the chance is
 * largest, so that a claim is never called wrong because it was modest.
 */
export function chanceOfDisagreement(
  total: number,
  sides: readonly Side[],
  covariance: readonly (readonly number[])[],
): number {
  const fixed = sides.filter((side) => side === "both").length;
  const shares = fixed === sides.length ? [1] : sharesPressing(sides, covariance);
  return shares.reduce((sum, share, pressing) => {
    const degrees = fixed + pressing;
    if (degrees === 0) return sum + (total > 0 ? 0 : share);
    return sum + share * chanceOfChiSquared(total, degrees);
  }, 0);
}

/** How often so many of the one-sided claims press, by their number. */
function sharesPressing(sides: readonly Side[], covariance: readonly (readonly number[])[]): number[] {
  const lower = cholesky(covariance);
  const weights = inverseOf(covariance);
  const uniforms = sides.map((_, i) => evenUniforms(1, `disagreement ${i}`));
  const shares = new Array<number>(sides.filter((side) => side !== "both").length + 1).fill(0);
  for (let row = 0; row < ROWS; row++) {
    const normal = uniforms.map((uniform) => normalQuantile(uniform(row)));
    const residuals = lower.map((line) => line.reduce((sum, each, j) => sum + each * (normal[j] as number), 0));
    (shares[pressing(sides, weights, residuals)] as number) += 1 / ROWS;
  }
  return shares;
}

/** Moves the one-sided residuals (claim less model) towards their free sides until nothing gets smaller; counts those that stay. */
function pressing(
  sides: readonly Side[],
  weights: readonly (readonly number[])[],
  residuals: readonly number[],
): number {
  const moved = [...residuals];
  for (let sweep = 0, largest = 1; sweep < MOST_SWEEPS && largest > 1e-10; sweep++) {
    largest = 0;
    for (let i = 0; i < sides.length; i++) {
      if (sides[i] === "both") continue;
      const row = weights[i] as readonly number[];
      const [from, before] = [residuals[i] as number, moved[i] as number];
      const best = before - dot(row, moved) / (row[i] as number);
      // The truth may exceed a claim of at least so much: the figure, and the residual with it, may rise.
      const next = sides[i] === "at least" ? Math.max(from, best) : Math.min(from, best);
      largest = Math.max(largest, Math.abs(next - before));
      moved[i] = next;
    }
  }
  return sides.filter((side, i) => side !== "both" && moved[i] === residuals[i]).length;
}
