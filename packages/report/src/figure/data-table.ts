import { plainLine } from "../escape/plain.js";
import { type Grid, headLine } from "../table/grid.js";
import { commonPlaces, formatPlaces } from "../table/number.js";

/** @internal One column of the data of a figure. */
export interface DataColumn {
  readonly title: string;
  /** Unit of its numbers; empty for texts. */
  readonly unit: string;
  /** What each row has there. */
  readonly values: readonly (string | number | undefined)[];
}

/** @internal The data of a figure, column by column: what its printed forms are made from. */
export interface DataTable {
  readonly columns: readonly DataColumn[];
  readonly notes: readonly string[];
}

const DIGITS = 4;
const NOTHING = "–";

/** @internal Drops columns that no row has a value in. */
export function dataColumns(columns: readonly DataColumn[]): readonly DataColumn[] {
  return columns.filter(({ values }) => values.some((value) => value !== undefined));
}

/** @internal The data as printed: the numbers of a column to the same place. */
export function dataGrid({ title, caption }: { title: string; caption: string }, { columns, notes }: DataTable): Grid {
  const printed = columns.map(({ values }) => {
    const numbers = values.filter((value) => typeof value === "number");
    const places = commonPlaces(numbers, DIGITS);
    return values.map((value) =>
      value === undefined ? NOTHING : typeof value === "number" ? formatPlaces(value, places) : plainLine(value),
    );
  });
  return {
    title,
    heads: columns.map((column) => ({
      title: plainLine(column.title),
      unit: column.unit,
      align: column.values.some((value) => typeof value === "string") ? "left" : "right",
    })),
    rows: (columns[0]?.values ?? []).map((_, row) => printed.map((cells) => cells[row] as string)),
    caption,
    notes,
  };
}

/** @internal The data as records of CSV, unrounded. */
export function dataRecords({ columns }: DataTable): readonly (readonly string[])[] {
  const cell = (value: string | number | undefined): string => (value === undefined ? "" : String(value));
  return [
    columns.map(headLine),
    ...(columns[0]?.values ?? []).map((_, row) => columns.map(({ values }) => cell(values[row]))),
  ];
}
