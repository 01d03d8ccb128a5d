import type { Figure, VegaLiteSpec } from "./figure.js";
import { type PictureSize, readSize } from "./frame.js";
import { lineSpec } from "./line-spec.js";
import { readFigure } from "./read-figure.js";

/**
 * A figure as a Vega-Lite specification (version 6 of the open grammar), plain JSON data that holds everything it shows.
 *
 * @param figure - the figure
 * @param size - width and height of the plot, and whether to print the caption
 * @returns the specification, for a notebook, a browser or a file: a new one at every call, which you may change
 * @throws InputError `WRONG_CHOICE`, `NOT_AN_OBJECT` when it is no figure, and what {@link lineFigure} throws
 * @throws InputError `OUT_OF_RANGE`, `UNKNOWN_OPTION` for a size that makes no picture
 * @example
 * JSON.stringify(figureToVegaLite(ranges));
 */
export function figureToVegaLite(figure: Figure, size: PictureSize = {}): VegaLiteSpec {
  readSize("figureToVegaLite", size);
  // A copy: the colours and dashes of a specification are shared between all of them.
  return JSON.parse(JSON.stringify(lineSpec(readFigure(figure), size)));
}
