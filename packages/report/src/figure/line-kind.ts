import { readList, readRecord, readString } from "../check/read.js";
import { plainLine } from "../escape/plain.js";
import { withUnit } from "../escape/with-unit.js";
import { type Grid, headLine } from "../table/grid.js";
import { commonPlaces, formatPlaces, formatSpread } from "../table/number.js";
import type { FigureRow, LineFigure, LineSeries, LineTarget } from "./figure.js";
import type { ReadFigure } from "./kind.js";
import { type LineContent, lineSpec } from "./line-spec.js";
import { readAxis, readSeries, readTarget } from "./read-line.js";
import { readMadeWords } from "./words.js";

const DIGITS = 4;
const MOST_DIGITS_OF_X = 6;

/** @internal Reads a figure that was made before. */
export function readLineFigure(given: LineFigure): ReadFigure {
  const figure = readRecord("figure", given);
  const { x, y, series, targets, band } = figure;
  const lines = readSeries(series);
  const content: LineContent = Object.freeze({
    kind: "line",
    ...readMadeWords(figure),
    x: readAxis("x", x),
    y: readAxis("y", y),
    series: lines,
    targets: readTargets(targets),
    band: readString("band", band),
    rows: rowsOf(lines),
  });
  return {
    title: content.title,
    caption: content.caption,
    description: content.description,
    grid: () => lineGrid(content),
    records: () => lineRecords(content),
    spec: (size) => lineSpec(content, size),
  };
}

/** @internal */
export function readTargets(targets: readonly LineTarget[]): readonly LineTarget[] {
  return Object.freeze(readList("targets", targets, { mayBeEmpty: true }).map(readTarget));
}

/** @internal All points of all lines, row by row. */
export function rowsOf(series: readonly LineSeries[]): readonly FigureRow[] {
  return Object.freeze(
    series.flatMap(({ name, points }) => points.map((point): FigureRow => Object.freeze({ series: name, ...point }))),
  );
}

/** The points of a figure as a table, the targets as notes. */
function lineGrid({ title, x, y, rows, targets, caption }: LineContent): Grid {
  const xPlaces = commonPlaces(
    rows.map((row) => row.x),
    MOST_DIGITS_OF_X,
  );
  const yPlaces = commonPlaces(
    rows.map((row) => row.y),
    DIGITS,
  );
  return {
    title,
    heads: [
      { title: "Series", unit: "", align: "left" },
      { title: plainLine(x.title), unit: x.unit, align: "right" },
      { title: plainLine(y.title), unit: y.unit, align: "right" },
    ],
    rows: rows.map(({ series, x: place, y: p50, low, high }) => [
      plainLine(series),
      formatPlaces(place, xPlaces),
      low === undefined || high === undefined
        ? formatPlaces(p50, yPlaces)
        : formatSpread({ p10: low, p50, p90: high }, DIGITS),
    ]),
    caption,
    notes: targets.map((target) => targetNote(target, { x, y })),
  };
}

/** @internal What a table says about a target. */
export function targetNote({ label, value, x: across }: LineTarget, { x, y }: Pick<LineContent, "x" | "y">): string {
  const [axis, at] = value === undefined ? [x, across ?? 0] : [y, value];
  const place = withUnit(formatPlaces(at, commonPlaces([at], MOST_DIGITS_OF_X)), axis.unit);
  return `${label} (rule at ${axis.title.toLowerCase()} ${place})`;
}

/** The points as records of CSV, unrounded; the ends of the band when there is one. */
function lineRecords({ x, y, rows, band }: LineContent): readonly (readonly string[])[] {
  const ends = band === "" ? [] : ["low", "high"].map((end) => headLine({ ...y, title: `${y.title} ${end}` }));
  const number = (value: number | undefined): string => (value === undefined ? "" : String(value));
  return [
    ["Series", headLine(x), headLine(y), ...ends],
    ...rows.map((row) => [
      row.series,
      number(row.x),
      number(row.y),
      ...(band === "" ? [] : [number(row.low), number(row.high)]),
    ]),
  ];
}
