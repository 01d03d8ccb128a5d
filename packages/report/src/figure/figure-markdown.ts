import { markdownParagraph } from "../escape/markdown.js";
import { gridToMarkdown } from "../table/to-markdown.js";
import type { Figure } from "./figure.js";
import { readFigure } from "./read-figure.js";

/**
 * A figure in Markdown: the table of its data, then what the picture says.
 *
 * @param figure - the figure
 * @returns Markdown; every text of the data is escaped
 * @throws InputError `WRONG_CHOICE`, `NOT_AN_OBJECT` when it is no figure, and what the function that makes such a figure throws
 * @example
 * const ranges = lineFigure({
 *   ...{ title: "Range at steady speed", x: { title: "Speed", unit: "km/h" }, y: { title: "Range", unit: "km" } },
 *   series: [{ name: "Van", points: [{ x: 80, y: 520, low: 480, high: 565 }, { x: 120, y: 340, low: 310, high: 372 }] }],
 *   description: "Range falls from 520 km to 340 km.",
 * });
 * const lines = figureToMarkdown(ranges).split("\n");
 * lines[2]; // "| Series | Speed (km/h) | Range (km) |"
 * lines[4]; // "| Van | 80 | 520 (480 to 565) |"
 */
export function figureToMarkdown(figure: Figure): string {
  const read = readFigure(figure);
  return `${gridToMarkdown(read.grid())}\n${markdownParagraph(read.description)}\n`;
}
