import { readKeys } from "../check/read.js";
import { escapeHtml } from "../escape/html.js";
import { checkSvg } from "./check-svg.js";
import type { Figure } from "./figure.js";
import type { ReadFigure } from "./kind.js";
import { readFigureWords } from "./read-figure.js";
import { figureToSvg } from "./to-svg.js";

/** What {@link figureToHtml} takes beside the figure. */
export interface FigureHtmlOptions {
  /** A picture of the figure made before; drawn by {@link figureToSvg} without its caption when left out. */
  readonly svg?: string | undefined;
}

/**
 * A figure as an HTML `figure` element: the picture inline, with its alternative text, and the caption as `figcaption`.
 *
 * @param figure - the figure
 * @param options - a picture made before
 * @returns markup without scripts and without anything to load
 * @throws InputError `WRONG_CHOICE`, `NOT_AN_OBJECT` when it is no figure, and what the function that makes such a figure throws
 * @throws ReportError `UNSAFE_SVG` when the picture holds more than a drawing, `MISSING_PEER` as {@link figureToSvg}
 * @example
 * const ranges = lineFigure({
 *   ...{ title: "Range at steady speed", x: { title: "Speed", unit: "km/h" }, y: { title: "Range", unit: "km" } },
 *   series: [{ name: "Van", points: [{ x: 80, y: 520, low: 480, high: 565 }, { x: 120, y: 340, low: 310, high: 372 }] }],
 *   description: "Range falls from 520 km to 340 km.",
 * });
 * const html = await figureToHtml(ranges);
 * html.startsWith('<figure class="tarewatt-figure">'); // true
 * html.includes("<figcaption>Line: P50; shaded band: P10 to P90.</figcaption>"); // true
 */
export async function figureToHtml(figure: Figure, options: FigureHtmlOptions = {}): Promise<string> {
  readKeys("figureToHtml", options, ["svg?"]);
  return figureElement(readFigureWords(figure), options.svg ?? (await figureToSvg(figure, { caption: false })));
}

/** @internal The element for a picture that is there. */
export function figureElement(figure: Pick<ReadFigure, "title" | "caption" | "description">, svg: string): string {
  const picture = checkSvg(svg);
  // A picture made elsewhere may have no alternative text of its own.
  const named = /^<svg role="img" aria-label="/.test(picture);
  const shown = named ? picture : `<div role="img" aria-label="${escapeHtml(figure.description)}">${picture}</div>`;
  const caption = escapeHtml(figure.caption === "" ? figure.title : figure.caption);
  // On a narrow screen the picture is wider than its plate: who has no pointer moves it with the arrow keys.
  const plate = `<section class="tarewatt-plate" tabindex="0" aria-label="${escapeHtml(figure.title)}">${shown}</section>`;
  return `<figure class="tarewatt-figure">${plate}<figcaption>${caption}</figcaption></figure>\n`;
}
