import { describeGiven, InputError, nearest } from "@tarewatt/units";
import { ReportError } from "../check/errors.js";
import { readList, readOptionalText, readRecord, readText, readTexts, refuseRepeats } from "../check/read.js";
import { keptCell, readCell, type TableCell } from "./cell.js";
import { readColumn, shownColumns } from "./column.js";
import type { Table, TableOptions } from "./table.js";

/** @internal What a table is made of, checked and copied. */
export function readParts(options: TableOptions): Table {
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
  return { kind: "table", title, columns, rows, ...(caption === undefined ? {} : { caption }), notes };
}

/** @internal A table that is to be printed: of any copy of the library, or changed by hand, so it is read again. */
export function readTable(name: string, given: Table): Table {
  const { kind } = readRecord(name, given);
  if (kind === "table") return readParts(given);
  throw new InputError("WRONG_CHOICE", `${name} must be made by table: its kind is ${describeGiven(kind)}`, { name });
}

function readRow(given: Readonly<Record<string, TableCell>>, index: number, keys: readonly string[]) {
  const row = readRecord(`rows[${index}]`, given);
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
  return Object.freeze(
    Object.fromEntries(keys.map((key) => [key, keptCell(Object.hasOwn(row, key) ? row[key] : undefined)])),
  );
}
