import { describeGiven } from "../check/describe-given.js";
import { InputError } from "../check/errors.js";
import { type NumberRule, readOptions } from "../check/read-options.js";
import { readRecord, readWords } from "../check/shapes.js";
import { fullNumber } from "../quantity/format.js";
import type { AnyQuantity } from "../quantity/quantity.js";
import { makeQuantity } from "../quantity/value.js";
import { unitOf } from "../unit/unit.js";
import { readSource, type Source } from "./source.js";
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
  readonly validity?: string | undefined;
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
 * @returns a function of named quantities, frozen, with its own copy of the definition
 * @throws InputError `NOT_AN_OBJECT`, `WRONG_CHOICE` when a part is missing or is something else
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
  const whole = readDefinition(definition);
  const { name, inputs, result, evaluate, validity = "" } = whole;
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
    if (working !== undefined) working.push(record(whole, numbers, value));
    return value;
  };
  const call = (given: Inputs): Result => {
    const value = finite(evaluate(read(given)));
    const unit = unitOf(result.unit);
    return (result.unit === "1" ? value : makeQuantity(value, unit, unit.dimension.kind)) as Result;
  };
  const explain = (given: Inputs): Step => {
    const numbers = read(given);
    return record(whole, numbers, finite(evaluate(numbers)));
  };
  // A function's own name cannot be assigned, so the name of the relation is defined over it.
  const described = Object.defineProperty(call, "name", { value: name });
  const { name: _, evaluate: __, ...rest } = whole;
  return Object.freeze(Object.assign(described, rest, { of, explain })) as unknown as Relation<Inputs, Result>;
}

/** A copy of a definition that nobody can change, when all its parts are there. */
function readDefinition<Inputs extends object>(given: RelationDefinition<Inputs>): RelationDefinition<Inputs> {
  const parts = readRecord("the definition of a relation", given);
  const name = readWords("the name of a relation", parts.name);
  const result = readRecord(`the result of ${name}`, parts.result);
  if (typeof parts.evaluate !== "function") {
    const got = describeGiven(parts.evaluate);
    throw new InputError("WRONG_CHOICE", `evaluate of ${name} must be a function: got ${got}`, { name });
  }
  const inputs = Object.entries(readRecord(`the inputs of ${name}`, parts.inputs)).map(([input, each]) => {
    const rule = readRecord(`the input ${input} of ${name}`, each);
    for (const part of ["symbol", "unit", "meaning"]) readWords(`${part} of the input ${input} of ${name}`, rule[part]);
    return [input, Object.freeze({ ...rule })] as const;
  });
  return {
    name,
    inputs: Object.freeze(Object.fromEntries(inputs)) as unknown as RelationDefinition<Inputs>["inputs"],
    result: Object.freeze({
      symbol: readWords(`the symbol of the result of ${name}`, result.symbol),
      unit: readWords(`the unit of the result of ${name}`, result.unit),
    }),
    expression: readWords(`the expression of ${name}`, parts.expression),
    source: readSource(`the source of ${name}`, parts.source),
    ...(parts.validity === undefined ? {} : { validity: readWords(`the validity of ${name}`, parts.validity) }),
    evaluate: given.evaluate,
  };
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
  const operands: Operand[] = entries.map(([key, { symbol, meaning, unit }]) =>
    Object.freeze({ name: key, symbol, meaning, value: numbers[key], unit, printed: fullNumber(short[key]) }),
  );
  const answer = Object.freeze({ ...result, value, printed: fullNumber(wanted) });
  return Object.freeze({ name, expression, operands: Object.freeze(operands), result: answer, source, validity });
}

function rounded(value: number, digits: number): number {
  return Number(value.toPrecision(digits));
}
