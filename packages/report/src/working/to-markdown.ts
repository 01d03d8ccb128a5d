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
 * workingToMarkdown([aerodynamicDrag.explain(inputs)]); // "1. **aerodynamic drag force**\n\n   F\\_a = ½·ρ·C\\_dA·v·\\|v\\| = ..."
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
