import { InputError, readOptions } from "@tarewatt/units";
import { numberOf } from "../bridge/make-bridge.js";
import { readFilled, readParts, readText } from "../check/reads.js";
import { plain } from "../evidence/file/plain.js";
import type { ModelInput, ModelOutput } from "../model/model.js";
import { entryOf, readModel } from "../model/read-model.js";
import { propagate } from "../propagate/propagate.js";
import { readAllEvidence } from "../propagate/study.js";
import type { StudyOptions } from "../propagate/study-run.js";
import { digestOf } from "./canonical-json.js";
import { frozenWhole } from "./frozen-whole.js";
import {
  FORMAT,
  type PlainJson,
  type SealedEstimate,
  type SealedInput,
  type SealedOutput,
  sealedShares,
  VERSION,
} from "./sealed.js";

/** Options of {@link sealEstimate}. */
export interface SealEstimateOptions<
  Inputs extends Readonly<Record<string, ModelInput>>,
  Outputs extends Readonly<Record<string, ModelOutput>>,
> extends StudyOptions<Inputs, Outputs> {
  /** What is estimated. */
  readonly name: string;
  /** The day, as ISO 8601: `"2026-11-25"`. */
  readonly date: string;
  /** The outputs to seal; all when left out. */
  readonly outputs?: readonly (keyof Outputs & string)[] | undefined;
  /** Versions of the programs, by name. */
  readonly versions?: Readonly<Record<string, string>> | undefined;
  /** What was assumed beside the evidence, by name, as plain data or quantities. */
  readonly priors?: Readonly<Record<string, unknown>> | undefined;
}

/**
 * Seals an estimate, so that nobody can change it unnoticed when the certificate arrives: inputs with their evidence, versions, priors, seed, the
 * spread of each output, and a digest over all of it. The result is plain data for `JSON.stringify`; `readSealed` reads and checks it.
 *
 * The digest proves that nothing was changed, not when it was made: for that, publish it or leave it with somebody.
 *
 * @param options - name, day, model, evidence, outputs, versions, priors, draws and seed
 * @returns the sealed estimate; the same input gives the same digest, in whatever order its parts are named
 * @throws InputError `WRONG_CHOICE` for a date that is no day, an output that the model does not give and what JSON cannot hold, and what
 *   {@link propagate} throws
 * @example
 * const range = model({
 *   name: "range",
 *   inputs: { usable: { unit: "kWh", meaning: "usable energy", above: 0 }, use: { unit: "Wh/km", meaning: "consumption", above: 0 } },
 *   outputs: { range: { unit: "km", meaning: "range" } },
 *   evaluate: ({ usable, use }) => ({ range: (1000 * usable) / use }),
 * });
 * const evidence = { usable: q("90 kWh"), use: around(q("180 Wh/km"), 0.1) };
 * const sealed = sealEstimate({ name: "van (invented)", date: "2026-11-25", model: range, evidence });
 * sealed.outputs.range?.likely; // 500
 * sealed.digest.length; // 71
 */
export function sealEstimate<
  Inputs extends Readonly<Record<string, ModelInput>>,
  Outputs extends Readonly<Record<string, ModelOutput>>,
>(options: SealEstimateOptions<Inputs, Outputs>): SealedEstimate {
  readOptions("sealEstimate", options, {}, [
    ...["name", "date", "model", "evidence", "correlations?", "draws?", "seed?", "outputs?", "versions?", "priors?"],
  ]);
  const { name, date, evidence, correlations, versions = {}, priors = {} } = options;
  const model = readModel(options.model);
  const wanted = readFilled("outputs", options.outputs ?? Object.keys(model.outputs));
  const study = propagate({ model, evidence, correlations, draws: options.draws, seed: options.seed });
  const read = readAllEvidence(model, evidence);
  const inputs = Object.entries(model.inputs).map(([input, { unit, meaning }]): [string, SealedInput] => [
    input,
    { unit, meaning, likely: read.get(input)?.likely as number, evidence: plain(evidence[input], 0) as PlainJson },
  ]);
  const outputs = wanted.map((output): [string, SealedOutput] => {
    const { unit, meaning } = entryOf(model.outputs, output, "output", model.name);
    const known = output as keyof Outputs & string;
    return [
      known,
      {
        ...{ unit, meaning, likely: numberOf(study.likely[known]), mean: numberOf(study.mean[known]) },
        standardDeviation: numberOf(study.standardDeviation[known]),
        quantiles: sealedShares.map((share) => numberOf(study.quantile(known, share))),
      },
    ];
  });
  const texts = Object.entries(readParts("versions", versions)).map(([key, version]) => [key, readText(key, version)]);
  const content = {
    ...{
      format: FORMAT,
      version: VERSION,
      name: readText("name", name),
      date: readDay("date", date),
      model: model.name,
    },
    ...{ draws: study.draws, seed: study.seed, failed: study.failed },
    versions: Object.fromEntries(texts) as SealedEstimate["versions"],
    priors: plain(readParts("priors", priors), 0) as SealedEstimate["priors"],
    correlations: plain(correlations ?? [], 0) as SealedEstimate["correlations"],
    inputs: Object.fromEntries(inputs),
    shares: sealedShares,
    outputs: Object.fromEntries(outputs),
  } as const;
  return frozenWhole({ ...content, digest: digestOf(content) });
}

/** @internal A day of the calendar, as ISO 8601. */
export function readDay(name: string, given: unknown): string {
  const text = readText(name, given);
  const time = /^\d{4}-\d{2}-\d{2}$/.test(text) ? Date.parse(`${text}T00:00:00Z`) : Number.NaN;
  // 31 February would be read as 3 March
  if (Number.isFinite(time) && new Date(time).toISOString().startsWith(text)) return text;
  throw new InputError("WRONG_CHOICE", `${name} must be a day such as 2026-11-25: got '${text.slice(0, 60)}'`, {
    name,
  });
}
