import { performance } from "node:perf_hooks";

/** One of several ways to do the same work. */
export interface Contestant {
  readonly name: string;
  /**
   * Does the work `times` times and returns something made of every result, so that no work can be left out. The loop is
   * part of it: a call of a function that is not always the same one would cost more than a conversion.
   */
  readonly work: (times: number) => number;
  /** Operations that one time counts as, such as the vehicles of a batch; 1 when left out. */
  readonly operations?: number;
  /** Called before the clock starts, with the number of times that follow. */
  readonly prepare?: (times: number) => void;
}

/** A contestant that measures itself: another process, for example. */
export interface Timed {
  readonly name: string;
  /** Nanoseconds an operation, of one round. */
  readonly nanoseconds: () => number;
}

/** One line of the result: ours against the best of the others, measured in one process. */
export interface BenchRow {
  readonly id: string;
  /** Time an operation or size, in `unit`. */
  readonly ours: number;
  readonly reference: number;
  readonly referenceName: string;
  readonly unit: "ns" | "B";
  /** Ours by the reference: below 1 we are faster, or smaller. */
  readonly ratio: number;
  /** Largest ratio wanted. */
  readonly goal: number;
  readonly holds: boolean;
}

const ROUNDS = 21;
const ROUND_MILLISECONDS = 25;

/** A contestant's rounds: as many operations as take a round's time, found out while it warms up. */
function timed({ name, work, prepare, operations = 1 }: Contestant): Timed {
  let times = 1;
  let used: number;
  do {
    times *= 2;
    prepare?.(times);
    const start = performance.now();
    consume(work(times));
    used = performance.now() - start;
  } while (used < ROUND_MILLISECONDS);
  return {
    name,
    nanoseconds: () => {
      prepare?.(times);
      const start = performance.now();
      consume(work(times));
      return ((performance.now() - start) * 1e6) / (times * operations);
    },
  };
}

let sink = 0;

/** Makes a result observable, so that an optimising compiler must compute it. */
function consume(result: number): void {
  sink = (sink + result) % 1e9;
  if (Number.isNaN(sink)) throw new Error("a contestant computed NaN: it does not do the work");
}

/** Lets all do their work in turns, so that a change of the machine's speed meets all alike, and compares medians. */
export function race(
  id: string,
  goal: number,
  ours: Contestant | Timed,
  others: readonly (Contestant | Timed)[],
): BenchRow {
  const field = [ours, ...others].map((each) => ("work" in each ? timed(each) : each));
  const rounds = field.map((): number[] => []);
  for (let round = 0; round < ROUNDS; round++) {
    // Another one begins each time: being first or last is no advantage.
    for (let turn = 0; turn < field.length; turn++) {
      const index = (round + turn) % field.length;
      rounds[index]?.push((field[index] as Timed).nanoseconds());
    }
  }
  const [mine = Number.NaN, ...rest] = rounds.map(median);
  const reference = Math.min(...rest);
  const referenceName = others[rest.indexOf(reference)]?.name ?? "nothing";
  const ratio = mine / reference;
  const line = field.map(
    ({ name }, index) => `${name} ${shown(index === 0 ? mine : (rest[index - 1] ?? Number.NaN))} ns`,
  );
  console.log(`  ${id}: ${line.join(", ")}`);
  console.log(
    `    ${ratio.toFixed(3)} of ${referenceName}; wanted at most ${goal}: ${ratio <= goal ? "holds" : "MISSED"}`,
  );
  return { id, ours: mine, reference, referenceName, unit: "ns", ratio, goal, holds: ratio <= goal };
}

function median(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;
}

function shown(nanoseconds: number): string {
  return nanoseconds < 10 ? nanoseconds.toFixed(2) : nanoseconds.toFixed(0);
}
