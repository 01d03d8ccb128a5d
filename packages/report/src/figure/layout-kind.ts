import { describeGiven, InputError, readNumber } from "@tarewatt/units";
import { readKeys, readList, readRecord, readText, refuseRepeats } from "../check/read.js";
import { dataGrid, dataRecords } from "./data-table.js";
import type { ReadFigure } from "./kind.js";
import type { LayoutFigure, LayoutFigureRow, LayoutShape, LayoutView } from "./layout.js";
import { layoutSpec } from "./layout-spec.js";
import { readMadeWords } from "./words.js";

/** @internal What a layout is drawn and printed from. */
export type LayoutContent = Omit<LayoutFigure, "spec">;

const MOST_VIEWS = 3;
// A kilometre: what is larger is surely not in millimetres.
const LARGEST = 1e6;

/** @internal Reads a figure that was made before. */
export function readLayoutFigure(given: LayoutFigure): ReadFigure {
  const figure = readRecord("figure", given);
  const { views, rows } = figure;
  const content: LayoutContent = {
    kind: "layout",
    ...readMadeWords(figure),
    views: readViews(views),
    rows: Object.freeze(readList("rows", rows).map((row, index) => readRow(row, `rows[${index}]`))),
  };
  return {
    title: content.title,
    caption: content.caption,
    description: content.description,
    grid: () => dataGrid(content, { columns: summary(content), notes: sizeNotes(content) }),
    records: () => dataRecords({ columns: allColumns(content.rows), notes: [] }),
    spec: (size) => layoutSpec(content, size),
  };
}

/** @internal */
export function readViews(views: LayoutFigure["views"]): LayoutFigure["views"] {
  const read = readList("views", views).map((view, index) => {
    const where = `views[${index}]`;
    readKeys(where, view, ["title", "width", "height", "shapes?"]);
    return Object.freeze({
      title: readText(`${where}.title`, view.title),
      width: readSide(`${where}.width`, view.width),
      height: readSide(`${where}.height`, view.height),
    });
  });
  if (read.length > MOST_VIEWS) {
    throw new InputError("OUT_OF_RANGE", `views must be at most ${MOST_VIEWS}: got ${read.length}; make two figures`, {
      given: read.length,
    });
  }
  refuseRepeats(
    "the view",
    read.map(({ title }) => title),
  );
  return Object.freeze(read);
}

/** @internal All shapes of all views, row by row. */
export function shapeRows(views: readonly LayoutView[]): readonly LayoutFigureRow[] {
  const rows = views.flatMap(({ title, shapes }, index) =>
    readList(`views[${index}].shapes`, shapes).map((shape, at) =>
      shapeRow(shape, title, `views[${index}].shapes[${at}]`),
    ),
  );
  return Object.freeze(rows);
}

function shapeRow(given: LayoutShape, view: string, where: string): LayoutFigureRow {
  const shape = readRecord(where, given);
  if (shape.shape === "circle") {
    readKeys(where, shape, ["shape", "x", "y", "diameter"]);
    const { x, y, diameter } = shape;
    return readRow({ view, shape: "circle", x, y, width: diameter, height: diameter }, where);
  }
  readKeys(where, shape, ["shape", "x", "y", "width", "height"]);
  return readRow({ view, ...shape }, where);
}

function readRow(row: LayoutFigureRow, where: string): LayoutFigureRow {
  readKeys(where, row, ["view", "shape", "x", "y", "width", "height"]);
  const { shape } = row;
  if (shape !== "rectangle" && shape !== "circle") {
    throw new InputError(
      "WRONG_CHOICE",
      `${where}.shape must be 'rectangle' or 'circle': got ${describeGiven(shape)}`,
      {
        name: `${where}.shape`,
      },
    );
  }
  return Object.freeze({
    ...{ view: readText(`${where}.view`, row.view), shape },
    ...{ x: readPlace(`${where}.x`, row.x), y: readPlace(`${where}.y`, row.y) },
    ...{ width: readSide(`${where}.width`, row.width), height: readSide(`${where}.height`, row.height) },
  });
}

function readSide(name: string, value: number): number {
  return readNumber(name, plainNumber(name, value), { unit: "1", above: 0, atMost: LARGEST });
}

function readPlace(name: string, value: number): number {
  return readNumber(name, plainNumber(name, value), { unit: "1", atLeast: -LARGEST, atMost: LARGEST });
}

function plainNumber(name: string, value: number): number {
  if (typeof value === "number") return value;
  throw new InputError("NOT_A_NUMBER", `${name} must be a plain number of millimetres: got ${describeGiven(value)}`, {
    name,
  });
}

function allColumns(rows: readonly LayoutFigureRow[]) {
  return [
    { title: "View", unit: "", values: rows.map(({ view }) => view) },
    { title: "Shape", unit: "", values: rows.map(({ shape }) => shape) },
    { title: "Left", unit: "mm", values: rows.map(({ x }) => x) },
    { title: "Bottom", unit: "mm", values: rows.map(({ y }) => y) },
    { title: "Width", unit: "mm", values: rows.map(({ width }) => width) },
    { title: "Height", unit: "mm", values: rows.map(({ height }) => height) },
  ];
}

/** Thousands of cells are printed as how many there are of each size. */
function summary({ rows }: LayoutContent) {
  const groups = new Map<string, { row: LayoutFigureRow; count: number }>();
  for (const row of rows) {
    const key = JSON.stringify([row.view, row.shape, row.width, row.height]);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, { row, count: 1 });
    else group.count += 1;
  }
  const all = [...groups.values()];
  return [
    { title: "View", unit: "", values: all.map(({ row }) => row.view) },
    { title: "Shape", unit: "", values: all.map(({ row }) => row.shape) },
    { title: "Number", unit: "", values: all.map(({ count }) => count) },
    { title: "Width", unit: "mm", values: all.map(({ row }) => row.width) },
    { title: "Height", unit: "mm", values: all.map(({ row }) => row.height) },
  ];
}

function sizeNotes({ views }: LayoutContent): readonly string[] {
  return views.map(({ title, width, height }) => `${title}: space of ${width} mm × ${height} mm`);
}
