import { headLine } from "../table/grid.js";
import { endLabels, labelLayers } from "./end-labels.js";
import type { LineFigure, LinePoint, LineTarget, VegaLiteSpec } from "./figure.js";
import { type Frame, frameOf } from "./frame.js";
import { type Layer, type PlacedText, rules, texts } from "./layers.js";
import { strokeOf } from "./palette.js";
import { letters, paper } from "./paper.js";
import type { ReadSize } from "./picture-size.js";
import { lineWidth, wrapTo } from "./text-width.js";
import { axisRoom, scaleLayers, tickText } from "./value-axis.js";

/** @internal What a line figure is drawn and printed from. */
export type LineContent = Omit<LineFigure, "spec">;

// Few points are shown as dots too: a reader should see what was computed and what is only the line between.
const MOST_DOTS = 15;
const ROW = 20;
// Between the title of the vertical axis and its uppermost number.
const CLEAR = 8;
const USUAL = 360;
const LEAST = 120;

/** @internal The picture of a line figure as a Vega-Lite specification. */
export function lineSpec(content: LineContent, size: ReadSize): VegaLiteSpec {
  const { scale, look } = size;
  const ends = endLabels(content, size);
  const laid = (left: number) => {
    const width = size.width - 32 * scale - left - ends.width;
    const rows = placeRows(content, width, scale);
    // The title of the vertical axis stands level above it, where it reads without turning the head.
    const title = wrapTo(headLine(content.y), size.width - 32 * scale, letters.label * scale);
    const top = ((title.length + rows.count) * ROW + CLEAR) * scale;
    const edges = { left, right: ends.width, top, bottom: axisRoom(content.x, width, size) };
    const needs = Math.max(LEAST * scale, ends.height);
    const sheet = paper(content, size, edges, { needs, usual: Math.max(USUAL * scale, needs) });
    return { rows, title, sheet, frame: frameOf(content, { ...sheet, scale }) };
  };
  // How wide the numbers of the vertical axis are depends on the height of the plot, and not the other way round.
  const { ticks } = laid(60 * scale).frame.y;
  const widest = Math.max(...ticks.values.map((tick) => lineWidth(tickText(tick, ticks), letters.small * scale)));
  const { rows, title, sheet, frame } = laid(Math.ceil(widest) + 10 * scale);
  const left = -Math.ceil(widest) - 10 * scale;
  const titleTop = -((title.length + rows.count) * ROW + CLEAR) * scale;
  return sheet.draw([
    ...axes(content, frame, size),
    ...texts(
      title.map((text, line) => ({ text, x: left, y: titleTop + (line + 0.4) * ROW * scale })),
      { size: letters.label * scale, color: look.text },
    ),
    ...dataLayers(content, frame, size),
    ...labelLayers(ends.labels, frame, size),
    ...texts(rows.texts, { size: letters.small * scale, color: look.quiet }),
  ]);
}

function axes({ x }: LineContent, frame: Frame, size: ReadSize): readonly Layer[] {
  const { scale, look } = size;
  const ticks = frame.y.ticks;
  const grid = ticks.values.map((tick) => ({
    x: 0,
    x2: frame.width,
    y: frame.y.toPixel(tick),
    y2: frame.y.toPixel(tick),
  }));
  const numbers = ticks.values.map((tick) => ({
    text: tickText(tick, ticks),
    x: -8 * scale,
    y: frame.y.toPixel(tick),
  }));
  const title = wrapTo(headLine(x), frame.width, letters.label * scale);
  return [
    ...rules(grid, { color: look.grid, width: scale }),
    ...texts(numbers, { size: letters.small * scale, color: look.text, align: "right" }),
    ...scaleLayers(frame.x.ticks, frame.x.toPixel, title, { top: frame.height, width: frame.width, size }),
  ];
}

function dataLayers({ series, targets }: LineContent, frame: Frame, { scale, look }: ReadSize): readonly Layer[] {
  const channel = (domain: readonly [number, number]) => (field: string) =>
    ({ field, type: "quantitative", scale: { domain, nice: false, zero: false }, axis: null }) as const;
  const at = channel(frame.x.domain);
  const up = channel(frame.y.domain);
  const strokes = series.map((_, index) => strokeOf(look, index, scale));
  const bands = series.flatMap(({ points }, index): readonly Layer[] => {
    if (points[0]?.low === undefined) return [];
    const mark = { type: "area", color: strokes[index]?.colour ?? "", opacity: 0.18, line: false };
    return [
      { data: { values: points.map(plain) }, mark, encoding: { x: at("x"), y: up("low"), y2: { field: "high" } } },
    ];
  });
  const marked = targets.map(({ label, value, x }): Layer => {
    const mark = { type: "rule", color: look.quiet, strokeDash: [5 * scale, 4 * scale], strokeWidth: 1.25 * scale };
    const encoding: Layer = x === undefined ? { y: up("at") } : { x: at("at") };
    return { data: { values: [{ label, at: value ?? x ?? 0 }] }, mark, encoding };
  });
  const lines = series.flatMap(({ name, points }, index): readonly Layer[] => {
    const { colour, dash } = strokes[index] as (typeof strokes)[number];
    const data = { values: points.map((point) => ({ series: name, ...plain(point) })) };
    const encoding = { x: at("x"), y: up("y") };
    const line = { data, mark: { type: "line", color: colour, strokeDash: dash, strokeWidth: 2.5 * scale }, encoding };
    const dot = { type: "point", filled: true, color: colour, opacity: 1, size: 40 * scale ** 2 };
    return points.length <= MOST_DOTS ? [line, { data, mark: dot, encoding }] : [line];
  });
  return [...bands, ...marked, ...lines];
}

/** Labels of the targets on the horizontal axis, above the plot, in as many rows as keep them apart. */
function placeRows(
  { rows, targets }: LineContent,
  width: number,
  scale: number,
): { readonly count: number; readonly texts: readonly PlacedText[] } {
  const { x: across } = frameOf({ rows, targets }, { width, height: USUAL * scale, scale });
  const ends: number[] = [];
  const placed: PlacedText[] = [];
  for (const { label, x } of placesOf(targets)) {
    const room = lineWidth(label, letters.small * scale);
    const pixel = across.toPixel(x);
    const start = Math.max(0, Math.min(pixel, width - room));
    const free = ends.findIndex((end) => end + 12 * scale <= start);
    const row = free < 0 ? ends.length : free;
    ends[row] = start + room;
    placed.push({ text: label, x: start, y: -(row + 0.5) * ROW * scale });
  }
  return { count: ends.length, texts: placed };
}

function placesOf(targets: readonly LineTarget[]): readonly { readonly label: string; readonly x: number }[] {
  return targets.flatMap(({ label, x }) => (x === undefined ? [] : [{ label, x }])).sort((a, b) => a.x - b.x);
}

function plain({ x, y, low, high }: LinePoint) {
  return low === undefined || high === undefined ? { x, y } : { x, y, low, high };
}
