import { quantity, readOptions } from "@tarewatt/units";
import type { EvidenceFor, Model, ModelInput, ModelOutput, ValueIn } from "../model/model.js";
import { attempt, entryOf, noResult, readModel } from "../model/read-model.js";
import { likelyInputs, readAllEvidence } from "../propagate/study.js";

/** What {@link rankUnknowns} needs. */
export interface RankUnknownsOptions<
  Inputs extends Readonly<Record<string, ModelInput>>,
  Outputs extends Readonly<Record<string, ModelOutput>>,
  Target extends keyof Outputs & string,
> {
  /** The model. */
  readonly model: Model<Inputs, Outputs>;
  /** What is known of each input. */
  readonly evidence: EvidenceFor<Inputs>;
  /** The output that matters. */
  readonly output: Target;
}

/** What one unknown does to the output, alone. */
export interface RankedUnknown<Y> {
  /** Name of the input. */
  readonly input: string;
  /** What it is, in words. */
  readonly meaning: string;
  /** The output with this input at its 10th percentile and all others likely. */
  readonly atLow: Y;
  /** The output with this input at its 90th percentile and all others likely. */
  readonly atHigh: Y;
  /** Size of the difference between the two. */
  readonly swing: Y;
}

/**
 * Which unknown moves an output most: each input from its 10th to its 90th percentile, alone, the others at their likely
 * values. Exact inputs do not appear. Swings do not show what inputs do together.
 *
 * @param options - model, evidence and output
 * @returns the unknowns, the largest swing first
 * @throws InputError `WRONG_CHOICE` for an output that the model does not give, `NOT_VALID_HERE`, with the cause, when the model gives no
 *   finite result at an end of a range
 * @example
 * const range = model({
 *   name: "range",
 *   inputs: { usable: { unit: "kWh", meaning: "usable energy", above: 0 }, use: { unit: "Wh/km", meaning: "consumption", above: 0 } },
 *   outputs: { range: { unit: "km", meaning: "range" } },
 *   evaluate: ({ usable, use }) => ({ range: (1000 * usable) / use }),
 * });
 * const evidence = { usable: q("90 kWh"), use: around(q("180 Wh/km"), 0.1) };
 * rankUnknowns({ model: range, evidence, output: "range" })[0]?.input; // "use"
 */
export function rankUnknowns<
  Inputs extends Readonly<Record<string, ModelInput>>,
  Outputs extends Readonly<Record<string, ModelOutput>>,
  Target extends keyof Outputs & string,
>(options: RankUnknownsOptions<Inputs, Outputs, Target>): readonly RankedUnknown<ValueIn<Outputs[Target]["unit"]>>[] {
  readOptions("rankUnknowns", options, {}, ["model", "evidence", "output"]);
  type Y = ValueIn<Outputs[Target]["unit"]>;
  const { output } = options;
  const model = readModel(options.model);
  const { unit } = entryOf(model.outputs, output, "output", model.name);
  const read = readAllEvidence(model, options.evidence);
  const likely = likelyInputs(read);
  const at = (changed: Readonly<Record<string, number>>): number => {
    const { outputs, reason } = attempt(model, { ...likely, ...changed });
    if (outputs !== undefined) return outputs[output] as number;
    const [name] = Object.keys(changed);
    throw noResult(`${model.name} gives no finite results with ${name} at an end of its range`, reason);
  };
  const inUnit = (value: number): Y => (unit === "1" ? value : quantity(value, unit as string)) as Y;
  return [...read]
    .filter(([, { low, high }]) => low !== high)
    .map(([name, { low, high }]) => ({ name, atLow: at({ [name]: low }), atHigh: at({ [name]: high }) }))
    .sort((a, b) => Math.abs(b.atHigh - b.atLow) - Math.abs(a.atHigh - a.atLow))
    .map(({ name, atLow, atHigh }) => ({
      input: name,
      meaning: model.inputs[name]?.meaning ?? name,
      atLow: inUnit(atLow),
      atHigh: inUnit(atHigh),
      swing: inUnit(Math.abs(atHigh - atLow)),
    }));
}
