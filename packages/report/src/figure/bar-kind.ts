import { InputError } from "@tarewatt/units";
import { ReportError } from "../check/errors.js";
import { readKeys, readList, readOptionalText, readRecord, readText } from "../check/read.js";
import type { BarFigure, BarFigureOptions, BarFigureRow, BarRow } from "./bar.js";
import { type DataTable, dataColumns } from "./data-table.js";
import type { VegaLiteSpec } from "./figure.js";
import { type ReadFigure, readOf } from "./kind.js";
import { type Layer, pixels, withData } from "./layers.js";
import { readMeasure, readOptionalMeasure, readValueAxis } from "./measure.js";
import type { ReadSize } from "./picture-size.js";
import { printerOf, printInterval } from "./print-value.js";
import { rowPicture } from "./row-plot.js";
import { boundsOf } from "./ticks.js";
import { readMadeWords } from "./words.js";

/** @internal What a bar figure is drawn and printed from. */
export type BarContent = Omit<BarFigure, "spec">;

/** @internal Reads a figure that was made before. */
export function readBarFigure(given: BarFigure): ReadFigure {
  const figure = readRecord("figure", given);
  const { x, rows } = figure;
  const axis = readValueAxis("x", x);
  const content: BarContent = {
    kind: "bar",
    ...readMadeWords(figure),
    x: axis,
    rows: readBarRows(rows, axis.unit),
  };
  const data = barData(content);
  return readOf(content, data, barSpec);
}

/** @internal */
export function readBarRows(rows: readonly BarRow[], unit: string): readonly BarFigureRow[] {
  return Object.freeze(readList("rows", rows).map((row, index) => readRow(row, `rows[${index}]`, unit)));
}

function readRow(row: BarRow, where: string, unit: string): BarFigureRow {
  readKeys(where, row, ["label", "value", "low?", "high?", "within?"]);
  const label = readText(`${where}.label`, row.label);
  const value = readMeasure(`${where}.value`, row.value, unit);
  const low = readOptionalMeasure(`${where}.low`, row.low, unit);
  const high = readOptionalMeasure(`${where}.high`, row.high, unit);
  const within = readOptionalMeasure(`${where}.within`, row.within, unit);
  if ((low === undefined) !== (high === undefined)) {
    const missing = low === undefined ? "low" : "high";
    throw new InputError("MISSING_OPTION", `${where} has one end of a whisker: give ${missing} too, or neither`, {
      missing,
    });
  }
  if (low !== undefined && high !== undefined && !(low <= value && value <= high)) {
    throw new ReportError("NOT_ORDERED", `${where} must have low ≤ value ≤ high: got ${low}, ${value}, ${high}`, {
      low,
      value,
      high,
    });
  }
  return Object.freeze({
    ...{ label, value },
    ...(low === undefined || high === undefined ? {} : { low, high }),
    ...(within === undefined ? {} : { within }),
  });
}

/** @internal What the caption says about the marks that are there. */
export function barReading(rows: readonly BarFigureRow[], options: BarFigureOptions): string {
  const band = readOptionalText("band", options.band) ?? "P10 to P90";
  const within = readOptionalText("withinName", options.withinName) ?? "part";
  const parts = [
    rows.some((row) => row.within !== undefined) ? `dark: ${within}` : "",
    rows.some(({ low }) => low !== undefined) ? `whisker: ${band}` : "",
  ].filter((part) => part !== "");
  const reading = parts.join("; ");
  return reading.charAt(0).toUpperCase() + reading.slice(1);
}

function barData({ x, rows }: BarContent): DataTable {
  const numbers = (["value", "low", "high", "within"] as const).map((key) => ({
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
export function barSpec(content: BarContent, size: ReadSize): VegaLiteSpec {
  const { rows, x } = content;
  const { scale, look } = size;
  // Bars are compared by their lengths, so they begin at zero.
  const values = [0, ...rows.flatMap(({ value, low, high, within }) => [value, low ?? 0, high ?? 0, within ?? 0])];
  const printer = printerOf(
    rows.map(({ value }) => value),
    x,
  );
  return rowPicture(
    {
      words: content,
      axis: x,
      rows: rows.map((row) => ({ label: row.label, note: printInterval(row, x, printer) })),
      bounds: boundsOf(values),
      mark: 26,
      marks: (across, centres) => {
        const placed = rows.map((row, index) => ({ ...row, zero: 0, y: centres[index] as number }));
        const bars = (field: "value" | "within", half: number, mark: Layer): Layer => ({
          data: {
            values: placed
              .filter((row) => row[field] !== undefined)
              .map((row) => ({ ...row, y: row.y - half * scale, y2: row.y + half * scale })),
          },
          mark: { type: "rect", ...mark },
          encoding: { x: across.channel("zero"), x2: { field }, y: pixels("y"), y2: { field: "y2" } },
        });
        const whiskers = placed.filter(({ low }) => low !== undefined);
        const split = rows.some(({ within }) => within !== undefined);
        const whole = split
          ? { fill: look.ground, stroke: look.accent, strokeWidth: 2 * scale }
          : { fill: look.accent, stroke: look.accent, strokeWidth: 2 * scale };
        // A whisker in ink with a halo of the ground can be seen on the bar and beside it.
        const whisker = (color: string, width: number): Layer => ({
          data: { values: whiskers },
          mark: { type: "rule", color, strokeWidth: width * scale },
          encoding: { x: across.channel("low"), x2: { field: "high" }, y: pixels("y") },
        });
        return withData([
          bars("value", 9, whole),
          bars("within", 9, { fill: look.accent }),
          whisker(look.ground, 5),
          whisker(look.text, 2),
        ]);
      },
    },
    size,
  );
}
