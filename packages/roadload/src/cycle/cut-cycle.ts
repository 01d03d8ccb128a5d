import {
  InputError,
  isQuantity,
  type Length,
  type Quantity,
  quantity,
  readNumber,
  readOptions,
  type Time,
} from "@tarewatt/units";
import { readWordsIfGiven } from "../check/read-words.js";
import type { Cycle } from "./cycle.js";
import { makeCycle } from "./make-cycle.js";
import { doubtsOf } from "./physical-sense.js";
import { gradesOfRows, type Rows, rowsOf, speedUnitOf } from "./table-of.js";

/** Options of {@link cutCycle}. */
export interface CutCycleOptions {
  /** The cycle to cut. */
  readonly cycle: Cycle;
  /** Where the part begins: a time or a distance from the start; the start when left out. */
  readonly from?: Quantity<Time> | Quantity<Length> | undefined;
  /** Where the part ends: a time or a distance from the start; the end when left out. */
  readonly to?: Quantity<Time> | Quantity<Length> | undefined;
  /** Name of the part, as it shall appear in results. */
  readonly name?: string | undefined;
}

/**
 * A part of a cycle, cut by time or by distance. A cut between two rows makes a row there, at the speed that the straight
 * line between them has, so the distances of two parts that touch add up to that of the whole.
 *
 * A part may begin or end while the vehicle moves: its energy then holds the change of kinetic energy. The clock of the part
 * starts at zero.
 *
 * @param options - the cycle and where to cut
 * @returns the part, without phases
 * @throws InputError `OUT_OF_RANGE` when a cut lies outside of the cycle, `INCONSISTENT` when nothing is left between them,
 *   `WRONG_CHOICE` when it is no cycle, `NEGATIVE`, `WRONG_DIMENSION`, and what `readOptions` throws
 * @example
 * cutCycle({ cycle: wltc3b, from: q("589 s"), to: q("1022 s") }).distance.in("km"); // 4.7559...
 * cutCycle({ cycle: udds, to: q("1 mi") }).duration.in("s"); // 206.7...
 */
export function cutCycle(options: CutCycleOptions): Cycle {
  readOptions("cutCycle", options, {}, ["cycle", "from?", "to?", "name?"]);
  const { cycle } = options;
  const rows = rowsOf(cycle);
  const first = rows.time[0] as number;
  const last = rows.time.at(-1) as number;
  const from = options.from === undefined ? first : timeOf("from", options.from, rows);
  const to = options.to === undefined ? last : timeOf("to", options.to, rows);
  if (from >= to) {
    throw new InputError("INCONSISTENT", `from must lie before to: got ${from - first} s and ${to - first} s`, {
      from,
      to,
    });
  }
  const words = (end: unknown, other: string): string => (end === undefined ? other : String(end));
  const name =
    readWordsIfGiven("name", options.name) ??
    `${cycle.name}, ${words(options.from, "start")} to ${words(options.to, "end")}`;
  const part = between(rows, from, to);
  return makeCycle({
    name,
    source: cycle.source,
    notes: cycle.notes,
    warnings: doubtsOf(part.time, part.speed, part.grade),
    grade: gradesOfRows(part.grade),
    unit: speedUnitOf(cycle),
    table: () => ({ time: [...part.time], speed: [...part.speed] }),
  });
}

/** The moment that a cut means, on the clock of the cycle, in s. */
function timeOf(name: "from" | "to", given: Quantity<Time> | Quantity<Length>, { time, speed }: Rows): number {
  const start = time[0] as number;
  const last = time.at(-1) as number;
  if (!isQuantity(given) || given.dimension.key !== quantity(1, "m").dimension.key) {
    const moment = start + readNumber(name, given, { unit: "s", atLeast: 0 });
    if (moment <= last) return moment;
    throw outside(name, String(given), `${last - start} s`);
  }
  let left = readNumber(name, given, { unit: "m", atLeast: 0 });
  for (let row = 1; row < time.length; row++) {
    const a = speed[row - 1] as number;
    const b = speed[row] as number;
    const seconds = (time[row] as number) - (time[row - 1] as number);
    const distance = ((a + b) * seconds) / 2;
    // `to` a distance ends as soon as it is reached, `from` a distance begins there too: standstill belongs to what follows.
    if (left <= distance) return (time[row - 1] as number) + within(left, a, (b - a) / seconds);
    left -= distance;
  }
  const rounding = 1e-9 * (last - start);
  if (left <= rounding) return last;
  throw outside(name, String(given), "its distance");
}

/** Time to cover a distance from a speed, at a constant acceleration; the form that does not cancel. */
function within(distance: number, speed: number, acceleration: number): number {
  if (distance === 0) return 0;
  return (2 * distance) / (speed + Math.sqrt(Math.max(0, speed * speed + 2 * acceleration * distance)));
}

function outside(name: string, given: string, end: string): InputError {
  return new InputError("OUT_OF_RANGE", `${name} must lie within the cycle, which ends at ${end}: got ${given}`, {
    name,
  });
}

/** The rows between two moments, with rows at both, and the clock set to zero. */
function between({ time, speed, grade }: Rows, from: number, to: number): Rows {
  const times: number[] = [];
  const speeds: number[] = [];
  const grades: number[] = [];
  const push = (t: number, v: number): void => {
    times.push(t - from);
    speeds.push(v);
  };
  for (let row = 1; row < time.length; row++) {
    const [start, end] = [time[row - 1] as number, time[row] as number];
    if (end <= from || start >= to) continue;
    const [a, b] = [speed[row - 1] as number, speed[row] as number];
    const at = (t: number): number => (t === start ? a : t === end ? b : a + ((b - a) * (t - start)) / (end - start));
    if (times.length === 0) push(Math.max(start, from), at(Math.max(start, from)));
    push(Math.min(end, to), at(Math.min(end, to)));
    if (grade !== undefined) grades.push(grade[row - 1] as number);
  }
  return { time: times, speed: speeds, grade: grade === undefined ? undefined : grades };
}
