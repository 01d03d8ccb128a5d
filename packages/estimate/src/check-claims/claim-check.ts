import type { AnyQuantity, Source, Step } from "@tarewatt/units";
import type { AnyClaim } from "../claim/claim.js";
import type { EvidenceFor, Model, ModelInput, ModelOutput } from "../model/model.js";
import type { RankCorrelation } from "../propagate/correlation.js";
import type { Spread } from "../propagate/spread.js";

/** A claim, and the output or input of the model that it is about. */
export type ClaimOn<Input extends string = string, Output extends string = string> = {
  /** The claim. */
  readonly claim: AnyClaim;
  /** Half-width as a share of the figure, above 0, to 1; by the status when left out (`claimSpreads`). */
  readonly share?: number | undefined;
} & (
  | {
      /** Name of the output that it is about. */
      readonly output: Output;
      /** Not here. */
      readonly input?: undefined;
    }
  | {
      /** Name of the input that it is about. */
      readonly input: Input;
      /** Not here. */
      readonly output?: undefined;
    }
);

/** What `checkClaims` needs. */
export interface CheckClaimsOptions<
  Inputs extends Readonly<Record<string, ModelInput>>,
  Outputs extends Readonly<Record<string, ModelOutput>>,
> {
  /** The model; for claims on several variants one of `variantModel`. */
  readonly model: Model<Inputs, Outputs>;
  /** What is known of each input without the claims. */
  readonly evidence: EvidenceFor<Inputs>;
  /** The claims, in any order. */
  readonly claims: readonly ClaimOn<keyof Inputs & string, keyof Outputs & string>[];
  /** Inputs that go together; all others are independent. */
  readonly correlations?: readonly RankCorrelation<keyof Inputs & string>[] | undefined;
  /** How many draws, 100 to 1,000,000; 2048 when left out. */
  readonly draws?: number | undefined;
  /** As in `propagate`. */
  readonly seed?: number | undefined;
}

/** From which chance of disagreement on claims are called strained, or wrong. */
export interface ClaimVerdictLimits {
  /** Below this chance they are strained. */
  readonly strained: number;
  /** Below this chance they cannot all be true. */
  readonly contradicted: number;
  /** Where the limits are from. */
  readonly source: Source;
}

/** Below which chance of so much disagreement claims are called strained, or wrong: a convention, not a finding. */
export const claimVerdictLimits: ClaimVerdictLimits = {
  strained: 0.05,
  contradicted: 0.001,
  source: { document: "usual levels of significance tests; judgement, no source", status: "common practice" },
};

/** Whether claims go together. */
export type ClaimVerdict = "can all be true" | "strained" | "cannot all be true";

/** One claim against the model and the other claims. */
export interface CheckedClaim {
  /** The claim. */
  readonly claim: AnyClaim;
  /** The output or input that it is about. */
  readonly about: string;
  /** What the model expects there without any claim. */
  readonly expected: Spread;
  /** What it comes to if all claims are true. */
  readonly ifAllTrue: AnyQuantity | number;
  /**
   * By how many standard deviations, of the model's spread and the claim's together, the announced figure is above what the model expects;
   * zero where the model meets a one-sided claim.
   */
  readonly tension: number;
  /** The chance that the figure of a true claim lies as far out as this, or farther, by the draws. */
  readonly chance: number;
  /**
   * The measurement test of data reconciliation: by how many standard deviations the figure is too high for the evidence and all the other claims.
   * Zero for a one-sided claim that does not press, and for one that does not count.
   */
  readonly againstTheRest: number;
  /** The chance of so much disagreement without this claim. */
  readonly chanceWithoutIt: number;
  /** Whether it counts: false for a repeat of another claim, or of the evidence. */
  readonly counts: boolean;
  /** All this in a sentence. */
  readonly words: string;
}

/** What an input must be if all claims are true. */
export interface UnknownIfAllTrue {
  /** Name of the input. */
  readonly input: string;
  /** What it is, in words. */
  readonly meaning: string;
  /** What was known of it. */
  readonly before: Spread;
  /** What it must be. */
  readonly after: Spread;
  /** By how many standard deviations of its evidence it moved, in normal scores; negative for downwards. */
  readonly moved: number;
  /** All this in words. */
  readonly words: string;
}

/** Whether claims can be true together, and what follows if they are. */
export interface ClaimCheck {
  /** In three steps: see `claimVerdictLimits`. */
  readonly verdict: ClaimVerdict;
  /** Whether the claims can all be true without strain. */
  readonly consistent: boolean;
  /** The chance that true claims disagree so much with the evidence and each other. Near 0: a surprise. */
  readonly chance: number;
  /** The disagreement, χ²: the least sum of squares of what the unknowns move and what the claims are missed by, in standard deviations. */
  readonly disagreement: number;
  /** How many claims count: as many degrees of freedom, when none is one-sided. */
  readonly counted: number;
  /** Each claim, in the order given. */
  readonly claims: readonly CheckedClaim[];
  /** The one claim without which the others go together; undefined when nothing needs resolving, or none or several would do. */
  readonly oddOne: CheckedClaim | undefined;
  /** All claims of which each would do, dropped alone, the most relieving first; empty when the claims are consistent. */
  readonly oddOnes: readonly CheckedClaim[];
  /** The inputs that are not exact, those that moved most first. */
  readonly unknownsIfAllTrue: readonly UnknownIfAllTrue[];
  /** How the unknowns were found. */
  readonly method: "least squares" | "weighted draws";
  /** How many draws the claims leave in effect: (Σw)²/Σw². */
  readonly effectiveDraws: number;
  /** What an editor can print: a verdict, a sentence for each claim, the odd one, what must have been otherwise. */
  readonly words: readonly string[];
  /** What is doubtful; empty when nothing is. */
  readonly warnings: readonly string[];
  /** Each claim's spread and tension, and the sum that the chance is of. */
  readonly working: () => readonly Step[];
}
