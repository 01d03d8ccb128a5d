import { plainLine } from "../escape/plain.js";
import { gridToText } from "../table/to-text.js";
import type { Figure } from "./figure.js";
import { figureGrid } from "./figure-grid.js";
import { readFigure } from "./read-figure.js";

/**
 * A figure in words and numbers for a terminal: the table of its points, then what the picture says.
 *
 * @param figure - the figure
 * @returns lines ended by line feeds
 * @throws InputError `WRONG_CHOICE`, `NOT_AN_OBJECT` when it is no figure, and what {@link lineFigure} throws
 * @example
 * figureToText(ranges); // "Range at steady speed\nLine: P50; shaded band: P10 to P90. ..."
 */
export function figureToText(figure: Figure): string {
  const read = readFigure(figure);
  return `${gridToText(figureGrid(read))}\n${plainLine(read.description)}\n`;
}
