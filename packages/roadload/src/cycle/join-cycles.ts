import { InputError, type Quantity, readOptions, type Time } from "@tarewatt/units";
import { readWordsIfGiven } from "../check/read-words.js";
import type { Cycle } from "./cycle.js";
import { makeCycle } from "./make-cycle.js";
import { doubtsOf } from "./physical-sense.js";
import { MAX_ROWS } from "./pieces.js";
import { gradesOfRows, type Rows, rowsOf, speedUnitOf } from "./table-of.js";

/** Options of {@link joinCycles}. */
export interface JoinCyclesOptions {
  /** The cycles, in the order in which they are driven. */
  readonly cycles: readonly Cycle[];
  /** Time at rest between one and the next, with the vehicle on: accessories run. None when left out. */
  readonly pause?: Quantity<Time> | undefined;
  /** Name, as it shall appear in results. */
  readonly name?: string | undefined;
}

/**
 * Cycles driven one after the other. Each becomes a phase; distances and durations add up.
 *
 * @param options - cycles and the pause between them
 * @returns one cycle
 * @throws InputError `EMPTY` when there is none, `INCONSISTENT` when one does not start at the speed at which the one before
 *   it ends, or a pause would have to be at rest and is not, `TOO_LONG`, `WRONG_CHOICE`, `NEGATIVE`, and what `readOptions`
 *   throws
 * @example
 * joinCycles({ cycles: [udds, hwfet], pause: q("15 s") }).duration.in("s"); // 2149
 */
export function joinCycles(options: JoinCyclesOptions): Cycle {
  const { pause = 0 } = readOptions("joinCycles", options, { pause: { unit: "s", atLeast: 0, optional: true } }, [
    "cycles",
    "name?",
  ]);
  const { cycles } = options;
  if (!Array.isArray(cycles)) {
    throw new InputError("WRONG_CHOICE", "cycles must be an array of cycles", { name: "cycles" });
  }
  const [first] = cycles as readonly Cycle[];
  if (first === undefined) throw new InputError("EMPTY", "cycles must hold at least one cycle", { name: "cycles" });
  const parts = cycles.map(rowsOf);
  const rows = joined(parts, pause);
  const name = readWordsIfGiven("name", options.name) ?? cycles.map((cycle: Cycle) => cycle.name).join(", then ");
  return makeCycle({
    name,
    source: first.source,
    notes: [...new Set(cycles.flatMap(({ notes }: Cycle) => notes))],
    warnings: doubtsOf(rows.time, rows.speed, rows.grade),
    grade: gradesOfRows(rows.grade),
    unit: speedUnitOf(first),
    phases: cycles.map((cycle: Cycle, i) => ({ name: cycle.name, ...(rows.spans[i] as Span) })),
    table: () => ({ time: [...rows.time], speed: [...rows.speed] }),
  });
}

/** Options of {@link repeatCycle}. */
export interface RepeatCycleOptions {
  /** The cycle. */
  readonly cycle: Cycle;
  /** How often it is driven: a whole number from 1. */
  readonly times: number;
  /** Time at rest between one and the next, with the vehicle on; none when left out. */
  readonly pause?: Quantity<Time> | undefined;
  /** Name, as it shall appear in results. */
  readonly name?: string | undefined;
}

/**
 * A cycle driven several times.
 *
 * @param options - the cycle and how often
 * @returns one cycle, with a phase for each time
 * @throws InputError `OUT_OF_RANGE` when `times` is no whole number from 1 to 1000, and what {@link joinCycles} throws
 * @example
 * repeatCycle({ cycle: nedc, times: 2 }).distance.in("km"); // 22.06
 */
export function repeatCycle(options: RepeatCycleOptions): Cycle {
  const { times } = readOptions("repeatCycle", options, { times: { unit: "1", atLeast: 1, atMost: MOST_TIMES } }, [
    "cycle",
    "pause?",
    "name?",
  ]);
  if (!Number.isInteger(times)) {
    throw new InputError("OUT_OF_RANGE", `times must be a whole number: got ${times}`, { times });
  }
  const { cycle, pause, name } = options;
  rowsOf(cycle);
  const cycles = Array.from({ length: times }, () => cycle);
  return joinCycles({ cycles, pause, name: name ?? `${cycle.name}, ${times} times` });
}

const MOST_TIMES = 1000;

interface Span {
  readonly from: number;
  readonly to: number;
}

function joined(parts: readonly Rows[], pause: number): Rows & { readonly spans: readonly Span[] } {
  assertNotTooLong(parts);
  const [time, speed, grade, spans]: [number[], number[], number[], Span[]] = [[], [], [], []];
  let clock = 0;
  parts.forEach((part, index) => {
    const before = speed.at(-1);
    const start = part.speed[0] as number;
    if (before !== undefined) assertMeets(before, start, pause, index);
    if (before !== undefined && pause > 0) {
      time.push(clock + pause);
      speed.push(0);
      grade.push(0);
      clock += pause;
    }
    const offset = clock - (part.time[0] as number);
    part.time.forEach((t, row) => {
      if (row === 0 && before !== undefined) return;
      time.push(t + offset);
      speed.push(part.speed[row] as number);
      if (row > 0) grade.push(part.grade?.[row - 1] ?? 0);
    });
    spans.push({ from: clock, to: time.at(-1) as number });
    clock = time.at(-1) as number;
  });
  return { time, speed, grade: parts.some((part) => part.grade !== undefined) ? grade : undefined, spans };
}

function assertMeets(end: number, start: number, pause: number, index: number): void {
  const atRest = pause === 0 || (end === 0 && start === 0);
  // Speeds that went through a unit and back differ in the last digit.
  if (Math.abs(end - start) <= 1e-9 && atRest) return;
  throw new InputError(
    "INCONSISTENT",
    `cycle ${index + 1} starts at ${start} m/s, and the one before it ends at ${end} m/s` +
      (pause > 0 ? ", with a pause at rest between them" : ": join cycles that meet, or give both an end at rest"),
    { start, end, index },
  );
}

function assertNotTooLong(parts: readonly Rows[]): void {
  const rows = parts.reduce((sum, { time }) => sum + time.length, 0);
  if (rows <= MAX_ROWS) return;
  throw new InputError("TOO_LONG", `a cycle has at most ${MAX_ROWS} rows: got ${rows}`, { rows, atMost: MAX_ROWS });
}
