import { plainLine } from "../escape/plain.js";
import { gridToText } from "../table/to-text.js";
import type { Figure } from "./figure.js";
import { figureGrid } from "./figure-grid.js";

/**
 * A figure in words and numbers for a terminal: the table of its points, then what the picture says.
 *
 * @param figure - the figure
 * @returns lines ended by line feeds
 * @example
 * figureToText(ranges); // "Range at steady speed\nLine: P50; shaded band: P10 to P90. ..."
 */
export function figureToText(figure: Figure): string {
  return `${gridToText(figureGrid(figure))}\n${plainLine(figure.description)}\n`;
}
