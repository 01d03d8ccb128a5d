import type { Table } from "../table/table.js";
import { tableToHtml } from "../table/to-html.js";
import { tableToMarkdown } from "../table/to-markdown.js";
import { tableToText } from "../table/to-text.js";
import { displayable } from "./display.js";

/** @internal Makes a table show itself in a notebook. */
export function showTable(table: Table): Table {
  return displayable(table, (shown) => ({
    "text/plain": tableToText(shown),
    "text/html": tableToHtml(shown),
    "text/markdown": tableToMarkdown(shown),
  }));
}
