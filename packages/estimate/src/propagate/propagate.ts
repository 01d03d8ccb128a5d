import type { ModelInput, ModelOutput } from "../model/model.js";
import { type Propagation, propagationOf } from "./propagation.js";
import { finished, type Keep, readKeep, readStudyRun, type StudyOptions } from "./study-run.js";

/** What {@link propagate} needs. */
export interface PropagateOptions<
  Inputs extends Readonly<Record<string, ModelInput>>,
  Outputs extends Readonly<Record<string, ModelOutput>>,
> extends StudyOptions<Inputs, Outputs> {
  /**
   * `"draws"` keeps every draw; `"summary"` takes the same memory however many there are, and reads percentiles from bins that are
   * 1/4096 of their value wide. `"draws"` when left out.
   */
  readonly keep?: Keep | undefined;
}

/**
 * Carries what is known of the inputs through a model: seeded draws of all inputs together, never the corners of all at once.
 *
 * The draws are spread more evenly than random ones, each input by itself, and together where inputs state their places. Inputs are
 * independent unless correlations are given. `standardError` of the result says how far its percentiles have settled.
 * Method: JCGM 101:2008 (from memory), with quasi-random in place of random draws.
 *
 * @param options - model, evidence, correlations, draws, seed, and what to keep
 * @returns spreads of every output, with means, standard deviations and correlations
 * @throws InputError `UNKNOWN_OPTION`, `MISSING_OPTION`, `OUT_OF_RANGE`, `INCONSISTENT` also for correlations that cannot all hold,
 *   `WRONG_CHOICE` for what is no model, and `NOT_VALID_HERE`, with the cause, when the likely inputs or all draws give no finite result
 * @example
 * const range = model({
 *   name: "range",
 *   inputs: { usable: { unit: "kWh", meaning: "usable energy", above: 0 }, use: { unit: "Wh/km", meaning: "consumption", above: 0 } },
 *   outputs: { range: { unit: "km", meaning: "range" } },
 *   evaluate: ({ usable, use }) => ({ range: (1000 * usable) / use }),
 * });
 * const evidence = { usable: q("90 kWh"), use: around(q("180 Wh/km"), 0.1) };
 * propagate({ model: range, evidence }).likely.range.in("km"); // 500
 */
export function propagate<
  Inputs extends Readonly<Record<string, ModelInput>>,
  Outputs extends Readonly<Record<string, ModelOutput>>,
>(options: PropagateOptions<Inputs, Outputs>): Propagation<Outputs> {
  const study = readStudyRun("propagate", options, ["keep?"]);
  const { summary, kept } = finished(study.run(0, study.draws, readKeep(options.keep)));
  return propagationOf(options.model.outputs, summary, kept);
}
