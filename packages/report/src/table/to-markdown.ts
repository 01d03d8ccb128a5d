import { escapeMarkdown, markdownParagraph } from "../escape/markdown.js";
import { type Grid, headLine, tableGrid } from "./grid.js";
import { readTable } from "./read-table.js";
import type { Table } from "./table.js";

const RULES = { left: "---", right: "---:", centre: ":---:" } as const;

/**
 * A table in Markdown, in the pipe form that GitHub-flavoured Markdown and notebooks read.
 *
 * @param table - the table
 * @returns title, table, caption and notes; every text of the data is escaped
 * @throws InputError `WRONG_CHOICE`, `NOT_AN_OBJECT` when it is no table, and what `table` throws
 * @example
 * const masses = table({
 *   title: "Mass",
 *   columns: [{ key: "part", title: "Part" }, { key: "mass", title: "Mass", unit: "kg" }],
 *   rows: [{ part: "Pack", mass: { p10: q("490 kg"), p50: q("527 kg"), p90: q("570 kg") } }],
 * });
 * tableToMarkdown(masses); // "**Mass**\n\n| Part | Mass (kg) |\n| --- | ---: |\n| Pack | 527 (490 to 570) |\n"
 */
export function tableToMarkdown(table: Table): string {
  return gridToMarkdown(tableGrid(readTable("table", table)));
}

/** @internal */
export function gridToMarkdown({ title, heads, rows, caption, notes }: Grid): string {
  const line = (cells: readonly string[]): string => `| ${cells.join(" | ")} |`;
  const lines = [
    line(heads.map((head) => escapeMarkdown(headLine(head)))),
    line(heads.map(({ align }) => RULES[align])),
    ...rows.map((row) => line(row.map(escapeMarkdown))),
  ].join("\n");
  const parts = [`**${escapeMarkdown(title)}**`, lines];
  if (caption !== "") parts.push(markdownParagraph(caption));
  parts.push(...notes.map((note) => `Note: ${escapeMarkdown(note)}`));
  return `${parts.join("\n\n")}\n`;
}
