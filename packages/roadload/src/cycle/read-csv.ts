import { InputError } from "@tarewatt/units";

/** Longest text, in characters: a day at 10 Hz with four columns fits. */
const MAX_TEXT = 50_000_000;
/** Longest number, in characters: none needs more. */
const MAX_CELL = 40;
/** How many bad rows an error lists; it counts all. @internal */
export const MAX_LISTED = 20;

/** A row of a table of text, and where it stands. @internal */
export interface Line {
  /** Counted from 1, comments and empty lines included, as an editor shows it. */
  readonly number: number;
  readonly cells: readonly string[];
}

/** A table of text. @internal */
export interface TextTable {
  readonly header: readonly string[];
  readonly lines: readonly Line[];
  /** Whether a comma is the decimal mark: only where it does not separate columns. */
  readonly decimalComma: boolean;
}

/**
 * Cuts a text into cells. Columns are separated by tabs, semicolons or commas, whichever the header has first in this order;
 * empty lines and lines that start with # are passed over. Nothing is evaluated, and a quoted cell holds no separator.
 * @internal
 */
export function readCsv(text: string): TextTable {
  if (text.length > MAX_TEXT) {
    throw new InputError("TOO_LONG", `text must have at most ${MAX_TEXT} characters: got ${text.length}`, {
      length: text.length,
      atMost: MAX_TEXT,
    });
  }
  const lines = text
    .replace(/^\uFEFF/, "")
    .split(/\r\n|\n|\r/)
    .map((line, index) => ({ line, number: index + 1 }))
    .filter(({ line }) => line.trim() !== "" && !line.trimStart().startsWith("#"));
  const [first] = lines;
  if (first === undefined) throw new InputError("EMPTY", "text must hold a header and rows: it has none", {});
  const separator = ["\t", ";"].find((mark) => first.line.includes(mark)) ?? ",";
  const cellsOf = (line: string): string[] =>
    line.split(separator).map((cell) =>
      cell
        .trim()
        .replace(/^"(.*)"$/, "$1")
        .trim(),
    );
  return {
    header: cellsOf(first.line),
    lines: lines.slice(1).map(({ line, number }) => ({ number, cells: cellsOf(line) })),
    decimalComma: separator !== ",",
  };
}

/** A number as people and loggers write it; undefined when it is none. @internal */
export function readCell(cell: string | undefined, decimalComma: boolean): number | undefined {
  if (cell === undefined || cell.length > MAX_CELL) return undefined;
  const text = decimalComma ? cell.replace(",", ".") : cell;
  if (!/^[+\-−]?(\d+(?:\.\d*)?|\.\d+)([eE][+-]?\d+)?$/.test(text)) return undefined;
  const value = Number(text.replace("−", "-"));
  return Number.isFinite(value) ? value : undefined;
}
