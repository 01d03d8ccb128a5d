import { describeGiven, type Step } from "@tarewatt/units";
import { ReportError } from "../check/errors.js";
import { readKeys, readList, readText, readTexts } from "../check/read.js";
import { escapeHtml } from "../escape/html.js";
import type { Figure } from "../figure/figure.js";
import { figureElement } from "../figure/figure-html.js";
import { readFigureWords } from "../figure/read-figure.js";
import { tableGrid } from "../table/grid.js";
import { readTable } from "../table/read-table.js";
import type { Table } from "../table/table.js";
import { gridToHtml } from "../table/to-html.js";
import { workingToHtml } from "../working/to-html.js";

/** A table on a page. */
export interface TableBlock {
  /** Says that this is a table. */
  readonly kind: "table";
  /** The table. */
  readonly table: Table;
}

/** A figure on a page. */
export interface FigureBlock {
  /** Says that this is a figure. */
  readonly kind: "figure";
  /** The figure: alternative text and caption. */
  readonly figure: Figure;
  /** Its picture, from `figureToSvg(figure, { caption: false })`: the page prints the caption. */
  readonly svg: string;
}

/** Steps of a calculation on a page. */
export interface WorkingBlock {
  /** Says that these are steps. */
  readonly kind: "working";
  /** What is calculated; printed above the steps. */
  readonly title: string;
  /** The steps. */
  readonly steps: readonly Step[];
}

/** A paragraph on a page. */
export interface TextBlock {
  /** Says that this is a paragraph. */
  readonly kind: "text";
  /** The text; plain, no markup. */
  readonly text: string;
}

/** A list on a page. */
export interface ListBlock {
  /** Says that this is a list. */
  readonly kind: "list";
  /** The entries; plain, no markup. */
  readonly items: readonly string[];
}

/** What a section of a page is made of. */
export type Block = TableBlock | FigureBlock | WorkingBlock | TextBlock | ListBlock;

/** @internal A block as HTML. */
export function blockHtml(block: Block, where: string): string {
  switch (block?.kind) {
    case "table":
      readKeys(where, block, ["kind", "table"]);
      return tableRegion(readTable(`${where}.table`, block.table));
    case "figure":
      readKeys(where, block, ["kind", "figure", "svg"]);
      return figureElement(readFigureWords(block.figure), block.svg);
    case "working":
      readKeys(where, block, ["kind", "title", "steps"]);
      readList(`${where}.steps`, block.steps);
      return `<p><strong>${escapeHtml(readText(`${where}.title`, block.title))}</strong></p>\n${workingToHtml(block.steps)}`;
    case "text":
      readKeys(where, block, ["kind", "text"]);
      return `<p>${escapeHtml(readText(`${where}.text`, block.text))}</p>\n`;
    case "list":
      readKeys(where, block, ["kind", "items"]);
      return listHtml(readTexts(`${where}.items`, readList(`${where}.items`, block.items)));
    default:
      throw new ReportError(
        "UNKNOWN_BLOCK",
        `${where}.kind must be table, figure, working, text or list: got ${describeGiven((block as { kind?: unknown } | null)?.kind)}`,
        { where },
      );
  }
}

/** A table wider than the page scrolls by itself, by keyboard too. */
function tableRegion(table: Table): string {
  const label = escapeHtml(table.title);
  return `<section class="scroll" tabindex="0" aria-label="${label}">\n${gridToHtml(tableGrid(table))}</section>\n`;
}

/** @internal */
export function listHtml(items: readonly string[]): string {
  return `<ul>${items.map((item) => `<li>${escapeHtml(item)}</li>`).join("")}</ul>\n`;
}
