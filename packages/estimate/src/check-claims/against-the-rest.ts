import { covarianceOf, inverseOf } from "./chance-of-disagreement.js";
import { type Fit, misfit } from "./least-disagreement.js";
import type { ClaimRead } from "./read-claims.js";
import { dot } from "./scores.js";

/** @internal The measurement test, (V⁻¹·r)_i/√((V⁻¹)_ii), for the claims that press: positive where the claim is too high for the rest. */
export function againstTheRest(claims: readonly ClaimRead[], fit: Fit): ReadonlyMap<ClaimRead, number> {
  const misfits = claims.map((each, i) => misfit(each, fit.values[i] as number));
  const active = claims.flatMap(({ side }, i) => (side === "both" || misfits[i] !== 0 ? [i] : []));
  const slopes = active.map((i) => fit.slopes[i] as readonly number[]);
  const inverse = inverseOf(covarianceOf(slopes));
  // Claim less model, carried back to where the unknowns have not moved
  const residuals = active.map((i, k) => dot(slopes[k] as readonly number[], fit.scores) - (misfits[i] as number));
  return new Map(
    active.map((i, k) => {
      const row = inverse[k] as readonly number[];
      return [claims[i] as ClaimRead, dot(row, residuals) / Math.sqrt(row[k] as number)];
    }),
  );
}
