import { quantity, readOptions } from "@tarewatt/units";
import type { EvidenceFor, Model, ModelInput, ModelOutput, ValueIn } from "../model/model.js";
import { attempt, entryOf, noResult, readModel } from "../model/read-model.js";
import type { AnyModel } from "../propagate/block.js";
import { likelyInputs, readAllEvidence, readStudy } from "../propagate/study.js";
import { type Estimate, sharesOf } from "./shares.js";

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
  /** How many rows of draws, 100 to 1,000,000; 1024 when left out. Each is evaluated twice, and once more for every unknown. */
  readonly draws?: number | undefined;
  /** As in `propagate`. */
  readonly seed?: number | undefined;
}

/** A figure from draws, and how far it may be off. */
export interface ShareEstimate {
  /** The share; near zero it may come out a little below it. */
  readonly value: number;
  /** Standard deviation of its error. */
  readonly standardError: number;
}

/** What one unknown does to the output. */
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
  /**
   * By how many per cent the output rises when this input rises by one per cent, at likely values; missing where input or output are
   * zero there.
   */
  readonly elasticity?: number;
  /** The share of the output's variance that would go, on average, if this input alone were known: the first-order share. */
  readonly firstOrder: ShareEstimate;
  /** The share of the variance that would stay if all inputs but this one were known, what they do together included. */
  readonly total: ShareEstimate;
  /** By which share the spread of the output would narrow if this input were measured exactly: 1 − √(1 − first-order share). */
  readonly narrowing: number;
  /** How many rows of draws the shares rest on. */
  readonly draws: number;
  /** How many rows were left out because the model gave no finite result. */
  readonly failed: number;
}

/**
 * What to measure next: the unknowns in the order of how much narrower the answer gets when one of them is known.
 *
 * Each comes with its shares of the variance and their errors, with the swing of the output from its 10th to its 90th percentile, alone, the
 * others at their likely values, and with its elasticity. Exact inputs do not appear. Inputs are taken as independent. Where a first-order
 * share lies far below the total one, the input matters through what it does together with others.
 *
 * Source: A. Saltelli and others, Computer Physics Communications 181 (2010) 259 (from memory).
 *
 * @param options - model, evidence, output, draws and seed
 * @returns the unknowns, the one that narrows the answer most first
 * @throws InputError `WRONG_CHOICE` for an output that the model does not give, `NOT_VALID_HERE`, with the cause, when the model gives no
 *   finite result at an end of a range or for any row of draws
 * @example
 * const range = model({
 *   name: "range",
 *   inputs: { usable: { unit: "kWh", meaning: "usable energy", above: 0 }, use: { unit: "Wh/km", meaning: "consumption", above: 0 } },
 *   outputs: { range: { unit: "km", meaning: "range" } },
 *   evaluate: ({ usable, use }) => ({ range: (1000 * usable) / use }),
 * });
 * const evidence = { usable: q("90 kWh"), use: around(q("180 Wh/km"), 0.1) };
 * const [first] = rankUnknowns({ model: range, evidence, output: "range" });
 * first?.input; // "use"
 * first?.elasticity?.toFixed(2); // "-1.00"
 */
export function rankUnknowns<
  Inputs extends Readonly<Record<string, ModelInput>>,
  Outputs extends Readonly<Record<string, ModelOutput>>,
  Target extends keyof Outputs & string,
>(options: RankUnknownsOptions<Inputs, Outputs, Target>): readonly RankedUnknown<ValueIn<Outputs[Target]["unit"]>>[] {
  readOptions("rankUnknowns", options, {}, ["model", "evidence", "output", "draws?", "seed?"]);
  type Y = ValueIn<Outputs[Target]["unit"]>;
  const { output } = options;
  const model = readModel(options.model);
  const { unit } = entryOf(model.outputs, output, "output", model.name);
  const { draws, seed } = readStudy(options, 1024);
  const evidence = readAllEvidence(model, options.evidence);
  const likely = likelyInputs(evidence);
  const at = (changed: Readonly<Record<string, number>>): number => {
    const { outputs, reason } = attempt(model, { ...likely, ...changed });
    if (outputs !== undefined) return outputs[output] as number;
    const [name] = Object.keys(changed);
    const where = name === undefined ? "at the likely inputs" : `with ${name} at an end of its range`;
    throw noResult(`${model.name} gives no finite results ${where}`, reason);
  };
  const inUnit = (value: number): Y => (unit === "1" ? value : quantity(value, unit as string)) as Y;
  const unknowns = [...evidence].filter(([, { low, high }]) => low !== high).map(([name]) => name);
  const atLikely = at({});
  const { shares, failed } = sharesOf({
    ...{ model: model as unknown as AnyModel, output, evidence, unknowns, rows: draws, seed },
  });
  if (failed === draws)
    throw noResult(`none of the ${draws} rows of draws of ${model.name} gave finite results`, undefined);
  const ranked = unknowns.map((name) => {
    const { low, high } = evidence.get(name) as { readonly low: number; readonly high: number };
    const [atLow, atHigh] = [at({ [name]: low }), at({ [name]: high })];
    const { first, total } = shares.get(name) as { readonly first: Estimate; readonly total: Estimate };
    const elasticity = elasticityOf((value) => attempt(model, { ...likely, [name]: value }).outputs?.[output], {
      ...{ from: likely[name] as number, width: high - low, output: atLikely },
    });
    return {
      ...{ input: name, meaning: model.inputs[name]?.meaning ?? name },
      ...{ atLow: inUnit(atLow), atHigh: inUnit(atHigh), swing: inUnit(Math.abs(atHigh - atLow)) },
      ...(elasticity === undefined ? {} : { elasticity }),
      ...{ firstOrder: first, total, narrowing: 1 - Math.sqrt(1 - Math.min(1, Math.max(0, first.value))) },
      ...{ draws: draws - failed, failed },
    };
  });
  return Object.freeze(ranked.sort((a, b) => b.narrowing - a.narrowing).map((each) => Object.freeze(each)));
}

/** Relative change of the output by that of the input, by a central difference over a thousandth of the input's spread. */
function elasticityOf(
  at: (value: number) => number | undefined,
  { from, width, output }: { readonly from: number; readonly width: number; readonly output: number },
): number | undefined {
  const step = width / 2000;
  const [below, above] = [at(from - step), at(from + step)];
  if (below === undefined || above === undefined || from === 0 || output === 0) return undefined;
  const elasticity = (((above - below) / (2 * step)) * from) / output;
  return Number.isFinite(elasticity) ? elasticity : undefined;
}
