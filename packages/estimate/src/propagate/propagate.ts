import { InputError, quantity, readNumber, readOptions } from "@tarewatt/units";
import { type EvidenceRead, readEvidence } from "../evidence/evidence.js";
import { checkReach, quantileOf } from "../evidence/quantile.js";
import type { EvidenceFor, Model, ModelInput, ModelNumbers, ModelOutput, ValueIn } from "../model/model.js";
import { quantileOfSorted, type Spread } from "./spread.js";
import { uniforms } from "./uniform.js";

/** What {@link propagate} needs. */
export interface PropagateOptions<
  Inputs extends Readonly<Record<string, ModelInput>>,
  Outputs extends Readonly<Record<string, ModelOutput>>,
> {
  /** The model. */
  readonly model: Model<Inputs, Outputs>;
  /** What is known of each input. */
  readonly evidence: EvidenceFor<Inputs>;
  /** How many draws, 100 to 1,000,000; 10,000 when left out. */
  readonly draws?: number;
  /** Whole number that chooses the draws; the same seed gives the same draws everywhere. 1 when left out. */
  readonly seed?: number;
}

/** The outputs of a model under uncertain inputs. */
export interface Propagation<Outputs extends Readonly<Record<string, ModelOutput>>> {
  /** How many draws were made. */
  readonly draws: number;
  /** The seed that chose them. */
  readonly seed: number;
  /** For how many draws the model threw or gave a number that is not finite; they are left out of the spreads. */
  readonly failed: number;
  /** 10th, 50th and 90th percentiles of each output. */
  readonly spread: { readonly [K in keyof Outputs]: Spread<ValueIn<Outputs[K]["unit"]>> };
  /** The outputs with every input at its likely value: near the 50th percentile, but not the same thing. */
  readonly likely: { readonly [K in keyof Outputs]: ValueIn<Outputs[K]["unit"]> };
  /**
   * The share of draws in which an output reaches a value.
   * @param output - name of the output
   * @param value - the value to reach or exceed
   */
  chanceOfAtLeast<K extends keyof Outputs & string>(output: K, value: ValueIn<Outputs[K]["unit"]>): number;
  /**
   * A copy of the draws of an output that succeeded, in the order of their index, in its unit.
   * @param output - name of the output
   */
  samples(output: keyof Outputs & string): Float64Array;
}

/**
 * Carries what is known of the inputs through a model: seeded draws of all inputs together, never the corners of all at once.
 *
 * The inputs are independent. The spread of a percentile over seeds falls with the root of the number of draws: with 10,000
 * draws about 1 % of the width from the 10th to the 90th percentile.
 *
 * @param options - model, evidence, draws and seed
 * @returns spreads of every output
 * @throws InputError `UNKNOWN_OPTION`, `MISSING_OPTION`, `OUT_OF_RANGE`, `INCONSISTENT`, and `NOT_VALID_HERE` when no draw gave a
 *   finite result
 * @example
 * propagate({ model: cubeMass, evidence: { edge: around(q("1 m"), 0.02), density: q("2700 kg/m³") } }).spread.mass.p90;
 */
export function propagate<
  Inputs extends Readonly<Record<string, ModelInput>>,
  Outputs extends Readonly<Record<string, ModelOutput>>,
>(options: PropagateOptions<Inputs, Outputs>): Propagation<Outputs> {
  readOptions("propagate", options, {}, ["model", "evidence", "draws?", "seed?"]);
  const { model, evidence } = options;
  const { draws, seed } = readStudy(options);
  const read = readAllEvidence(model, evidence);
  const names = Object.keys(model.outputs);
  const columns = new Map(names.map((name) => [name, new Float64Array(draws)]));
  let failed = 0;
  for (let index = 0, drawn = drawer(read, seed); index < draws; index++) {
    const outputs = evaluated(model, drawn(index) as ModelNumbers<Inputs>);
    if (outputs === undefined) failed++;
    for (const [name, column] of columns) column[index] = outputs?.[name] ?? Number.NaN;
  }
  if (failed === draws) {
    throw new InputError("NOT_VALID_HERE", `${model.name}: none of the ${draws} draws gave finite results`, { draws });
  }
  return summarise(model, read, columns, { draws, seed, failed });
}

/** @internal */
export function readStudy({ draws, seed }: { readonly draws?: number; readonly seed?: number }): {
  draws: number;
  seed: number;
} {
  return {
    draws: wholeNumber("draws", draws ?? 10_000, 100, 1_000_000),
    seed: wholeNumber("seed", seed ?? 1, 0, 4_294_967_295),
  };
}

function wholeNumber(name: string, value: number, atLeast: number, atMost: number): number {
  const number = readNumber(name, value, { unit: "1", atLeast, atMost });
  if (!Number.isInteger(number)) {
    throw new InputError("OUT_OF_RANGE", `${name} must be a whole number: got ${value}`, { name });
  }
  return number;
}

/** @internal Every input's evidence as numbers, by name, checked to its far ends. */
export function readAllEvidence<Inputs extends Readonly<Record<string, ModelInput>>>(
  { name, inputs }: { readonly name: string; readonly inputs: Inputs },
  evidence: EvidenceFor<Inputs>,
): ReadonlyMap<keyof Inputs & string, EvidenceRead> {
  readOptions(`the evidence for ${name}`, evidence, {}, Object.keys(inputs));
  return new Map(
    Object.entries(inputs).map(([key, rule]) => {
      const read = readEvidence(key, evidence[key], rule);
      checkReach(key, read, rule);
      return [key, read];
    }),
  );
}

/** @internal The inputs of the draw with a given index. */
export function drawer<Name extends string>(
  evidence: ReadonlyMap<Name, EvidenceRead>,
  seed: number,
): (index: number) => Record<Name, number> {
  const sources = [...evidence].map(([name, read]) => ({ name, read, uniform: uniforms(seed, name) }));
  return (index) => {
    const inputs = {} as Record<Name, number>;
    for (const { name, read, uniform } of sources) {
      inputs[name] = read.low === read.high ? read.likely : quantileOf(read, uniform(index));
    }
    return inputs;
  };
}

/** The outputs, or undefined when the model throws or any of them is not finite. */
function evaluated<
  Inputs extends Readonly<Record<string, ModelInput>>,
  Outputs extends Readonly<Record<string, ModelOutput>>,
>(model: Model<Inputs, Outputs>, inputs: ModelNumbers<Inputs>): Readonly<Record<string, number>> | undefined {
  try {
    const outputs = model.evaluate(inputs) as Readonly<Record<string, number>>;
    return Object.keys(model.outputs).every((name) => Number.isFinite(outputs[name])) ? outputs : undefined;
  } catch {
    return undefined;
  }
}

function summarise<
  Inputs extends Readonly<Record<string, ModelInput>>,
  Outputs extends Readonly<Record<string, ModelOutput>>,
>(
  model: Model<Inputs, Outputs>,
  read: ReadonlyMap<string, EvidenceRead>,
  columns: ReadonlyMap<string, Float64Array>,
  { draws, seed, failed }: { draws: number; seed: number; failed: number },
): Propagation<Outputs> {
  const inUnit = (name: string, value: number): unknown => {
    const unit = (model.outputs[name] as ModelOutput).unit;
    return unit === "1" ? value : quantity(value, unit as string);
  };
  const column = (name: string): Float64Array => {
    const found = columns.get(name);
    if (found === undefined) {
      const known = [...columns.keys()].join(", ");
      throw new InputError("UNKNOWN_OPTION", `${model.name} has no output '${name}': it gives ${known}`, {
        output: name,
      });
    }
    return found;
  };
  const sorted = new Map([...columns].map(([name, values]) => [name, values.filter(Number.isFinite).sort()]));
  const spread = Object.fromEntries(
    [...sorted].map(([name, values]) => {
      const at = (share: number): unknown => inUnit(name, quantileOfSorted(values, share));
      return [name, { p10: at(0.1), p50: at(0.5), p90: at(0.9) }];
    }),
  );
  const likelyInputs = Object.fromEntries([...read].map(([name, { likely }]) => [name, likely]));
  const atLikely = model.evaluate(likelyInputs as ModelNumbers<Inputs>) as Readonly<Record<string, number>>;
  const likely = Object.fromEntries(
    Object.keys(model.outputs).map((name) => [name, inUnit(name, atLikely[name] as number)]),
  );
  return {
    draws,
    seed,
    failed,
    spread: spread as Propagation<Outputs>["spread"],
    likely: likely as Propagation<Outputs>["likely"],
    chanceOfAtLeast: (output, value) => {
      const values = column(output);
      const wanted = readNumber(output, value, { unit: (model.outputs[output] as ModelOutput).unit });
      let count = 0;
      for (const sample of values) if (sample >= wanted) count++;
      return count / (draws - failed);
    },
    samples: (output) => column(output).filter(Number.isFinite),
  };
}
