import { type Layer, type PlacedRule, type PlacedText, rules, texts } from "./layers.js";
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
  /** Lines from the plot up to the labels that do not stand right above it. */
  readonly stems: readonly PlacedRule[];
}

interface Placed {
  readonly pixel: number;
  readonly row: number;
  readonly start: number;
  readonly end: number;
  readonly lines: readonly string[];
}

/**
 * @internal Every label begins at its place and runs to the right. The rightmost are placed first, so that those left of them
 * stand higher and their stems pass the lower ones on the left.
 */
export function labelRows(
  labels: readonly { readonly text: string; readonly pixel: number }[],
  width: number,
  scale: number,
): LabelRows {
  const size = letters.small * scale;
  const placed: Placed[] = [];
  let count = 0;
  for (const { text, pixel } of [...labels].sort((a, b) => b.pixel - a.pixel)) {
    const lines = wrapTo(text, width, size);
    const room = Math.max(...lines.map((line) => lineWidth(line, size)));
    const start = Math.max(0, Math.min(pixel, width - room));
    const end = start + room;
    const free = (row: number) =>
      placed.every((other) => rowsOf(other).every((taken) => taken !== row || end + APART * scale <= other.start));
    let row = 0;
    while (!lines.every((_, line) => free(row + line))) row += 1;
    placed.push({ pixel, row, start, end, lines });
    count = Math.max(count, row + lines.length);
  }
  return {
    count,
    texts: placed.flatMap(({ lines, row, start }) =>
      lines.map((text, line) => ({ text, x: start, y: -(row + lines.length - 0.5 - line) * LABEL_ROW * scale })),
    ),
    stems: placed
      .filter(({ row, pixel }) => row > 0 && !placed.some((other) => crosses({ row, pixel }, other)))
      .map(({ row, pixel }) => ({ x: pixel, x2: pixel, y: 0, y2: -row * LABEL_ROW * scale })),
  };
}

function rowsOf({ row, lines }: Placed): readonly number[] {
  return lines.map((_, line) => row + line);
}

/** Whether a stem would run through the letters of a lower label; then it is left out. */
function crosses({ row, pixel }: Pick<Placed, "row" | "pixel">, other: Placed): boolean {
  return other.row < row && pixel > other.start - 2 && pixel < other.end + 2;
}

/** @internal */
export function labelRowLayers(
  { texts: placed, stems }: LabelRows,
  { scale, look }: ReadSize,
  top = 0,
): readonly Layer[] {
  const moved = placed.map(({ text, x, y }) => ({ text, x, y: y + top }));
  const lines = stems.map(({ x, x2, y, y2 }) => ({ x, x2, y: y + top, y2: y2 + top }));
  return [
    ...rules(lines, { color: look.axis, width: scale }),
    ...texts(moved, { size: letters.small * scale, color: look.quiet }),
  ];
}
