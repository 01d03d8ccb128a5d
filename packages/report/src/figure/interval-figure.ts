import { frozen } from "../check/frozen.js";
import { readKeys } from "../check/read.js";
import { showFigure } from "../notebook/show-figure.js";
import type { IntervalFigure, IntervalFigureOptions } from "./interval.js";
import { intervalReading, intervalSpec, readIntervalRows } from "./interval-kind.js";
import { readValueAxis } from "./measure.js";
import { readSize } from "./picture-size.js";
import { readWords, wordKeys } from "./words.js";

/**
 * A figure of intervals in rows: a dot at the best value, a thick bar for its spread, a thin one for a wider spread, and an
 * upright mark for a value to compare with. For claims against an estimate, ranges under several procedures, or swings of unknowns.
 *
 * @param options - title, axis, rows, caption, source, date, and a description for those who cannot see the picture; bare numbers
 * are in the unit of the axis, quantities are converted to it
 * @returns an immutable figure
 * @throws ReportError `NOT_ORDERED` when an interval does not hold its value, `NOT_A_TEXT`, `NO_ROOM`
 * @throws InputError `EMPTY` without rows, `NOT_A_NUMBER`, `OUT_OF_RANGE` beyond 10¹⁵, `INCONSISTENT`, `UNKNOWN_OPTION`,
 * `MISSING_OPTION`
 * @throws QuantityError when a quantity measures something else than the axis
 * @example
 * const ranges = intervalFigure({
 *   title: "Range by procedure",
 *   x: { title: "Range", unit: "km", also: "mi" },
 *   rows: [
 *     { label: "Combined cycle", value: 430, low: 390, high: 475, target: q("280 mi") },
 *     { label: "Motorway", spread: { p10: q("310 km"), p50: q("340 km"), p90: q("372 km") } },
 *   ],
 *   targetName: "announced",
 *   description: "About 430 km on the combined cycle, 340 km on the motorway.",
 * });
 * ranges.caption; // "Dot: P50; thick bar: P10 to P90; upright mark: announced."
 * ranges.rows[1]?.low; // 310
 */
export function intervalFigure(options: IntervalFigureOptions): IntervalFigure {
  readKeys("intervalFigure", options, [...wordKeys, "x", "rows", "band?", "outerBand?", "targetName?"]);
  const x = readValueAxis("x", options.x);
  const rows = readIntervalRows(options.rows, x.unit);
  const content = { kind: "interval" as const, ...readWords(options, intervalReading(rows, options)), x, rows };
  return showFigure({ ...content, spec: frozen(intervalSpec(content, readSize("the picture", {}))) });
}
