import { headLine } from "../table/grid.js";
import { endLabels, labelLayers } from "./end-labels.js";
import type { Figure, JsonValue, LinePoint, LineTarget, VegaLiteSpec } from "./figure.js";
import { type Frame, frameOf, type PictureSize } from "./frame.js";
import { inks, strokeOf } from "./palette.js";
import { LETTER, wrap } from "./wrap.js";

/** @internal What a specification is made from. */
export type FigureContent = Omit<Figure, "spec">;

const SCHEMA = "https://vega.github.io/schema/vega-lite/v6.json";
const FONT = "Helvetica Neue, Helvetica, Arial, Liberation Sans, DejaVu Sans, sans-serif";
const TITLE_SIZE = 19;
const CAPTION_SIZE = 12;
// Few points are shown as dots too: a reader should see what was computed and what is only the line between.
const MOST_DOTS = 15;

/**
 * @internal The picture of a line figure as a Vega-Lite specification. All labels are placed here, in data coordinates of a
 * known frame, because the grammar itself does not keep labels apart.
 */
export function lineSpec(content: FigureContent, size: PictureSize = {}): VegaLiteSpec {
  const frame = frameOf(content, size);
  const { title, x, y, series, targets, description, caption } = content;
  const labelRows = xTargetRows(targets, frame);
  const shownX = channel(frame.x.domain, {
    title: headLine(x),
    values: frame.x.ticks.values.filter((tick) => tick >= frame.x.domain[0] && tick <= frame.x.domain[1]),
    format: frame.x.ticks.format,
    grid: false,
    titlePadding: 10,
  });
  const shownY = channel(frame.y.domain, {
    title: headLine(y),
    values: frame.y.ticks.values,
    format: frame.y.ticks.format,
    domain: false,
    ticks: false,
    // Level above the axis, where it reads without turning the head.
    titleAngle: 0,
    titleAlign: "left",
    titleBaseline: "bottom",
    titleX: 0,
    titleY: -12 - 18 * labelRows.count,
  });
  const at = (name: string) => ({ field: name, ...shownX });
  const up = (name: string) => ({ field: name, ...shownY });
  const layers: JsonValue[] = [];
  for (const [index, { points }] of series.entries()) {
    if (points[0]?.low === undefined) continue;
    layers.push({
      data: { values: points.map(plain) },
      mark: { type: "area", color: strokeOf(index).colour, opacity: 0.16, line: false },
      encoding: { x: at("x"), y: up("low"), y2: { field: "high" } },
    });
  }
  for (const { label, value, x: place } of targets) {
    layers.push({
      data: { values: [{ label, at: value ?? place ?? 0 }] },
      mark: { type: "rule", color: inks.quiet, strokeDash: [5, 4], strokeWidth: 1.25 },
      encoding: place === undefined ? { y: up("at") } : { x: at("at") },
    });
  }
  for (const [index, { name, points }] of series.entries()) {
    const { colour, dash } = strokeOf(index);
    const data = { values: points.map((point) => ({ series: name, ...plain(point) })) };
    const encoding = { x: at("x"), y: up("y") };
    layers.push({ data, mark: { type: "line", color: colour, strokeDash: dash, strokeWidth: 2.5 }, encoding });
    if (points.length <= MOST_DOTS)
      layers.push({ data, mark: { type: "point", filled: true, color: colour, opacity: 1, size: 40 }, encoding });
  }
  layers.push(...labelLayers(endLabels(content, frame), frame, { at, up }));
  layers.push(
    ...labelRows.layers.map((layer) => ({ ...layer, encoding: { x: at("x"), y: up("y"), text: { field: "text" } } })),
  );
  const captionLines =
    size.caption === false || caption === "" ? [] : wrap(caption, lettersIn(frame.width, CAPTION_SIZE));
  if (captionLines.length > 0) {
    const values = captionLines.map((text, line) => ({ text, y: frame.y.ofPixel(frame.height + 66 + 17 * line) }));
    layers.push({
      data: { values },
      mark: { type: "text", align: "left", baseline: "top", fontSize: CAPTION_SIZE, color: inks.quiet },
      encoding: { x: { datum: frame.x.domain[0], ...shownX }, y: up("y"), text: { field: "text" } },
    });
  }
  return {
    $schema: SCHEMA,
    description,
    width: frame.width,
    height: frame.height,
    padding: 16,
    background: "white",
    title: {
      text: wrap(title, lettersIn(frame.width, TITLE_SIZE)) as JsonValue,
      anchor: "start",
      frame: "group",
      offset: 18,
    },
    layer: layers,
    config: lookOf(),
  };
}

function lookOf(): JsonValue {
  return {
    // The alternative text of the whole picture says it better than a label on every mark.
    aria: false,
    font: FONT,
    view: { stroke: null },
    locale: { number: { decimal: ".", thousands: "\u202f", grouping: [3], currency: ["", ""], minus: "\u2212" } },
    title: { fontSize: TITLE_SIZE, fontWeight: "bold", color: inks.text },
    axis: {
      labelFontSize: 13,
      titleFontSize: 14,
      titleFontWeight: "normal",
      labelColor: inks.text,
      titleColor: inks.text,
      gridColor: inks.grid,
      domainColor: inks.axis,
      tickColor: inks.axis,
      labelFlush: false,
      labelPadding: 6,
    },
  };
}

interface Labels {
  readonly count: number;
  readonly layers: readonly { readonly [key: string]: JsonValue }[];
}

/** Labels of the targets on the horizontal axis, above the plot, in as many rows as keep them apart. */
function xTargetRows(targets: readonly LineTarget[], frame: Frame): Labels {
  const ends: number[] = [];
  const layers: { readonly [key: string]: JsonValue }[] = [];
  const places = targets.flatMap(({ label, x }) => (x === undefined ? [] : [{ label, x }])).sort((a, b) => a.x - b.x);
  for (const { label, x } of places) {
    const width = label.length * 13 * LETTER;
    const pixel = frame.x.toPixel(x);
    const leftwards = pixel + width > frame.width;
    const start = leftwards ? pixel - width : pixel;
    const free = ends.findIndex((end) => end + 12 <= start);
    const row = free < 0 ? ends.length : free;
    ends[row] = start + width;
    layers.push({
      data: { values: [{ text: label, x, y: frame.y.ofPixel(-10 - 18 * row) }] },
      mark: { type: "text", align: leftwards ? "right" : "left", baseline: "middle", fontSize: 13, color: inks.quiet },
    });
  }
  return { count: ends.length, layers };
}

function channel(domain: readonly [number, number], axis: { readonly [key: string]: JsonValue }) {
  return { type: "quantitative", scale: { domain, nice: false, zero: false }, axis } as const;
}

function plain({ x, y, low, high }: LinePoint) {
  return low === undefined || high === undefined ? { x, y } : { x, y, low, high };
}

function lettersIn(width: number, fontSize: number): number {
  return Math.max(20, Math.floor(width / (fontSize * LETTER)));
}
