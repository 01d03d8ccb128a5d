import { ReportError } from "../check/errors.js";
import type { VegaLiteSpec } from "./figure.js";
import { type Layer, pixels, rules, texts, withData } from "./layers.js";
import { letters, paper } from "./paper.js";
import type { ReadSize } from "./picture-size.js";
import { type Box, type PlacedLabel, placeLabels } from "./place-labels.js";
import type { PointFigureRow } from "./point.js";
import type { PointContent } from "./point-kind.js";
import { lineWidth } from "./text-width.js";
import { apart, boundsOf, roundTicks, type Ticks } from "./ticks.js";
import { uprightLayers, uprightRoom, uprightTitleRoom } from "./upright-axis.js";
import { type AcrossAxis, acrossAxis, axisRoom } from "./value-axis.js";

const USUAL = 420;
const LEAST = 160;
const RADIUS = 6;
const GAP = 10;

interface Placed extends PointFigureRow {
  readonly at: { readonly x: number; readonly y: number };
  readonly bars: readonly { readonly x: number; readonly x2: number; readonly y: number; readonly y2: number }[];
}

/** @internal Labelled points. */
export function pointSpec(content: PointContent, size: ReadSize): VegaLiteSpec {
  const { rows, x, y } = content;
  const { scale, look } = size;
  const bounds = boundsOf(rows.flatMap((row) => [row.x, row.xLow ?? row.x, row.xHigh ?? row.x]));
  const heights = boundsOf(rows.flatMap((row) => [row.y, row.yLow ?? row.y, row.yHigh ?? row.y]));
  const right = 28 * scale;
  const laid = (left: number) => {
    const width = size.width - 32 * scale - left - right;
    const edges = { left, right, top: uprightTitleRoom(y, size), bottom: axisRoom(x, width, size) };
    const sheet = paper(content, size, edges, { needs: LEAST * scale, usual: USUAL * scale });
    return { sheet, width, ticks: roundTicks(...apart(...heights), Math.max(2, sheet.height / (60 * scale))) };
  };
  // How wide the numbers of the vertical axis are depends on the height of the plot, and not the other way round.
  const left = uprightRoom(laid(60 * scale).ticks, size);
  const { sheet, width, ticks } = laid(left);
  const across = acrossAxis(x, apart(...bounds), width, size);
  const up = upOf(ticks, sheet.height);
  const placed = rows.map((row) => placeRow(row, across, up));
  const labels = labelsOf(placed, { left: -left / 2, right: width + right, top: 0, bottom: sheet.height }, size);
  const place = { toPixel: up, width, left: -left, top: -uprightTitleRoom(y, size) };
  return sheet.draw([
    ...across.layers(sheet.height),
    ...uprightLayers(y, ticks, place, size),
    ...rules(
      placed.flatMap(({ bars }) => bars),
      { color: look.axis, width: 1.5 * scale },
    ),
    ...dots(placed, size),
    ...labels,
  ]);
}

function upOf({ values }: Ticks, height: number): (value: number) => number {
  const [low, high] = [values[0] as number, values.at(-1) as number];
  return (value) => height - ((value - low) / (high - low)) * height;
}

function placeRow(row: PointFigureRow, across: AcrossAxis, up: (value: number) => number): Placed {
  const at = { x: across.toPixel(row.x), y: up(row.y) };
  const wide =
    row.xLow === undefined || row.xHigh === undefined
      ? []
      : [{ x: across.toPixel(row.xLow), x2: across.toPixel(row.xHigh), y: at.y, y2: at.y }];
  const high =
    row.yLow === undefined || row.yHigh === undefined
      ? []
      : [{ x: at.x, x2: at.x, y: up(row.yHigh), y2: up(row.yLow) }];
  return { ...row, at, bars: [...wide, ...high] };
}

/** The subject is a filled square and the others are hollow circles: to be told apart without colour. */
function dots(placed: readonly Placed[], { scale, look }: ReadSize): readonly Layer[] {
  const layer = (values: readonly Placed[], mark: Layer): Layer => ({
    data: { values: values.map(({ at, label, x, y }) => ({ label, value: x, height: y, ...at })) },
    mark: { type: "point", opacity: 1, stroke: look.accent, strokeWidth: 2 * scale, ...mark },
    encoding: { x: pixels("x"), y: pixels("y") },
  });
  const others = placed.filter(({ subject }) => subject !== true);
  const subjects = placed.filter(({ subject }) => subject === true);
  return withData([
    layer(others, { shape: "circle", fill: look.ground, size: 75 * scale ** 2 }),
    layer(subjects, { shape: "square", fill: look.accent, size: 130 * scale ** 2 }),
  ]);
}

function labelsOf(placed: readonly Placed[], within: Box, { scale, look }: ReadSize): readonly Layer[] {
  const obstacles = placed.flatMap(({ at, bars }): readonly Box[] => [
    box(at.x, at.y, RADIUS * scale),
    ...bars.map(({ x, x2, y, y2 }) => ({ left: x - 2, right: x2 + 2, top: y - 2, bottom: y2 + 2 })),
  ]);
  // The subject is placed first: it gets the best place.
  const order = [...placed].sort((a, b) => Number(b.subject ?? false) - Number(a.subject ?? false));
  const sizeOf = ({ subject }: Placed) => (subject === true ? letters.label : letters.small) * scale;
  const found = placeLabels(
    order.map((row) => ({
      ...row.at,
      width: lineWidth(row.label, sizeOf(row), row.subject === true ? "bold" : "regular"),
      height: 1.25 * sizeOf(row),
    })),
    obstacles,
    { within, gap: GAP * scale },
  );
  const labels = order.map((row, index) => ({ row, label: found[index] ?? noPlace(row) }));
  const text = ({ row, label }: (typeof labels)[number]) => ({
    ...{ text: row.label, x: label.left, y: (label.top + label.bottom) / 2 },
  });
  const bold = labels.filter(({ row }) => row.subject === true);
  const plain = labels.filter(({ row }) => row.subject !== true);
  return [
    ...rules(
      labels.filter(({ label }) => label.far).map(({ row, label }) => leader(row, label)),
      { color: look.axis, width: scale },
    ),
    ...texts(bold.map(text), { size: letters.label * scale, color: look.text, bold: true }),
    ...texts(plain.map(text), { size: letters.small * scale, color: look.quiet }),
  ];
}

function box(x: number, y: number, half: number): Box {
  return { left: x - half, right: x + half, top: y - half, bottom: y + half };
}

function leader({ at }: Placed, label: PlacedLabel) {
  const nearest = (value: number, low: number, high: number) => Math.min(high, Math.max(low, value));
  return { ...at, x2: nearest(at.x, label.left, label.right), y2: nearest(at.y, label.top, label.bottom) };
}

function noPlace({ label }: Placed): never {
  throw new ReportError(
    "NO_ROOM",
    `there is no room for the label '${label}' beside the others: give a larger size, shorter labels or fewer points`,
    { label },
  );
}
