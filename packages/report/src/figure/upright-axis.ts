import { headLine } from "../table/grid.js";
import type { Axis } from "./figure.js";
import { type Layer, rules, texts } from "./layers.js";
import { letters } from "./paper.js";
import type { ReadSize } from "./picture-size.js";
import { lineWidth, wrapTo } from "./text-width.js";
import type { Ticks } from "./ticks.js";
import { tickText } from "./value-axis.js";

const TITLE_ROW = 20;
// Between the title and the uppermost number.
const CLEAR = 8;

/** Lines of the title: it stands level above the axis, where it reads without turning the head. */
function uprightTitle(axis: Axis, { width, scale }: ReadSize): readonly string[] {
  return wrapTo(headLine(axis), width - 32 * scale, letters.label * scale);
}

/** @internal Room that the title takes above the plot. */
export function uprightTitleRoom(axis: Axis, size: ReadSize): number {
  return (uprightTitle(axis, size).length * TITLE_ROW + CLEAR) * size.scale;
}

/** @internal Room that the numbers take left of the plot. */
export function uprightRoom(ticks: Ticks, { scale }: ReadSize): number {
  const widest = Math.max(...ticks.values.map((tick) => lineWidth(tickText(tick, ticks), letters.small * scale)));
  return Math.ceil(widest) + 10 * scale;
}

/** @internal Grid, numbers and title of a vertical axis. */
export function uprightLayers(
  axis: Axis,
  ticks: Ticks,
  place: {
    readonly toPixel: (value: number) => number;
    readonly width: number;
    /** Left edge of the picture's texts, and the upper edge of the title. */
    readonly left: number;
    readonly top: number;
  },
  size: ReadSize,
): readonly Layer[] {
  const { scale, look } = size;
  const heights = ticks.values.map((tick) => ({ text: tickText(tick, ticks), x: -8 * scale, y: place.toPixel(tick) }));
  const grid = heights.map(({ y }) => ({ x: 0, x2: place.width, y, y2: y }));
  const title = uprightTitle(axis, size).map((text, line) => ({
    text,
    x: place.left,
    y: place.top + (line + 0.4) * TITLE_ROW * scale,
  }));
  return [
    ...rules(grid, { color: look.grid, width: scale }),
    ...texts(heights, { size: letters.small * scale, color: look.text, align: "right" }),
    ...texts(title, { size: letters.label * scale, color: look.text }),
  ];
}
