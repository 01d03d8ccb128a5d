import { csvRecords } from "../escape/csv.js";
import { headLine } from "../table/grid.js";
import type { Figure } from "./figure.js";
import { readFigure } from "./read-figure.js";

/**
 * The points of a figure as CSV (RFC 4180), unrounded: series, x and y, and the ends of the band when there is one.
 *
 * @param figure - the figure
 * @returns one record of heads and one for every point, each ended by CR LF
 * @throws InputError `WRONG_CHOICE`, `NOT_AN_OBJECT` when it is no figure, and what {@link lineFigure} throws
 * @example
 * figureToCsv(ranges); // "Series,Speed (km/h),Range (km),Range low (km),Range high (km)\r\n..."
 */
export function figureToCsv(figure: Figure): string {
  const { x, y, rows, band } = readFigure(figure);
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
