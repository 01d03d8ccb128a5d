const NUMBER = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?$/;
// The four signs, their full-width forms, and the white space that a spreadsheet skips before it looks for them.
const FORMULA_START = /^[=+\-@＝＋－＠\t\r\n]/;

/**
 * @internal One field as RFC 4180 writes it. A text that a spreadsheet would run as a formula gets an apostrophe before it;
 * a number keeps its sign.
 */
export function csvField(text: string): string {
  const safe = FORMULA_START.test(text) && !NUMBER.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(safe) ? `"${safe.replace(/"/g, '""')}"` : safe;
}

/** @internal Records as RFC 4180 writes them: fields between commas, every record ended by CR LF. */
export function csvRecords(records: readonly (readonly string[])[]): string {
  return records.map((record) => `${record.map(csvField).join(",")}\r\n`).join("");
}
