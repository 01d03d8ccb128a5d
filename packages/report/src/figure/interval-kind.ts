import { InputError } from "@tarewatt/units";
import { ReportError } from "../check/errors.js";
import { readKeys, readList, readOptionalText, readRecord, readText } from "../check/read.js";
import { type DataTable, dataColumns } from "./data-table.js";
import type { ValueAxis, VegaLiteSpec } from "./figure.js";
import type { IntervalFigure, IntervalFigureOptions, IntervalFigureRow, IntervalRow } from "./interval.js";
import { type ReadFigure, readOf } from "./kind.js";
import { type Layer, pixels, withData } from "./layers.js";
import { readMeasure, readOptionalMeasure, readValueAxis } from "./measure.js";
import type { ReadSize } from "./picture-size.js";
import { type Printer, printerOf, printInterval } from "./print-value.js";
import { rowPicture } from "./row-plot.js";
import { boundsOf } from "./ticks.js";
import { readMadeWords } from "./words.js";

/** @internal What an interval figure is drawn and printed from. */
export type IntervalContent = Omit<IntervalFigure, "spec">;

/** @internal Reads a figure that was made before. */
export function readIntervalFigure(given: IntervalFigure): ReadFigure {
  const figure = readRecord("figure", given);
  const { x, rows } = figure;
  const axis = readValueAxis("x", x);
  const content: IntervalContent = {
    kind: "interval",
    ...readMadeWords(figure),
    x: axis,
    rows: readIntervalRows(rows, axis.unit),
  };
  const data = intervalData(content);
  return readOf(content, data, intervalSpec);
}

/** @internal */
export function readIntervalRows(rows: readonly IntervalRow[], unit: string): readonly IntervalFigureRow[] {
  return Object.freeze(readList("rows", rows).map((row, index) => readRow(row, `rows[${index}]`, unit)));
}

function readRow(row: IntervalRow, where: string, unit: string): IntervalFigureRow {
  readKeys(where, row, ["label", "value?", "low?", "high?", "least?", "most?", "spread?", "target?"]);
  const label = readText(`${where}.label`, row.label);
  const target = readOptionalMeasure(`${where}.target`, row.target, unit);
  const ends = row.spread === undefined ? readEnds(row, where, unit) : readSpread(row, where, unit);
  const outer = readPair(row, ["least", "most"], where, unit);
  if (ends.value === undefined && ends.low === undefined && target === undefined) {
    throw new InputError("MISSING_OPTION", `${where} has nothing to draw: give a value, an interval or a target`, {});
  }
  const { value, low, high } = ends;
  const ordered = [outer.least, low, value, high, outer.most].filter((each) => each !== undefined);
  if (ordered.some((each, index) => each < (ordered[index - 1] ?? Number.NEGATIVE_INFINITY))) {
    throw new ReportError(
      "NOT_ORDERED",
      `${where} must have least ≤ low ≤ value ≤ high ≤ most, as far as they are given: got ${ordered.join(", ")}`,
      { ordered },
    );
  }
  return Object.freeze({ label, ...ends, ...outer, ...(target === undefined ? {} : { target }) });
}

type Ends = { readonly value?: number; readonly low?: number; readonly high?: number };

function readEnds(row: IntervalRow, where: string, unit: string): Ends {
  const value = readOptionalMeasure(`${where}.value`, row.value, unit);
  return { ...(value === undefined ? {} : { value }), ...readPair(row, ["low", "high"], where, unit) };
}

function readSpread({ spread, value, low, high }: IntervalRow, where: string, unit: string): Ends {
  if (value !== undefined || low !== undefined || high !== undefined) {
    throw new InputError("INCONSISTENT", `${where} has a spread beside value, low or high: give one of the two`, {});
  }
  const { p10, p50, p90 } = readRecord(`${where}.spread`, spread as object) as NonNullable<typeof spread>;
  return {
    value: readMeasure(`${where}.spread.p50`, p50, unit),
    low: readMeasure(`${where}.spread.p10`, p10, unit),
    high: readMeasure(`${where}.spread.p90`, p90, unit),
  };
}

function readPair<Low extends "low" | "least", High extends "high" | "most">(
  row: IntervalRow,
  [from, to]: readonly [Low, High],
  where: string,
  unit: string,
): { readonly [end in Low | High]?: number } {
  const low = readOptionalMeasure(`${where}.${from}`, row[from], unit);
  const high = readOptionalMeasure(`${where}.${to}`, row[to], unit);
  if (low === undefined && high === undefined) return {};
  if (low !== undefined && high !== undefined) return { [from]: low, [to]: high } as { [end in Low | High]?: number };
  const missing = low === undefined ? from : to;
  throw new InputError("MISSING_OPTION", `${where} has one end of an interval: give ${missing} too, or neither`, {
    missing,
  });
}

/** @internal What the caption says about the marks that are there. */
export function intervalReading(rows: readonly IntervalFigureRow[], options: IntervalFigureOptions): string {
  const band = readOptionalText("band", options.band);
  const outer = readOptionalText("outerBand", options.outerBand) ?? "P5 to P95";
  const target = readOptionalText("targetName", options.targetName) ?? "target";
  const dots = rows.some(({ value }) => value !== undefined);
  // Only the usual band says what its dot is; of another one we know no more than its name.
  const dot = band === undefined && rows.some(({ low }) => low !== undefined) ? "P50" : "value";
  const parts = [
    dots ? `Dot: ${dot}` : "",
    rows.some(({ low }) => low !== undefined) ? `thick bar: ${band ?? "P10 to P90"}` : "",
    rows.some(({ least }) => least !== undefined) ? `thin bar: ${outer}` : "",
    rows.some((row) => row.target !== undefined) ? `upright mark: ${target}` : "",
  ].filter((part) => part !== "");
  const reading = parts.join("; ");
  return reading.charAt(0).toUpperCase() + reading.slice(1);
}

function intervalData({ x, rows }: IntervalContent): DataTable {
  const numbers = (["value", "low", "high", "least", "most", "target"] as const).map((key) => ({
    title: key === "value" ? x.title : `${x.title} ${key}`,
    unit: x.unit,
    values: rows.map((row) => row[key]),
  }));
  return {
    columns: dataColumns([{ title: "Row", unit: "", values: rows.map(({ label }) => label) }, ...numbers]),
    notes: [],
  };
}

/** @internal */
export function intervalSpec(content: IntervalContent, size: ReadSize): VegaLiteSpec {
  const { rows, x } = content;
  const values = rows.flatMap((row) => [row.value, row.low, row.high, row.least, row.most, row.target]);
  const { scale, look } = size;
  const printer = printerOf(
    rows.flatMap(({ value, target }) => [value ?? 0, target ?? 0]),
    x,
  );
  return rowPicture(
    {
      words: content,
      axis: x,
      rows: rows.map((row) => ({ label: row.label, note: noteOf(row, x, printer) })),
      bounds: boundsOf(values.filter((value) => value !== undefined)),
      mark: 26,
      marks: (across, centres) => {
        const placed = rows.map((row, index) => ({ ...row, y: centres[index] as number }));
        const bar = (from: "low" | "least", to: "high" | "most", width: number): Layer => ({
          data: { values: placed.filter((row) => row[from] !== undefined) },
          mark: { type: "rule", color: look.accent, strokeWidth: width * scale, strokeCap: "butt" },
          encoding: { x: across.channel(from), x2: { field: to }, y: pixels("y") },
        });
        const targets = placed.flatMap(({ label, target, y }) =>
          target === undefined ? [] : [{ label, target, y: y - 13 * scale, y2: y + 13 * scale }],
        );
        return withData([
          bar("least", "most", 2),
          bar("low", "high", 9),
          {
            data: { values: placed.filter((row) => row.value !== undefined) },
            mark: { type: "point", filled: true, opacity: 1, color: look.ground, stroke: look.accent, ...dot(scale) },
            encoding: { x: across.channel("value"), y: pixels("y") },
          },
          {
            data: { values: targets },
            mark: { type: "rule", color: look.text, strokeWidth: 3 * scale },
            encoding: { x: across.channel("target"), y: pixels("y"), y2: { field: "y2" } },
          },
        ]);
      },
    },
    size,
  );
}

function dot(scale: number): { readonly size: number; readonly strokeWidth: number } {
  return { size: 110 * scale ** 2, strokeWidth: 2.5 * scale };
}

function noteOf(row: IntervalFigureRow, x: ValueAxis, printer: Printer): string {
  const own = printInterval(row, x, printer);
  return row.target === undefined || own !== "" ? own : printer.value(row.target);
}
