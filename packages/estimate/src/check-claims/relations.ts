import { type Relation, relation, type Source } from "@tarewatt/units";

/** Half-width from the median to the 90th percentile of a normal distribution, in standard deviations. */
const HALF_WIDTH = 1.2815515655446004;

const source: Source = {
  document: "Data Reconciliation & Gross Error Detection (Gulf Publishing, 2000)",
  section: "global test and measurement test",
  status: "memory",
};

/** Inputs of {@link standardDeviationOfClaim}. */
export interface StandardDeviationOfClaimInputs {
  /** Half-width from the figure to the 90th percentile, as a share of it. */
  readonly share: number;
  /** The announced figure, in its unit. */
  readonly figure: number;
}

/**
 * Standard deviation of the truth about an announced figure, from the half-width to its 90th percentile.
 *
 * @throws InputError `NEGATIVE`; otherwise as every relation
 * @example
 * standardDeviationOfClaim({ share: 0.08, figure: 500 }); // 31.2
 */
export const standardDeviationOfClaim: Relation<StandardDeviationOfClaimInputs, number> = /* @__PURE__ */ relation({
  name: "standard deviation of a claim",
  inputs: {
    share: { symbol: "h", unit: "1", meaning: "half-width to the 90th percentile, as a share", atLeast: 0, atMost: 1 },
    figure: { symbol: "y", unit: "1", meaning: "announced figure, in its unit", atLeast: 0 },
  },
  result: { symbol: "s", unit: "1" },
  expression: "h·y/1.2815515655446",
  source: { document: "definition of the 90th percentile of a normal distribution", status: "definition" },
  evaluate: ({ share, figure }) => (share * figure) / HALF_WIDTH,
});

/** Inputs of {@link tensionOfClaim}. */
export interface TensionOfClaimInputs {
  /** The announced figure, in its unit. */
  readonly figure: number;
  /** What the model expects, in the same unit. */
  readonly expected: number;
  /** Standard deviation of what the model expects. */
  readonly modelDeviation: number;
  /** Standard deviation of the claim. */
  readonly claimDeviation: number;
}

/**
 * By how many standard deviations an announced figure lies above what a model expects; negative below.
 *
 * @throws InputError `NEGATIVE`; otherwise as every relation
 * @example
 * tensionOfClaim({ figure: 500, expected: 440, modelDeviation: 25, claimDeviation: 31.2 }); // 1.50
 */
export const tensionOfClaim: Relation<TensionOfClaimInputs, number> = /* @__PURE__ */ relation({
  name: "tension of a claim",
  inputs: {
    figure: { symbol: "y", unit: "1", meaning: "announced figure, in its unit" },
    expected: { symbol: "m", unit: "1", meaning: "mean of what the model expects, in the same unit" },
    modelDeviation: { symbol: "u", unit: "1", meaning: "standard deviation of what the model expects", atLeast: 0 },
    claimDeviation: { symbol: "s", unit: "1", meaning: "standard deviation of the claim", above: 0 },
  },
  result: { symbol: "d", unit: "1" },
  expression: "(y − m)/sqrt(u² + s²)",
  source,
  evaluate: ({ figure, expected, modelDeviation, claimDeviation }) =>
    (figure - expected) / Math.hypot(modelDeviation, claimDeviation),
});

/** Inputs of {@link disagreementOfClaims}. */
export interface DisagreementOfClaimsInputs {
  /** Sum of the squares by which the unknowns move, in standard deviations of their evidence. */
  readonly ofUnknowns: number;
  /** Sum of the squares by which the claims are missed, in their standard deviations. */
  readonly ofClaims: number;
}

/**
 * The disagreement of claims with evidence and each other, at the unknowns where it is least: χ² with one degree of freedom for each claim when the
 * model is linear, the evidence normal and no claim one-sided.
 *
 * @throws InputError `NEGATIVE`; otherwise as every relation
 * @example
 * disagreementOfClaims({ ofUnknowns: 3.2, ofClaims: 1.1 }); // 4.30
 */
export const disagreementOfClaims: Relation<DisagreementOfClaimsInputs, number> = /* @__PURE__ */ relation({
  name: "disagreement of the claims",
  inputs: {
    ofUnknowns: { symbol: "D_u", unit: "1", meaning: "squared movements of the unknowns", atLeast: 0 },
    ofClaims: { symbol: "D_c", unit: "1", meaning: "squared misfits of the claims", atLeast: 0 },
  },
  result: { symbol: "χ²", unit: "1" },
  expression: "D_u + D_c",
  source,
  evaluate: ({ ofUnknowns, ofClaims }) => ofUnknowns + ofClaims,
});
