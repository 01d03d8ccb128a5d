/** Anything that JSON can hold. */
export type PlainJson =
  | string
  | number
  | boolean
  | null
  | readonly PlainJson[]
  | { readonly [name: string]: PlainJson };

/** An input as it was sealed. */
export interface SealedInput {
  /** Unit of the model. */
  readonly unit: string;
  /** What it is, in words. */
  readonly meaning: string;
  /** The likely value, in `unit`. */
  readonly likely: number;
  /** The evidence as it was given: quantities as texts, with grade and source. */
  readonly evidence: PlainJson;
}

/** An output as it was sealed. */
export interface SealedOutput {
  /** Unit of all its figures. */
  readonly unit: string;
  /** What it is, in words. */
  readonly meaning: string;
  /** The figure at the likely inputs. */
  readonly likely: number;
  /** Mean of the draws. */
  readonly mean: number;
  /** Their standard deviation. */
  readonly standardDeviation: number;
  /** The figures below which the shares of {@link SealedEstimate.shares} lie; they never fall. */
  readonly quantiles: readonly number[];
}

/** An estimate that can no longer be changed without being noticed: plain data, for a file. */
export interface SealedEstimate {
  /** What the file is. */
  readonly format: "tarewatt sealed estimate";
  /** Version of the format. */
  readonly version: 1;
  /** What was estimated. */
  readonly name: string;
  /** When, as an ISO 8601 day. */
  readonly date: string;
  /** Name of the model. */
  readonly model: string;
  /** Number of draws. */
  readonly draws: number;
  /** The seed that chose them. */
  readonly seed: number;
  /** Draws without a result. */
  readonly failed: number;
  /** Versions of the programs that made it, by name. */
  readonly versions: { readonly [name: string]: string };
  /** What was assumed beside the evidence: priors, calibrations, rules. */
  readonly priors: { readonly [name: string]: PlainJson };
  /** Inputs that were taken to go together. */
  readonly correlations: readonly PlainJson[];
  /** All inputs, by name. */
  readonly inputs: { readonly [name: string]: SealedInput };
  /** Shares of the quantiles, ascending. */
  readonly shares: readonly number[];
  /** The outputs, by name. */
  readonly outputs: { readonly [name: string]: SealedOutput };
  /** SHA-256 (FIPS 180-4) of all other parts as canonical JSON (RFC 8785), in hexadecimal after `sha256:`. */
  readonly digest: string;
}

/** @internal What a sealed estimate says it is. */
export const FORMAT = "tarewatt sealed estimate" as const;
/** @internal Raised when the new form can no longer read the old. */
export const VERSION = 1 as const;

/** @internal The shares whose quantiles are kept: every hundredth, and the tails as far as some thousand draws reach. */
export const sealedShares: readonly number[] = /* @__PURE__ */ (() =>
  Object.freeze([0.001, 0.005, ...Array.from({ length: 99 }, (_, i) => (i + 1) / 100), 0.995, 0.999]))();
