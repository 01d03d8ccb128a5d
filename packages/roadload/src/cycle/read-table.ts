import { converter, describeGiven, InputError } from "@tarewatt/units";
import { MAX_ROWS } from "./pieces.js";
import type { SpeedUnit } from "./speed-unit.js";

/** Units that a table of times can be in. */
export type TimeUnit = "s" | "min" | "h";

/** A table of speed over time as somebody gave it. @internal */
export interface GivenTable {
  readonly time: unknown;
  readonly speed: unknown;
  readonly timeUnit: TimeUnit;
  readonly speedUnit: SpeedUnit;
}

/** Faster than this, the unit is wrong. In m/s. */
const HIGHEST_SPEED = 150;

/** Checks a table row by row and copies it, in s and m/s. @internal */
export function readTable(given: GivenTable): { time: number[]; speed: number[] } {
  const times = column("time", given.time);
  const speeds = column("speed", given.speed);
  if (times.length !== speeds.length) {
    throw new InputError(
      "INCONSISTENT",
      `time and speed must have as many rows: got ${times.length} and ${speeds.length}`,
      { time: times.length, speed: speeds.length },
    );
  }
  // One converter for a union of units: all of them are of one dimension, which the cast hides from the compiler.
  const time = times.map(converter(given.timeUnit as "min", "s"));
  const speed = speeds.map(converter(given.speedUnit as "km/h", "m/s"));
  for (let row = 0; row < time.length; row++) {
    checkSpeed(speed[row] as number, `${speeds[row]} ${given.speedUnit}`, row + 1);
    if (row === 0 || (time[row] as number) > (time[row - 1] as number)) continue;
    throw new InputError(
      "TIME_NOT_INCREASING",
      `time must increase from row to row: got ${times[row]} after ${times[row - 1]} in row ${row + 1}`,
      { row: row + 1 },
    );
  }
  return { time, speed };
}

/** Steeper than this there is no road: rise over run. */
const STEEPEST = 1;

/** Checks grades and copies them. @internal */
export function readGrades(given: unknown, expected: number): number[] {
  const grades = column("grade", given);
  if (grades.length !== expected) {
    throw new InputError(
      "INCONSISTENT",
      `grade must have one number for every row, from the row before: got ${grades.length} for ${expected} rows`,
      { given: grades.length, expected },
    );
  }
  grades.forEach((grade, index) => {
    if (Math.abs(grade) <= STEEPEST) return;
    throw new InputError(
      "OUT_OF_RANGE",
      `grade must be from -1 to 1, rise over run: got ${grade} in row ${index + 1}; 5 % is 0.05`,
      { row: index + 1 },
    );
  });
  return grades;
}

function column(name: string, given: unknown): number[] {
  // No instanceof: arrays of another realm are arrays too. A DataView is a view without a length.
  if (!Array.isArray(given) && !(ArrayBuffer.isView(given) && "length" in given)) {
    throw new InputError("NOT_AN_OBJECT", `${name} must be an array of numbers: got ${describeGiven(given)}`, { name });
  }
  const { length } = given as ArrayLike<unknown>;
  if (length < 2) throw new InputError("EMPTY", `${name} must have at least two rows: got ${length}`, { name, length });
  if (length > MAX_ROWS) {
    throw new InputError("TOO_LONG", `${name} must have at most ${MAX_ROWS} rows: got ${length}`, { name, length });
  }
  return Array.from(given as ArrayLike<unknown>, (value, row) => {
    if (typeof value === "number" && Number.isFinite(value)) return value;
    throw new InputError(
      "NOT_A_NUMBER",
      `${name} must be a finite number: got ${describeGiven(value)} in row ${row + 1}`,
      { name, row: row + 1 },
    );
  });
}

function checkSpeed(speed: number, given: string, row: number): void {
  if (speed < 0) {
    throw new InputError("NEGATIVE", `speed must not be negative: got ${given} in row ${row}`, { row });
  }
  if (speed > HIGHEST_SPEED) {
    throw new InputError(
      "OUT_OF_RANGE",
      `speed must be at most ${HIGHEST_SPEED} m/s: got ${given} in row ${row}; check the unit`,
      { row },
    );
  }
}
