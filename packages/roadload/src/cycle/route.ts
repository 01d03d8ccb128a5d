import {
  type Acceleration,
  InputError,
  type Length,
  type Quantity,
  readOptions,
  type Source,
  type Speed,
  type Time,
} from "@tarewatt/units";
import { readWords } from "../check/read-words.js";
import type { Fraction } from "../fraction.js";
import type { Cycle } from "./cycle.js";
import { makeCycle } from "./make-cycle.js";
import { cutIntoPieces } from "./pieces.js";

/** A part of a {@link route} with one speed and one grade. */
export interface RouteSegment {
  /** Length along the road. */
  readonly length: Quantity<Length>;
  /** Speed that is driven where nothing else is said. */
  readonly speed: Quantity<Speed>;
  /** Rise over run, positive uphill; level when left out. */
  readonly grade?: Fraction | undefined;
  /** Stops on the way, evenly spaced, 0 to 1000; none when left out. */
  readonly stops?: number | undefined;
}

/** Options of {@link route}. */
export interface RouteOptions {
  /** Name, as it shall appear in results. */
  readonly name: string;
  /** The segments in order, 1 to 10 000. */
  readonly segments: readonly RouteSegment[];
  /** Acceleration where the speed rises; {@link defaultRouteAcceleration} when left out. */
  readonly acceleration?: Quantity<Acceleration> | undefined;
  /** Deceleration where it falls, as a positive number; {@link defaultRouteAcceleration} when left out. */
  readonly deceleration?: Quantity<Acceleration> | undefined;
  /** Time at rest at every stop; none when left out. */
  readonly stopDuration?: Quantity<Time> | undefined;
}

/** How drivers change speed: see {@link defaultRouteAcceleration}. */
export interface RouteAcceleration {
  /** In m/s². */
  readonly value: number;
  /** Where the value is from. */
  readonly source: Source;
}

/** How drivers change speed, when nothing is known of them. Common practice, no source. */
export const defaultRouteAcceleration: RouteAcceleration = /* @__PURE__ */ Object.freeze({
  value: 1,
  source: /* @__PURE__ */ Object.freeze({
    document: "common practice, no source: moderate driving changes speed by about 1 m/s in a second",
    status: "common practice",
  } as const),
});

/**
 * A cycle from a route of segments, from rest to rest, with the grades of its segments.
 *
 * Speed changes at constant acceleration: it rises at the start of the segment that is faster, and falls at the end of the one
 * that is faster. A stretch between two stops that is too short for its speed is driven more slowly. Drive it with
 * `driveCycle`; its range is what `rangeOn` and `driveUntilEmpty` say of it.
 *
 * @param options - name, segments, accelerations, time of a stop
 * @returns the cycle
 * @throws InputError `NOT_VALID_HERE` when a segment is too short to change to the speed of the next, `EMPTY`, `TOO_LONG`, `NEGATIVE`,
 *   `OUT_OF_RANGE`, `NOT_A_FRACTION`, `WRONG_CHOICE`, and what `readOptions` throws
 * @example
 * const segments = [
 *   { length: q("5 km"), speed: q("50 km/h"), stops: 4 },
 *   { length: q("30 km"), speed: q("100 km/h"), grade: 0.01 },
 * ];
 * route({ name: "over the hill", segments }).distance; // 35 km
 */
export function route(options: RouteOptions): Cycle {
  const rule = { unit: "m/s²", above: 0, atMost: 10, optional: true } as const;
  const {
    acceleration = defaultRouteAcceleration.value,
    deceleration = defaultRouteAcceleration.value,
    stopDuration = 0,
  } = readOptions(
    "route",
    options,
    { acceleration: rule, deceleration: rule, stopDuration: { unit: "s", atLeast: 0, atMost: 86_400, optional: true } },
    ["name", "segments"],
  );
  const name = readWords("name", options.name);
  const segments = readSegments(options.segments);
  const rows: Rows = { time: [0], speed: [0], grade: [0] };
  let entry = 0;
  segments.forEach((segment, index) => {
    const { stops, grade } = segment;
    const exit = Math.min(segment.speed, segments[index + 1]?.speed ?? 0);
    for (let stretch = 0; stretch <= stops; stretch++) {
      const last = stretch === stops;
      const peak = driveStretch(rows, {
        ...{ length: segment.length / (stops + 1), entry, exit: last ? exit : 0, grade },
        ...{ cruise: segment.speed, acceleration, deceleration, index },
      });
      entry = last ? Math.min(exit, peak) : 0;
      if (!last && stopDuration > 0) addRow(rows, stopDuration, 0, grade);
    }
  });
  const { time, speed, grade } = rows;
  // Cut now and not when first used, so that a route that is too long is refused here.
  const hilly = grade.some((each) => each !== 0);
  const pieces = cutIntoPieces(time, speed, hilly ? grade : undefined);
  const source = { document: "own route", status: "definition" } as const;
  const table = () => ({ time, speed, pieces });
  return makeCycle({ name, source, unit: "km/h", ...(hilly ? { grade } : {}), table });
}

/** In s: times of a million seconds are rounded to less. */
const SHORTEST_STEP = 1e-8;

interface Rows {
  readonly time: number[];
  readonly speed: number[];
  readonly grade: number[];
}

interface Stretch {
  readonly length: number;
  readonly entry: number;
  readonly exit: number;
  readonly grade: number;
  readonly cruise: number;
  readonly acceleration: number;
  readonly deceleration: number;
  readonly index: number;
}

/** Adds the rows of one stretch and gives the largest speed on it. */
function driveStretch(rows: Rows, stretch: Stretch): number {
  const { length, entry, exit, grade, cruise, acceleration: a, deceleration: d, index } = stretch;
  // Where rise and fall meet, when there is no room for the speed in between: v² = (2·a·d·s + d·u² + a·w²)/(a + d).
  const meeting = Math.sqrt((2 * a * d * length + d * entry * entry + a * exit * exit) / (a + d));
  const peak = Math.min(cruise, meeting);
  if (peak < Math.max(entry, exit) * (1 - 1e-12)) {
    throw new InputError(
      "NOT_VALID_HERE",
      `segments[${index}] is too short to change its speed: give it more length, or a larger acceleration`,
      { index },
    );
  }
  const rising = (peak * peak - entry * entry) / (2 * a);
  const falling = (peak * peak - exit * exit) / (2 * d);
  const between = length - rising - falling;
  if (peak > entry) addRow(rows, (peak - entry) / a, peak, grade);
  if (between > 1e-9 * length) addRow(rows, between / peak, peak, grade);
  if (peak > exit) addRow(rows, (peak - exit) / d, exit, grade);
  return peak;
}

function addRow({ time, speed, grade }: Rows, seconds: number, to: number, slope: number): void {
  // Speeds that differ by rounding alone are one speed: a step without time is none.
  if (seconds < SHORTEST_STEP) {
    speed[speed.length - 1] = to;
    return;
  }
  time.push((time.at(-1) as number) + seconds);
  speed.push(to);
  grade.push(slope);
}

const MOST_SEGMENTS = 10_000;

function readSegments(given: unknown) {
  if (!Array.isArray(given) || given.length === 0) {
    throw new InputError("EMPTY", "segments must list one segment of the route at least", { name: "segments" });
  }
  if (given.length > MOST_SEGMENTS) {
    const message = `segments must be at most ${MOST_SEGMENTS}: got ${given.length}`;
    throw new InputError("TOO_LONG", message, { atMost: MOST_SEGMENTS });
  }
  return given.map((segment: RouteSegment, index) => {
    const where = `segments[${index}]`;
    const {
      grade = 0,
      stops = 0,
      ...rest
    } = readOptions(where, segment, {
      length: { unit: "m", above: 0, atMost: 1e7 },
      speed: { unit: "m/s", above: 0.1, atMost: 150 },
      grade: { unit: "1", atLeast: -1, atMost: 1, optional: true },
      stops: { unit: "1", atLeast: 0, atMost: 1000, optional: true },
    });
    if (Number.isInteger(stops)) return { ...rest, grade, stops };
    throw new InputError("OUT_OF_RANGE", `${where}.stops must be a whole number: got ${stops}`, { stops });
  });
}
