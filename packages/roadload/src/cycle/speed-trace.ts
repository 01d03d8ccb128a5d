import { describeGiven, InputError, readOptions, type Source, sourceLine } from "@tarewatt/units";
import { readWords } from "../check/read-words.js";
import type { Cycle } from "./cycle.js";
import { makeCycle } from "./make-cycle.js";
import { doubtsOf } from "./physical-sense.js";
import { cutIntoPieces } from "./pieces.js";
import { readGrades, readTable, type TimeUnit } from "./read-table.js";
import type { SpeedUnit } from "./speed-unit.js";

/** Options of {@link speedTrace}. */
export interface SpeedTraceOptions {
  /** Name, as it shall appear in results. */
  readonly name: string;
  /** Time of every row, strictly increasing; 2 to 1 000 000 rows. */
  readonly time: ArrayLike<number>;
  /** Speed of every row, not negative, at most 150 m/s. */
  readonly speed: ArrayLike<number>;
  /** Unit of the times; s when left out. */
  readonly timeUnit?: TimeUnit | undefined;
  /** Unit of the speeds. */
  readonly speedUnit: SpeedUnit;
  /**
   * Grade of the road from the row before to every row: rise over run, positive uphill, −1 to 1; the first is not read.
   * Level road when left out.
   */
  readonly grade?: ArrayLike<number> | undefined;
  /** Where the table is from; "own speed trace" when left out. */
  readonly source?: Source | undefined;
}

/**
 * A cycle from your own table of speed over time. Speed is taken as linear between the rows; steps longer than 1 s are
 * cut into equal parts of at most 1 s, so that a change from driving to braking inside them is seen.
 *
 * Nothing is smoothed. A trace that changes speed faster than road vehicles can is kept, and its `warnings` say so.
 *
 * @param options - name, times, speeds, units
 * @returns the cycle; your arrays are copied
 * @throws InputError `EMPTY` below two rows, `TOO_LONG`, `INCONSISTENT` when the columns differ in length,
 *   `TIME_NOT_INCREASING`, `NOT_A_NUMBER`, `NEGATIVE`, `OUT_OF_RANGE` (each names the row, counted from 1), `WRONG_CHOICE`
 *   for an unknown unit or a name that is no text, and what `readOptions` throws
 * @example
 * speedTrace({ name: "to the mill", time: [0, 10, 60, 70], speed: [0, 50, 50, 0], speedUnit: "km/h" }).distance; // 0.8333 km
 */
export function speedTrace(options: SpeedTraceOptions): Cycle {
  readOptions("speedTrace", options, {}, ["name", "time", "speed", "timeUnit?", "speedUnit", "grade?", "source?"]);
  const { speedUnit, timeUnit = "s", source = { document: "own speed trace", status: "definition" } } = options;
  const name = readWords("name", options.name);
  // The line itself is not needed: what cannot be printed as a source is refused here, and not in the reader's report.
  sourceLine(source);
  choice("speedUnit", speedUnit, ["m/s", "km/h", "mph"]);
  choice("timeUnit", timeUnit, ["s", "min", "h"]);
  const { time, speed } = readTable({ time: options.time, speed: options.speed, timeUnit, speedUnit });
  // Cut now and not when first used, so that a trace that is too long is refused here.
  const pieces = cutIntoPieces(time, speed);
  const grade = options.grade === undefined ? undefined : readGrades(options.grade, time.length);
  const warnings = doubtsOf(time, speed, grade?.slice(1));
  return makeCycle({
    name,
    source,
    unit: speedUnit,
    warnings,
    grade,
    table: () => ({ time, speed, ...(grade === undefined ? { pieces } : {}) }),
  });
}

function choice(name: string, given: unknown, allowed: readonly unknown[]): void {
  if (allowed.includes(given)) return;
  throw new InputError("WRONG_CHOICE", `${name} must be ${allowed.join(", ")}: got ${describeGiven(given)}`, {
    name,
    allowed,
  });
}
