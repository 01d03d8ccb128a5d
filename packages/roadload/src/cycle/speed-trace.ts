import { converter, InputError, readOptions, type Source } from "@tarewatt/units";
import type { Cycle } from "./cycle.js";
import { makeCycle, type SpeedUnit } from "./make-cycle.js";
import { MAX_ROWS, segmentsOf } from "./segments.js";

/** Units that a table of times can be in. */
export type TimeUnit = "s" | "min" | "h";

/** Options of {@link speedTrace}. */
export interface SpeedTraceOptions {
  /** Name, as it shall appear in results. */
  readonly name: string;
  /** Time of every row, strictly increasing; 2 to 1 000 000 rows. */
  readonly time: ArrayLike<number>;
  /** Speed of every row, not negative, at most 150 m/s. */
  readonly speed: ArrayLike<number>;
  /** Unit of the times; s when left out. */
  readonly timeUnit?: TimeUnit;
  /** Unit of the speeds. */
  readonly speedUnit: SpeedUnit;
  /** Where the table is from; "own speed trace" when left out. */
  readonly source?: Source;
}

/** Faster than this, the unit is wrong. In m/s. */
const HIGHEST_SPEED = 150;

/**
 * A cycle from your own table of speed over time. Speed is taken as linear between the rows; steps longer than 1 s are
 * cut into equal parts of at most 1 s, so that a change from driving to braking inside them is seen.
 *
 * @param options - name, times, speeds, units
 * @returns the cycle; your arrays are copied
 * @throws InputError `EMPTY` below two rows, `TOO_LONG`, `INCONSISTENT` when the columns differ in length,
 *   `TIME_NOT_INCREASING`, `NOT_A_NUMBER`, `NEGATIVE`, `OUT_OF_RANGE` (each names the row, counted from 1), `WRONG_CHOICE`
 *   for an unknown unit, and what `readOptions` throws
 * @example
 * speedTrace({ name: "to the mill", time: [0, 10, 60, 70], speed: [0, 50, 50, 0], speedUnit: "km/h" }).distance; // 0.8333 km
 */
export function speedTrace(options: SpeedTraceOptions): Cycle {
  readOptions("speedTrace", options, {}, ["name", "time", "speed", "timeUnit?", "speedUnit", "source?"]);
  const { name, speedUnit, timeUnit = "s", source = { document: "own speed trace", status: "definition" } } = options;
  if (typeof name !== "string" || name.trim() === "") {
    throw new InputError("EMPTY", "name must be a text that is not empty", { name: "name" });
  }
  choice("speedUnit", speedUnit, ["m/s", "km/h", "mph"]);
  choice("timeUnit", timeUnit, ["s", "min", "h"]);
  const times = column("time", options.time);
  const speeds = column("speed", options.speed);
  if (times.length !== speeds.length) {
    throw new InputError(
      "INCONSISTENT",
      `time and speed must have as many rows: got ${times.length} and ${speeds.length}`,
      { time: times.length, speed: speeds.length },
    );
  }
  // One converter for a union of units: all of them are of one dimension, which the cast hides from the compiler.
  const time = times.map(converter(timeUnit as "min", "s"));
  const speed = speeds.map(converter(speedUnit as "km/h", "m/s"));
  for (let row = 0; row < time.length; row++) checkRow(options, time, speed, row);
  // Integrated now and not when first used, so that a trace that is too long is refused here.
  const segments = segmentsOf(time, speed);
  return makeCycle({ name, source, unit: speedUnit, table: () => ({ time, speed, segments }) });
}

function column(name: string, given: unknown): number[] {
  const numbers = Array.isArray(given) || (ArrayBuffer.isView(given) && !(given instanceof DataView));
  if (!numbers)
    throw new InputError("NOT_AN_OBJECT", `${name} must be an array of numbers: got ${typeof given}`, { name });
  const { length } = given as ArrayLike<unknown>;
  if (length < 2) throw new InputError("EMPTY", `${name} must have at least two rows: got ${length}`, { name, length });
  if (length > MAX_ROWS) {
    throw new InputError("TOO_LONG", `${name} must have at most ${MAX_ROWS} rows: got ${length}`, { name, length });
  }
  return Array.from(given as ArrayLike<number>);
}

function checkRow(options: SpeedTraceOptions, time: readonly number[], speed: readonly number[], row: number): void {
  const at = `in row ${row + 1}`;
  for (const [name, given] of [
    ["time", options.time[row]],
    ["speed", options.speed[row]],
  ] as const) {
    if (typeof given === "number" && Number.isFinite(given)) continue;
    throw new InputError("NOT_A_NUMBER", `${name} must be a finite number: got ${given} ${at}`, { name, row: row + 1 });
  }
  const velocity = speed[row] as number;
  if (velocity < 0) {
    throw new InputError("NEGATIVE", `speed must not be negative: got ${options.speed[row]} ${at}`, { row: row + 1 });
  }
  if (velocity > HIGHEST_SPEED) {
    throw new InputError(
      "OUT_OF_RANGE",
      `speed must be at most ${HIGHEST_SPEED} m/s: got ${options.speed[row]} ${options.speedUnit} ${at}; check the unit`,
      { row: row + 1 },
    );
  }
  if (row > 0 && (time[row] as number) <= (time[row - 1] as number)) {
    throw new InputError(
      "TIME_NOT_INCREASING",
      `time must increase from row to row: got ${options.time[row]} after ${options.time[row - 1]} ${at}`,
      { row: row + 1 },
    );
  }
}

function choice(name: string, given: string, allowed: readonly string[]): void {
  if (allowed.includes(given)) return;
  throw new InputError("WRONG_CHOICE", `${name} must be ${allowed.join(", ")}: got '${given}'`, { name, allowed });
}
