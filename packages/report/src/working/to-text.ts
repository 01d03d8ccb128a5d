import { type Step, sourceLine } from "@tarewatt/units";
import { plainLine } from "../escape/plain.js";
import { equationOf } from "./equation.js";
import { readSteps } from "./read-steps.js";

/**
 * The steps of a calculation as numbered plain text: name, symbols, values, result, meaning of the symbols, source. A source
 * that is only remembered says so.
 *
 * @param steps - the steps, in order
 * @returns lines ended by line feeds; empty for no steps
 * @throws InputError `NOT_AN_OBJECT`, `WRONG_CHOICE` and ReportError `NOT_A_TEXT` when these are no steps
 * @example
 * const drag = aerodynamicDrag.explain({ airDensity: q("1.2 kg/m³"), dragArea: q("0.75 m²"), airSpeed: q("80 km/h") });
 * const lines = workingToText([drag]).split("\n");
 * lines[1]; // "   F_a = ½·ρ·C_dA·v·|v|"
 * lines[2]; // "       = ½·1.2 kg/m³·0.75 m²·22.22 m/s·|22.22 m/s|"
 * lines[3]; // "       = 222.2 N"
 */
export function workingToText(steps: readonly Step[]): string {
  return readSteps("steps", steps)
    .map((step, index) => `${lines(step, `${index + 1}. `).join("\n")}\n`)
    .join("\n");
}

function lines(step: Step, number: string): readonly string[] {
  const { symbol, expression, filled, answer } = equationOf(step);
  const indent = " ".repeat(number.length);
  const under = `${indent}${" ".repeat([...symbol].length)} = `;
  const legend = step.operands.map((operand) => `${operand.symbol} is ${operand.meaning}`).join(", ");
  return [
    `${number}${plainLine(step.name)}`,
    `${indent}${plainLine(`${symbol} = ${expression}`)}`,
    ...[filled, answer].filter((side) => side !== "").map((side) => `${under}${plainLine(side)}`),
    ...(legend === "" ? [] : [`${indent}where ${plainLine(legend)}`]),
    ...(step.validity === "" ? [] : [`${indent}Holds: ${plainLine(step.validity)}`]),
    `${indent}Source: ${plainLine(sourceLine(step.source))}`,
  ];
}
