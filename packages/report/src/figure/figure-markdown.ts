import { markdownParagraph } from "../escape/markdown.js";
import { gridToMarkdown } from "../table/to-markdown.js";
import type { Figure } from "./figure.js";
import { figureGrid } from "./figure-grid.js";

/**
 * A figure in Markdown: the table of its points, then what the picture says.
 *
 * @param figure - the figure
 * @returns Markdown; every text of the data is escaped
 * @example
 * figureToMarkdown(ranges); // "**Range at steady speed**\n\n| Series | Speed (km/h) | ..."
 */
export function figureToMarkdown(figure: Figure): string {
  return `${gridToMarkdown(figureGrid(figure))}\n${markdownParagraph(figure.description)}\n`;
}
