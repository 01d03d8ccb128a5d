import { type Step, sourceLine, stepLine } from "@tarewatt/units";
import { escapeMarkdown } from "../escape/markdown.js";
import { readSteps } from "./read-steps.js";

/**
 * The steps of a calculation as a numbered Markdown list: name, equation from symbols to result, meaning of the symbols,
 * source. A source that is only remembered says so.
 *
 * @param steps - the steps, in order
 * @returns Markdown; every text of the data is escaped
 * @throws InputError `NOT_AN_OBJECT`, `WRONG_CHOICE` and ReportError `NOT_A_TEXT` when these are no steps
 * @example
 * const drag = aerodynamicDrag.explain({ airDensity: q("1.2 kg/m³"), dragArea: q("0.75 m²"), airSpeed: q("80 km/h") });
 * const lines = workingToMarkdown([drag]).split("\n");
 * lines[0]; // "1. **aerodynamic drag force**"
 * lines[2]; // "   F\\_a = ½·ρ·C\\_dA·v·\\|v\\| = ½·1.2 kg/m³·0.75 m²·22.22 m/s·\\|22.22 m/s\\| = 222.2 N"
 */
export function workingToMarkdown(steps: readonly Step[]): string {
  return readSteps("steps", steps)
    .map((step, index) => `${paragraphs(step, `${index + 1}. `).join("\n\n")}\n`)
    .join("\n");
}

function paragraphs(step: Step, number: string): readonly string[] {
  const indent = " ".repeat(number.length);
  const legend = step.operands.map(({ symbol, meaning }) => `${symbol} is ${meaning}`).join(", ");
  return [
    `${number}**${escapeMarkdown(step.name)}**`,
    `${indent}${escapeMarkdown(stepLine(step))}`,
    ...(legend === "" ? [] : [`${indent}where ${escapeMarkdown(legend)}`]),
    ...(step.validity === "" ? [] : [`${indent}Holds: ${escapeMarkdown(step.validity)}`]),
    `${indent}Source: ${escapeMarkdown(sourceLine(step.source))}`,
  ];
}
