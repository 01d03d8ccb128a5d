import { InputError } from "@tarewatt/units";
import type { TopLevelSpec } from "vega-lite";
import { ReportError } from "../check/errors.js";
import { escapeHtml } from "../escape/html.js";
import type { Figure } from "./figure.js";
import { type PictureSize, readSize } from "./frame.js";
import { lineSpec } from "./line-spec.js";

/** What {@link toSvg} takes beside the figure. */
export interface SvgOptions extends PictureSize {
  /** How it looks; there is one look, dark ink on a white ground, for print and screen. */
  readonly theme?: "light";
}

/**
 * A figure as SVG, drawn by the optional peers `vega` and `vega-lite`. The same figure gives the same bytes.
 *
 * The picture is announced as one image with the figure's description as its alternative text.
 *
 * @param figure - the figure
 * @param options - width and height of the plot, whether to print the caption, theme
 * @returns the text of an `svg` element
 * @throws ReportError `MISSING_PEER` when `vega` or `vega-lite` is not installed
 * @throws InputError `OUT_OF_RANGE`, `UNKNOWN_OPTION`, `WRONG_CHOICE`
 * @example
 * const svg = await toSvg(ranges, { width: 720, height: 400 });
 */
export async function toSvg(figure: Figure, options: SvgOptions = {}): Promise<string> {
  readSize("toSvg", options, ["theme?"]);
  const { theme = "light", ...size } = options;
  if (theme !== "light") {
    throw new InputError("WRONG_CHOICE", `theme must be 'light': got '${String(theme)}'`, { theme });
  }
  const [vega, vegaLite] = await Promise.all([
    peer("vega", () => import("vega")),
    peer("vega-lite", () => import("vega-lite")),
  ]);
  // The compiler may write into what it is given, and the figure is frozen.
  const spec = JSON.parse(JSON.stringify(lineSpec(figure, size))) as TopLevelSpec;
  const view = new vega.View(vega.parse(vegaLite.compile(spec).spec), { renderer: "none" });
  try {
    const svg = await view.toSVG();
    return svg.replace(/^<svg\b/, `<svg role="img" aria-label="${escapeHtml(figure.description)}"`);
  } finally {
    view.finalize();
  }
}

async function peer<Module>(name: string, load: () => Promise<Module>): Promise<Module> {
  try {
    return await load();
  } catch (cause) {
    throw new ReportError(
      "MISSING_PEER",
      `drawing SVG needs the packages vega and vega-lite, and ${name} cannot be loaded: install both ("npm install vega@6 vega-lite@6.4"), or use toVegaLite and draw the specification elsewhere`,
      { peer: name, reason: cause instanceof Error ? cause.message : String(cause) },
    );
  }
}
