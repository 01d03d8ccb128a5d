import { describeGiven, InputError, readOptions, type Source } from "@tarewatt/units";
import { readWords } from "../check/read-words.js";
import { type Column, findColumns } from "./csv-columns.js";
import type { Cycle } from "./cycle.js";
import { type Line, MAX_LISTED, readCell, readCsv } from "./read-csv.js";
import type { TimeUnit } from "./read-table.js";
import { speedTrace } from "./speed-trace.js";
import type { SpeedUnit } from "./speed-unit.js";
import { gradesOfRows } from "./table-of.js";

/** Options of {@link speedTraceFromCsv}. */
export interface SpeedTraceFromCsvOptions {
  /** Name, as it shall appear in results. */
  readonly name: string;
  /** The text of the table, with a header; at most 50 million characters. */
  readonly text: string;
  /** Unit of the times, when the header does not say it. */
  readonly timeUnit?: TimeUnit | undefined;
  /** Unit of the speeds, when the header does not say it. */
  readonly speedUnit?: SpeedUnit | undefined;
  /** Unit of the grades, when the header does not say it: `"%"`, or `"1"` for rise over run. */
  readonly gradeUnit?: "%" | "1" | undefined;
  /** Unit of the altitudes, when the header does not say it. */
  readonly altitudeUnit?: "m" | "ft" | undefined;
  /** Where the table is from; "own speed trace" when left out. */
  readonly source?: Source | undefined;
}

/** A row that cannot be read, as `details.rows` of the error lists it. */
export interface BadRow {
  /** Line of the text, counted from 1, comments and empty lines included. */
  readonly line: number;
  /** What is wrong, in words. */
  readonly problem: string;
}

/**
 * A cycle from the text of a table: columns of time and speed, and of grade or altitude if there are any. Other columns are
 * passed over. Units stand in the header, as in `speed (km/h)`, `speed [mph]` or `speed_kmh`, or are given as options.
 *
 * Steps of time may be uneven. The grade between two rows is the mean of theirs, or the difference of their altitudes over
 * the distance between them; where the vehicle rests, the altitude gives none. Nothing is smoothed, filled in or evaluated:
 * a row that cannot be read is refused, and the error names all such rows by their lines.
 *
 * @param options - the text and its units
 * @returns the cycle
 * @throws InputError `INCONSISTENT` when rows cannot be read (its `details.rows` lists the first twenty, `details.total`
 *   counts all) or there are both grades and altitudes, `MISSING_OPTION` for a column or unit that nothing names, `EMPTY`,
 *   `TOO_LONG`, `WRONG_CHOICE`, and what {@link speedTrace} throws
 * @example
 * const text = "time (s),speed (km/h),altitude (m)\n0,0,210\n10,50,210\n60,50,220\n70,0,220";
 * const trip = speedTraceFromCsv({ name: "to the mill", text });
 * trip.distance.in("m"); // 833.3
 * trip.grade?.[2]; // 0.0144...
 */
export function speedTraceFromCsv(options: SpeedTraceFromCsvOptions): Cycle {
  readOptions("speedTraceFromCsv", options, {}, [
    ...["name", "text", "timeUnit?", "speedUnit?", "gradeUnit?", "altitudeUnit?", "source?"],
  ]);
  const { text, source } = options;
  const name = readWords("name", options.name);
  if (typeof text !== "string") {
    throw new InputError("WRONG_CHOICE", `text must be a text: got ${describeGiven(text)}`, { name: "text" });
  }
  const { header, lines, decimalComma } = readCsv(text);
  const columns = findColumns(header, {
    time: unitWords("timeUnit", options.timeUnit),
    speed: unitWords("speedUnit", options.speedUnit),
    grade: unitWords("gradeUnit", options.gradeUnit),
    altitude: unitWords("altitudeUnit", options.altitudeUnit),
  });
  const { time, speed, grade, altitude } = columns as Required<typeof columns>;
  if (grade !== undefined && altitude !== undefined) {
    throw new InputError(
      "INCONSISTENT",
      `there are grades ('${grade.title}') and altitudes ('${altitude.title}'), which may not agree: keep one of them`,
      {},
    );
  }
  const wanted = [time, speed, ...[grade, altitude].filter((column) => column !== undefined)];
  const [times = [], speeds = [], heights] = readColumns(lines, wanted, decimalComma, header.length);
  return speedTrace({
    name,
    time: times,
    speed: speeds,
    timeUnit: "s",
    speedUnit: "m/s",
    ...(heights === undefined
      ? {}
      : { grade: gradesOfRows(grade === undefined ? fromAltitudes(times, speeds, heights) : meansOf(heights)) }),
    ...(source === undefined ? {} : { source }),
  });
}

/** The wanted columns in SI units, or an error that names every row that is wrong. */
function readColumns(
  lines: readonly Line[],
  wanted: readonly Column[],
  decimalComma: boolean,
  width: number,
): number[][] {
  const lists: number[][] = wanted.map(() => []);
  const bad: BadRow[] = [];
  let total = 0;
  let before = Number.NEGATIVE_INFINITY;
  for (const { number, cells } of lines) {
    const values = wanted.map(({ index }) => readCell(cells[index], decimalComma));
    const problem = surplusOf(cells, width, decimalComma) ?? problemOf(values, cells, wanted, before);
    if (problem !== undefined) {
      total++;
      if (bad.length < MAX_LISTED) bad.push(Object.freeze({ line: number, problem }));
      continue;
    }
    before = values[0] as number;
    values.forEach((value, i) => {
      lists[i]?.push((value as number) * (wanted[i] as Column).factor);
    });
  }
  if (total === 0) return lists;
  const more = total > bad.length ? `; and ${total - bad.length} more` : "";
  throw new InputError(
    "INCONSISTENT",
    `${total} of ${lines.length} rows cannot be read: ${bad.map(({ line, problem }) => `line ${line}, ${problem}`).join("; ")}${more}`,
    { rows: Object.freeze(bad), total },
  );
}

/** A row with more cells than the header has none of its cells where they belong: "10,5" is two cells where commas separate. */
function surplusOf(cells: readonly string[], width: number, decimalComma: boolean): string | undefined {
  if (cells.slice(width).every((cell) => cell === "")) return undefined;
  const hint = decimalComma ? "" : "; where a comma is the decimal mark, separate the columns by semicolons";
  return `it has ${cells.length} cells, and the header ${width}${hint}`;
}

function problemOf(
  values: readonly (number | undefined)[],
  cells: readonly string[],
  wanted: readonly Column[],
  before: number,
): string | undefined {
  const missing = values.indexOf(undefined);
  if (missing >= 0) {
    const { index, title } = wanted[missing] as Column;
    const cell = cells[index];
    return `${title} is ${cell === undefined || cell === "" ? "missing" : `no number: '${cell.slice(0, 30)}'`}`;
  }
  const [time, speed] = values as readonly number[] as readonly [number, number];
  if (time <= before) return `time does not increase: ${time} after ${before}`;
  return speed < 0 ? `speed is negative: ${speed}` : undefined;
}

function meansOf(grades: readonly number[]): number[] {
  return grades.slice(1).map((grade, row) => (grade + (grades[row] as number)) / 2);
}

/** Less way than this between two rows is rest: an altitude says nothing of its grade. In m. */
const NO_WAY = 0.1;

function fromAltitudes(time: readonly number[], speed: readonly number[], altitude: readonly number[]): number[] {
  return altitude.slice(1).map((height, row) => {
    const seconds = (time[row + 1] as number) - (time[row] as number);
    const way = (((speed[row] as number) + (speed[row + 1] as number)) / 2) * seconds;
    if (way < NO_WAY) return 0;
    const rise = height - (altitude[row] as number);
    if (Math.abs(rise) >= way) {
      throw new InputError(
        "OUT_OF_RANGE",
        `the altitude changes by ${Number(rise.toPrecision(4))} m over ${Number(way.toPrecision(4))} m of road after data row ` +
          `${row + 1}: check its unit, or leave the altitudes out`,
        { row: row + 1 },
      );
    }
    // The way lies on the road, the run on the map.
    return rise / Math.sqrt(way * way - rise * rise);
  });
}

function unitWords(name: string, given: unknown): string | undefined {
  if (given === undefined || typeof given === "string") return given;
  throw new InputError("WRONG_CHOICE", `${name} must be a text: got ${describeGiven(given)}`, { name });
}
