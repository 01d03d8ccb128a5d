import { csvRecords } from "../escape/csv.js";
import { withUnit } from "../escape/with-unit.js";
import { type ReadCell, readCell } from "./cell.js";
import { type ShownColumn, shownColumns } from "./column.js";
import { headLine } from "./grid.js";
import { readTable } from "./read-table.js";
import type { Table } from "./table.js";

/**
 * The cells of a table as CSV (RFC 4180) for other programs: numbers unrounded, with a point and without grouping. A column
 * with spreads gives three, P10, P50 and P90. A text that a spreadsheet would run as a formula gets an apostrophe before it.
 *
 * @param table - the table
 * @returns one record of heads and one for every row, each ended by CR LF; a cell without value is empty
 * @throws InputError `WRONG_CHOICE`, `NOT_AN_OBJECT` when it is no table, and what `table` throws
 * @example
 * const masses = table({
 *   title: "Mass",
 *   columns: [{ key: "part", title: "Part" }, { key: "mass", title: "Mass", unit: "kg" }],
 *   rows: [{ part: "Pack", mass: { p10: q("490 kg"), p50: q("527 kg"), p90: q("570 kg") } }],
 * });
 * tableToCsv(masses); // "Part,Mass P10 (kg),Mass P50 (kg),Mass P90 (kg)\r\nPack,490,527,570\r\n"
 */
export function tableToCsv(table: Table): string {
  const { columns, rows } = readTable("table", table);
  const parts = shownColumns(columns).map((column) => csvColumn(column, rows));
  const records = [
    parts.flatMap(({ heads }) => heads),
    ...rows.map((_, index) => parts.flatMap(({ cells }) => cells[index] as readonly string[])),
  ];
  return csvRecords(records);
}

interface CsvColumn {
  readonly heads: readonly string[];
  readonly cells: readonly (readonly string[])[];
}

function csvColumn({ key, title, unit = "", oneOfTwo }: ShownColumn, rows: Table["rows"]): CsvColumn {
  const place = { name: key, unit: unit === "" ? undefined : unit, oneOfTwo };
  const cells = rows.map((row) => readCell(row[key], place));
  const spread = cells.some((cell) => cell.kind === "spread");
  const names = spread ? ["P10", "P50", "P90"].map((name) => `${title} ${name}`) : [title];
  return {
    heads: names.map((name) => headLine({ title: name, unit })),
    cells: cells.map((cell) => {
      if (cell.kind === "spread") return [cell.p10, cell.p50, cell.p90].map((value) => exact(value, cell, unit));
      return spread ? ["", single(cell, unit), ""] : [single(cell, unit)];
    }),
  };
}

function single(cell: ReadCell, unitInHead: string): string {
  if (cell.kind === "number") return exact(cell.value, cell, unitInHead);
  return cell.kind === "text" ? cell.text : "";
}

/** A quantity in a column without a unit keeps its own beside the number. */
function exact(value: number, { unit }: { readonly unit: string }, unitInHead: string): string {
  return unit === unitInHead ? String(value) : withUnit(String(value), unit);
}
