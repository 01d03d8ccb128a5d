import { InputError, quantity, readNumber, readOptions } from "@tarewatt/units";
import type { EvidenceFor, Model, ModelInput, ModelNumbers, ModelOutput, ValueIn } from "../model/model.js";
import { drawer, readAllEvidence, readStudy } from "../propagate/propagate.js";
import { quantileOfSorted, type Spread } from "../propagate/spread.js";
import { bracketedRoot } from "./bracketed-root.js";
import { type Limit, type LimitRead, readLimits } from "./limit.js";

/** What {@link solveFor} needs. */
export interface SolveForOptions<
  Inputs extends Readonly<Record<string, ModelInput>>,
  Outputs extends Readonly<Record<string, ModelOutput>>,
  Unknown extends keyof Inputs & string,
  Target extends keyof Outputs & string,
> {
  /** The model. Its target output must rise with the unknown input, or fall with it, over the whole bracket. */
  readonly model: Model<Inputs, Outputs>;
  /** What is known of the other inputs; what it says of the unknown one is not used. */
  readonly evidence: EvidenceFor<Inputs>;
  /** The input to be found. */
  readonly unknown: Unknown;
  /** Where to look for it. */
  readonly between: readonly [ValueIn<Inputs[Unknown]["unit"]>, ValueIn<Inputs[Unknown]["unit"]>];
  /** The output that must reach a value. */
  readonly output: Target;
  /** The value to reach. */
  readonly target: ValueIn<Outputs[Target]["unit"]>;
  /** What must not be exceeded on the way. */
  readonly limits?: readonly Limit<Outputs>[];
  /** How many draws, 100 to 1,000,000; 2,000 when left out. */
  readonly draws?: number;
  /** As in {@link propagate}. */
  readonly seed?: number;
}

/** The target is reached. */
export interface Reached<X> {
  /** Always true. */
  readonly reached: true;
  /** The value of the unknown input that reaches it. */
  readonly value: X;
}

/** No allowed value of the unknown input reaches the target. */
export interface NotReached<X, Y> {
  /** Always false. */
  readonly reached: false;
  /** What stands in the way, in words. */
  readonly limit: string;
  /** How far it gets. */
  readonly best: Y;
  /** The value of the unknown input that gets there. */
  readonly at: X;
}

/** A limit that stands in the way, and how often. */
export interface LimitShare {
  /** The limit, in words. */
  readonly limit: string;
  /** Share of all draws that it stops. */
  readonly share: number;
}

/** What {@link solveFor} finds. */
export interface Solution<X, Y> {
  /** The answer with every other input at its likely value. */
  readonly likely: Reached<X> | NotReached<X, Y>;
  /** The share of draws in which some allowed value reaches the target. */
  readonly chanceReachable: number;
  /** Why the other draws do not reach it: each limit with its share of all draws. */
  readonly limits: readonly LimitShare[];
  /**
   * Percentiles of the value needed, over all draws. A draw that cannot reach the target needs more than any allowed value, so a
   * percentile that falls among such draws is undefined.
   */
  readonly needed: Partial<Spread<X>>;
  /**
   * The chance that a given value of the unknown input is enough.
   * @param value - value of the unknown input
   */
  chanceThatEnough(value: X): number;
  /** How many draws were made. */
  readonly draws: number;
}

/**
 * Finds the input that makes an output reach a target, with everything that depends on it fed back (more pack, more mass,
 * more pack), first at the likely values and then for every draw.
 *
 * When no value reaches the target the answer says which limit is in the way: one of the stated limits, the end of the bracket,
 * or the feedback itself, when even a hundredfold of the bracket's end would not do.
 *
 * @param options - model, evidence, unknown, bracket, output, target, limits
 * @returns the value needed with its spread, and the chance that a given value is enough
 * @throws InputError `UNKNOWN_OPTION`, `INCONSISTENT` when the bracket is empty, `NOT_VALID_HERE` when the output does not move
 *   with the unknown input
 * @example
 * solveFor({ model, evidence, unknown: "packEnergy", between: [q("20 kWh"), q("250 kWh")], output: "range", target: q("500 km") });
 */
export function solveFor<
  Inputs extends Readonly<Record<string, ModelInput>>,
  Outputs extends Readonly<Record<string, ModelOutput>>,
  Unknown extends keyof Inputs & string,
  Target extends keyof Outputs & string,
>(
  options: SolveForOptions<Inputs, Outputs, Unknown, Target>,
): Solution<ValueIn<Inputs[Unknown]["unit"]>, ValueIn<Outputs[Target]["unit"]>> {
  readOptions("solveFor", options, {}, [
    ...["model", "evidence", "unknown", "between", "output", "target", "limits?", "draws?", "seed?"],
  ]);
  type X = ValueIn<Inputs[Unknown]["unit"]>;
  type Y = ValueIn<Outputs[Target]["unit"]>;
  const { model, unknown, output } = options;
  const input = known(model.inputs, unknown, "input");
  const result = known(model.outputs, output, "output");
  const { draws, seed } = readStudy({
    draws: options.draws ?? 2000,
    ...(options.seed === undefined ? {} : { seed: options.seed }),
  });
  const bracket = readBracket(options.between, input);
  const target = readNumber("target", options.target, { unit: result.unit });
  const limits = readLimits(model.outputs, options.limits ?? []);
  const x = (value: number): X => (input.unit === "1" ? value : quantity(value, input.unit as string)) as X;
  const y = (value: number): Y => (result.unit === "1" ? value : quantity(value, result.unit as string)) as Y;

  // The unknown's own evidence plays no part: any value inside the bracket keeps the checks of the others in force.
  const others = readAllEvidence(model, { ...options.evidence, [unknown]: x(bracket[0]) } as EvidenceFor<Inputs>);
  const problem = { unknown, output, target, bracket, limits };
  const solve = (inputs: Record<string, number>): Outcome =>
    solveOne((value) => model.evaluate({ ...inputs, [unknown]: value } as ModelNumbers<Inputs>), problem);

  const likely = solve(Object.fromEntries([...others].map(([name, read]) => [name, read.likely])));
  const needed = new Float64Array(draws);
  const blocked = new Map<string, number>();
  for (let index = 0, drawn = drawer(others, seed); index < draws; index++) {
    const outcome = solve(drawn(index));
    needed[index] = outcome.reached ? outcome.value : Number.POSITIVE_INFINITY;
    if (!outcome.reached) blocked.set(outcome.limit, (blocked.get(outcome.limit) ?? 0) + 1);
  }
  needed.sort();
  const percentile = (share: number): Partial<Record<"at", X>> => {
    const value = quantileOfSorted(needed, share);
    return Number.isFinite(value) ? { at: x(value) } : {};
  };
  const [p10, p50, p90] = [0.1, 0.5, 0.9].map((share) => percentile(share).at);
  return {
    likely: likely.reached
      ? { reached: true, value: x(likely.value) }
      : { reached: false, limit: likely.limit, best: y(likely.best), at: x(likely.at) },
    chanceReachable: needed.filter(Number.isFinite).length / draws,
    limits: [...blocked].map(([limit, count]) => ({ limit, share: count / draws })),
    needed: {
      ...(p10 === undefined ? {} : { p10 }),
      ...(p50 === undefined ? {} : { p50 }),
      ...(p90 === undefined ? {} : { p90 }),
    } as Partial<Spread<X>>,
    chanceThatEnough: (value) => {
      const given = readNumber(unknown, value, { unit: input.unit });
      return needed.filter((each) => each <= given).length / draws;
    },
    draws,
  };
}

type Outcome =
  | { readonly reached: true; readonly value: number }
  | { readonly reached: false; readonly limit: string; readonly best: number; readonly at: number };

interface Problem {
  readonly unknown: string;
  readonly output: string;
  readonly target: number;
  readonly bracket: readonly [number, number];
  readonly limits: readonly LimitRead[];
}

/** Relative width at which a root is good enough: far below what any input deserves. */
const PRECISION = 1e-6;

function solveOne(evaluate: (value: number) => Readonly<Record<string, number>>, problem: Problem): Outcome {
  const { output, target, bracket, limits, unknown } = problem;
  const [low, high] = bracket;
  const at = (value: number): number => finite(evaluate(value)[output], output);
  const root = (f: (value: number) => number, a: number, b: number): number =>
    bracketedRoot(f, a, b, PRECISION * Math.max(Math.abs(a), Math.abs(b)));
  let end = high;
  let limit: string | undefined;
  for (const each of limits) {
    const over = (value: number): number => finite(evaluate(value)[each.output], each.output) - each.atMost;
    if (over(end) <= 0) continue;
    if (over(low) > 0) return { reached: false, limit: each.because, best: at(low), at: low };
    end = root(over, low, end);
    limit = each.because;
  }
  const miss = (value: number): number => at(value) - target;
  const [atLow, atEnd] = [miss(low), miss(end)];
  if (atLow === 0) return { reached: true, value: low };
  if (atLow * atEnd <= 0) return { reached: true, value: root(miss, low, end) };
  if (atLow === atEnd) {
    throw new InputError("NOT_VALID_HERE", `${output} does not move with ${unknown}: it cannot be solved for`, {});
  }
  const nearerAtEnd = Math.abs(atEnd) < Math.abs(atLow);
  if (!nearerAtEnd) {
    return atLow > 0
      ? { reached: true, value: low }
      : { reached: false, limit: `${output} moves away from the target as ${unknown} grows`, best: at(low), at: low };
  }
  const far = 100 * high;
  const feedback = limit === undefined && atEnd * miss(far) > 0;
  return {
    reached: false,
    limit:
      limit ??
      (feedback
        ? `no ${unknown} reaches it: even a hundred times the largest considered would not, since what it adds is spent on carrying it`
        : `the largest ${unknown} considered`),
    best: at(end),
    at: end,
  };
}

function finite(value: number | undefined, output: string): number {
  if (value !== undefined && Number.isFinite(value)) return value;
  throw new InputError("NOT_VALID_HERE", `the model gave no finite ${output} inside the bracket`, { output });
}

function known<T>(table: Readonly<Record<string, T>>, name: string, what: string): T {
  const found = Object.hasOwn(table, name) ? table[name] : undefined;
  if (found !== undefined) return found;
  throw new InputError("WRONG_CHOICE", `the model has no ${what} '${name}': it has ${Object.keys(table).join(", ")}`, {
    name,
  });
}

function readBracket(between: readonly unknown[], input: ModelInput): readonly [number, number] {
  if (!Array.isArray(between) || between.length !== 2) {
    throw new InputError("INCONSISTENT", 'between takes two values, such as [q("20 kWh"), q("250 kWh")]', {});
  }
  const low = readNumber("between[0]", between[0], input);
  const high = readNumber("between[1]", between[1], input);
  if (!(low < high)) {
    throw new InputError(
      "INCONSISTENT",
      `between must go from the smaller to the larger: got ${between[0]}, ${between[1]}`,
      {},
    );
  }
  return [low, high];
}
