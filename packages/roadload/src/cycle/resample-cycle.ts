import { InputError, type Quantity, readOptions, type Time } from "@tarewatt/units";
import type { Cycle } from "./cycle.js";
import { makeCycle } from "./make-cycle.js";
import { doubtsOf } from "./physical-sense.js";
import { MAX_ROWS } from "./pieces.js";
import { gradesOfRows, rowsOf, speedUnitOf } from "./table-of.js";

/** Options of {@link resampleCycle}. */
export interface ResampleCycleOptions {
  /** The cycle. */
  readonly cycle: Cycle;
  /** Time between the new rows; the last step is shorter when it does not divide the duration. */
  readonly step: Quantity<Time>;
}

/**
 * A cycle read at even steps of time, by the straight line between its rows. Nothing is smoothed.
 *
 * Distance: where every row of the cycle falls on a new one (a step of 0.5 s or 0.1 s of a 1 Hz table) it stays exactly the
 * same. Otherwise it moves by at most (a_max − a_min)·step·T/8, with the largest and smallest acceleration between rows and
 * the duration T, since a straight line over a step misses the bend of speed inside it; the notes say by how much it moved.
 *
 * @param options - the cycle and the step
 * @returns the cycle on its new rows; the grade of a step is the one at its middle; phases are kept when the distance is
 * @throws InputError `OUT_OF_RANGE`, `TOO_LONG`, `WRONG_CHOICE`, and what `readOptions` throws
 * @example
 * resampleCycle({ cycle: nedc, step: q("1 s") }).time.length; // 1181
 */
export function resampleCycle(options: ResampleCycleOptions): Cycle {
  const { step } = readOptions("resampleCycle", options, { step: { unit: "s", above: 0 } }, ["cycle"]);
  const { cycle } = options;
  const { time, speed, grade } = rowsOf(cycle);
  const start = time[0] as number;
  const duration = (time.at(-1) as number) - start;
  // A duration that is a whole number of steps but for rounding gets no extra row at its end.
  const steps = Math.max(1, Math.ceil(duration / step - 1e-9));
  if (steps >= MAX_ROWS) {
    throw new InputError("TOO_LONG", `a cycle has at most ${MAX_ROWS} rows: got ${steps + 1}; take a longer step`, {
      steps,
    });
  }
  const times = Array.from({ length: steps + 1 }, (_, i) => (i === steps ? duration : i * step));
  const [speeds, grades]: [number[], number[]] = [[], []];
  let row = 1;
  const goTo = (t: number): void => {
    while (row < time.length - 1 && (time[row] as number) - start < t) row++;
  };
  times.forEach((t, i) => {
    if (i > 0 && grade !== undefined) {
      goTo((t + (times[i - 1] as number)) / 2);
      grades.push(grade[row - 1] as number);
    }
    goTo(t);
    const [from, to] = [(time[row - 1] as number) - start, (time[row] as number) - start];
    const [a, b] = [speed[row - 1] as number, speed[row] as number];
    speeds.push(t >= to ? b : a + ((b - a) * (t - from)) / (to - from));
  });
  const moved = distanceOf(times, speeds) / cycle.distance.in("m") - 1;
  const same = Math.abs(moved) < 1e-12;
  return makeCycle({
    name: `${cycle.name}, every ${step} s`,
    source: cycle.source,
    notes: [
      ...cycle.notes,
      same || !Number.isFinite(moved)
        ? `Read at every ${step} s; the distance is that of the table.`
        : `Read at every ${step} s, which moved the distance by ${Number((moved * 100).toPrecision(3))} %.`,
    ],
    warnings: doubtsOf(times, speeds, grades),
    grade: grade === undefined ? undefined : gradesOfRows(grades),
    unit: speedUnitOf(cycle),
    phases: same ? cycle.phases.map(({ name, from, to }) => ({ name, from: from - start, to: to - start })) : [],
    table: () => ({ time: [...times], speed: [...speeds] }),
  });
}

function distanceOf(time: readonly number[], speed: readonly number[]): number {
  let distance = 0;
  for (let i = 1; i < time.length; i++) {
    distance +=
      (((speed[i] as number) + (speed[i - 1] as number)) / 2) * ((time[i] as number) - (time[i - 1] as number));
  }
  return distance;
}
