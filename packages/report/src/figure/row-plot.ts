import type { ValueAxis, VegaLiteSpec } from "./figure.js";
import { type Layer, type PlacedText, pixels, texts, withData } from "./layers.js";
import { letters, paper } from "./paper.js";
import type { ReadSize } from "./picture-size.js";
import { lineWidth, wrapTo } from "./text-width.js";
import { apart } from "./ticks.js";
import { type AcrossAxis, acrossAxis, axisRoom, fittingTicks, tickText } from "./value-axis.js";

/** A row of a picture: its name on the left, its numbers on the right. */
interface PlotRow {
  readonly label: string;
  /** Numbers printed at the end of the row. */
  readonly note: string;
}

/** @internal What a picture of rows is made from. */
export interface RowPlot {
  readonly words: { readonly title: string; readonly caption: string; readonly description: string };
  readonly axis: ValueAxis;
  readonly rows: readonly PlotRow[];
  /** Least and greatest value that is drawn. */
  readonly bounds: readonly [number, number];
  /** Height of a mark on a page, in pixels. */
  readonly mark: number;
  /** Room below each mark, in pixels, when the axis is so long. */
  readonly under?: (row: number, across: AcrossAxis) => number;
  /** The marks; the centres of the rows are in pixels. */
  readonly marks: (across: AcrossAxis, centres: readonly number[], height: number) => readonly Layer[];
}

// Below this width names and numbers stand above their rows, as on a telephone.
const NARROW = 560;
const GAP = 12;
const LEAD = 1.3;

/** @internal A picture of rows above one horizontal axis of values. */
export function rowPicture(plot: RowPlot, size: ReadSize): VegaLiteSpec {
  const { scale, look } = size;
  const label = letters.label * scale;
  const small = letters.small * scale;
  const inner = size.width - 32 * scale;
  const narrow = size.width < NARROW * scale;
  const columns = narrow ? { left: 0, right: 0 } : columnsOf(plot.rows, inner, { label, small });
  // The first and the last tick are centred on the ends of the axis and reach beyond them.
  const overhang = overhangOf(apart(...plot.bounds), inner, small);
  const left = Math.max(overhang, columns.left + (columns.left > 0 ? GAP * scale : 0));
  const right = Math.max(overhang, columns.right + (columns.right > 0 ? GAP * scale : 0));
  const width = inner - left - right;
  const across = acrossAxis(plot.axis, apart(...plot.bounds), width, size);
  const rows = plot.rows.map((row, index) => {
    const head = narrow ? headLines(row, inner, { label, small }) : [];
    const names = narrow ? [] : wrapTo(row.label, columns.left, label);
    const notes = narrow || row.note === "" ? [] : wrapTo(row.note, columns.right, small);
    const band = Math.max(plot.mark * scale, names.length * label * LEAD, notes.length * small * LEAD);
    const above = head.length * label * LEAD + (head.length > 0 ? 2 * scale : 0);
    return { head, names, notes, above, band, height: above + band + (plot.under?.(index, across) ?? 0) };
  });
  const needs = rows.reduce((sum, { height }) => sum + height + 4 * scale, 4 * scale);
  const usual = needs + 10 * scale * (rows.length + 1);
  const edges = { left, right, top: 0, bottom: axisRoom(plot.axis, width, size) };
  const sheet = paper(plot.words, size, edges, { needs, usual });
  const gap = (sheet.height - rows.reduce((sum, { height }) => sum + height, 0)) / (rows.length + 1);
  let top = gap;
  const names: PlacedText[] = [];
  const notes: PlacedText[] = [];
  const centres = rows.map((row) => {
    for (const [line, { text, x, strong }] of row.head.entries()) {
      (strong ? names : notes).push({ text, x: x - left, y: top + (line + 0.5) * label * LEAD });
    }
    const centre = top + row.above + row.band / 2;
    names.push(...stacked(row.names, -left, centre, label * LEAD));
    notes.push(...stacked(row.notes, width + GAP * scale, centre, small * LEAD));
    top += row.height + gap;
    return centre;
  });
  return sheet.draw([
    ...across.layers(sheet.height),
    ...plot.marks(across, centres, sheet.height),
    ...(narrow ? plates([...names, ...notes], label, look.ground) : []),
    ...texts(names, { size: label, color: look.text }),
    ...texts(notes, { size: small, color: look.quiet }),
  ]);
}

interface Sizes {
  readonly label: number;
  readonly small: number;
}

function columnsOf(rows: readonly PlotRow[], inner: number, { label, small }: Sizes): { left: number; right: number } {
  const widest = (lines: readonly string[], size: number) => Math.max(...lines.map((text) => lineWidth(text, size)));
  return {
    left: Math.min(
      0.32 * inner,
      Math.ceil(
        widest(
          rows.map((row) => row.label),
          label,
        ),
      ) + 1,
    ),
    right: Math.min(
      0.26 * inner,
      Math.ceil(
        widest(
          rows.map(({ note }) => note),
          small,
        ),
      ),
    ),
  };
}

function overhangOf([low, high]: readonly [number, number], width: number, size: number): number {
  const ticks = fittingTicks(low, high, width, size);
  return Math.max(...ticks.values.map((value) => lineWidth(tickText(value, ticks), size))) / 2;
}

/** Grounds behind texts that stand inside the plot, so that nothing is drawn through a letter. */
function plates(placed: readonly PlacedText[], size: number, color: string): readonly Layer[] {
  const values = placed.map(({ text, x, y }) => ({
    ...{ x: x - 2, x2: x + lineWidth(text, size) + 2 },
    ...{ y: y - (size * LEAD) / 2, y2: y + (size * LEAD) / 2 },
  }));
  const encoding = { x: pixels("x"), x2: { field: "x2" }, y: pixels("y"), y2: { field: "y2" } };
  return withData([{ data: { values }, mark: { type: "rect", color }, encoding }]);
}

interface HeadLine {
  readonly text: string;
  readonly x: number;
  readonly strong: boolean;
}

/** Name and numbers above a row: on one line where they fit, else below each other. */
function headLines({ label: name, note }: PlotRow, inner: number, { label, small }: Sizes): readonly HeadLine[] {
  const names = wrapTo(name, inner, label).map((text) => ({ text, x: 0, strong: true }));
  if (note === "") return names;
  return [...names, ...wrapTo(note, inner, small).map((text) => ({ text, x: 0, strong: false }))];
}

function stacked(lines: readonly string[], x: number, centre: number, lead: number): readonly PlacedText[] {
  return lines.map((text, line) => ({ text, x, y: centre + (line - (lines.length - 1) / 2) * lead }));
}
