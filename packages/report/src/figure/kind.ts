import type { Grid } from "../table/grid.js";
import { type DataTable, dataGrid, dataRecords } from "./data-table.js";
import type { VegaLiteSpec } from "./figure.js";
import type { ReadSize } from "./picture-size.js";
import type { MadeWords } from "./words.js";

/** @internal A figure of any kind, read again: what its printed forms and its picture are made from. */
export interface ReadFigure extends MadeWords {
  readonly grid: () => Grid;
  readonly records: () => readonly (readonly string[])[];
  readonly spec: (size: ReadSize) => VegaLiteSpec;
}

/** @internal A figure whose numbers all stand in one table. */
export function readOf<Content extends MadeWords>(
  content: Content,
  data: DataTable,
  spec: (content: Content, size: ReadSize) => VegaLiteSpec,
): ReadFigure {
  const { title, caption, description } = content;
  return {
    ...{ title, caption, description },
    grid: () => dataGrid(content, data),
    records: () => dataRecords(data),
    spec: (size) => spec(content, size),
  };
}
