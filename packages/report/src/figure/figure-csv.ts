import { csvRecords } from "../escape/csv.js";
import { headLine } from "../table/grid.js";
import type { Figure } from "./figure.js";

/**
 * The points of a figure as CSV (RFC 4180), unrounded: series, x and y, and the ends of the band when there is one.
 *
 * @param figure - the figure
 * @returns one record of heads and one for every point, each ended by CR LF
 * @example
 * figureToCsv(ranges); // "Series,Speed (km/h),Range (km),Range low (km),Range high (km)\r\n..."
 */
export function figureToCsv({ x, y, rows, band }: Figure): string {
  const ends = band === "" ? [] : ["low", "high"].map((end) => headLine({ ...y, title: `${y.title} ${end}` }));
  const number = (value: number | undefined): string => (value === undefined ? "" : String(value));
  return csvRecords([
    ["Series", headLine(x), headLine(y), ...ends],
    ...rows.map((row) => [
      row.series,
      number(row.x),
      number(row.y),
      ...(band === "" ? [] : [number(row.low), number(row.high)]),
    ]),
  ]);
}
