import { markdownParagraph } from "../escape/markdown.js";
import { gridToMarkdown } from "../table/to-markdown.js";
import type { Figure } from "./figure.js";
import { figureGrid } from "./figure-grid.js";
import { readFigure } from "./read-figure.js";

/**
 * A figure in Markdown: the table of its points, then what the picture says.
 *
 * @param figure - the figure
 * @returns Markdown; every text of the data is escaped
 * @throws InputError `WRONG_CHOICE`, `NOT_AN_OBJECT` when it is no figure, and what {@link lineFigure} throws
 * @example
 * figureToMarkdown(ranges); // "**Range at steady speed**\n\n| Series | Speed (km/h) | ..."
 */
export function figureToMarkdown(figure: Figure): string {
  const read = readFigure(figure);
  return `${gridToMarkdown(figureGrid(read))}\n${markdownParagraph(read.description)}\n`;
}
