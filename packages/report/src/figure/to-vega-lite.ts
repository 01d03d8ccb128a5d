import type { Figure, VegaLiteSpec } from "./figure.js";
import { type PictureSize, readSize } from "./frame.js";
import { lineSpec } from "./line-spec.js";

/**
 * A figure as a Vega-Lite specification (version 6 of the open grammar), plain JSON data that holds everything it shows.
 *
 * @param figure - the figure
 * @param size - width and height of the plot, and whether to print the caption
 * @returns the specification, for a notebook, a browser or a file
 * @throws InputError `OUT_OF_RANGE`, `UNKNOWN_OPTION` for a size that makes no picture
 * @example
 * JSON.stringify(toVegaLite(ranges));
 */
export function toVegaLite(figure: Figure, size: PictureSize = {}): VegaLiteSpec {
  readSize("toVegaLite", size);
  return Object.keys(size).length === 0 ? figure.spec : lineSpec(figure, size);
}
