import { describeGiven, InputError } from "@tarewatt/units";
import { readList, readRecord, readString, readText } from "../check/read.js";
import type { Figure, FigureRow, LineSeries, LineTarget } from "./figure.js";
import type { FigureContent } from "./line-spec.js";
import { readAxis, readSeries, readTarget } from "./read-line.js";

/** @internal A figure that is to be drawn or printed: of any copy of the library, or changed by hand, so it is read again. */
export function readFigure(given: Figure): FigureContent {
  const { kind, title, x, y, series, targets, caption, band, description } = readRecord("figure", given);
  if (kind !== "line") {
    throw new InputError("WRONG_CHOICE", `figure must be made by lineFigure: its kind is ${describeGiven(kind)}`, {
      name: "figure",
    });
  }
  const lines = readSeries(series);
  return Object.freeze({
    kind,
    title: readText("title", title),
    x: readAxis("x", x),
    y: readAxis("y", y),
    series: lines,
    targets: readTargets(targets),
    caption: readString("caption", caption),
    band: readString("band", band),
    description: readText("description", description),
    rows: rowsOf(lines),
  });
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
