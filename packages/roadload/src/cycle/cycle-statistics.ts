import {
  type Acceleration,
  InputError,
  type Length,
  type Quantity,
  quantity,
  readOptions,
  type Speed,
  type Time,
} from "@tarewatt/units";
import type { Cycle } from "./cycle.js";
import { type Rows, rowsOf, speedUnitOf } from "./table-of.js";

/** How accelerations and standstill are counted: published tables differ in it. */
export type StatisticsMethod = "between rows" | "at rows";

/** Options of {@link cycleStatistics}. */
export interface CycleStatisticsOptions {
  /** The cycle. */
  readonly cycle: Cycle;
  /**
   * - `"between rows"`, when left out: speed is linear between the rows; at rest is what lies between two rows at rest;
   * - `"at rows"`, for tables of even steps: the acceleration of a row is the central difference of its neighbours, and a row
   *   counts as one step at rest when its speed is zero and its acceleration within 0.15 m/s² (GB/T 38146.1, from memory).
   */
  readonly method?: StatisticsMethod | undefined;
}

/** What a cycle asks of a vehicle, whatever the vehicle. Made by {@link cycleStatistics}. */
export interface CycleStatistics {
  /** Name of the cycle. */
  readonly cycle: string;
  /** How accelerations and standstill were counted. */
  readonly method: StatisticsMethod;
  /** Distance, by linear speed between the rows. */
  readonly distance: Quantity<Length>;
  /** Time from the first row to the last. */
  readonly duration: Quantity<Time>;
  /** How often the vehicle comes to rest; a start at rest is no stop. */
  readonly stops: number;
  /** How often it moves off from rest. */
  readonly trips: number;
  /** Time at rest. */
  readonly standstill: Quantity<Time>;
  /** Time at rest per duration. */
  readonly standstillShare: number;
  /** Rows of the table whose speed is zero: what some tables call stop time, in rows. */
  readonly rowsAtRest: number;
  /** Distance per duration. */
  readonly meanSpeed: Quantity<Speed>;
  /** Distance per time in motion; zero when it never moves. */
  readonly movingMeanSpeed: Quantity<Speed>;
  /** Largest speed of the table. */
  readonly maximumSpeed: Quantity<Speed>;
  /** Largest acceleration; zero when there is none. */
  readonly largestAcceleration: Quantity<Acceleration>;
  /** Largest deceleration, positive; zero when there is none. */
  readonly largestDeceleration: Quantity<Acceleration>;
  /** Relative positive acceleration (RPA): ∫v·a⁺ dt per distance. */
  readonly relativePositiveAcceleration: Quantity<Acceleration>;
  /** Positive kinetic energy (PKE): sum of the gains of v² per distance; twice the RPA when speed is linear between rows. */
  readonly positiveKineticEnergy: Quantity<Acceleration>;
}

/**
 * Statistics of a cycle: stops, means, accelerations, and what kinetic energy it asks for.
 *
 * Stop times in print are of different kinds: WLTC class 3b is 226 s at rest between rows, 235 rows at rest, and 242 s below
 * 1 km/h; so the result says which is which.
 *
 * @param options - the cycle and how to count
 * @returns the statistics
 * @throws InputError `NOT_VALID_HERE` for "at rows" with uneven steps, `WRONG_CHOICE`, and what `readOptions` throws
 * @example
 * const { stops, standstillShare, relativePositiveAcceleration } = cycleStatistics({ cycle: udds });
 * stops; // 17
 * standstillShare; // 0.1760...
 * relativePositiveAcceleration.in("m/s²"); // 0.1750...
 */
export function cycleStatistics(options: CycleStatisticsOptions): CycleStatistics {
  readOptions("cycleStatistics", options, {}, ["cycle", "method?"]);
  const { cycle, method = "between rows" } = options;
  if (method !== "between rows" && method !== "at rows") {
    throw new InputError("WRONG_CHOICE", 'method must be "between rows" or "at rows"', { name: "method" });
  }
  const rows = rowsOf(cycle);
  const duration = cycle.duration.in("s");
  const distance = cycle.distance.in("m");
  const counted = method === "at rows" ? atRows(rows) : betweenRows(rows);
  const unit = speedUnitOf(cycle);
  const speed = (value: number) => quantity(value, "m/s").to(unit);
  const acceleration = (value: number) => quantity(value, "m/s²");
  const moving = duration - counted.standstill;
  const { stops, trips } = stopsOf(rows.speed);
  // A cycle that never moves has no distance to refer to, and gains nothing.
  const perDistance = (value: number) => acceleration(distance > 0 ? value / distance : 0);
  return Object.freeze({
    cycle: cycle.name,
    method,
    distance: cycle.distance,
    duration: cycle.duration,
    stops,
    trips,
    standstill: quantity(counted.standstill, "s"),
    standstillShare: counted.standstill / duration,
    rowsAtRest: rows.speed.filter((v) => v === 0).length,
    meanSpeed: cycle.meanSpeed,
    movingMeanSpeed: speed(moving > 0 ? distance / moving : 0),
    maximumSpeed: cycle.maximumSpeed,
    largestAcceleration: acceleration(counted.largest),
    largestDeceleration: acceleration(counted.smallest),
    relativePositiveAcceleration: perDistance(counted.positive),
    positiveKineticEnergy: perDistance(gainsOfSpeedSquared(rows.speed)),
  });
}

/** Largest acceleration of a row at rest, in m/s²: GB/T 38146.1, from memory; it gives that standard's 398 s for CLTC-P. */
const IDLE = 0.15;

/** In SI units. */
interface Counted {
  readonly standstill: number;
  readonly largest: number;
  readonly smallest: number;
  /** ∫v·a⁺ dt */
  readonly positive: number;
}

function betweenRows({ time, speed }: Rows): Counted {
  let [standstill, largest, smallest] = [0, 0, 0];
  for (let row = 1; row < time.length; row++) {
    const seconds = (time[row] as number) - (time[row - 1] as number);
    const [a, b] = [speed[row - 1] as number, speed[row] as number];
    if (a === 0 && b === 0) standstill += seconds;
    largest = Math.max(largest, (b - a) / seconds);
    smallest = Math.max(smallest, (a - b) / seconds);
  }
  // Within a straight line ∫v·a dt is the change of v²/2, exactly.
  return { standstill, largest, smallest, positive: gainsOfSpeedSquared(speed) / 2 };
}

function atRows({ time, speed }: Rows): Counted {
  const step = (time[1] as number) - (time[0] as number);
  let [standstill, largest, smallest, positive] = [0, 0, 0, 0];
  for (let row = 1; row < time.length; row++) {
    if (Math.abs((time[row] as number) - (time[row - 1] as number) - step) > 1e-6 * step) {
      throw new InputError(
        "NOT_VALID_HERE",
        `counting at rows needs even steps of time: row ${row + 1} has another than the first; resample the cycle, or count between rows`,
        { row: row + 1 },
      );
    }
    const v = speed[row] as number;
    // Beyond the last row the vehicle keeps its speed.
    const acceleration = ((speed[row + 1] ?? v) - (speed[row - 1] as number)) / (2 * step);
    if (v === 0 && Math.abs(acceleration) <= IDLE) standstill += step;
    largest = Math.max(largest, acceleration);
    smallest = Math.max(smallest, -acceleration);
    if (acceleration > 0) positive += v * acceleration * step;
  }
  return { standstill, largest, smallest, positive };
}

function gainsOfSpeedSquared(speed: readonly number[]): number {
  let gains = 0;
  for (let row = 1; row < speed.length; row++) {
    const [a, b] = [speed[row - 1] as number, speed[row] as number];
    if (b > a) gains += (b - a) * (b + a);
  }
  return gains;
}

function stopsOf(speed: readonly number[]): { stops: number; trips: number } {
  let [stops, trips] = [0, 0];
  for (let row = 1; row < speed.length; row++) {
    const [a, b] = [speed[row - 1] as number, speed[row] as number];
    if (a > 0 && b === 0) stops++;
    if (a === 0 && b > 0) trips++;
  }
  return { stops, trips };
}
