import { describeGiven, InputError, readNumber } from "@tarewatt/units";
import { ReportError } from "../check/errors.js";
import { readKeys, readList, readRecord, readText } from "../check/read.js";
import type {
  DensityPoint,
  DistributionFigure,
  DistributionFigureOptions,
  DistributionFigureRow,
  DistributionTarget,
  HistogramBin,
  ReadDistributionTarget,
} from "./distribution.js";
import { distributionSpec, targetText } from "./distribution-spec.js";
import { type ReadFigure, readOf } from "./kind.js";
import { readMeasure, readOptionalMeasure, readValueAxis } from "./measure.js";
import { printerOf } from "./print-value.js";
import { readMadeWords } from "./words.js";

/** @internal What a distribution is drawn and printed from. */
export type DistributionContent = Omit<DistributionFigure, "spec">;

/** @internal Reads a figure that was made before. */
export function readDistributionFigure(given: DistributionFigure): ReadFigure {
  const figure = readRecord("figure", given);
  const { x, rows, median, low, high, targets } = figure;
  const axis = readValueAxis("x", x);
  const content: DistributionContent = {
    kind: "distribution",
    ...readMadeWords(figure),
    x: axis,
    ...readMarks({ median, low, high }, axis.unit),
    targets: readDistributionTargets(targets, axis.unit),
    rows: readCurve("rows", rows, axis.unit),
  };
  const { unit } = axis;
  const columns = [
    { title: axis.title, unit, values: content.rows.map((row) => row.x) },
    { title: "Density", unit: "", values: content.rows.map(({ density }) => density) },
  ];
  const data = { columns, notes: notesOf(content) };
  return readOf(content, data, distributionSpec);
}

function notesOf({ x, median, low, high, targets }: DistributionContent): readonly string[] {
  const values = [median, low, high, ...targets.map(({ value }) => value)].filter((value) => value !== undefined);
  const printer = printerOf(values, x);
  return [
    ...(median === undefined ? [] : [`Median: ${printer.value(median)}`]),
    ...(low === undefined || high === undefined ? [] : [`Shaded: ${printer.value(low)} to ${printer.value(high)}`]),
    ...targets.map((target) => `${targetText(target)} (${printer.value(target.value)})`),
  ];
}

/** @internal The outline of a distribution, from a curve or from bins. */
export function readOutline(
  { curve, bins }: Pick<DistributionFigureOptions, "curve" | "bins">,
  unit: string,
): readonly DistributionFigureRow[] {
  if ((curve === undefined) === (bins === undefined)) {
    throw new InputError("INCONSISTENT", "a distribution needs either a curve or bins: give one of them", {});
  }
  if (curve !== undefined) return readCurve("curve", curve, unit);
  return readCurve(
    "bins",
    readList("bins", bins ?? []).flatMap((bin, index) => cornersOf(bin, index, unit)),
    unit,
  );
}

/** The upper corners of a bin: its area, and not its height, says how much lies in it. */
function cornersOf(bin: HistogramBin, index: number, unit: string): readonly DensityPoint[] {
  const where = `bins[${index}]`;
  readKeys(where, bin, ["from", "to", "count"]);
  const from = readMeasure(`${where}.from`, bin.from, unit);
  const to = readMeasure(`${where}.to`, bin.to, unit);
  const count = readHeight(`${where}.count`, bin.count);
  if (!(to > from)) {
    throw new ReportError("NOT_ORDERED", `${where} must have from < to: got ${from}, ${to}`, { from, to });
  }
  const density = readHeight(`${where}.count`, count / (to - from));
  return [
    { x: from, density },
    { x: to, density },
  ];
}

function readCurve(name: string, given: readonly DensityPoint[], unit: string): readonly DistributionFigureRow[] {
  const points = readList(name, given).map((point, index): DistributionFigureRow => {
    const where = `${name}[${index}]`;
    readKeys(where, point, ["x", "density"]);
    const x = readMeasure(`${where}.x`, point.x, unit);
    return Object.freeze({ x, density: readHeight(`${where}.density`, point.density) });
  });
  const back = points.find(({ x }, index) => x < (points[index - 1]?.x ?? Number.NEGATIVE_INFINITY));
  if (back !== undefined) {
    throw new ReportError("NOT_ORDERED", `${name} must be in the order of the values: ${back.x} comes too late`, {
      x: back.x,
    });
  }
  if (!points.some(({ density }) => density > 0) || points[0]?.x === points.at(-1)?.x) {
    throw new InputError("EMPTY", `${name} must enclose an area: give at least two values, and a density above 0`, {});
  }
  return Object.freeze(points);
}

function readHeight(name: string, value: number): number {
  if (typeof value !== "number") {
    throw new InputError("NOT_A_NUMBER", `${name} must be a plain number: got ${describeGiven(value)}`, { name });
  }
  return readNumber(name, value, { unit: "1", atLeast: 0, atMost: 1e15 });
}

type Marks = Pick<DistributionFigureOptions, "median" | "low" | "high">;

/** @internal Median and interval, in the unit of the axis. */
export function readMarks(given: Marks, unit: string): Pick<DistributionContent, "median" | "low" | "high"> {
  const median = readOptionalMeasure("median", given.median, unit);
  const low = readOptionalMeasure("low", given.low, unit);
  const high = readOptionalMeasure("high", given.high, unit);
  if ((low === undefined) !== (high === undefined)) {
    const missing = low === undefined ? "low" : "high";
    throw new InputError("MISSING_OPTION", `an interval needs both ends: give ${missing} too, or neither`, { missing });
  }
  const ordered = [low, median, high].filter((each) => each !== undefined);
  if (ordered.some((each, index) => each < (ordered[index - 1] ?? Number.NEGATIVE_INFINITY))) {
    throw new ReportError("NOT_ORDERED", `low ≤ median ≤ high must hold: got ${ordered.join(", ")}`, { ordered });
  }
  return {
    ...(median === undefined ? {} : { median }),
    ...(low === undefined || high === undefined ? {} : { low, high }),
  };
}

/** @internal */
export function readDistributionTargets(
  targets: readonly DistributionTarget[],
  unit: string,
): readonly ReadDistributionTarget[] {
  const read = readList("targets", targets, { mayBeEmpty: true }).map((target, index) => {
    const where = `targets[${index}]`;
    readKeys(where, target, ["label", "value", "chance?"]);
    const value = readMeasure(`${where}.value`, target.value, unit);
    const label = readText(`${where}.label`, target.label);
    if (target.chance === undefined) return Object.freeze({ label, value });
    const chance = readNumber(`${where}.chance`, target.chance, { unit: "1", atLeast: 0, atMost: 1 });
    return Object.freeze({ label, value, chance });
  });
  return Object.freeze(read);
}
