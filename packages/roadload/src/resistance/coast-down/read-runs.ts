import { converter, describeGiven, InputError, type Quantity, readOptions, type Speed } from "@tarewatt/units";
import { type AirDensityOptions, airDensity } from "../../air/air-density.js";
import type { TimeUnit } from "../../cycle/read-table.js";
import type { SpeedUnit } from "../../cycle/speed-unit.js";
import type { Fraction } from "../../fraction.js";
import { readGrade } from "../road-load-numbers.js";

/** One run of a coast-down: speeds while the vehicle rolls in neutral. Signs are as driven, whichever way the run goes. */
export interface CoastDownRun {
  /** Which way the run goes; opposite ways cancel what grade and wind are not known. */
  readonly direction: "out" | "back";
  /** Time of every row, strictly increasing; 10 to 20 000 rows, at most an hour. */
  readonly time: ArrayLike<number>;
  /** Speed of every row, not negative, at most 150 m/s. */
  readonly speed: ArrayLike<number>;
  /** Mean wind against the vehicle, negative from behind; still air when left out. Not together with `airSpeed`. */
  readonly headWind?: Quantity<Speed> | undefined;
  /** Mean wind across the path, either sign: it is judged, not corrected. Unknown when left out. */
  readonly crossWind?: Quantity<Speed> | undefined;
  /** Speed of the air along the path at every row, from an instrument on board, in the unit of the speeds. */
  readonly airSpeed?: ArrayLike<number> | undefined;
  /** Rise over run in the direction of this run, positive uphill; level when left out. */
  readonly grade?: Fraction | undefined;
  /** Air of this run, where it differs from that of the others. */
  readonly air?: AirDensityOptions | undefined;
}

/** A run that was checked, in SI units. @internal */
export interface RunRead {
  readonly direction: "out" | "back";
  readonly time: Float64Array;
  readonly speed: Float64Array;
  readonly headWind: Float64Array;
  readonly windGiven: boolean;
  /** In m/s; undefined when it was not given. */
  readonly crossWind: number | undefined;
  readonly onBoard: boolean;
  readonly grade: number;
  /** In °C. */
  readonly temperature: number;
  /** In kg/m³. */
  readonly density: number;
}

const ROWS = { fewest: 10, most: 20_000 } as const;
const LONGEST = 3600;
const MOST_RUNS = 200;
const FASTEST = 150;
/** Stronger wind along the road is a wrong unit, in m/s. */
const STRONGEST_WIND = 30;

/** @internal */
export function readRuns(
  given: unknown,
  units: { time: TimeUnit; speed: SpeedUnit },
  air: AirDensityOptions,
): RunRead[] {
  if (!isList(given) || given.length === 0) {
    throw new InputError("EMPTY", `runs must list at least one run: got ${describeGiven(given)}`, { name: "runs" });
  }
  if (given.length > MOST_RUNS) {
    throw new InputError("TOO_LONG", `runs must be at most ${MOST_RUNS}: got ${given.length}`, { name: "runs" });
  }
  return Array.from(given, (run, i) => readRun(run as CoastDownRun, `run ${i + 1}`, units, air));
}

function readRun(
  run: CoastDownRun,
  name: string,
  units: { time: TimeUnit; speed: SpeedUnit },
  common: AirDensityOptions,
): RunRead {
  const optional = ["airSpeed?", "grade?", "air?"];
  const wind = { unit: "m/s", atLeast: -STRONGEST_WIND, atMost: STRONGEST_WIND, optional: true } as const;
  const { headWind, crossWind } = readOptions(name, run, { headWind: wind, crossWind: wind }, [
    "direction",
    "time",
    "speed",
    ...optional,
  ]);
  if (run.direction !== "out" && run.direction !== "back") {
    throw new InputError(
      "WRONG_CHOICE",
      `direction of ${name} must be "out" or "back": got ${describeGiven(run.direction)}`,
      {
        name,
      },
    );
  }
  if (headWind !== undefined && run.airSpeed !== undefined) {
    throw new InputError("INCONSISTENT", `${name} takes a headWind or an airSpeed, not both: leave one of them out`, {
      name,
    });
  }
  // One converter for a union of units: all of them are of one dimension, which the cast hides from the compiler.
  const [toSeconds, toSpeed] = [converter(units.time as "min", "s"), converter(units.speed as "km/h", "m/s")];
  const time = column(name, "time", run.time, toSeconds);
  const speed = column(name, "speed", run.speed, toSpeed);
  const airSpeed = run.airSpeed === undefined ? undefined : column(name, "airSpeed", run.airSpeed, toSpeed);
  for (const other of [speed, airSpeed]) {
    if (other === undefined || other.length === time.length) continue;
    throw new InputError(
      "INCONSISTENT",
      `the columns of ${name} must have as many rows: got ${time.length} and ${other.length}`,
      {
        name,
      },
    );
  }
  assertRows(name, time, speed, airSpeed);
  const rows = Float64Array.from(speed, (v, row) =>
    airSpeed === undefined ? (headWind ?? 0) : (airSpeed[row] as number) - v,
  );
  const own = run.air ?? common;
  return {
    direction: run.direction,
    time,
    speed,
    headWind: rows,
    windGiven: headWind !== undefined || airSpeed !== undefined,
    crossWind,
    onBoard: airSpeed !== undefined,
    grade: readGrade(run.grade),
    density: airDensity(own).in("kg/m³"),
    temperature: own.temperature.in("°C"),
  };
}

function isList(given: unknown): given is ArrayLike<unknown> {
  // No instanceof: arrays of another realm are arrays too. A DataView is a view without a length.
  return Array.isArray(given) || (ArrayBuffer.isView(given) && "length" in given);
}

/** A column in SI units; what is no finite number becomes NaN, and is refused with all other bad rows. */
function column(run: string, name: string, given: unknown, convert: (value: number) => number): Float64Array {
  if (!isList(given)) {
    throw new InputError(
      "NOT_AN_OBJECT",
      `${name} of ${run} must be an array of numbers: got ${describeGiven(given)}`,
      { name },
    );
  }
  const { length } = given;
  if (length < ROWS.fewest) {
    throw new InputError("EMPTY", `${name} of ${run} must have at least ${ROWS.fewest} rows: got ${length}`, {
      name,
      length,
    });
  }
  if (length > ROWS.most) {
    throw new InputError("TOO_LONG", `${name} of ${run} must have at most ${ROWS.most} rows: got ${length}`, {
      name,
      length,
    });
  }
  return Float64Array.from(given, (value) =>
    typeof value === "number" && Number.isFinite(value) ? convert(value) : Number.NaN,
  );
}

interface BadRow {
  /** Counted from 1. */
  readonly row: number;
  readonly what: string;
}

/** Refuses a run with every row that cannot be used, so that a log is mended once and not row by row. */
function assertRows(name: string, time: Float64Array, speed: Float64Array, airSpeed: Float64Array | undefined): void {
  const bad: BadRow[] = [];
  for (let i = 0; i < time.length; i++) {
    const [t, v, air] = [time[i] as number, speed[i] as number, airSpeed?.[i] ?? 0];
    const before = time[i - 1];
    const what = [
      ...(Number.isNaN(t) || Number.isNaN(v) || Number.isNaN(air) ? ["a value is no finite number"] : []),
      ...(before !== undefined && t <= before ? ["time does not increase"] : []),
      ...(v < 0 ? ["speed is negative"] : []),
      ...(v > FASTEST ? [`speed is above ${FASTEST} m/s: check the unit`] : []),
      ...(Math.abs(air - v) > STRONGEST_WIND && airSpeed !== undefined
        ? [`air and vehicle differ by more than ${STRONGEST_WIND} m/s`]
        : []),
    ];
    if (what.length > 0) bad.push({ row: i + 1, what: what.join(", ") });
  }
  const [first] = bad;
  if (first !== undefined) {
    const shown = bad.slice(0, 10).map(({ row, what }) => `row ${row} (${what})`);
    const more = bad.length > shown.length ? ` and ${bad.length - shown.length} more` : "";
    const code = first.what.startsWith("time")
      ? "TIME_NOT_INCREASING"
      : first.what.startsWith("a value")
        ? "NOT_A_NUMBER"
        : "OUT_OF_RANGE";
    throw new InputError(code, `${name} has rows that cannot be used: ${shown.join(", ")}${more}`, { name, rows: bad });
  }
  const [start, end] = [speed[0] as number, speed[speed.length - 1] as number];
  if (!(end < start)) {
    throw new InputError(
      "NOT_VALID_HERE",
      `${name} does not slow down: is it a coast-down, and is its time in order?`,
      { name },
    );
  }
  if ((time[time.length - 1] as number) - (time[0] as number) > LONGEST) {
    throw new InputError("OUT_OF_RANGE", `${name} must last at most ${LONGEST} s: check the unit of time`, { name });
  }
}
