import { describeGiven, InputError, readNumber } from "@tarewatt/units";
import { ReportError } from "../check/errors.js";
import { readKeys, readList, readText, refuseRepeats } from "../check/read.js";
import type { Axis, LinePoint, LineSeries, LineTarget } from "./figure.js";
import { dashes } from "./palette.js";

// Beyond this an axis is surely in the wrong unit, and the arithmetic of ticks loses digits.
const LARGEST = 1e15;

/** @internal */
export function readAxis(name: string, axis: Axis): Axis {
  readKeys(name, axis, ["title", "unit"]);
  return Object.freeze({ title: readText(`${name}.title`, axis.title), unit: readText(`${name}.unit`, axis.unit) });
}

/** @internal */
export function readSeries(given: readonly LineSeries[]): readonly LineSeries[] {
  const series = readList("series", given).map(readOneSeries);
  refuseRepeats(
    "the series",
    series.map(({ name }) => name),
  );
  if (series.length > dashes.length) {
    throw new ReportError(
      "TOO_MANY_SERIES",
      `a line figure shows at most ${dashes.length} series, which a reader can tell apart: got ${series.length}; make two figures`,
      { given: series.length, most: dashes.length },
    );
  }
  return Object.freeze(series);
}

function readOneSeries(series: LineSeries, index: number): LineSeries {
  const where = `series[${index}]`;
  readKeys(where, series, ["name", "points"]);
  const name = readText(`${where}.name`, series.name);
  const points = readList(`${where}.points`, series.points).map((point, at) =>
    readPoint(point, `${where}.points[${at}]`),
  );
  const banded = points.filter(({ low }) => low !== undefined).length;
  if (banded !== 0 && banded !== points.length) {
    throw new InputError(
      "INCONSISTENT",
      `${where} has low and high in ${banded} of its ${points.length} points: give them in all or in none`,
      { banded, points: points.length },
    );
  }
  for (const [at, { x }] of points.entries()) {
    const before = points[at - 1]?.x ?? Number.NEGATIVE_INFINITY;
    if (x < before) {
      throw new ReportError("NOT_ORDERED", `${where}.points must be in the order of x: got ${x} after ${before}`, {
        x,
        before,
      });
    }
  }
  return Object.freeze({ name, points: Object.freeze(points) });
}

function readPoint(point: LinePoint, where: string): LinePoint {
  readKeys(where, point, ["x", "y", "low?", "high?"]);
  const x = readPlace(`${where}.x`, point.x);
  const y = readPlace(`${where}.y`, point.y);
  if (point.low === undefined && point.high === undefined) return Object.freeze({ x, y });
  if (point.low === undefined || point.high === undefined) {
    const missing = point.low === undefined ? "low" : "high";
    throw new InputError("MISSING_OPTION", `${where} has one end of a band: give ${missing} too, or neither`, {
      missing,
    });
  }
  const low = readPlace(`${where}.low`, point.low);
  const high = readPlace(`${where}.high`, point.high);
  if (!(low <= y && y <= high)) {
    throw new ReportError("NOT_ORDERED", `${where} must have low ≤ y ≤ high: got ${low}, ${y}, ${high}`, {
      low,
      y,
      high,
    });
  }
  return Object.freeze({ x, y, low, high });
}

/** @internal */
export function readTarget(target: LineTarget, index: number): LineTarget {
  const where = `targets[${index}]`;
  readKeys(where, target, ["label", "value?", "x?"]);
  const label = readText(`${where}.label`, target.label);
  if ((target.value === undefined) === (target.x === undefined)) {
    throw new InputError(
      "INCONSISTENT",
      `${where} needs either a value of the vertical axis or an x: give one of them`,
      {},
    );
  }
  return target.value === undefined
    ? Object.freeze({ label, x: readPlace(`${where}.x`, target.x) })
    : Object.freeze({ label, value: readPlace(`${where}.value`, target.value) });
}

function readPlace(name: string, value: unknown): number {
  if (typeof value !== "number") {
    throw new InputError(
      "NOT_A_NUMBER",
      `${name} must be a plain number in the unit of its axis: got ${describeGiven(value)}`,
      { name },
    );
  }
  return readNumber(name, value, { unit: "1", atLeast: -LARGEST, atMost: LARGEST });
}
