import { plainLine } from "../escape/plain.js";
import { type Grid, type GridHead, headUnit, tableGrid } from "./grid.js";
import { readTable } from "./read-table.js";
import type { Table } from "./table.js";
import { textWidth } from "./width.js";

const GAP = "   ";

/**
 * A table as aligned plain text for a terminal or a monospaced page: title, heads, units, a rule, rows.
 *
 * @param table - the table
 * @returns lines without trailing spaces, each ended by a line feed
 * @throws InputError `WRONG_CHOICE`, `NOT_AN_OBJECT` when it is no table, and what `table` throws
 * @example
 * const masses = table({
 *   title: "Mass",
 *   columns: [{ key: "part", title: "Part" }, { key: "mass", title: "Mass", unit: "kg" }],
 *   rows: [{ part: "Pack", mass: { p10: q("490 kg"), p50: q("527 kg"), p90: q("570 kg") } }],
 * });
 * const lines = tableToText(masses).split("\n");
 * lines[2]; // "Part               Mass"
 * lines[3]; // "                   (kg)"
 * lines[4]; // "----   ----------------"
 * lines[5]; // "Pack   527 (490 to 570)"
 */
export function tableToText(table: Table): string {
  return gridToText(tableGrid(readTable("table", table)));
}

/** @internal */
export function gridToText({ title, heads, rows, caption, notes }: Grid): string {
  const titles = heads.map((head) => head.title);
  const units = heads.map(({ unit }) => headUnit(unit));
  const widths = heads.map((_, column) =>
    Math.max(...[titles, units, ...rows].map((row) => textWidth(row[column] ?? ""))),
  );
  const line = (cells: readonly string[]): string =>
    cells
      .map((cell, column) => pad(cell, widths[column] as number, heads[column] as GridHead))
      .join(GAP)
      .trimEnd();
  const hasUnits = units.some((unit) => unit !== "");
  return [
    plainLine(title),
    ...(caption === "" ? [] : [plainLine(caption)]),
    "",
    line(titles),
    ...(hasUnits ? [line(units)] : []),
    widths.map((width) => "-".repeat(width)).join(GAP),
    ...rows.map(line),
    ...(notes.length === 0 ? [] : ["", ...notes.map((note) => `Note: ${plainLine(note)}`)]),
  ]
    .map((text) => `${text}\n`)
    .join("");
}

function pad(cell: string, width: number, { align }: GridHead): string {
  const room = width - textWidth(cell);
  const before = align === "left" ? 0 : align === "right" ? room : Math.floor(room / 2);
  return `${" ".repeat(before)}${cell}${" ".repeat(room - before)}`;
}
