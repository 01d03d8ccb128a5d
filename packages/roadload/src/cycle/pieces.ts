import { InputError } from "@tarewatt/units";
import type { CycleTotals } from "./cycle.js";

/** Longest list of pieces: a day at 10 Hz fits. @internal */
export const MAX_ROWS = 1_000_000;

/**
 * What the kernels work on. The lists are plain and not frozen, because engines read those fastest; so they never leave the
 * package, and nobody can change the numbers of a cycle.
 * @internal
 */
export interface Pieces {
  /** Number of pieces. */
  readonly count: number;
  /** Duration of every piece, in s. */
  readonly duration: readonly number[];
  /** Four numbers a piece: see `CycleSegments`. */
  readonly integrals: readonly number[];
  /** Time at rest, in s. */
  readonly standstill: number;
  /** Sums over the pieces. */
  readonly total: CycleTotals;
}

/**
 * Cuts a table into pieces of at most 1 s and integrates each exactly. Pieces at rest need no force, so they are only
 * counted as time.
 *
 * Why 1 s: whether a piece drives or brakes is decided for the piece as a whole. In a longer one the wheel force could
 * change its sign unseen. It can within a second too: for a hundred cars of 1000 to 3500 kg on the 1 Hz tables here, against
 * fiftieths of a second, that moves the driving energy by up to 2.2e-5 and the braking energy by up to 1.9e-4 (both on US06;
 * 1.5e-5 and 1e-4 on WLTC, 7e-6 and 3e-5 on UDDS), and mostly by less than a millionth. The net stays exact.
 * @internal
 */
export function cutIntoPieces(time: readonly number[], speed: readonly number[]): Pieces {
  assertNotTooLong(time);
  const duration: number[] = [];
  const integrals: number[] = [];
  const total = { distance: 0, speedSquared: 0, speedCubed: 0 };
  let standstill = 0;
  for (let row = 1; row < time.length; row++) {
    const seconds = (time[row] as number) - (time[row - 1] as number);
    const first = speed[row - 1] as number;
    const last = speed[row] as number;
    if (first === 0 && last === 0) {
      standstill += seconds;
      continue;
    }
    const parts = Math.ceil(seconds);
    const dt = seconds / parts;
    for (let part = 0; part < parts; part++) {
      const a = first + ((last - first) * part) / parts;
      const b = part === parts - 1 ? last : first + ((last - first) * (part + 1)) / parts;
      const distance = (dt * (a + b)) / 2;
      const speedSquared = (dt * (a * a + a * b + b * b)) / 3;
      const speedCubed = (dt * (a + b) * (a * a + b * b)) / 4;
      duration.push(dt);
      integrals.push(distance, speedSquared, speedCubed, ((b - a) * (b + a)) / 2);
      total.distance += distance;
      total.speedSquared += speedSquared;
      total.speedCubed += speedCubed;
    }
  }
  // The kernel takes two pieces a step. A −0 is no small integer, so that engines keep a list of doubles in any case.
  do integrals.push(-0, -0, -0, -0);
  while (integrals.length % 8 !== 0);
  const start = speed[0] as number;
  const end = speed.at(-1) as number;
  return Object.freeze({
    count: duration.length,
    duration,
    integrals,
    standstill,
    total: Object.freeze({
      ...total,
      // From the ends, not summed: a cycle from rest to rest gives exactly zero.
      kineticChange: ((end - start) * (end + start)) / 2,
      duration: (time.at(-1) as number) - (time[0] as number),
    }),
  });
}

function assertNotTooLong(time: readonly number[]): void {
  let pieces = 0;
  for (let row = 1; row < time.length; row++) pieces += Math.ceil((time[row] as number) - (time[row - 1] as number));
  if (pieces <= MAX_ROWS) return;
  throw new InputError(
    "TOO_LONG",
    `a speed trace is cut into pieces of at most 1 s, ${MAX_ROWS} at most: got ${pieces}; check the unit of time`,
    { pieces, atMost: MAX_ROWS },
  );
}
