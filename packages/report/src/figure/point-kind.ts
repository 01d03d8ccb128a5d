import { describeGiven, InputError } from "@tarewatt/units";
import { ReportError } from "../check/errors.js";
import { readKeys, readList, readRecord, readText, refuseRepeats } from "../check/read.js";
import { type DataTable, dataColumns } from "./data-table.js";
import { type ReadFigure, readOf } from "./kind.js";
import { readMeasure, readOptionalMeasure, readValueAxis } from "./measure.js";
import type { LabelledPoint, PointFigure, PointFigureRow } from "./point.js";
import { pointSpec } from "./point-spec.js";
import { readMadeWords } from "./words.js";

/** @internal What a point figure is drawn and printed from. */
export type PointContent = Omit<PointFigure, "spec">;

/** @internal Reads a figure that was made before. */
export function readPointFigure(given: PointFigure): ReadFigure {
  const figure = readRecord("figure", given);
  const { x, y, rows } = figure;
  const axes = { x: readValueAxis("x", x), y: readUpright(y) };
  const content: PointContent = {
    kind: "point",
    ...readMadeWords(figure),
    ...axes,
    rows: readPoints(rows, axes),
  };
  const data = pointData(content);
  return readOf(content, data, pointSpec);
}

/** @internal The vertical axis shows one unit. */
export function readUpright(y: PointFigure["y"]): PointFigure["y"] {
  const axis = readValueAxis("y", y);
  if (axis.also === undefined) return axis;
  throw new InputError("INCONSISTENT", `y shows one unit: leave out also, which is ${axis.also}`, { also: axis.also });
}

/** @internal */
export function readPoints(
  points: readonly LabelledPoint[],
  axes: Pick<PointFigure, "x" | "y">,
): readonly PointFigureRow[] {
  const rows = readList("points", points).map((point, index) => readPoint(point, `points[${index}]`, axes));
  refuseRepeats(
    "the point",
    rows.map(({ label }) => label),
  );
  return Object.freeze(rows);
}

function readPoint(point: LabelledPoint, where: string, axes: Pick<PointFigure, "x" | "y">): PointFigureRow {
  readKeys(where, point, ["label", "x", "y", "xLow?", "xHigh?", "yLow?", "yHigh?", "subject?"]);
  const label = readText(`${where}.label`, point.label);
  const { subject } = point;
  if (subject !== undefined && typeof subject !== "boolean") {
    throw new InputError("WRONG_CHOICE", `${where}.subject must be true or false: got ${describeGiven(subject)}`, {});
  }
  const x = readMeasure(`${where}.x`, point.x, axes.x.unit);
  const y = readMeasure(`${where}.y`, point.y, axes.y.unit);
  const across = readBar({ low: point.xLow, value: x, high: point.xHigh }, `${where}.x`, axes.x.unit);
  const up = readBar({ low: point.yLow, value: y, high: point.yHigh }, `${where}.y`, axes.y.unit);
  return Object.freeze({
    ...{ label, x, y },
    ...(across === undefined ? {} : { xLow: across[0], xHigh: across[1] }),
    ...(up === undefined ? {} : { yLow: up[0], yHigh: up[1] }),
    ...(subject === undefined ? {} : { subject }),
  });
}

function readBar(
  given: { readonly low: LabelledPoint["xLow"]; readonly value: number; readonly high: LabelledPoint["xHigh"] },
  where: string,
  unit: string,
): readonly [number, number] | undefined {
  const low = readOptionalMeasure(`${where}Low`, given.low, unit);
  const high = readOptionalMeasure(`${where}High`, given.high, unit);
  if (low === undefined && high === undefined) return undefined;
  if (low === undefined || high === undefined) {
    const missing = `${where}${low === undefined ? "Low" : "High"}`;
    throw new InputError("MISSING_OPTION", `a bar needs both ends: give ${missing} too, or neither`, { missing });
  }
  if (low <= given.value && given.value <= high) return [low, high];
  throw new ReportError("NOT_ORDERED", `${where} must lie within its bar: got ${low}, ${given.value}, ${high}`, {
    ...{ low, value: given.value, high },
  });
}

function pointData({ x, y, rows }: PointContent): DataTable {
  const column = (axis: PointContent["x"], word: string, values: readonly (number | undefined)[]) => ({
    title: `${axis.title}${word}`,
    unit: axis.unit,
    values,
  });
  return {
    columns: dataColumns([
      { title: "Point", unit: "", values: rows.map(({ label }) => label) },
      column(
        x,
        "",
        rows.map((row) => row.x),
      ),
      column(
        x,
        " low",
        rows.map(({ xLow }) => xLow),
      ),
      column(
        x,
        " high",
        rows.map(({ xHigh }) => xHigh),
      ),
      column(
        y,
        "",
        rows.map((row) => row.y),
      ),
      column(
        y,
        " low",
        rows.map(({ yLow }) => yLow),
      ),
      column(
        y,
        " high",
        rows.map(({ yHigh }) => yHigh),
      ),
    ]),
    notes: rows.filter(({ subject }) => subject).map(({ label }) => `The figure is about ${label}.`),
  };
}
