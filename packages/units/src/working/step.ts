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
 * @example
 * stepLine(aerodynamicDrag.explain(inputs)); // "F_a = ½·ρ·C_dA·v·|v| = ½·1.189 kg/m³·0.899 m²·30.56 m/s·|30.56 m/s| = 499 N"
 */
export function stepLine({ expression, operands, result }: Step): string {
  const answer = withUnit(result.printed, result.unit);
  const filled = substitute(expression, operands);
  const middle = filled === answer ? "" : ` = ${filled}`;
  return `${result.symbol} = ${expression}${middle} = ${answer}`;
}

/**
 * An expression with every symbol replaced by its printed value and unit.
 *
 * @param expression - right-hand side in symbols
 * @param operands - the values
 * @example
 * substitute("m·a", operands); // "2000 kg·1.5 m/s²"
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
 * @example
 * splitExpression("m·a", operands); // [mass, "·", acceleration]
 */
export function splitExpression(expression: string, operands: readonly Operand[]): (string | Operand)[] {
  const parts: (string | Operand)[] = [];
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
