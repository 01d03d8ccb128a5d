import { readKeys } from "../check/read.js";
import { showTable } from "../notebook/show-table.js";
import type { TableCell } from "./cell.js";
import type { Column } from "./column.js";
import { readParts } from "./read-table.js";

/** What {@link table} takes. */
export interface TableOptions {
  /** What the table shows. */
  readonly title: string;
  /** The columns, left to right; the first one names the rows. */
  readonly columns: readonly Column[];
  /** The rows: cells by the key of their column. A key left out shows as a dash. */
  readonly rows: readonly Readonly<Record<string, TableCell>>[];
  /** What a reader should know before reading the numbers, such as the conditions. */
  readonly caption?: string | undefined;
  /** Remarks below the table. */
  readonly notes?: readonly string[] | undefined;
}

/**
 * A table as plain, frozen data; {@link tableToText}, {@link tableToMarkdown}, {@link tableToHtml} and {@link tableToCsv} print it. In a notebook
 * it shows itself.
 */
export interface Table {
  /** Says that this is a table, whichever copy of the package made it. */
  readonly kind: "table";
  /** What the table shows. */
  readonly title: string;
  /** The columns, left to right. */
  readonly columns: readonly Column[];
  /** The rows, cells by key. */
  readonly rows: readonly Readonly<Record<string, TableCell>>[];
  /** What to know before reading; absent when not given. */
  readonly caption?: string;
  /** Remarks below the table. */
  readonly notes: readonly string[];
}

/**
 * A table of texts, numbers, quantities and spreads. Every cell is checked here, so that printing cannot fail.
 *
 * @param options - title, columns, rows, caption and notes
 * @returns an immutable table
 * @throws ReportError `UNKNOWN_COLUMN` when a row has a key that no column has, `REPEATED_NAME`, `NOT_A_CELL`, `NOT_A_TEXT`,
 * `NOT_ORDERED` when a spread is not p10 ≤ p50 ≤ p90
 * @throws InputError `EMPTY` without rows or columns, `UNKNOWN_OPTION`, `MISSING_OPTION`, `NOT_A_NUMBER`, `WRONG_DIMENSION`,
 * `NOT_A_QUANTITY` when a column with two units gets a bare number
 * @throws QuantityError `UNKNOWN_UNIT`, `UNIT_SYNTAX` when a column's unit cannot be read
 * @example
 * const masses = table({
 *   title: "Mass by part",
 *   columns: [{ key: "part", title: "Part" }, { key: "mass", title: "Mass", units: ["kg", "lb"] }],
 *   rows: [{ part: "Pack", mass: { p10: q("490 kg"), p50: q("527 kg"), p90: q("570 kg") } }],
 * });
 * tableToMarkdown(masses).split("\n")[4]; // "| Pack | 527 (490 to 570) | 1162 (1080 to 1257) |"
 */
export function table(options: TableOptions): Table {
  readKeys("table", options, ["title", "columns", "rows", "caption?", "notes?"]);
  return showTable(readParts(options));
}
