import { InputError, readOptions } from "@tarewatt/units";
import { methods, readOrder } from "../bridge/bridge-between.js";
import type { BridgeMethod } from "../bridge/bridge-result.js";
import { inUnitOf, makeBridge, numberOf } from "../bridge/make-bridge.js";
import { meanOverOrders } from "../bridge/mean-over-orders.js";
import { readChoice, readFilled, readParts } from "../check/reads.js";
import { copyOfEvidence, type EvidenceRead, readEvidence } from "../evidence/evidence.js";
import type { EvidenceFor, Model, ModelInput, ModelOutput } from "../model/model.js";
import { entryOf, readModel } from "../model/read-model.js";
import type { RankCorrelation } from "../propagate/correlation.js";
import { propagate } from "../propagate/propagate.js";
import type { Propagation } from "../propagate/propagation.js";
import type { Spread } from "../propagate/spread.js";
import { rankUnknowns } from "../rank/rank-unknowns.js";
import type { RankingChange, RevisedFact, RevisedOutput, Revision } from "./revision.js";
import { sentenceOf } from "./sentence.js";

/** Options of {@link revise}. */
export interface ReviseOptions<
  Inputs extends Readonly<Record<string, ModelInput>>,
  Outputs extends Readonly<Record<string, ModelOutput>>,
> {
  /** The model. */
  readonly model: Model<Inputs, Outputs>;
  /** What was known of each input. */
  readonly evidence: EvidenceFor<Inputs>;
  /** What is known now of those that changed, in the order in which the facts are taken in. */
  readonly changes: Partial<EvidenceFor<Inputs>>;
  /** The outputs to look at; all when left out. */
  readonly outputs?: readonly (keyof Outputs & string)[] | undefined;
  /** How the changed facts share the move; `"in the order stated"` when left out. The mean over all orders takes at most 5 facts. */
  readonly method?: BridgeMethod | undefined;
  /** An output for which to say how the ranking of the unknowns changes. */
  readonly rankingOf?: (keyof Outputs & string) | undefined;
  /** Inputs that go together; all others are independent. */
  readonly correlations?: readonly RankCorrelation<keyof Inputs & string>[] | undefined;
  /** As in `propagate`. */
  readonly draws?: number | undefined;
  /** As in `propagate`. */
  readonly seed?: number | undefined;
}

/** How many facts have all their orders tried: 2⁵ studies. */
const MOST_FACTS = 5;

/**
 * Changes facts of an estimate, and says what moved and why, old against new.
 *
 * Old and new have the same draws: an input whose evidence stays is drawn alike, so that only the changed facts move anything, and without a
 * change nothing moves to the last bit. The parts of each bridge are moves of the median; that of a fact that only became narrower can be
 * zero, or not, as a median of a curved model hangs on spreads, too.
 *
 * @param options - model, evidence, changes, outputs; method, ranking, draws and seed
 * @returns every output before and after, what moved it, and the same in words
 * @throws InputError `WRONG_CHOICE` for an output that the model does not give, `UNKNOWN_OPTION` for a fact that it does not take, `EMPTY` without a
 *   change, `TOO_LONG` for more than 5 facts with all orders, and what {@link propagate} throws
 * @example
 * const range = model({
 *   name: "range",
 *   inputs: { usable: { unit: "kWh", meaning: "usable energy", above: 0 }, use: { unit: "Wh/km", meaning: "consumption", above: 0 } },
 *   outputs: { range: { unit: "km", meaning: "range" } },
 *   evaluate: ({ usable, use }) => ({ range: (1000 * usable) / use }),
 * });
 * const evidence = { usable: around(q("90 kWh"), 0.05), use: around(q("180 Wh/km"), 0.1) };
 * const changes = { use: around(q("190 Wh/km"), 0.03) };
 * revise({ model: range, evidence, changes }).outputs.range?.words; // "range: 500 km before, 474 km now, −26 km; its spread is 52 % narrower"
 */
export function revise<
  Inputs extends Readonly<Record<string, ModelInput>>,
  Outputs extends Readonly<Record<string, ModelOutput>>,
>(options: ReviseOptions<Inputs, Outputs>): Revision<Outputs> {
  readOptions("revise", options, {}, [
    ...["model", "evidence", "changes", "outputs?", "method?", "rankingOf?", "correlations?", "draws?", "seed?"],
  ]);
  const model = readModel(options.model);
  const { evidence, correlations, draws, seed, rankingOf } = options;
  const method = readChoice("method", options.method ?? "in the order stated", methods);
  const facts = readFacts(model, evidence, options.changes);
  const names = facts.map(({ input }) => input);
  if (method === "mean over all orders" && names.length > MOST_FACTS) {
    throw new InputError("TOO_LONG", `all orders can be tried of at most ${MOST_FACTS} facts: got ${names.length}`, {});
  }
  const wanted = readWanted(model, options.outputs);
  if (rankingOf !== undefined) entryOf(model.outputs, rankingOf, "output", model.name);
  const evidenceWith = (taken: readonly string[]): EvidenceFor<Inputs> =>
    Object.freeze({ ...evidence, ...pick(options.changes, taken) });
  const studyWith = (taken: readonly string[]): Propagation<Outputs> =>
    propagate({ model, evidence: evidenceWith(taken), correlations, draws, seed });
  const before = studyWith([]);
  const after = studyWith(names);
  const middles = mediansOnTheWay(names, method, wanted, (taken) => {
    if (taken.length === 0) return before;
    return taken.length === names.length ? after : studyWith(taken);
  });
  const outputs = wanted.map((output): RevisedOutput<unknown> => {
    const { unit, meaning } = model.outputs[output] as ModelOutput;
    const [old, now] = [before.spread[output] as Spread, after.spread[output] as Spread];
    const steps = facts.map((fact, i) => ({ cause: fact.meaning, ...(middles.get(output)?.[i] as MedianStep) }));
    const from = { label: `${meaning}, before`, value: numberOf(old.p50) };
    const bridge = makeBridge({ unit, from, steps, to: `${meaning}, now`, method });
    const [oldWidth, width] = [widthOf(old), widthOf(now)];
    const narrowing: { readonly narrowing?: number } = oldWidth > 0 ? { narrowing: 1 - width / oldWidth } : {};
    const revised = { output, meaning, old, new: now, moved: bridge.change, ...narrowing, bridge };
    const words = sentenceOf(meaning, bridge, narrowing.narrowing);
    return Object.freeze({ ...revised, words }) as unknown as RevisedOutput<unknown>;
  });
  const unmoved = wanted.filter((output) => sameSamples(before.samples(output), after.samples(output)));
  const ranking = rankingOf === undefined ? [] : rankings(options, evidenceWith(names), rankingOf);
  return Object.freeze({
    ...{ draws: before.draws, seed: before.seed, facts },
    outputs: Object.freeze(Object.fromEntries(outputs.map((each) => [each.output, each]))),
    unmoved: Object.freeze(unmoved),
    ranking: Object.freeze(ranking),
    warnings: Object.freeze([...new Set([...before.warnings, ...after.warnings])]),
    words: Object.freeze(outputs.filter(({ output }) => !unmoved.includes(output)).map(({ words }) => words)),
  }) as unknown as Revision<Outputs>;
}

interface MedianStep {
  readonly value: number;
  readonly overOrders?: { readonly least: number; readonly most: number };
}

/** The median of every output after each fact: one study serves all outputs. */
function mediansOnTheWay<Outputs extends Readonly<Record<string, ModelOutput>>>(
  names: readonly string[],
  method: BridgeMethod,
  wanted: readonly (keyof Outputs & string)[],
  study: (taken: readonly string[]) => Propagation<Outputs>,
): ReadonlyMap<string, readonly MedianStep[]> {
  const medians = (taken: readonly string[]): readonly number[] => {
    const { spread } = study(taken);
    return wanted.map((output) => numberOf(spread[output].p50));
  };
  if (method === "in the order stated") {
    const steps = names.map((_, i) => medians(names.slice(0, i + 1)));
    return new Map(wanted.map((output, o) => [output, steps.map((each) => ({ value: each[o] as number }))]));
  }
  const bySet = Array.from({ length: 2 ** names.length }, (_, set) =>
    medians(names.filter((_name, i) => (set & (1 << i)) !== 0)),
  );
  return new Map(
    wanted.map((output, o) => {
      let reached = bySet[0]?.[o] as number;
      const steps = meanOverOrders(names.length, (set) => bySet[set]?.[o] as number).map(({ mean, least, most }, i) => {
        reached = i === names.length - 1 ? (bySet.at(-1)?.[o] as number) : reached + mean;
        return { value: reached, overOrders: { least, most } };
      });
      return [output, steps];
    }),
  );
}

function readFacts<Inputs extends Readonly<Record<string, ModelInput>>>(
  { name, inputs }: { readonly name: string; readonly inputs: Inputs },
  evidence: EvidenceFor<Inputs>,
  changes: Partial<EvidenceFor<Inputs>>,
): readonly RevisedFact[] {
  readOptions(
    `the changes for ${name}`,
    changes,
    {},
    Object.keys(inputs).map((each) => `${each}?`),
  );
  readOptions(`the evidence for ${name}`, evidence, {}, Object.keys(inputs));
  const changed = Object.entries(changes).flatMap(([input, value]) => (value === undefined ? [] : [input]));
  if (changed.length === 0) throw new InputError("EMPTY", `changes must name at least one input of ${name}`, {});
  return Object.freeze(
    readOrder(inputs, name, changed, changed).map(({ cause }, i) => {
      const input = changed[i] as string;
      const rule = inputs[input] as ModelInput;
      const spreadOf = (given: unknown): Spread =>
        spreadIn(readEvidence(input, copyOfEvidence(given), rule), rule.unit);
      return Object.freeze({ input, meaning: cause, old: spreadOf(evidence[input]), new: spreadOf(changes[input]) });
    }),
  );
}

function spreadIn({ low, likely, high }: EvidenceRead, unit: string): Spread {
  return Object.freeze({ p10: inUnitOf(low, unit), p50: inUnitOf(likely, unit), p90: inUnitOf(high, unit) });
}

function readWanted<Outputs extends Readonly<Record<string, ModelOutput>>>(
  { name, outputs }: { readonly name: string; readonly outputs: Outputs },
  given: unknown,
): readonly (keyof Outputs & string)[] {
  if (given === undefined) return Object.keys(outputs);
  const names = readFilled("outputs", given);
  for (const each of names) entryOf(outputs, each, "output", name);
  return [...new Set(names as string[])];
}

function pick(changes: object, names: readonly string[]): object {
  const parts = readParts("changes", changes);
  return Object.fromEntries(names.map((name) => [name, parts[name]]));
}

function rankings<
  Inputs extends Readonly<Record<string, ModelInput>>,
  Outputs extends Readonly<Record<string, ModelOutput>>,
>(
  { model, evidence, seed }: ReviseOptions<Inputs, Outputs>,
  revised: EvidenceFor<Inputs>,
  output: keyof Outputs & string,
): readonly RankingChange[] {
  const order = (of: EvidenceFor<Inputs>) =>
    rankUnknowns({ model, evidence: of, output, seed }).map(({ input, meaning }) => ({ input, meaning }));
  const [before, after] = [order(evidence), order(revised)];
  const places = (input: string) => ({
    ...placeOf("before", before, input),
    ...placeOf("after", after, input),
  });
  const gone = before.filter(({ input }) => after.every((each) => each.input !== input));
  return [...after, ...gone].map((each) => Object.freeze({ ...each, ...places(each.input) }));
}

function placeOf(key: "before" | "after", order: readonly { readonly input: string }[], input: string): object {
  const place = order.findIndex((each) => each.input === input);
  return place < 0 ? {} : { [key]: place + 1 };
}

function sameSamples(a: Float64Array, b: Float64Array): boolean {
  return a.length === b.length && a.every((value, i) => value === b[i]);
}

/** From the 10th to the 90th percentile, in the unit of the output. */
function widthOf({ p10, p90 }: Spread): number {
  return numberOf(p90) - numberOf(p10);
}
