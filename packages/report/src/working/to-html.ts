import { type Step, sourceLine } from "@tarewatt/units";
import { escapeHtml } from "../escape/html.js";
import { equationOf } from "./equation.js";
import { readSteps } from "./read-steps.js";
import { expressionHtml, symbolHtml } from "./symbols.js";

/**
 * The steps of a calculation as an ordered HTML list: name, equation from symbols to result with variables as `var` and
 * subscripts as `sub`, meaning of the symbols, source. A source that is only remembered says so.
 *
 * @param steps - the steps, in order
 * @returns markup; every text of the data is escaped
 * @throws InputError `NOT_AN_OBJECT`, `WRONG_CHOICE` and ReportError `NOT_A_TEXT` when these are no steps
 * @example
 * const drag = aerodynamicDrag.explain({ airDensity: q("1.2 kg/m³"), dragArea: q("0.75 m²"), airSpeed: q("80 km/h") });
 * workingToHtml([drag]).includes("<var>F<sub>a</sub></var> = ½·<var>ρ</var>·<var>C<sub>d</sub>A</var>·<var>v</var>"); // true
 */
export function workingToHtml(steps: readonly Step[]): string {
  return `<ol class="tarewatt-working">\n${readSteps("steps", steps).map(item).join("\n")}\n</ol>\n`;
}

function item(step: Step): string {
  const { symbol, expression, filled, answer } = equationOf(step);
  const sides = [expressionHtml(expression), ...(filled === "" ? [] : [escapeHtml(filled)])];
  const legend = step.operands.map((operand) => `${symbolHtml(operand.symbol)} is ${escapeHtml(operand.meaning)}`);
  const details = [
    ...(legend.length === 0 ? [] : [`where ${legend.join(", ")}`]),
    ...(step.validity === "" ? [] : [`Holds: ${escapeHtml(step.validity)}`]),
    `Source: ${escapeHtml(sourceLine(step.source))}`,
  ].map((detail) => `<p class="tarewatt-detail">${detail}</p>`);
  return [
    `<li><p><strong>${escapeHtml(step.name)}</strong></p>`,
    `<p class="tarewatt-equation">${symbolHtml(symbol)} = ${sides.join(" = ")} = <strong>${escapeHtml(answer)}</strong></p>`,
    ...details,
    "</li>",
  ].join("");
}
