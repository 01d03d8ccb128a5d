import { frozen } from "../check/frozen.js";
import { readKeys, readOptionalText } from "../check/read.js";
import { showFigure } from "../notebook/show-figure.js";
import { readValueAxis } from "./measure.js";
import { readSize } from "./picture-size.js";
import type { PointFigure, PointFigureOptions } from "./point.js";
import { readPoints, readUpright } from "./point-kind.js";
import { pointSpec } from "./point-spec.js";
import { readWords, wordKeys } from "./words.js";

/**
 * A figure of labelled points, with bars for their spread: vehicles compared in mass and consumption, say. The subject of the
 * figure is drawn filled and named in bold, and no label touches another.
 *
 * @param options - title, axes, points, caption, source, date and a description; bare numbers are in the units of the axes,
 * quantities are converted to them
 * @returns an immutable figure
 * @throws ReportError `NOT_ORDERED` when a bar does not hold its point, `REPEATED_NAME`, `NO_ROOM` when labels cannot be kept
 * apart, `NOT_A_TEXT`
 * @throws InputError `EMPTY` without points, `NOT_A_NUMBER`, `OUT_OF_RANGE` beyond 10¹⁵, `INCONSISTENT` for a second unit of the
 * vertical axis, `WRONG_CHOICE`, `UNKNOWN_OPTION`, `MISSING_OPTION`
 * @throws QuantityError when a quantity measures something else than its axis
 * @example
 * const vehicles = pointFigure({
 *   title: "Mass and consumption",
 *   x: { title: "Curb mass", unit: "kg" },
 *   y: { title: "Consumption", unit: "kWh/100 km" },
 *   points: [
 *     { label: "Touring van", x: 2600, y: 24.5, xLow: 2520, xHigh: 2690, yLow: 22.8, yHigh: 26.4, subject: true },
 *     { label: "Small van", x: q("2.1 t"), y: 21.2 },
 *   ],
 *   description: "The touring van is heavier and uses more than the small van.",
 * });
 * vehicles.rows[1]?.x; // 2100
 */
export function pointFigure(options: PointFigureOptions): PointFigure {
  readKeys("pointFigure", options, [...wordKeys, "x", "y", "points", "band?"]);
  const axes = { x: readValueAxis("x", options.x), y: readUpright(options.y) };
  const rows = readPoints(options.points, axes);
  const band = readOptionalText("band", options.band) ?? "P10 to P90";
  const barred = rows.some(({ xLow, yLow }) => xLow !== undefined || yLow !== undefined);
  const content = { kind: "point" as const, ...readWords(options, barred ? `Bars: ${band}` : ""), ...axes, rows };
  return showFigure({ ...content, spec: frozen(pointSpec(content, readSize("the picture", {}))) });
}
