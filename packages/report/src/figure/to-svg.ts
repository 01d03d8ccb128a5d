import type { TopLevelSpec } from "vega-lite";
import { ReportError } from "../check/errors.js";
import { escapeHtml } from "../escape/html.js";
import type { Figure } from "./figure.js";
import { type PictureSize, readSize } from "./picture-size.js";
import { readFigureWords } from "./read-figure.js";
import { figureToVegaLite } from "./to-vega-lite.js";

/**
 * A figure as SVG, drawn by the optional peers `vega` and `vega-lite`. The same figure gives the same bytes.
 *
 * The picture is announced as one image with the figure's description as its alternative text.
 *
 * @param figure - the figure
 * @param size - page or card, width and height of the whole picture, theme, whether to print the caption
 * @returns the text of an `svg` element
 * @throws ReportError `MISSING_PEER` when `vega` or `vega-lite` is not installed
 * @throws InputError `WRONG_CHOICE`, `NOT_AN_OBJECT` when it is no figure, and what the function that makes such a figure throws
 * @throws InputError `OUT_OF_RANGE`, `UNKNOWN_OPTION`, `WRONG_CHOICE`
 * @example
 * const ranges = lineFigure({
 *   ...{ title: "Range at steady speed", x: { title: "Speed", unit: "km/h" }, y: { title: "Range", unit: "km" } },
 *   series: [{ name: "Van", points: [{ x: 80, y: 520, low: 480, high: 565 }, { x: 120, y: 340, low: 310, high: 372 }] }],
 *   description: "Range falls from 520 km to 340 km.",
 * });
 * const svg = await figureToSvg(ranges, { width: 720, height: 400 });
 * svg.startsWith('<svg role="img" aria-label="Range falls from 520 km to 340 km."'); // true
 */
export async function figureToSvg(figure: Figure, size: PictureSize = {}): Promise<string> {
  readSize("figureToSvg", size);
  const { description } = readFigureWords(figure);
  // The compiler may write into what it is given, so it gets a specification of its own.
  const spec = figureToVegaLite(figure, size) as unknown as TopLevelSpec;
  const [vega, vegaLite] = await Promise.all([
    peer("vega", () => import("vega")),
    peer("vega-lite", () => import("vega-lite")),
  ]);
  const view = new vega.View(vega.parse(vegaLite.compile(spec).spec), { renderer: "none" });
  try {
    const svg = await view.toSVG();
    return withoutPartNames(svg).replace(/^<svg\b/, `<svg role="img" aria-label="${escapeHtml(description)}"`);
  } finally {
    view.finalize();
  }
}

/** The parts of one image have no roles and names of their own: readers of the screen would announce nameless pictures. */
function withoutPartNames(svg: string): string {
  const ofParts = / (?:role="graphics-\w+"|aria-(?:roledescription|label)="[^"]*")/g;
  return svg.replace(/<\w[^>]*>/g, (tag) => tag.replace(ofParts, ""));
}

async function peer<Module>(name: string, load: () => Promise<Module>): Promise<Module> {
  try {
    return await load();
  } catch (cause) {
    throw new ReportError(
      "MISSING_PEER",
      `drawing SVG needs the packages vega and vega-lite, and ${name} cannot be loaded: install both ("npm install vega@6 vega-lite@6.4"), or use figureToVegaLite and draw the specification elsewhere`,
      { peer: name, reason: cause instanceof Error ? cause.message : String(cause) },
    );
  }
}
