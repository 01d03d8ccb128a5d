import type { Table } from "../table/table.js";
import { toHtml } from "../table/to-html.js";
import { toMarkdown } from "../table/to-markdown.js";
import { toText } from "../table/to-text.js";
import { displayable } from "./display.js";

/** @internal Makes a table show itself in a notebook. */
export function showTable(table: Table): Table {
  return displayable(table, (shown) => ({
    "text/plain": toText(shown),
    "text/html": toHtml(shown),
    "text/markdown": toMarkdown(shown),
  }));
}
