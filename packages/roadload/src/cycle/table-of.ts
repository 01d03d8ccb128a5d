import type { Cycle } from "./cycle.js";
import { piecesOf } from "./pieces-of.js";
import { readGrades } from "./read-table.js";

/** The rows of a cycle, checked, in SI units. @internal */
export interface Rows {
  readonly time: readonly number[];
  readonly speed: readonly number[];
  /** Between every row and the next; undefined on level road. */
  readonly grade: readonly number[] | undefined;
}

/** The rows of what must be a cycle. @internal */
export function rowsOf(cycle: Cycle): Rows {
  // Asking for the pieces refuses what is no cycle, and checks the table of a foreign one.
  piecesOf(cycle);
  const { time, speed, grade } = cycle;
  return { time, speed, grade: grade === undefined ? undefined : readGrades(grade, time.length).slice(1) };
}

/** Grades between the rows as a cycle holds them: one for each row, from the row before; that of the first is not read. @internal */
export function gradesOfRows(between: readonly number[] | undefined): readonly number[] | undefined {
  return between === undefined ? undefined : [between[0] as number, ...between];
}

/** Unit that a cycle shows its speeds in, which its parts keep. @internal */
export function speedUnitOf({ maximumSpeed }: Cycle): "m/s" | "km/h" | "mph" {
  const { unit } = maximumSpeed;
  return unit === "mph" || unit === "km/h" ? unit : "m/s";
}
