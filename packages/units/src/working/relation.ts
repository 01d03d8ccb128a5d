import { InputError } from "../check/errors.js";
import { type NumberRule, readOptions } from "../check/read-options.js";
import { fullNumber } from "../quantity/format.js";
import type { AnyQuantity } from "../quantity/quantity.js";
import { makeQuantity } from "../quantity/value.js";
import { unitOf } from "../unit/unit.js";
import type { Source } from "./source.js";
import type { Operand, Step, StepResult, Working } from "./step.js";

/** How one input of a relation is written and what it may be. The calculation runs in `unit`. */
export interface RelationInput extends NumberRule {
  /** Symbol in the expression, such as `ρ`. */
  readonly symbol: string;
  /** What it is, in words. */
  readonly meaning: string;
}

/** Plain numbers for the inputs of a relation, each in the unit that its definition states. */
export type NumbersOf<Inputs> = { readonly [K in keyof Inputs]: number };

/** Everything about a published relation, said once. */
export interface RelationDefinition<Inputs extends object> {
  /** What it computes, in words. */
  readonly name: string;
  /** Symbol, unit, meaning and range of every input. */
  readonly inputs: { readonly [K in keyof Inputs]-?: RelationInput };
  /** Symbol and unit of the result. */
  readonly result: Pick<StepResult, "symbol" | "unit">;
  /**
   * Right-hand side in symbols: `·` multiplies, `/` divides, `²` or `^` raises, functions are `exp ln sqrt sin cos atan
   * min max`, `|x|` is the size. It is tested against `evaluate`.
   */
  readonly expression: string;
  /** Where the relation is from. */
  readonly source: Source;
  /** Where it holds, in words. */
  readonly validity?: string;
  /** The calculation, on plain numbers in the units of `inputs`. */
  readonly evaluate: (numbers: NumbersOf<Inputs>) => number;
}

/**
 * A published relation: an ordinary function of quantities that can also say what it is, where it is from and how a result
 * came about.
 *
 * @typeParam Inputs - named inputs, quantities or numbers
 * @typeParam Result - the quantity, or number, that it gives
 */
export interface Relation<Inputs extends object, Result> extends Omit<RelationDefinition<Inputs>, "evaluate"> {
  /** The result for checked quantities. */
  (inputs: Inputs): Result;
  /**
   * The result for plain numbers, in the units of the definition, unchecked: for loops.
   * @param numbers - one number for each input, in its unit
   * @param working - where to record the step, when somebody wants to see it
   * @returns the number, in the unit of the result
   */
  readonly of: (numbers: NumbersOf<Inputs>, working?: Working) => number;
  /** The step that leads to the result, ready to print. */
  readonly explain: (inputs: Inputs) => Step;
}

/**
 * Declares a relation. Your own formulas become steps of a working in the same way as ours.
 *
 * @param definition - name, inputs, expression, source and calculation
 * @returns a function of named quantities
 * @example
 * const kineticEnergy = relation<{ mass: Quantity<Mass>; speed: Quantity<Speed> }, Quantity<Energy>>({
 *   name: "kinetic energy",
 *   inputs: {
 *     mass: { symbol: "m", unit: "kg", meaning: "mass", atLeast: 0 },
 *     speed: { symbol: "v", unit: "m/s", meaning: "speed" },
 *   },
 *   result: { symbol: "E", unit: "J" },
 *   expression: "½·m·v²",
 *   source: { document: "classical mechanics", status: "definition" },
 *   evaluate: ({ mass, speed }) => 0.5 * mass * speed ** 2,
 * });
 * kineticEnergy({ mass: q("1 t"), speed: q("20 m/s") }).in("kJ"); // 200
 */
export function relation<Inputs extends object, Result extends AnyQuantity | number>(
  definition: RelationDefinition<Inputs>,
): Relation<Inputs, Result> {
  const { name, inputs, result, evaluate, validity = "" } = definition;
  const rules = inputs as Readonly<Record<string, RelationInput>>;
  const read = (given: Inputs): NumbersOf<Inputs> => readOptions(name, given, rules) as NumbersOf<Inputs>;
  const finite = (value: number): number => {
    if (Number.isFinite(value)) return value;
    throw new InputError(
      "NOT_VALID_HERE",
      `${name} has no finite result for these inputs${validity && `: ${validity}`}`,
      {},
    );
  };
  const of = (numbers: NumbersOf<Inputs>, working?: Working): number => {
    const value = evaluate(numbers);
    if (working !== undefined) working.push(record(definition, numbers, value));
    return value;
  };
  const call = (given: Inputs): Result => {
    const value = finite(evaluate(read(given)));
    const unit = unitOf(result.unit);
    return (result.unit === "1" ? value : makeQuantity(value, unit, unit.dimension.kind)) as Result;
  };
  const explain = (given: Inputs): Step => {
    const numbers = read(given);
    return record(definition, numbers, finite(evaluate(numbers)));
  };
  // A function's own name cannot be assigned, so the name of the relation is defined over it.
  const described = Object.defineProperty(call, "name", { value: name });
  const { name: _, evaluate: __, ...rest } = definition;
  return Object.assign(described, rest, { of, explain }) as unknown as Relation<Inputs, Result>;
}

const RESULT_DIGITS = 4;
const MOST_DIGITS = 15;

/** Prints the operands with as few digits as still give the printed result, so that a reader can check it. */
function record<Inputs extends object>(
  { name, inputs, result, expression, source, validity = "", evaluate }: RelationDefinition<Inputs>,
  numbers: NumbersOf<Inputs>,
  value: number,
): Step {
  const entries = Object.entries(inputs) as [keyof Inputs & string, RelationInput][];
  const wanted = rounded(value, RESULT_DIGITS);
  let digits = RESULT_DIGITS;
  let short = numbers;
  for (; digits <= MOST_DIGITS; digits++) {
    short = Object.fromEntries(entries.map(([key]) => [key, rounded(numbers[key], digits)])) as NumbersOf<Inputs>;
    if (rounded(evaluate(short), RESULT_DIGITS) === wanted) break;
  }
  const operands: Operand[] = entries.map(([key, { symbol, meaning, unit }]) => ({
    name: key,
    symbol,
    meaning,
    value: numbers[key],
    unit,
    printed: fullNumber(short[key]),
  }));
  return { name, expression, operands, result: { ...result, value, printed: fullNumber(wanted) }, source, validity };
}

function rounded(value: number, digits: number): number {
  return Number(value.toPrecision(digits));
}
