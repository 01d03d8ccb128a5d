import type { VegaLiteSpec } from "./figure.js";
import { type Layer, type PlacedText, pixels, texts } from "./layers.js";
import { fillOf, inkOn } from "./look.js";
import { letters } from "./paper.js";
import type { ReadSize } from "./picture-size.js";
import { type Printer, printerOf } from "./print-value.js";
import { rowPicture } from "./row-plot.js";
import type { StackContent } from "./stack-kind.js";
import { lineWidth } from "./text-width.js";
import { boundsOf } from "./ticks.js";
import type { AcrossAxis } from "./value-axis.js";

const THICKNESS = 26;
const LEAD = 19;
const SWATCH = 11;

/** A part with its ends along the axis. */
interface Piece {
  readonly bar: string;
  readonly part: string;
  readonly value: number;
  readonly from: number;
  readonly to: number;
  /** Name and number, as they are printed. */
  readonly name: string;
  readonly fill: string;
}

/**
 * @internal Stacked bars. A part that has room carries its name and number; the others are named below their bar, in the
 * order of the bar, each behind a square of its fill.
 */
export function stackSpec(content: StackContent, size: ReadSize): VegaLiteSpec {
  const { x } = content;
  const { scale, look } = size;
  const small = letters.small * scale;
  const printer = printerOf(
    content.rows.map(({ value }) => value),
    x,
  );
  const bars = barsOf(content, { look, printer });
  const half = (THICKNESS / 2) * scale;
  const keysOf = (index: number, across: AcrossAxis) => keyPlaces(bars[index] ?? [], across, { size, small });
  return rowPicture(
    {
      words: content,
      axis: x,
      rows: bars.map((pieces) => ({
        label: pieces[0]?.bar ?? "",
        note: printer.value(pieces.reduce((sum, { value }) => sum + value, 0)),
      })),
      bounds: boundsOf([0, ...bars.flat().flatMap(({ from, to }) => [from, to])]),
      mark: THICKNESS,
      under: (index, across) => keysOf(index, across).lines * LEAD * scale,
      marks: (across, centres) => {
        const placed = bars.flatMap((pieces, index) =>
          pieces.map((piece) => ({
            ...piece,
            y: (centres[index] as number) - half,
            y2: (centres[index] as number) + half,
          })),
        );
        const inside = placed.filter((piece) => fits(piece, across, { size, small }));
        const names = inside.map(({ name, from, to, y, fill }) => {
          const centre = across.toPixel((from + to) / 2);
          return { text: name, x: centre, y: y + half, ink: inkOn(fill) };
        });
        const keys = bars.flatMap((_, index) => {
          const top = (centres[index] as number) + half;
          return keysOf(index, across).keys.map((key) => ({ ...key, y: top + key.y }));
        });
        const byInk = [...new Set(names.map(({ ink }) => ink))].flatMap((ink) =>
          texts(
            names.filter((name) => name.ink === ink),
            { size: small, color: ink, align: "center" },
          ),
        );
        return [filled(placed, across, size), ...byInk, ...keyLayers(keys, { size, small, color: look.text })];
      },
    },
    size,
  );
}

function barsOf(
  { rows }: StackContent,
  { look, printer }: Pick<ReadSize, "look"> & { readonly printer: Printer },
): readonly (readonly Piece[])[] {
  const names = [...new Set(rows.map(({ part }) => part))];
  return [...new Set(rows.map(({ bar }) => bar))].map((bar) => {
    // What is taken away stands left of zero, apart from what is added.
    const ends = { above: 0, below: 0 };
    return rows
      .filter((row) => row.bar === bar)
      .map((row) => {
        const side = row.value < 0 ? "below" : "above";
        const from = ends[side];
        ends[side] += row.value;
        const name = `${row.part} ${printer.bare(row.value)}`;
        return { ...row, from, to: ends[side], name, fill: fillOf(look, names.indexOf(row.part)) };
      });
  });
}

interface Letters {
  readonly size: ReadSize;
  readonly small: number;
}

function fits(piece: Piece, across: AcrossAxis, { size, small }: Letters): boolean {
  const room = Math.abs(across.toPixel(piece.to) - across.toPixel(piece.from));
  return lineWidth(piece.name, small) + 10 * size.scale <= room;
}

interface Key extends PlacedText {
  readonly fill: string;
}

/** Names of the parts without room, line by line below the bar; heights are counted from the lower edge of the bar. */
function keyPlaces(
  pieces: readonly Piece[],
  across: AcrossAxis,
  { size, small }: Letters,
): { readonly keys: readonly Key[]; readonly lines: number } {
  const { scale } = size;
  const width = across.toPixel(across.domain[1]);
  const keys: Key[] = [];
  let line = 0;
  let x = 0;
  const homeless = pieces.filter((each) => !fits(each, across, { size, small }));
  for (const piece of homeless.sort((a, b) => Math.min(a.from, a.to) - Math.min(b.from, b.to))) {
    const text = piece.name;
    const room = lineWidth(text, small) + (SWATCH + 5) * scale;
    if (x > 0 && x + room > width) {
      line += 1;
      x = 0;
    }
    keys.push({ text, x: x + (SWATCH + 5) * scale, y: (line + 0.6) * LEAD * scale, fill: piece.fill });
    x += room + 14 * scale;
  }
  return { keys, lines: keys.length === 0 ? 0 : line + 1 };
}

function filled(
  placed: readonly (Piece & { readonly y: number; readonly y2: number })[],
  across: AcrossAxis,
  size: ReadSize,
): Layer {
  return {
    data: { values: placed.map((piece) => ({ ...piece })) },
    // A line of the ground keeps neighbours apart in any light.
    mark: { type: "rect", stroke: size.look.ground, strokeWidth: 2 * size.scale },
    encoding: {
      ...{ x: across.channel("from"), x2: { field: "to" }, y: pixels("y"), y2: { field: "y2" } },
      fill: { field: "fill", type: "nominal", scale: null },
    },
  };
}

function keyLayers(
  keys: readonly Key[],
  { size, small, color }: Letters & { readonly color: string },
): readonly Layer[] {
  if (keys.length === 0) return [];
  const { scale } = size;
  const squares = keys.map(({ x, y, fill }) => ({
    ...{ x: x - (SWATCH + 5) * scale, x2: x - 5 * scale, fill },
    ...{ y: y - (SWATCH / 2) * scale, y2: y + (SWATCH / 2) * scale },
  }));
  return [
    {
      data: { values: squares },
      mark: { type: "rect" },
      encoding: {
        ...{ x: pixels("x"), x2: { field: "x2" }, y: pixels("y"), y2: { field: "y2" } },
        fill: { field: "fill", type: "nominal", scale: null },
      },
    },
    ...texts(keys, { size: small, color }),
  ];
}
