import { InputError, readNumber, readOptions } from "@tarewatt/units";
import type { BridgeMethod } from "../bridge/bridge-result.js";
import { inUnitOf } from "../bridge/make-bridge.js";
import { readParts, readText } from "../check/reads.js";
import type { EvidenceFor, Model, ModelInput, ModelOutput } from "../model/model.js";
import { readModel } from "../model/read-model.js";
import { attributionOf, changedSince, sameModel } from "./attribution.js";
import { rankedProbabilityScore, shareBelow } from "./fallen.js";
import { outcomeInWords } from "./outcome-in-words.js";
import { checkedSeal } from "./read-sealed.js";
import { intervalScore } from "./relations.js";
import { readDay } from "./seal-estimate.js";
import type { SealedEstimate, SealedOutput } from "./sealed.js";
import { type Figure, type JudgedInterval, judgedShares, type SettledOutcome, type Settlement } from "./settlement.js";

/** Options of {@link settle}. */
export interface SettleOptions<
  Inputs extends Readonly<Record<string, ModelInput>>,
  Outputs extends Readonly<Record<string, ModelOutput>>,
> {
  /** The sealed estimate, as {@link sealEstimate} or {@link readSealed} gave it; its digest is checked again. */
  readonly sealed: SealedEstimate;
  /** What came out, by the name of the output: quantities, or numbers for ratios. */
  readonly outcomes: Readonly<Record<string, Figure>>;
  /** The day of the outcomes, as ISO 8601. */
  readonly date: string;
  /** What it is counted with in a running record, such as a class of vehicles. */
  readonly group?: string | undefined;
  /** The model that was sealed, to attribute misses with. */
  readonly model?: Model<Inputs, Outputs> | undefined;
  /** Inputs that became known, such as the true mass, in the order in which they are taken in. */
  readonly known?: Partial<EvidenceFor<Inputs>> | undefined;
  /** How known facts share a miss; `"in the order stated"` when left out. */
  readonly method?: BridgeMethod | undefined;
}

/**
 * Settles a sealed estimate when the certificate arrives: where each outcome fell in its spread, how good the stated intervals were, and what
 * the miss is attributed to.
 *
 * With the model and inputs that became known, the way from the sealed median to the outcome is bridged: from the median to the figure at the
 * likely inputs, from each likely input to the known one, and what the model does not explain. One outcome proves little about a spread: keep
 * settlements, and look at the {@link runningRecord}.
 *
 * @param options - the sealed estimate, outcomes, day, and model and known inputs for the attribution
 * @returns every outcome beside its spread
 * @throws InputError `WRONG_CHOICE` for an output that was not sealed, `WRONG_DIMENSION` for an outcome in a wrong unit, `DIGEST_MISMATCH` and what else
 *   {@link readSealed} throws, `MISSING_OPTION` for known inputs without a model, `INCONSISTENT` for another model
 * @example
 * const range = model({
 *   name: "range",
 *   inputs: { usable: { unit: "kWh", meaning: "usable energy", above: 0 }, use: { unit: "Wh/km", meaning: "consumption", above: 0 } },
 *   outputs: { range: { unit: "km", meaning: "range" } },
 *   evaluate: ({ usable, use }) => ({ range: (1000 * usable) / use }),
 * });
 * const evidence = { usable: around(q("90 kWh"), 0.05), use: around(q("180 Wh/km"), 0.1) };
 * const sealed = sealEstimate({ name: "van (invented)", date: "2026-11-25", model: range, evidence });
 * const known = { usable: q("87 kWh") };
 * const settled = settle({ sealed, outcomes: { range: q("470 km") }, date: "2027-05-04", model: range, known });
 * settled.outcomes[0]?.intervals.map(({ inside }) => inside); // [false, true, true]
 * settled.outcomes[0]?.attribution?.parts.map(({ cause }) => cause); // ["likely inputs instead of the middle of the spread", "usable energy", "not explained by the model"]
 */
export function settle<
  Inputs extends Readonly<Record<string, ModelInput>>,
  Outputs extends Readonly<Record<string, ModelOutput>>,
>(options: SettleOptions<Inputs, Outputs>): Settlement {
  readOptions("settle", options, {}, ["sealed", "outcomes", "date", "group?", "model?", "known?", "method?"]);
  const sealed = checkedSeal(options.sealed);
  const { known, group = "" } = options;
  const model = options.model === undefined ? undefined : readModel(options.model);
  if (model !== undefined) sameModel(sealed, model);
  if (known !== undefined && model === undefined) {
    throw new InputError("MISSING_OPTION", "settle needs the model to attribute a miss to known inputs", {
      option: "model",
    });
  }
  const given = Object.entries(readParts("outcomes", options.outcomes)).filter(([, value]) => value !== undefined);
  if (given.length === 0) throw new InputError("EMPTY", "outcomes must name at least one sealed output", {});
  const settledOn = readDay("date", options.date);
  const outcomes = given.map(([output, value]): SettledOutcome => {
    const spread = sealedOutput(sealed, output);
    const outcome = readNumber(output, value, { unit: spread.unit });
    const attribution =
      model === undefined || known === undefined
        ? undefined
        : attributionOf({ sealed, model, known, output, outcome, method: options.method });
    const judged = judgedOutcome(output, spread, sealed.shares, outcome);
    const whole = { ...judged, ...(attribution === undefined ? {} : { attribution }) };
    return Object.freeze({ ...whole, words: outcomeInWords(whole) });
  });
  return Object.freeze({
    ...{ name: sealed.name, digest: sealed.digest, sealedOn: sealed.date, settledOn },
    group: group === "" ? "" : readText("group", group),
    outcomes: Object.freeze(outcomes),
    warnings: Object.freeze([
      ...(settledOn < sealed.date
        ? [
            `the outcomes are from ${settledOn}, before the estimate was sealed on ${sealed.date}: it may have known them`,
          ]
        : []),
      ...(model === undefined ? [] : changedSince(sealed, model)),
    ]),
  });
}

function judgedOutcome(
  output: string,
  { unit, meaning, mean, standardDeviation, quantiles }: SealedOutput,
  shares: readonly number[],
  outcome: number,
): Omit<SettledOutcome, "words"> {
  const spread = { shares, quantiles };
  // The reader of sealed estimates has seen to it that these shares are there.
  const at = (share: number): number => quantiles[shares.findIndex((each) => Math.abs(each - share) < 1e-9)] as number;
  const figure = (value: number): Figure => inUnitOf(value, unit);
  const intervals = judgedShares.map((share): JudgedInterval => {
    const outside = 1 - share;
    const [lower, upper] = [at(outside / 2), at(1 - outside / 2)];
    return Object.freeze({
      ...{ share, low: figure(lower), high: figure(upper), inside: lower <= outcome && outcome <= upper },
      score: figure(intervalScore.of({ lower, upper, outcome, outside })),
    });
  });
  return {
    ...{ output, meaning, unit, outcome: figure(outcome), median: figure(at(0.5)), miss: figure(outcome - at(0.5)) },
    shareBelow: shareBelow(spread, outcome),
    ...(standardDeviation > 0 ? { deviations: (outcome - mean) / standardDeviation } : {}),
    intervals: Object.freeze(intervals),
    rankedProbabilityScore: figure(rankedProbabilityScore(spread, outcome)),
  };
}

function sealedOutput({ outputs, name }: SealedEstimate, output: string): SealedOutput {
  const found = Object.hasOwn(outputs, output) ? outputs[output] : undefined;
  if (found !== undefined) return found;
  const known = Object.keys(outputs).join(", ");
  throw new InputError("WRONG_CHOICE", `the sealed estimate of ${name} has no output '${output}': it has ${known}`, {
    output,
  });
}
