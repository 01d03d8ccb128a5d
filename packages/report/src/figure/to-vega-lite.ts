import type { Figure, VegaLiteSpec } from "./figure.js";
import { type PictureSize, readSize } from "./picture-size.js";
import { readFigure } from "./read-figure.js";

/**
 * A figure as a Vega-Lite specification (version 6 of the open grammar), plain JSON data that holds everything it shows.
 *
 * @param figure - the figure
 * @param size - page or card, width and height of the whole picture, theme, and whether to print the caption
 * @returns the specification, for a notebook, a browser or a file: a new one at every call, which you may change
 * @throws InputError `WRONG_CHOICE`, `NOT_AN_OBJECT` when it is no figure, and what the function that makes such a figure throws
 * @throws InputError `OUT_OF_RANGE`, `UNKNOWN_OPTION` for a size that makes no picture
 * @example
 * const ranges = lineFigure({
 *   ...{ title: "Range at steady speed", x: { title: "Speed", unit: "km/h" }, y: { title: "Range", unit: "km" } },
 *   series: [{ name: "Van", points: [{ x: 80, y: 520, low: 480, high: 565 }, { x: 120, y: 340, low: 310, high: 372 }] }],
 *   description: "Range falls from 520 km to 340 km.",
 * });
 * const spec = figureToVegaLite(ranges, { width: 720 });
 * spec.$schema; // "https://vega.github.io/schema/vega-lite/v6.json"
 * const { left, right } = spec.padding as { left: number; right: number };
 * (spec.width as number) + left + right; // 720
 */
export function figureToVegaLite(figure: Figure, size: PictureSize = {}): VegaLiteSpec {
  const read = readSize("figureToVegaLite", size);
  // A copy: the colours and dashes of a specification are shared between all of them.
  return JSON.parse(JSON.stringify(readFigure(figure).spec(read)));
}
