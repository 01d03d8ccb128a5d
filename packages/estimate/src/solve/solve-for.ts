import { describeGiven, InputError, quantity, readNumber, readOptions } from "@tarewatt/units";
import type { EvidenceFor, Model, ModelInput, ModelNumbers, ModelOutput, ValueIn } from "../model/model.js";
import { entryOf, noResult, readModel, reasonOf } from "../model/read-model.js";
import type { FailedDraw } from "../propagate/block.js";
import { type RankCorrelation, readCorrelations, refuseFixed } from "../propagate/correlation.js";
import { quantileOfSorted } from "../propagate/spread.js";
import { drawer, likelyInputs, readAllEvidence, readStudy } from "../propagate/study.js";
import { FAILURES_SHOWN } from "../propagate/summary.js";
import { type Limit, readLimits } from "./limit.js";
import type { Solution } from "./solution.js";
import { type Outcome, solveOne } from "./solve-one.js";

/** Whether the output must be at least the target, or at most. */
export type Sense = "at least" | "at most";

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
  /** Whether the output must be at least the target, or at most; `"at least"` when left out. */
  readonly sense?: Sense | undefined;
  /** What must not be exceeded on the way. */
  readonly limits?: readonly Limit<Outputs>[] | undefined;
  /** How many draws, 100 to 1,000,000; 2048 when left out. */
  readonly draws?: number | undefined;
  /** As in `propagate`. */
  readonly seed?: number | undefined;
  /** Inputs that go together, as in `propagate`. */
  readonly correlations?: readonly RankCorrelation<keyof Inputs & string>[] | undefined;
}

/**
 * Finds the input that makes an output reach a target, with everything that depends on it fed back (more pack, more mass,
 * more pack), first at the likely values and then for every draw.
 *
 * When no value reaches the target the answer says which limit is in the way: one of the stated limits, the end of the bracket,
 * or the feedback itself, when even a hundredfold of the bracket's end would not do. A draw takes about
 * eleven evaluations of the model.
 *
 * @param options - model, evidence, unknown, bracket, output, target, sense, limits
 * @returns the value needed with its spread, and the chance that a given value is enough
 * @throws InputError `UNKNOWN_OPTION`, `WRONG_CHOICE` for a name that the model does not have, `INCONSISTENT` when the bracket is
 *   empty or the unknown goes together with others, `NOT_VALID_HERE` when, at the likely values or in every draw, the output does not move with the unknown input or is not finite
 * @example
 * const range = model({
 *   name: "range",
 *   inputs: { usable: { unit: "kWh", meaning: "usable energy", above: 0 }, use: { unit: "Wh/km", meaning: "consumption", above: 0 } },
 *   outputs: { range: { unit: "km", meaning: "range" } },
 *   evaluate: ({ usable, use }) => ({ range: (1000 * usable) / use }),
 * });
 * const evidence = { usable: q("90 kWh"), use: around(q("180 Wh/km"), 0.1) };
 * const between = [q("50 kWh"), q("150 kWh")] as const;
 * const { likely } = solveFor({ model: range, evidence, unknown: "usable", between, output: "range", target: q("600 km") });
 * likely.outcome; // "reached"
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
    ...["model", "evidence", "unknown", "between", "output", "target", "sense?", "limits?", "draws?", "seed?"],
    "correlations?",
  ]);
  type X = ValueIn<Inputs[Unknown]["unit"]>;
  type Y = ValueIn<Outputs[Target]["unit"]>;
  const { unknown, output, sense = "at least" } = options;
  const model = readModel(options.model);
  const input = entryOf(model.inputs, unknown, "input", model.name);
  const result = entryOf(model.outputs, output, "output", model.name);
  const { draws, seed } = readStudy(options, 2048);
  if (sense !== "at least" && sense !== "at most") {
    throw new InputError("WRONG_CHOICE", `sense must be "at least" or "at most": got ${describeGiven(sense)}`, {});
  }
  const [low, high] = readBracket(options.between, input);
  const target = readNumber("target", options.target, { unit: result.unit });
  const limits = readLimits(model.outputs, options.limits ?? []);
  const x = (value: number): X => (input.unit === "1" ? value : quantity(value, input.unit as string)) as X;
  const y = (value: number): Y => (result.unit === "1" ? value : quantity(value, result.unit as string)) as Y;

  // The unknown's own evidence plays no part: any value inside the bracket keeps the checks of the others in force.
  const others = readAllEvidence(model, { ...options.evidence, [unknown]: x(low) } as EvidenceFor<Inputs>);
  const together = readCorrelations([...others.keys()], options.correlations);
  refuseFixed(together, [unknown]);
  const problem = { unknown, output, target, sign: sense === "at least" ? 1 : -1, low, high, limits } as const;
  const evaluator = (inputs: Readonly<Record<string, number>>) => {
    const filled: Record<string, number> = { ...inputs };
    return (value: number) => {
      filled[unknown] = value;
      return model.evaluate(filled as ModelNumbers<Inputs>);
    };
  };

  const likely = solveOne(evaluator(likelyInputs(others)), problem);
  const drawn = drawer({ inputs: model.inputs, evidence: others, seed, together });
  const step = input.unit === "1" ? 0.01 : 1;
  const outcomes: Outcome[] = [];
  const steps: number[] = [];
  const failures: FailedDraw[] = [];
  for (let index = 0; index < draws; index++) {
    const evaluate = evaluator(drawn(index));
    try {
      const outcome = solveOne(evaluate, problem);
      outcomes.push(outcome);
      if (outcome.outcome === "reached") steps.push(lastStep(evaluate, outcome, { output, step }));
    } catch (reason) {
      failures.push(Object.freeze({ index, reason: reasonOf(reason) }));
    }
  }
  const solved = outcomes.length;
  if (solved === 0) throw noResult(`none of the ${draws} draws of ${model.name} could be solved`, failures[0]?.reason);
  const worth = Float64Array.from(steps.filter(Number.isFinite)).sort();
  const worthAt = (share: number): Y => y(quantileOfSorted(worth, share));
  const boundaries = Float64Array.from(outcomes, boundaryOf).sort();
  const percentile = (share: number): X | undefined => {
    const value = quantileOfSorted(boundaries, share);
    return Number.isFinite(value) ? x(value) : undefined;
  };
  const [p10, p50, p90] = [percentile(0.1), percentile(0.5), percentile(0.9)];
  const unreached = outcomes.flatMap((outcome) => (outcome.outcome === "not reached" ? [outcome.limit] : []));
  return Object.freeze({
    likely: Object.freeze(
      likely.outcome === "reached"
        ? { outcome: "reached", value: x(likely.value), enough: likely.rising ? "from here up" : "from here down" }
        : likely.outcome === "not reached"
          ? { ...likely, best: y(likely.best), at: x(likely.at) }
          : { outcome: likely.outcome },
    ),
    chanceReachable: 1 - unreached.length / solved,
    limits: Object.freeze(
      [...new Set(unreached)].map((limit) =>
        Object.freeze({ limit, share: unreached.filter((each) => each === limit).length / solved }),
      ),
    ),
    needed: Object.freeze({
      ...(p10 === undefined ? {} : { p10 }),
      ...(p50 === undefined ? {} : { p50 }),
      ...(p90 === undefined ? {} : { p90 }),
    }),
    chanceThatEnough: (value: X) => {
      const given = readNumber(unknown, value, { unit: input.unit, atLeast: low, atMost: high });
      return outcomes.filter((outcome) => enough(outcome, given)).length / solved;
    },
    ...(worth.length === 0
      ? {}
      : {
          lastUnit: Object.freeze({
            of: x(step),
            adds: Object.freeze({ p10: worthAt(0.1), p50: worthAt(0.5), p90: worthAt(0.9) }),
          }),
        }),
    ...{ draws, failed: failures.length, failures: Object.freeze(failures.slice(0, FAILURES_SHOWN)) },
    warnings: Object.freeze(
      failures.length === 0
        ? []
        : [`${failures.length} of ${draws} draws gave no result and are left out of the answer`],
    ),
  }) as Solution<X, Y>;
}

/** Change of the output over the last step towards the value that reaches the target; not a number where the model does not go. */
function lastStep(
  evaluate: (value: number) => Readonly<Record<string, number>>,
  { value, rising }: Extract<Outcome, { readonly outcome: "reached" }>,
  { output, step }: { readonly output: string; readonly step: number },
): number {
  try {
    return (evaluate(value)[output] as number) - (evaluate(rising ? value - step : value + step)[output] as number);
  } catch {
    return Number.NaN;
  }
}

/** Where the target is just reached; beyond all numbers where that lies outside what was looked at. */
function boundaryOf(outcome: Outcome): number {
  if (outcome.outcome === "reached") return outcome.value;
  return (outcome.outcome === "not reached") === outcome.rising ? Number.POSITIVE_INFINITY : Number.NEGATIVE_INFINITY;
}

function enough(outcome: Outcome, value: number): boolean {
  if (outcome.outcome === "not reached" || value > outcome.end) return false;
  if (outcome.outcome === "always reached") return true;
  return outcome.rising ? value >= outcome.value : value <= outcome.value;
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
      `between must go from the smaller to the larger: got ${describeGiven(between[0])}, ${describeGiven(between[1])}`,
      {},
    );
  }
  return [low, high];
}
