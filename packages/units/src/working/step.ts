import { readList, readRecord, readWords } from "../check/shapes.js";
import type { Source } from "./source.js";

/** One operand of a step: a value as it was used and as it is printed. */
export interface Operand {
  /** Name of the input in the relation, such as `airDensity`. */
  readonly name: string;
  /** Symbol in the expression, such as `ρ`. */
  readonly symbol: string;
  /** What it is, in words. */
  readonly meaning: string;
  /** Value used, in `unit`. */
  readonly value: number;
  /** Unit of `value`; `"1"` for a pure number. */
  readonly unit: string;
  /** The value rounded to as many digits as the printed result needs. */
  readonly printed: string;
}

/** What a step computed. */
export interface StepResult {
  /** Symbol, such as `F_a`. */
  readonly symbol: string;
  /** Value, in `unit`. */
  readonly value: number;
  /** Unit of `value`. */
  readonly unit: string;
  /** The value with four significant digits. */
  readonly printed: string;
}

/** One step of a calculation, as plain data: a relation, what went in, what came out, and where the relation is from. */
export interface Step {
  /** What was computed, in words. */
  readonly name: string;
  /** Right-hand side of the relation in symbols. */
  readonly expression: string;
  /** What went in. A calculator fed with the printed values gives the printed result. */
  readonly operands: readonly Operand[];
  /** What came out. */
  readonly result: StepResult;
  /** Where the relation is from. */
  readonly source: Source;
  /** Where the relation holds, in words; empty when it always does. */
  readonly validity: string;
}

/** The steps of a calculation, in order. Pass an empty array to a function that records, and read it afterwards. */
export type Working = Step[];

/**
 * A step as one line: symbols, then values with units, then the result.
 *
 * @param step - the step
 * @throws InputError `NOT_AN_OBJECT`, `WRONG_CHOICE` when something else was given
 * @example
 * const force = relation<{ mass: Quantity<Mass>; acceleration: Quantity<Acceleration> }, Quantity<Force>>({
 *   name: "inertia force",
 *   inputs: {
 *     mass: { symbol: "m", unit: "kg", meaning: "mass", atLeast: 0 },
 *     acceleration: { symbol: "a", unit: "m/s²", meaning: "acceleration" },
 *   },
 *   result: { symbol: "F", unit: "N" },
 *   expression: "m·a",
 *   source: { document: "classical mechanics", status: "definition" },
 *   evaluate: ({ mass, acceleration }) => mass * acceleration,
 * });
 * stepLine(force.explain({ mass: q("2 t"), acceleration: q("1.5 m/s²") })); // "F = m·a = 2000 kg·1.5 m/s² = 3000 N"
 */
export function stepLine(step: Step): string {
  const { expression, operands, result } = readRecord("the step", step) as unknown as Step;
  const { symbol, printed, unit } = readRecord("the result of the step", result) as unknown as StepResult;
  const answer = withUnit(readWords("printed", printed), readWords("unit", unit));
  const filled = substitute(expression, operands);
  const middle = filled === answer ? "" : ` = ${filled}`;
  return `${readWords("symbol", symbol)} = ${expression}${middle} = ${answer}`;
}

/**
 * An expression with every symbol replaced by its printed value and unit.
 *
 * @param expression - right-hand side in symbols
 * @param operands - the values
 * @throws InputError `NOT_AN_OBJECT`, `WRONG_CHOICE` when something else was given
 * @example
 * const mass = { name: "mass", symbol: "m", meaning: "mass", value: 2000, unit: "kg", printed: "2000" };
 * const pull = { name: "pull", symbol: "a", meaning: "acceleration", value: 1.5, unit: "m/s²", printed: "1.5" };
 * substitute("m·a", [mass, pull]); // "2000 kg·1.5 m/s²"
 */
export function substitute(expression: string, operands: readonly Operand[]): string {
  return splitExpression(expression, operands)
    .map((part, index, parts) => (typeof part === "string" ? part : inserted(part, parts[index - 1], parts[index + 1])))
    .join("");
}

/**
 * Cuts an expression into text and operands, for those who render it in a form of their own.
 *
 * @param expression - right-hand side in symbols
 * @param operands - the operands whose symbols stand in it; the longest symbol wins, whole words only
 * @returns the parts in order: text as it stands, and the operand in place of each symbol
 * @throws InputError `NOT_AN_OBJECT`, `WRONG_CHOICE` when something else was given, or an operand without a symbol
 * @example
 * const mass = { name: "mass", symbol: "m", meaning: "mass", value: 2000, unit: "kg", printed: "2000" };
 * const pull = { name: "pull", symbol: "a", meaning: "acceleration", value: 1.5, unit: "m/s²", printed: "1.5" };
 * splitExpression("m·a", [mass, pull]).map((part) => (typeof part === "string" ? part : part.meaning)); // ["mass", "·", "acceleration"]
 */
export function splitExpression(expression: string, operands: readonly Operand[]): (string | Operand)[] {
  const parts: (string | Operand)[] = [];
  readWords("the expression", expression);
  for (const operand of readList("the operands", operands)) {
    const { symbol, printed, unit } = readRecord("an operand", operand);
    // A symbol without characters would be found for ever.
    for (const [name, text] of Object.entries({ symbol, printed, unit })) readWords(`${name} of an operand`, text);
  }
  const bySize = [...operands].sort((a, b) => b.symbol.length - a.symbol.length);
  let text = "";
  let position = 0;
  while (position < expression.length) {
    const afterWord = /[\p{L}\p{N}_′]$/u.test(text);
    const rest = expression.slice(position);
    const found = afterWord
      ? undefined
      : bySize.find(({ symbol }) => rest.startsWith(symbol) && !/^[\p{L}\p{Nd}_′]/u.test(rest.slice(symbol.length)));
    if (found === undefined) {
      text += expression.charAt(position++);
    } else {
      if (text !== "") parts.push(text);
      parts.push(found);
      text = "";
      position += found.symbol.length;
    }
  }
  if (text !== "") parts.push(text);
  return parts;
}

type Part = string | Operand | undefined;

function inserted({ printed, unit }: Operand, before: Part, next: Part): string {
  const value = withUnit(printed, unit);
  // 91 kWh/(199 Wh/km), not 91 kWh/199 Wh/km
  const divides = typeof before === "string" && before.endsWith("/") && unit.includes("/");
  const raised = typeof next === "string" && /^[²³⁴⁻^]/.test(next);
  const several = value !== printed || /[e×]/.test(printed);
  return divides || (raised && several) || /^[-−]/.test(printed) ? `(${value})` : value;
}

function withUnit(printed: string, unit: string): string {
  return unit === "1" ? printed : `${printed} ${unit}`;
}
