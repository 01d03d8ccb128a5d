import { ReportError } from "../check/errors.js";
import type { JsonValue, VegaLiteSpec } from "./figure.js";
import { type Layer, type PlacedText, texts } from "./layers.js";
import type { ReadSize } from "./picture-size.js";
import { wrapTo } from "./text-width.js";

const SCHEMA = "https://vega.github.io/schema/vega-lite/v6.json";
const FONT = "Helvetica Neue, Helvetica, Arial, Liberation Sans, DejaVu Sans, sans-serif";

/** @internal Sizes of letters on a page, in pixels. */
export const letters = /* @__PURE__ */ Object.freeze({ title: 19, label: 14, small: 13, caption: 12 } as const);

/** @internal Room around the plot for axes and labels, in pixels. */
export interface Edges {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** @internal A picture of known size with the room for its plot. */
export interface Paper {
  readonly width: number;
  readonly height: number;
  /** The picture with the layers of the plot. */
  readonly draw: (layers: readonly Layer[]) => VegaLiteSpec;
}

interface Words {
  readonly title: string;
  readonly caption: string;
  readonly description: string;
}

/**
 * @internal Lays out title, plot and caption. Every text is placed here and not by the program that draws, so that the size of the
 * whole picture is known beforehand and nothing is cut off.
 */
export function paper(words: Words, size: ReadSize, edges: Edges, { needs, usual }: PlotHeight): Paper {
  const { width: whole, scale, look } = size;
  const margin = 16 * scale;
  const inner = whole - 2 * margin;
  const titleSize = letters.title * scale;
  const captionSize = letters.caption * scale;
  const titles = wrapTo(words.title, inner, titleSize, "bold");
  const captions = size.caption && words.caption !== "" ? wrapTo(words.caption, inner, captionSize) : [];
  const head = margin + titles.length * titleSize * 1.3 + 10 * scale + edges.top;
  const foot = edges.bottom + (captions.length > 0 ? 12 * scale + captions.length * captionSize * 1.4 : 0) + margin;
  const height = size.height === undefined ? usual : size.height - head - foot;
  if (height < needs) throw noRoom(size, Math.ceil(needs + head + foot));
  const width = inner - edges.left - edges.right;
  const left = 0 - edges.left;
  const placed = (lines: readonly string[], top: number, lead: number): readonly PlacedText[] =>
    lines.map((text, line) => ({ text, x: left, y: top + (line + 0.5) * lead }));
  const wording: readonly Layer[] = [
    ...texts(placed(titles, margin - head, titleSize * 1.3), { size: titleSize, color: look.text, bold: true }),
    ...texts(placed(captions, height + edges.bottom + 12 * scale, captionSize * 1.4), {
      size: captionSize,
      color: look.quiet,
    }),
  ];
  return {
    width,
    height,
    draw: (layers) => ({
      $schema: SCHEMA,
      description: words.description,
      width,
      height,
      autosize: "none",
      padding: { left: margin + edges.left, right: margin + edges.right, top: head, bottom: foot },
      background: look.ground,
      layer: [...layers, ...wording] as readonly JsonValue[],
      // The alternative text of the whole picture says it better than a label on every mark.
      config: { aria: false, font: FONT, view: { stroke: null } },
    }),
  };
}

/** @internal Height of a plot in pixels: what it needs at least, and what it takes where nothing is said. */
export interface PlotHeight {
  readonly needs: number;
  readonly usual: number;
}

function noRoom({ height }: ReadSize, least: number): ReportError {
  return new ReportError(
    "NO_ROOM",
    `the figure needs a height of at least ${least} pixels at this width: got ${height}; give it more, or fewer rows`,
    { height, least },
  );
}
