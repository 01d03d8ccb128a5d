import { type Step, substitute } from "@tarewatt/units";
import { withUnit } from "../escape/with-unit.js";

/** @internal The sides of a step: symbols, values, result. */
export interface Equation {
  readonly symbol: string;
  readonly expression: string;
  /** The expression with its values; empty when it says no more than the result. */
  readonly filled: string;
  readonly answer: string;
}

/** @internal */
export function equationOf({ expression, operands, result }: Step): Equation {
  const answer = withUnit(result.printed, result.unit);
  const filled = substitute(expression, operands);
  return { symbol: result.symbol, expression, filled: filled === answer ? "" : filled, answer };
}
