import { commonPlaces, formatPlaces } from "../table/number.js";
import type { VegaLiteSpec } from "./figure.js";
import { type Layer, pixels, rules, texts } from "./layers.js";
import type { LayoutFigureRow } from "./layout.js";
import type { LayoutContent } from "./layout-kind.js";
import { letters, paper } from "./paper.js";
import type { ReadSize } from "./picture-size.js";

const TITLE_ROW = 26;
const BETWEEN = 10;
const BAR_ROOM = 40;
const MOST_HEIGHT = 900;
const LEAST_HEIGHT = 40;
// Of the width of the picture, that the scale bar takes at most.
const BAR_SHARE = 0.3;

/** @internal Views to one scale, one below the other, and a scale bar. */
export function layoutSpec(content: LayoutContent, size: ReadSize): VegaLiteSpec {
  const { views, rows } = content;
  const { scale, look } = size;
  const inner = size.width - 32 * scale;
  const widest = Math.max(...views.map(({ width }) => width));
  const tallest = views.reduce((sum, { height }) => sum + height, 0);
  const fixed = (views.length * TITLE_ROW + (views.length - 1) * BETWEEN) * scale;
  const usual = fixed + Math.min(MOST_HEIGHT * scale, (inner / widest) * tallest);
  const edges = { left: 0, right: 0, top: 0, bottom: BAR_ROOM * scale };
  const sheet = paper(content, size, edges, { needs: Math.min(usual, fixed + LEAST_HEIGHT * scale), usual });
  const perMillimetre = Math.min(inner / widest, (sheet.height - fixed) / tallest);
  let top = 0;
  const drawn = views.flatMap(({ title, width, height }): readonly Layer[] => {
    const upper = top + TITLE_ROW * scale;
    const lower = upper + height * perMillimetre;
    const heading = `${title}: ${millimetres(width)} × ${millimetres(height)}`;
    const middle = top + (TITLE_ROW / 2) * scale;
    top = lower + BETWEEN * scale;
    const shapes = rows.filter(({ view }) => view === title);
    return [
      ...texts([{ text: heading, x: 0, y: middle }], { size: letters.label * scale, color: look.text }),
      path(rectangle(0, upper, width * perMillimetre, lower - upper), { stroke: look.axis, strokeWidth: 1.5 * scale }),
      ...shapeLayers(shapes, { lower, perMillimetre }, size),
    ];
  });
  return sheet.draw([...drawn, ...scaleBar({ perMillimetre, inner, top: sheet.height }, size)]);
}

function millimetres(length: number): string {
  return `${formatPlaces(length, commonPlaces([length], 5))} mm`;
}

/** A thin line is enough, and a thick one would fill small cells. */
function strokeOf(shapes: readonly LayoutFigureRow[], perMillimetre: number): number {
  const least = shapes.reduce(
    (smallest, { width, height }) => Math.min(smallest, width, height),
    Number.POSITIVE_INFINITY,
  );
  return Math.min(1.5, Math.max(0.4, 0.1 * least * perMillimetre));
}

interface Scale {
  /** Lower edge of the view, in pixels. */
  readonly lower: number;
  readonly perMillimetre: number;
}

/** All shapes of a view as a few paths: thousands of marks would make the picture heavy. */
function shapeLayers(
  shapes: readonly LayoutFigureRow[],
  { lower, perMillimetre: k }: Scale,
  { look }: ReadSize,
): readonly Layer[] {
  const line = strokeOf(shapes, k);
  const fill = between(look.ground, look.accent, 0.22);
  const boxes = shapes
    .filter(({ shape }) => shape === "rectangle")
    .map(({ x, y, width, height }) => rectangle(x * k, lower - (y + height) * k, width * k, height * k));
  const circles = shapes.filter(({ shape }) => shape === "circle");
  return [
    ...(boxes.length === 0 ? [] : [path(boxes.join(""), { fill, stroke: look.accent, strokeWidth: line })]),
    ...[...new Set(circles.map(({ width }) => width))].flatMap((diameter) => {
      const same = circles.filter(({ width }) => width === diameter);
      const dots = same.map(({ x, y }) => dot((x + diameter / 2) * k, lower - (y + diameter / 2) * k)).join("");
      const disc = (stroke: string, strokeWidth: number) => path(dots, { stroke, strokeWidth, strokeCap: "round" });
      return [disc(look.accent, diameter * k), disc(fill, Math.max(0.1, diameter * k - 2 * line))];
    }),
  ];
}

/** A colour between two colours. */
function between(one: string, other: string, share: number): string {
  const channels = [1, 3, 5].map((start) => {
    const [a, b] = [one, other].map((colour) => Number.parseInt(colour.slice(start, start + 2), 16));
    return Math.round((a ?? 0) + share * ((b ?? 0) - (a ?? 0)));
  });
  return `#${channels.map((channel) => channel.toString(16).padStart(2, "0")).join("")}`;
}

function rectangle(x: number, y: number, width: number, height: number): string {
  return `M${tenth(x)},${tenth(y)}h${tenth(width)}v${tenth(height)}h${tenth(-width)}Z`;
}

/** A circle is a line without length and with round ends: a fifth of the letters that an arc takes. */
function dot(x: number, y: number): string {
  return `M${tenth(x)},${tenth(y)}h.01`;
}

/** Nobody sees a hundredth of a pixel. */
function tenth(pixel: number): number {
  return Math.round(pixel * 100) / 100;
}

function path(shape: string, look: Layer): Layer {
  return {
    data: { values: [{ x: 0, y: 0 }] },
    // The coordinates of a path are multiples of half the square root of the size of the mark: of one pixel for a size of 4.
    mark: { type: "point", shape, size: 4, opacity: 1, filled: false, ...look },
    encoding: { x: pixels("x"), y: pixels("y") },
  };
}

/** A bar of a round length, which says what the scale is. */
function scaleBar(
  { perMillimetre, inner, top }: { readonly perMillimetre: number; readonly inner: number; readonly top: number },
  { scale, look }: ReadSize,
): readonly Layer[] {
  const most = (BAR_SHARE * inner) / perMillimetre;
  const power = 10 ** Math.floor(Math.log10(most));
  const length = ([5, 2].find((factor) => factor * power <= most) ?? 1) * power;
  const y = top + 24 * scale;
  const end = length * perMillimetre;
  const ticks = [0, end].map((x) => ({ x, x2: x, y: y - 5 * scale, y2: y + 5 * scale }));
  return [
    ...rules([{ x: 0, x2: end, y, y2: y }, ...ticks], { color: look.text, width: 2 * scale }),
    ...texts([{ text: millimetres(length), x: end + 8 * scale, y }], {
      size: letters.small * scale,
      color: look.text,
    }),
  ];
}
