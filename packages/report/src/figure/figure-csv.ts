import { csvRecords } from "../escape/csv.js";
import type { Figure } from "./figure.js";
import { readFigure } from "./read-figure.js";

/**
 * The data of a figure as CSV (RFC 4180), unrounded, row by row.
 *
 * @param figure - the figure
 * @returns one record of heads and one for every row, each ended by CR LF
 * @throws InputError `WRONG_CHOICE`, `NOT_AN_OBJECT` when it is no figure, and what the function that makes such a figure throws
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
  return csvRecords(readFigure(figure).records());
}
