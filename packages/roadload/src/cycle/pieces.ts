import { InputError } from "@tarewatt/units";
import type { CycleTotals } from "./cycle.js";
import { type SortedPieces, sortPieces } from "./sorted-pieces.js";

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
  /** Time at the start of every piece, in s; what no piece covers is standstill. */
  readonly start: readonly number[];
  /** Duration of every piece, in s. */
  readonly duration: readonly number[];
  /** Speed at the start of every piece, in m/s. */
  readonly from: readonly number[];
  /** Speed at the end of every piece, in m/s. */
  readonly to: readonly number[];
  /** Grade of the road, rise over run, of every piece; undefined on a level road. */
  readonly grade: readonly number[] | undefined;
  /** Four numbers a piece: see `CycleSegments`. */
  readonly integrals: readonly number[];
  /** Largest speed, in m/s. */
  readonly maximumSpeed: number;
  /** By rising acceleration. Sorted when first asked for. */
  readonly sorted: SortedPieces;
  /** Time at rest, in s. */
  readonly standstill: number;
  /** Sums over the pieces. */
  readonly total: CycleTotals;
}

/**
 * Cuts a table into pieces of at most 1 s and integrates each exactly. Pieces at rest need no force, so they are only
 * counted as time.
 *
 * Why 1 s: where the wheel force changes its sign within a piece, the piece is split there exactly, so the length would not
 * matter for energies at the wheels. Models of drivetrains and batteries are asked at two moments a piece, however, and
 * these must be close enough together.
 *
 * @param grade - rise over run from the row before to each row; level when left out
 * @internal
 */
export function cutIntoPieces(time: readonly number[], speed: readonly number[], grade?: readonly number[]): Pieces {
  assertNotTooLong(time);
  const start: number[] = [];
  const duration: number[] = [];
  const from: number[] = [];
  const to: number[] = [];
  const grades: number[] = [];
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
      start.push((time[row - 1] as number) + dt * part);
      duration.push(dt);
      from.push(a);
      to.push(b);
      if (grade !== undefined) grades.push(grade[row] as number);
      integrals.push(distance, speedSquared, speedCubed, ((b - a) * (b + a)) / 2);
      total.distance += distance;
      total.speedSquared += speedSquared;
      total.speedCubed += speedCubed;
    }
  }
  const first = speed[0] as number;
  const last = speed.at(-1) as number;
  let sorted: SortedPieces | undefined;
  return Object.freeze({
    count: duration.length,
    start,
    duration,
    from,
    to,
    grade: grade === undefined ? undefined : grades,
    integrals,
    maximumSpeed: speed.reduce((a, b) => Math.max(a, b)),
    get sorted() {
      sorted ??= sortPieces({ from, to, duration, integrals });
      return sorted;
    },
    standstill,
    total: Object.freeze({
      ...total,
      // From the ends, not summed: a cycle from rest to rest gives exactly zero.
      kineticChange: ((last - first) * (last + first)) / 2,
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
