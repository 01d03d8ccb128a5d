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
 * const ranges = lineFigure({
 *   ...{ title: "Range at steady speed", x: { title: "Speed", unit: "km/h" }, y: { title: "Range", unit: "km" } },
 *   series: [{ name: "Van", points: [{ x: 80, y: 520, low: 480, high: 565 }, { x: 120, y: 340, low: 310, high: 372 }] }],
 *   description: "Range falls from 520 km to 340 km.",
 * });
 * figureToCsv(ranges).split("\r\n")[0]; // "Series,Speed (km/h),Range (km),Range low (km),Range high (km)"
 * figureToCsv(ranges).split("\r\n")[1]; // "Van,80,520,480,565"
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
