import { describeGiven, InputError, readOptions } from "@tarewatt/units";
import { type CsvLine, csvTable } from "./csv-text.js";
import { type Column, columnOf, readCell } from "./record-cells.js";
import { type VehicleRecord, vehicleRecord } from "./vehicle-record.js";

/** What {@link vehicleRecordsFromCsv} needs. */
export interface VehicleRecordsFromCsvOptions {
  /** The table, as pasted out of a sheet or read from a file; at most 5 million characters. */
  readonly text: string;
}

/** What was found in a table. */
export interface VehicleRecordsRead {
  /** One record for each line. */
  readonly records: readonly VehicleRecord[];
  /** Columns that were not read. */
  readonly warnings: readonly string[];
}

/** Something wrong in a table, as `details.faults` of the error lists it. */
export interface CsvFault {
  /** Line of the text, counted from 1. */
  readonly line: number;
  /** Head of the column; empty where a whole line is meant. */
  readonly column: string;
  /** What is wrong, in words. */
  readonly problem: string;
}

const MAX_LISTED = 20;
const MOST_COLUMNS = 500;

/**
 * Documented vehicles from a table with units in its heads, such as `curb mass (kg)`, separated by tabs, semicolons or commas. A column may
 * leave its unit to the cells. Where the comma does not separate columns it may be the decimal mark. Items of equipment
 * stand between vertical bars: `tow bar | glass roof`.
 *
 * @param options - the text
 * @returns the records, and a warning for columns that mean nothing here
 * @throws InputError `INCONSISTENT` with every fault, by line and column, in `details.faults`; `EMPTY` without a head and a line; `TOO_LONG`
 * @example
 * const text = "name\tcurb mass (lb)\tpack mass (kg)\tequipment\nvan (invented)\t5467\t560,5\ttow bar | third row of seats";
 * const [van] = vehicleRecordsFromCsv({ text }).records;
 * van?.curbMass.in("lb"); // 5467
 * van?.packMass; // 560.5 kg
 */
export function vehicleRecordsFromCsv(options: VehicleRecordsFromCsvOptions): VehicleRecordsRead {
  readOptions("vehicleRecordsFromCsv", options, {}, ["text"]);
  const text: unknown = options.text;
  if (typeof text !== "string") {
    throw new InputError("WRONG_CHOICE", `text must be a text: got ${describeGiven(text)}`, {});
  }
  const { lines, decimalComma } = csvTable(text);
  const [head, ...rows] = lines;
  if (head === undefined || rows.length === 0) {
    throw new InputError("EMPTY", "the table must have a line of heads and at least one vehicle", {});
  }
  if (head.cells.length > MOST_COLUMNS) {
    throw new InputError("TOO_LONG", `a table must have at most ${MOST_COLUMNS} columns: got ${head.cells.length}`, {});
  }
  const faults: CsvFault[] = [];
  const columns = head.cells.map((title) => columnOf(title));
  columns.forEach((column, i) => {
    const title = head.cells[i] as string;
    if ("problem" in column) faults.push({ line: head.line, column: title, problem: column.problem });
    else if (column.key !== undefined && columns.findIndex((each) => "key" in each && each.key === column.key) < i) {
      faults.push({ line: head.line, column: title, problem: `another column holds the ${column.key}, too` });
    }
  });
  for (const key of ["name", "curbMass"] as const) {
    if (!columns.some((column) => "key" in column && column.key === key)) {
      const wanted = key === "name" ? "'name'" : "'curb mass (kg)'";
      faults.push({ line: head.line, column: "", problem: `there is no column ${wanted}` });
    }
  }
  const good = faults.length === 0;
  const records = rows.flatMap((row) => {
    const parts = readRow(row, columns, head.cells, decimalComma, faults);
    if (!good || parts === undefined) return [];
    try {
      return [vehicleRecord(parts)];
    } catch (error) {
      faults.push({ line: row.line, column: "", problem: (error as Error).message });
      return [];
    }
  });
  refuseRepeatedNames(records, rows, faults);
  if (faults.length > 0) throw faulty(faults);
  const ignored = head.cells.filter((_, i) => {
    const column = columns[i];
    return column !== undefined && "key" in column && column.key === undefined;
  });
  const warnings =
    ignored.length === 0 ? [] : [`columns that were not read: ${ignored.map((each) => `'${each}'`).join(", ")}`];
  return Object.freeze({ records: Object.freeze(records), warnings: Object.freeze(warnings) });
}

/** The parts of a record; undefined when a cell of it is at fault. */
function readRow(
  { line, cells }: CsvLine,
  columns: readonly Column[],
  heads: readonly string[],
  decimalComma: boolean,
  faults: CsvFault[],
): VehicleRecord | undefined {
  const before = faults.length;
  if (cells.length > columns.length && cells.slice(columns.length).some((cell) => cell !== "")) {
    faults.push({ line, column: "", problem: `has ${cells.length} cells under ${columns.length} heads` });
  }
  const parts: Record<string, unknown> = {};
  columns.forEach((column, i) => {
    const cell = cells[i] ?? "";
    if ("problem" in column || column.key === undefined || cell === "") return;
    try {
      parts[column.key] = readCell(cell, column.key, column.unit, decimalComma);
    } catch (error) {
      faults.push({ line, column: heads[i] as string, problem: (error as Error).message });
    }
  });
  return faults.length > before ? undefined : (parts as unknown as VehicleRecord);
}

function refuseRepeatedNames(records: readonly VehicleRecord[], rows: readonly CsvLine[], faults: CsvFault[]): void {
  if (records.length !== rows.length) return;
  const seen = new Map<string, number>();
  records.forEach(({ name }, i) => {
    const line = (rows[i] as CsvLine).line;
    const first = seen.get(name);
    if (first === undefined) seen.set(name, line);
    else faults.push({ line, column: "name", problem: `'${name}' stands in line ${first} already` });
  });
}

function faulty(faults: readonly CsvFault[]): InputError {
  const sorted = [...faults].sort((a, b) => a.line - b.line);
  const listed = sorted
    .slice(0, MAX_LISTED)
    .map(({ line, column, problem }) => `line ${line}${column === "" ? "" : `, '${column.slice(0, 40)}'`}: ${problem}`);
  const more = sorted.length > MAX_LISTED ? `\nand ${sorted.length - MAX_LISTED} more` : "";
  const count = sorted.length === 1 ? "one fault" : `${sorted.length} faults`;
  return new InputError("INCONSISTENT", `the table has ${count}:\n${listed.join("\n")}${more}`, {
    faults: Object.freeze(sorted.map((each) => Object.freeze(each))),
  });
}
