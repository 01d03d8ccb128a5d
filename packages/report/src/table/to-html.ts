import { escapeHtml } from "../escape/html.js";
import { type Grid, type GridHead, headLine, tableGrid } from "./grid.js";
import { readTable } from "./read-table.js";
import type { Table } from "./table.js";
import { unbroken } from "./unbroken.js";

/**
 * A table as an HTML `table` element: a caption, heads with `scope="col"`, the first cell of each row as its head with
 * `scope="row"`. It brings no style but the side that cells keep to.
 *
 * @param table - the table
 * @returns markup; every text of the data is escaped
 * @throws InputError `WRONG_CHOICE`, `NOT_AN_OBJECT` when it is no table, and what `table` throws
 * @example
 * const masses = table({
 *   title: "Mass",
 *   columns: [{ key: "part", title: "Part" }, { key: "mass", title: "Mass", unit: "kg" }],
 *   rows: [{ part: "Pack", mass: { p10: q("490 kg"), p50: q("527 kg"), p90: q("570 kg") } }],
 * });
 * const lines = tableToHtml(masses).split("\n");
 * lines[0]; // '<table class="tarewatt-table">'
 * lines[1]; // "<caption><strong>Mass</strong></caption>"
 */
export function tableToHtml(table: Table): string {
  return gridToHtml(tableGrid(readTable("table", table)));
}

/** @internal */
export function gridToHtml({ title, heads, rows, caption, notes }: Grid): string {
  const detail = caption === "" ? "" : ` <span class="tarewatt-detail">${escapeHtml(caption)}</span>`;
  const headCells = heads.map((head) => `<th scope="col"${side(head)}>${escapeHtml(headLine(head))}</th>`).join("");
  const bodyRows = rows.map((row) => `<tr>${row.map((cell, column) => bodyCell(cell, column, heads)).join("")}</tr>`);
  const foot = notes.map((note) => `<tr><td colspan="${heads.length}">${escapeHtml(note)}</td></tr>`);
  return [
    '<table class="tarewatt-table">',
    `<caption><strong>${escapeHtml(title)}</strong>${detail}</caption>`,
    `<thead><tr>${headCells}</tr></thead>`,
    "<tbody>",
    ...bodyRows,
    "</tbody>",
    ...(foot.length === 0 ? [] : [`<tfoot>${foot.join("")}</tfoot>`]),
    "</table>\n",
  ].join("\n");
}

function bodyCell(cell: string, column: number, heads: readonly GridHead[]): string {
  const head = heads[column] as GridHead;
  // Numbers keep right.
  const text = escapeHtml(head.align === "right" ? unbroken(cell) : cell);
  return column === 0 ? `<th scope="row"${side(head)}>${text}</th>` : `<td${side(head)}>${text}</td>`;
}

function side({ align }: GridHead): string {
  return ` style="text-align:${align === "centre" ? "center" : align}"`;
}
