import { type Layer, type PlacedText, texts } from "./layers.js";
import { letters } from "./paper.js";
import type { ReadSize } from "./picture-size.js";
import { lineWidth, wrapTo } from "./text-width.js";

/** @internal Height of a row of labels above a plot, in pixels on a page. */
export const LABEL_ROW = 20;
const APART = 12;

/** @internal Labels of places along the horizontal axis, above the plot, in as many rows as keep them apart. */
export interface LabelRows {
  readonly count: number;
  readonly texts: readonly PlacedText[];
}

/** @internal */
export function labelRows(
  labels: readonly { readonly text: string; readonly pixel: number }[],
  width: number,
  scale: number,
): LabelRows {
  const size = letters.small * scale;
  const ends: number[] = [];
  const placed: PlacedText[] = [];
  for (const { text, pixel } of [...labels].sort((a, b) => a.pixel - b.pixel)) {
    const lines = wrapTo(text, width, size);
    const room = Math.max(...lines.map((line) => lineWidth(line, size)));
    const start = Math.max(0, Math.min(pixel, width - room));
    const free = ends.findIndex((end) => end + APART * scale <= start);
    const row = free < 0 || lines.length > 1 ? ends.length : free;
    for (const [line, part] of lines.entries()) {
      const above = row + lines.length - 1 - line;
      ends[above] = start + room;
      placed.push({ text: part, x: start, y: -(above + 0.5) * LABEL_ROW * scale });
    }
  }
  return { count: ends.length, texts: placed };
}

/** @internal */
export function labelRowLayers({ texts: placed }: LabelRows, { scale, look }: ReadSize, top = 0): readonly Layer[] {
  const moved = placed.map(({ text, x, y }) => ({ text, x, y: y + top }));
  return texts(moved, { size: letters.small * scale, color: look.quiet });
}
