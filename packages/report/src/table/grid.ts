import { plainLine } from "../escape/plain.js";
import { readCell } from "./cell.js";
import { type Align, shownColumns } from "./column.js";
import { printCell } from "./print-cell.js";
import type { Table } from "./table.js";

/** @internal Head of a printed column. */
export interface GridHead {
  readonly title: string;
  /** Unit, empty when there is none to show. */
  readonly unit: string;
  readonly align: Align;
}

/** @internal What all printed forms share: texts in rows and columns, not yet escaped for any format. */
export interface Grid {
  readonly title: string;
  readonly heads: readonly GridHead[];
  readonly rows: readonly (readonly string[])[];
  readonly caption: string;
  readonly notes: readonly string[];
}

/** @internal The printed cells of a table. */
export function tableGrid({ title, columns, rows, caption = "", notes }: Table): Grid {
  const shown = shownColumns(columns);
  const read = rows.map((row, index) =>
    shown.map(({ key, unit, oneOfTwo }) => readCell(row[key], { name: `rows[${index}].${key}`, unit, oneOfTwo })),
  );
  const heads = shown.map(({ title: head, unit, align }, column): GridHead => {
    const cells = read.map((row) => row[column]);
    const texts = cells.some((cell) => cell?.kind === "text");
    return { title: plainLine(head), unit: unit ?? "", align: align ?? (column === 0 || texts ? "left" : "right") };
  });
  const printed = read.map((row) =>
    row.map((cell, column) => {
      const { unit, digits } = shown[column] as (typeof shown)[number];
      return printCell(cell, digits, { unitInHead: unit !== undefined });
    }),
  );
  return { title, heads, rows: printed, caption, notes };
}

/** @internal Title of a column with its unit in parentheses. */
export function headLine({ title, unit }: { readonly title: string; readonly unit: string }): string {
  return [title, headUnit(unit)].filter((part) => part !== "").join(" ");
}

/** @internal Unit of a column in parentheses; empty when there is none to show. */
export function headUnit(unit: string): string {
  return unit === "" || unit === "1" ? "" : `(${unit})`;
}
