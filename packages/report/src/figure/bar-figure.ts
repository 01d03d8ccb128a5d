import { frozen } from "../check/frozen.js";
import { readKeys } from "../check/read.js";
import { showFigure } from "../notebook/show-figure.js";
import type { BarFigure, BarFigureOptions } from "./bar.js";
import { barReading, barSpec, readBarRows } from "./bar-kind.js";
import { readValueAxis } from "./measure.js";
import { readSize } from "./picture-size.js";
import { readWords, wordKeys } from "./words.js";

/**
 * A figure of bars from zero, each with its own uncertainty as a whisker, and with a part drawn dark inside it where there is one:
 * a ranking of shares, say, with the first-order share within the total one.
 *
 * @param options - title, axis, rows in the order they are shown, caption, source, date and a description; bare numbers are in the
 * unit of the axis, quantities are converted to it
 * @returns an immutable figure
 * @throws ReportError `NOT_ORDERED` when a whisker does not hold its value, `NOT_A_TEXT`, `NO_ROOM`
 * @throws InputError `EMPTY` without rows, `NOT_A_NUMBER`, `OUT_OF_RANGE` beyond 10¹⁵, `UNKNOWN_OPTION`, `MISSING_OPTION`
 * @throws QuantityError when a quantity measures something else than the axis
 * @example
 * const shares = barFigure({
 *   title: "What the spread of the range comes from",
 *   x: { title: "Share of variance", unit: "%" },
 *   rows: [{ label: "Usable energy", value: 61, low: 57, high: 65, within: 58 }, { label: "Drag area", value: 24, low: 21, high: 27, within: 22 }],
 *   withinName: "alone",
 *   description: "Usable energy makes 61 % of the variance, drag area 24 %.",
 * });
 * shares.caption; // "Dark: alone; whisker: P10 to P90."
 */
export function barFigure(options: BarFigureOptions): BarFigure {
  readKeys("barFigure", options, [...wordKeys, "x", "rows", "band?", "withinName?"]);
  const x = readValueAxis("x", options.x);
  const rows = readBarRows(options.rows, x.unit);
  const content = { kind: "bar" as const, ...readWords(options, barReading(rows, options)), x, rows };
  return showFigure({ ...content, spec: frozen(barSpec(content, readSize("the picture", {}))) });
}
