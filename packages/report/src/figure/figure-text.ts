import { plainLine } from "../escape/plain.js";
import { gridToText } from "../table/to-text.js";
import type { Figure } from "./figure.js";
import { readFigure } from "./read-figure.js";

/**
 * A figure in words and numbers for a terminal: the table of its data, then what the picture says.
 *
 * @param figure - the figure
 * @returns lines ended by line feeds
 * @throws InputError `WRONG_CHOICE`, `NOT_AN_OBJECT` when it is no figure, and what the function that makes such a figure throws
 * @example
 * const ranges = lineFigure({
 *   ...{ title: "Range at steady speed", x: { title: "Speed", unit: "km/h" }, y: { title: "Range", unit: "km" } },
 *   series: [{ name: "Van", points: [{ x: 80, y: 520, low: 480, high: 565 }, { x: 120, y: 340, low: 310, high: 372 }] }],
 *   description: "Range falls from 520 km to 340 km.",
 * });
 * const lines = figureToText(ranges).split("\n");
 * lines[1]; // "Line: P50; shaded band: P10 to P90."
 * lines[6]; // "Van          80   520 (480 to 565)"
 */
export function figureToText(figure: Figure): string {
  const read = readFigure(figure);
  return `${gridToText(read.grid())}\n${plainLine(read.description)}\n`;
}
