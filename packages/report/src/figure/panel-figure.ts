import { frozen } from "../check/frozen.js";
import { readKeys, readOptionalText } from "../check/read.js";
import { showFigure } from "../notebook/show-figure.js";
import type { PanelFigure, PanelFigureOptions } from "./panel.js";
import { panelRows, panelSpec, readPanels } from "./panel-kind.js";
import { readSize } from "./picture-size.js";
import { readAxis } from "./read-line.js";
import { bandReading, readWords, wordKeys } from "./words.js";

/**
 * A figure of lines in panels, one below the other, that share their horizontal axis: power and state of charge against time,
 * say.
 *
 * @param options - title, horizontal axis, panels with a vertical axis, series and targets each, caption, source, date and a
 * description; all numbers are plain numbers in the units of the axes
 * @returns an immutable figure
 * @throws ReportError `NOT_ORDERED` when a band does not hold its line or x goes back, `REPEATED_NAME`, `TOO_MANY_SERIES`,
 * `NOT_A_TEXT`, `NO_ROOM`
 * @throws InputError `EMPTY` without panels, series or points, `NOT_A_NUMBER`, `OUT_OF_RANGE` beyond 10¹⁵ or four panels,
 * `INCONSISTENT`, `UNKNOWN_OPTION`, `MISSING_OPTION`
 * @example
 * const charge = panelFigure({
 *   title: "A charge from 10 % to 80 %",
 *   x: { title: "Time", unit: "min" },
 *   panels: [
 *     { y: { title: "Power", unit: "kW" }, series: [{ name: "Battery", points: [{ x: 0, y: 190 }, { x: 28, y: 75 }] }] },
 *     { y: { title: "State of charge", unit: "%" }, series: [{ name: "Charge", points: [{ x: 0, y: 10 }, { x: 28, y: 80 }] }] },
 *   ],
 *   description: "Power falls from 190 kW to 75 kW while the charge rises from 10 % to 80 % in 28 min.",
 * });
 * charge.rows.length; // 4
 */
export function panelFigure(options: PanelFigureOptions): PanelFigure {
  readKeys("panelFigure", options, [...wordKeys, "x", "panels", "band?"]);
  const panels = readPanels(options.panels);
  const rows = panelRows(panels);
  const named = readOptionalText("band", options.band);
  const band = rows.some(({ low }) => low !== undefined) ? (named ?? "P10 to P90") : "";
  const words = readWords(options, bandReading(band, named));
  const content = { kind: "panel" as const, ...words, x: readAxis("x", options.x), panels, band, rows };
  return showFigure({ ...content, spec: frozen(panelSpec(content, readSize("the picture", {}))) });
}
