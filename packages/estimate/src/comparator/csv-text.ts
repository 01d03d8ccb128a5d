import { InputError } from "@tarewatt/units";

/** Longest text, in characters. */
const MAX_TEXT = 5_000_000;

/** @internal A record of a table of text, and the line that it begins in, counted from 1. */
export interface CsvLine {
  readonly line: number;
  readonly cells: readonly string[];
}

/** @internal A table of text. */
export interface CsvTable {
  readonly lines: readonly CsvLine[];
  /** Whether a comma is the decimal mark: only where it does not separate columns. */
  readonly decimalComma: boolean;
}

/**
 * @internal Cuts a text into cells as RFC 4180 says (from memory), pasted sheets with tabs or semicolons included: quoted cells may hold
 * separators, quotes written twice, and line breaks. Nothing is evaluated. The separator is the first of tab, semicolon and comma
 * that the head has outside quotes.
 */
export function csvTable(text: string): CsvTable {
  if (text.length > MAX_TEXT) {
    throw new InputError("TOO_LONG", `text must have at most ${MAX_TEXT} characters: got ${text.length}`, {});
  }
  const plain = text.replace(/^\uFEFF/, "");
  const head = (/^(?:\s*\n)*(.*)/.exec(plain)?.[1] ?? "").replace(/"[^"]*"/g, "");
  const separator = ["\t", ";"].find((mark) => head.includes(mark)) ?? ",";
  const lines: CsvLine[] = [];
  let cells: string[] = [];
  let cell = "";
  let quoted = false;
  let wasQuoted = false;
  let line = 1;
  let begin = 1;
  const endCell = (): void => {
    cells.push(wasQuoted ? cell : cell.trim());
    cell = "";
    wasQuoted = false;
  };
  const endLine = (): void => {
    endCell();
    if (cells.some((each) => each !== "")) lines.push({ line: begin, cells });
    cells = [];
    begin = line + 1;
  };
  for (let i = 0; i < plain.length; i++) {
    const mark = plain.charAt(i);
    if (quoted) {
      if (mark === "\n") line += 1;
      if (mark !== '"') cell += mark;
      else if (plain.charAt(i + 1) === '"') {
        cell += '"';
        i += 1;
      } else quoted = false;
    } else if (mark === '"' && cell.trim() === "" && !wasQuoted) {
      quoted = true;
      wasQuoted = true;
      cell = "";
    } else if (mark === separator) endCell();
    else if (mark === "\n") {
      endLine();
      line += 1;
    } else if (mark !== "\r" && !(wasQuoted && mark.trim() === "")) cell += mark;
  }
  if (quoted) {
    throw new InputError("INCONSISTENT", `line ${begin}: a quotation mark is opened and never closed`, { line: begin });
  }
  endLine();
  return { lines, decimalComma: separator !== "," };
}

// The four signs that begin a formula, their full-width forms, and the white space that a spreadsheet skips before it looks for them
const FORMULA_START = /^[=+\-@＝＋－＠\t\r\n]/;
const NUMBER = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?$/;

/** @internal A field that no spreadsheet runs as a formula: such a text gets an apostrophe before it. */
export function csvField(text: string): string {
  const safe =
    (FORMULA_START.test(text) && !NUMBER.test(text)) || /^'+[=+\-@＝＋－＠\t\r\n]/.test(text) ? `'${text}` : text;
  return /[",;\t\r\n]/.test(safe) || safe !== safe.trim() ? `"${safe.replace(/"/g, '""')}"` : safe;
}

/** @internal The text of a cell without the apostrophe that made it harmless. */
export function csvPlain(text: string): string {
  return /^'+[=+\-@＝＋－＠\t\r\n]/.test(text) ? text.slice(1) : text;
}
