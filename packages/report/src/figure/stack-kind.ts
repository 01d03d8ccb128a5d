import { readKeys, readList, readRecord, readString, readText, refuseRepeats } from "../check/read.js";
import { type DataTable, dataGrid, dataRecords } from "./data-table.js";
import type { VegaLiteSpec } from "./figure.js";
import type { ReadFigure } from "./kind.js";
import { readMeasure, readValueAxis } from "./measure.js";
import type { ReadSize } from "./picture-size.js";
import type { StackBar, StackFigure, StackFigureRow } from "./stack.js";
import { stackSpec } from "./stack-spec.js";

/** @internal What stacked bars are drawn and printed from. */
export type StackContent = Omit<StackFigure, "spec">;

/** @internal Reads a figure that was made before. */
export function readStackFigure(given: StackFigure): ReadFigure {
  const { title, caption, description, x, rows } = readRecord("figure", given);
  const axis = readValueAxis("x", x);
  const content: StackContent = {
    kind: "stack",
    title: readText("title", title),
    caption: readString("caption", caption),
    description: readText("description", description),
    x: axis,
    rows: readStackRows(rows, axis.unit),
  };
  const data = stackData(content);
  return {
    ...content,
    grid: () => dataGrid(content, data),
    records: () => dataRecords(data),
    spec: (size: ReadSize): VegaLiteSpec => stackSpec(content, size),
  };
}

/** @internal The parts of all bars, row by row. */
export function stackRows(bars: readonly StackBar[], unit: string): readonly StackFigureRow[] {
  const read = readList("bars", bars).map((bar, index) => {
    const where = `bars[${index}]`;
    readKeys(where, bar, ["label", "parts"]);
    const parts = readList(`${where}.parts`, bar.parts).map((part, at) => {
      readKeys(`${where}.parts[${at}]`, part, ["name", "value"]);
      return {
        bar: readText(`${where}.label`, bar.label),
        part: readText(`${where}.parts[${at}].name`, part.name),
        value: readMeasure(`${where}.parts[${at}].value`, part.value, unit),
      };
    });
    refuseRepeats(
      `the parts of ${where}`,
      parts.map(({ part }) => part),
    );
    return parts;
  });
  refuseRepeats(
    "the bars",
    read.map(([first]) => first?.bar ?? ""),
  );
  return readStackRows(read.flat(), unit);
}

function readStackRows(given: readonly StackFigureRow[], unit: string): readonly StackFigureRow[] {
  const rows = readList("rows", given).map((row, index): StackFigureRow => {
    const where = `rows[${index}]`;
    readKeys(where, row, ["bar", "part", "value"]);
    return Object.freeze({
      bar: readText(`${where}.bar`, row.bar),
      part: readText(`${where}.part`, row.part),
      value: readMeasure(`${where}.value`, row.value, unit),
    });
  });
  return Object.freeze(rows);
}

function stackData({ x, rows }: StackContent): DataTable {
  return {
    columns: [
      { title: "Bar", unit: "", values: rows.map(({ bar }) => bar) },
      { title: "Part", unit: "", values: rows.map(({ part }) => part) },
      { title: x.title, unit: x.unit, values: rows.map(({ value }) => value) },
    ],
    notes: [],
  };
}
