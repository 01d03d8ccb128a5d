import { frozen } from "../check/frozen.js";
import { readKeys } from "../check/read.js";
import { showFigure } from "../notebook/show-figure.js";
import { readValueAxis } from "./measure.js";
import { readSize } from "./picture-size.js";
import type { StackFigure, StackFigureOptions } from "./stack.js";
import { stackRows } from "./stack-kind.js";
import { stackSpec } from "./stack-spec.js";
import { readWords, wordKeys } from "./words.js";

/**
 * A figure of stacked bars: a mass built up from its parts, where the energy goes, a ledger. Every part is named on the bar or
 * right below it; what is taken away, such as recuperated energy, stands left of zero. The sum is printed at the end of the bar.
 *
 * @param options - title, axis, bars with their parts, caption, source, date and a description; bare numbers are in the unit of
 * the axis, quantities are converted to it
 * @returns an immutable figure
 * @throws ReportError `REPEATED_NAME` when two bars, or two parts of a bar, have one name, `NOT_A_TEXT`, `NO_ROOM`
 * @throws InputError `EMPTY` without bars or parts, `NOT_A_NUMBER`, `OUT_OF_RANGE` beyond 10¹⁵, `UNKNOWN_OPTION`, `MISSING_OPTION`
 * @throws QuantityError when a quantity measures something else than the axis
 * @example
 * const energy = stackFigure({
 *   title: "Where the energy goes",
 *   x: { title: "Energy at the battery", unit: "Wh/km" },
 *   bars: [{ label: "Combined cycle", parts: [{ name: "Air drag", value: 78 }, { name: "Rolling", value: q("52 Wh/km") }, { name: "Recuperated", value: -21 }] }],
 *   description: "Air drag takes 78 Wh/km, rolling 52 Wh/km; 21 Wh/km come back.",
 * });
 * energy.rows[2]?.value; // -21
 */
export function stackFigure(options: StackFigureOptions): StackFigure {
  readKeys("stackFigure", options, [...wordKeys, "x", "bars"]);
  const x = readValueAxis("x", options.x);
  const rows = stackRows(options.bars, x.unit);
  const content = {
    kind: "stack" as const,
    ...readWords(options, "Parts without room are named below their bar, left to right; at its end stands the sum"),
    x,
    rows,
  };
  return showFigure({ ...content, spec: frozen(stackSpec(content, readSize("the picture", {}))) });
}
