import { headLine } from "../table/grid.js";
import { endLabels, labelLayers } from "./end-labels.js";
import type { Axis, LineFigure, LinePoint, LineSeries, LineTarget, VegaLiteSpec } from "./figure.js";
import { acrossOf, type Frame, upOf } from "./frame.js";
import { LABEL_ROW, labelRowLayers, labelRows } from "./label-rows.js";
import type { Layer } from "./layers.js";
import { strokeOf } from "./palette.js";
import { letters, paper } from "./paper.js";
import type { ReadSize } from "./picture-size.js";
import { wrapTo } from "./text-width.js";
import { uprightLayers, uprightRoom, uprightTitleRoom } from "./upright-axis.js";
import { axisRoom, scaleLayers } from "./value-axis.js";

/** @internal What a line figure is drawn and printed from. */
export type LineContent = Omit<LineFigure, "spec">;

/** @internal One plot of lines; a figure has one or several above one horizontal axis. */
export interface LinePanel {
  readonly y: Axis;
  readonly series: readonly LineSeries[];
  readonly targets: readonly LineTarget[];
  readonly band: string;
}

/** @internal Lines in panels that share their horizontal axis. */
export interface LinePanels {
  readonly title: string;
  readonly caption: string;
  readonly description: string;
  readonly x: Axis;
  readonly panels: readonly LinePanel[];
}

// Few points are shown as dots too: a reader should see what was computed and what is only the line between.
const MOST_DOTS = 15;
const USUAL = { one: 360, several: 190 } as const;
const LEAST = 60;
// Between a panel and the title of the next one.
const BETWEEN = 16;

/** @internal The picture of a line figure as a Vega-Lite specification. */
export function lineSpec(content: LineContent, size: ReadSize): VegaLiteSpec {
  const { title, caption, description, x, y, series, targets, band } = content;
  return panelsSpec({ title, caption, description, x, panels: [{ y, series, targets, band }] }, size);
}

/** @internal Panels of lines, one below the other. */
export function panelsSpec(content: LinePanels, size: ReadSize): VegaLiteSpec {
  // How wide the numbers of the vertical axes are depends on the heights of the panels, and not the other way round.
  const first = layOut(content, 60 * size.scale, size);
  const left = Math.max(...first.frames.map(({ y }) => uprightRoom(y.ticks, size)));
  const { sheet, frames, ends, heads } = layOut(content, left, size);
  const bottom = frames.at(-1) as Frame;
  const title = wrapTo(headLine(content.x), bottom.width, letters.label * size.scale);
  const panels = content.panels.map((panel, index): Layer => {
    const frame = frames[index] as Frame;
    const { rows, room } = heads[index] as (typeof heads)[number];
    const place = { toPixel: frame.y.toPixel, width: frame.width, left: -left, top: frame.top - room };
    return {
      layer: [
        ...uprightLayers(panel.y, frame.y.ticks, place, size),
        ...dataLayers(panel, frame, size),
        ...labelLayers(ends[index]?.labels ?? [], frame, size),
        ...labelRowLayers(rows, size, frame.top),
      ],
    };
  });
  const across = { top: bottom.top + bottom.height, width: bottom.width, size };
  return {
    ...sheet.draw([...panels, ...scaleLayers(bottom.x.ticks, bottom.x.toPixel, title, across)]),
    resolve: { scale: { y: "independent" } },
  };
}

function layOut(content: LinePanels, left: number, size: ReadSize) {
  const { scale } = size;
  const ends = content.panels.map((panel) => endLabels(panel, size));
  const right = Math.max(...ends.map(({ width }) => width));
  const width = size.width - 32 * scale - left - right;
  const x = acrossOf(content.panels, width, scale);
  const heads = content.panels.map(({ y, targets }) => {
    const rows = labelRows(
      targets.flatMap(({ label, x: at }) => (at === undefined ? [] : [{ text: label, pixel: x.toPixel(at) }])),
      width,
      scale,
    );
    return { rows, room: uprightTitleRoom(y, size) + rows.count * LABEL_ROW * scale };
  });
  const usual = (content.panels.length === 1 ? USUAL.one : USUAL.several) * scale;
  // All panels are of one height, so that slopes can be compared.
  const needs = Math.max(LEAST * scale, ...ends.map(({ height }) => height));
  const count = content.panels.length;
  const between = heads.slice(1).reduce((sum, { room }) => sum + room + BETWEEN * scale, 0);
  const edges = { left, right, top: heads[0]?.room ?? 0, bottom: axisRoom(content.x, width, size) };
  const heights = { needs: count * needs + between, usual: count * Math.max(usual, needs) + between };
  const sheet = paper(content, size, edges, heights);
  const height = (sheet.height - between) / count;
  let top = 0;
  const frames = content.panels.map((panel, index): Frame => {
    if (index > 0) top += height + BETWEEN * scale + (heads[index]?.room ?? 0);
    return { width, height, top, x, y: upOf(panel, { top, height, scale }) };
  });
  return { sheet, frames, ends, heads };
}

function dataLayers({ series, targets }: LinePanel, frame: Frame, { scale, look }: ReadSize): readonly Layer[] {
  const at = (field: string): Layer => channel(field, frame.x);
  const up = (field: string): Layer => channel(field, frame.y);
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
    const [top, bottom] = [frame.y.domain[1], frame.y.domain[0]];
    const data = { values: [{ label, at: value ?? x ?? 0, top, bottom }] };
    const encoding: Layer = x === undefined ? { y: up("at") } : { x: at("at"), y: up("bottom"), y2: { field: "top" } };
    return { data, mark, encoding };
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

function channel(field: string, { domain, range }: Frame["x"]): Layer {
  return { field, type: "quantitative", scale: { domain, range, nice: false, zero: false }, axis: null };
}

function plain({ x, y, low, high }: LinePoint) {
  return low === undefined || high === undefined ? { x, y } : { x, y, low, high };
}
