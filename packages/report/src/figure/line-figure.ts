import { frozen } from "../check/frozen.js";
import { readKeys, readOptionalText } from "../check/read.js";
import { showFigure } from "../notebook/show-figure.js";
import type { LineFigure, LineFigureOptions } from "./figure.js";
import { readTargets, rowsOf } from "./line-kind.js";
import { lineSpec } from "./line-spec.js";
import { readSize } from "./picture-size.js";
import { readAxis, readSeries } from "./read-line.js";
import { bandReading, readWords, wordKeys } from "./words.js";

/**
 * A figure of one or more lines, each with its spread as a band, and targets to compare with.
 *
 * Lines carry their names at their ends, so there is no legend; the caption says what line and band are, and names source
 * and date.
 *
 * @param options - title, axes with units, series, targets, caption, source, date, and a description for those who cannot
 * see the picture; all numbers are plain numbers in the units of the axes
 * @returns an immutable figure
 * @throws ReportError `NOT_ORDERED` when a band does not hold its line or x goes back, `REPEATED_NAME`, `TOO_MANY_SERIES`,
 * `NOT_A_TEXT`
 * @throws InputError `EMPTY` without series or points, `NOT_A_NUMBER`, `OUT_OF_RANGE` beyond 10¹⁵, `INCONSISTENT`,
 * `UNKNOWN_OPTION`, `MISSING_OPTION`
 * @example
 * const ranges = lineFigure({
 *   title: "Range at steady speed",
 *   x: { title: "Speed", unit: "km/h" },
 *   y: { title: "Range", unit: "km" },
 *   series: [{ name: "Touring van", points: [{ x: 80, y: 520, low: 480, high: 565 }, { x: 120, y: 340, low: 310, high: 372 }] }],
 *   targets: [{ value: 400, label: "Announced: 400 km" }],
 *   source: "invented data",
 *   description: "Range falls from 520 km at 80 km/h to 340 km at 120 km/h.",
 * });
 * ranges.caption; // "Line: P50; shaded band: P10 to P90. Source: invented data."
 */
export function lineFigure(options: LineFigureOptions): LineFigure {
  readKeys("lineFigure", options, [...wordKeys, "x", "y", "series", "targets?", "band?"]);
  const series = readSeries(options.series);
  const rows = rowsOf(series);
  const named = readOptionalText("band", options.band);
  const banded = rows.some(({ low }) => low !== undefined);
  const band = banded ? (named ?? "P10 to P90") : "";
  const content = {
    ...{ kind: "line" as const, ...readWords(options, bandReading(band, named)) },
    ...{ x: readAxis("x", options.x), y: readAxis("y", options.y) },
    ...{ series, targets: readTargets(options.targets ?? []), band, rows },
  };
  return showFigure({ ...content, spec: frozen(lineSpec(content, readSize("the picture", {}))) });
}
