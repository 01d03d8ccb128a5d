import { readKeys, readList, readRecord, readText, refuseRepeats } from "../check/read.js";
import type { DataTable } from "./data-table.js";
import { type ReadFigure, readOf } from "./kind.js";
import { readMeasure, readValueAxis } from "./measure.js";
import type { StackBar, StackFigure, StackFigureRow } from "./stack.js";
import { stackSpec } from "./stack-spec.js";
import { readMadeWords } from "./words.js";

/** @internal What stacked bars are drawn and printed from. */
export type StackContent = Omit<StackFigure, "spec">;

/** @internal Reads a figure that was made before. */
export function readStackFigure(given: StackFigure): ReadFigure {
  const figure = readRecord("figure", given);
  const { x, rows } = figure;
  const axis = readValueAxis("x", x);
  const content: StackContent = {
    kind: "stack",
    ...readMadeWords(figure),
    x: axis,
    rows: readStackRows(rows, axis.unit),
  };
  const data = stackData(content);
  return readOf(content, data, stackSpec);
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
