import { InputError, nearest } from "@tarewatt/units";
import { ReportError } from "../check/errors.js";
import { readKeys, readList, readOptionalText, readText, readTexts, refuseRepeats } from "../check/read.js";
import { showTable } from "../notebook/show-table.js";
import { type Cell, readCell } from "./cell.js";
import { type Column, readColumn, shownColumns } from "./column.js";

/** What {@link table} takes. */
export interface TableOptions {
  /** What the table shows. */
  readonly title: string;
  /** The columns, left to right; the first one names the rows. */
  readonly columns: readonly Column[];
  /** The rows: cells by the key of their column. A key left out shows as a dash. */
  readonly rows: readonly Readonly<Record<string, Cell>>[];
  /** What a reader should know before reading the numbers, such as the conditions. */
  readonly caption?: string;
  /** Remarks below the table. */
  readonly notes?: readonly string[];
}

/**
 * A table as plain, frozen data; {@link toText}, {@link toMarkdown}, {@link toHtml} and {@link toCsv} print it. In a notebook
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
  readonly rows: readonly Readonly<Record<string, Cell>>[];
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
 * toMarkdown(masses); // "... | Pack | 527 (490 to 570) | 1162 (1080 to 1257) |"
 */
export function table(options: TableOptions): Table {
  readKeys("table", options, ["title", "columns", "rows", "caption?", "notes?"]);
  const title = readText("title", options.title);
  const columns = Object.freeze(readList("columns", options.columns).map(readColumn));
  const keys = columns.map(({ key }) => key);
  refuseRepeats("the column", keys);
  const rows = Object.freeze(readList("rows", options.rows).map((row, index) => readRow(row, index, keys)));
  const shown = shownColumns(columns);
  for (const [index, row] of rows.entries()) {
    for (const { key, unit, oneOfTwo } of shown) readCell(row[key], { name: `rows[${index}].${key}`, unit, oneOfTwo });
  }
  const caption = readOptionalText("caption", options.caption);
  const notes = readTexts("notes", options.notes);
  return showTable({ kind: "table", title, columns, rows, ...(caption === undefined ? {} : { caption }), notes });
}

function readRow(row: Readonly<Record<string, Cell>>, index: number, keys: readonly string[]) {
  if (typeof row !== "object" || row === null || Array.isArray(row)) {
    throw new InputError("NOT_AN_OBJECT", `rows[${index}] must be an object of cells by column key`, { index });
  }
  for (const key of Object.keys(row)) {
    if (keys.includes(key)) continue;
    const [near] = nearest(key, keys);
    const hint = near === undefined ? `the columns are ${keys.join(", ")}` : `did you mean '${near}'?`;
    throw new ReportError("UNKNOWN_COLUMN", `rows[${index}] has '${key}', which is no column: ${hint}`, {
      key,
      known: keys,
    });
  }
  // Own cells only: a column may be called "constructor".
  return Object.freeze(Object.fromEntries(keys.map((key) => [key, Object.hasOwn(row, key) ? row[key] : undefined])));
}
