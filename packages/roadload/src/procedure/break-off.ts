import { InputError, type Source } from "@tarewatt/units";
import type { Cycle } from "../cycle/cycle.js";
import { driveCycle } from "../energy/drive-cycle.js";
import type { DriveCycleOptions, DriveResult } from "../energy/drive-result.js";

/** When a test ends because the vehicle cannot follow its cycle. @internal */
export const breakOff = /* @__PURE__ */ Object.freeze({
  /** How far below the cycle is still tolerated, in m/s: 2 km/h, written out so that a bundle can drop it. */
  speed: 0.5555555555555556,
  /** Within this many seconds before or after, the lowest speed of the cycle counts. */
  around: 1,
  /** How long the vehicle may be below that, in s. */
  duration: 4,
  source: /* @__PURE__ */ Object.freeze({
    document: "UN GTR No. 15",
    section: "annex 6, 2.6.8.3, and annex 8, 3.4.4",
    status: "memory",
  } as const satisfies Source),
} as const);

/** Refuses a vehicle that falls behind until the test would be broken off. The drive is looked at closely only where it must be. @internal */
export function assertFollows(options: DriveCycleOptions, { following }: DriveResult): void {
  if (following === undefined || following.kept) return;
  if (following.behind.in("s") < breakOff.duration || following.speedShortfall.in("m/s") <= breakOff.speed) return;
  const { cycle } = options;
  const below = longestBelow(cycle, driveCycle({ ...options, series: true }));
  if (below < breakOff.duration) return;
  throw new InputError(
    "NOT_VALID_HERE",
    `the vehicle cannot follow ${cycle.name}: for ${Number(below.toPrecision(3))} s on end it is more than 2 km/h too slow, ` +
      `which breaks the test off after ${breakOff.duration} s (from memory). It lacks up to ${following.powerShortfall} at the wheels: ` +
      "give a drivetrain of more power, or use driveCycle, which claims no procedure",
    { cycle: cycle.name, below },
  );
}

/** Longest time on end below the tolerance, in s. */
function longestBelow(cycle: Cycle, { series }: DriveResult): number {
  if (series === undefined) return 0;
  const { time, speed } = series;
  let [longest, current] = [0, 0];
  for (let i = 1; i < time.length; i++) {
    const now = time[i] as number;
    const low = (speed[i] as number) < lowestAround(cycle, now) - breakOff.speed;
    current = low ? current + now - (time[i - 1] as number) : 0;
    longest = Math.max(longest, current);
  }
  return longest;
}

/** Lowest speed of a cycle about a moment. Its speed is linear between the rows, so rows and ends are enough. */
function lowestAround({ time, speed }: Cycle, now: number): number {
  const [from, to] = [now - breakOff.around, now + breakOff.around];
  // The last row at or before the moment from which we look.
  let row = 0;
  let end = time.length - 1;
  while (row < end) {
    const middle = (row + end + 1) >> 1;
    if ((time[middle] as number) <= from) row = middle;
    else end = middle - 1;
  }
  let lowest = Number.POSITIVE_INFINITY;
  for (; row < time.length - 1 && (time[row] as number) < to; row++) {
    for (const moment of [from, to]) {
      lowest = Math.min(lowest, between(time, speed, row, moment));
    }
  }
  return lowest;
}

/** Speed at a moment, or at the nearer end of a piece. */
function between(time: readonly number[], speed: readonly number[], row: number, moment: number): number {
  const [t0, t1] = [time[row] as number, time[row + 1] as number];
  const [v0, v1] = [speed[row] as number, speed[row + 1] as number];
  const part = Math.min(1, Math.max(0, (moment - t0) / (t1 - t0)));
  return v0 + part * (v1 - v0);
}
