import { InputError, type Quantity, readOptions, type Speed, type Time } from "@tarewatt/units";
import type { Fraction } from "../../fraction.js";
import { assertRoadLoad } from "../assert-road-load.js";
import type { RoadLoad } from "../road-load.js";
import { readGrade, splitNumbers } from "../road-load-numbers.js";
import { type PreparedRun, simulate } from "./simulate.js";

/** Options of {@link simulateCoastDown}. */
export interface SimulateCoastDownOptions {
  /** Resistance and inertia of the vehicle, in the air that is meant. */
  readonly load: RoadLoad;
  /** Speed at the start. */
  readonly from: Quantity<Speed>;
  /** Speed to end at, below `from`. */
  readonly to: Quantity<Speed>;
  /** Time from row to row, 0.01 to 10 s. */
  readonly step: Quantity<Time>;
  /** Wind against the vehicle, negative from behind; still air when left out. */
  readonly headWind?: Quantity<Speed> | undefined;
  /** Rise over run, positive uphill; level when left out. */
  readonly grade?: Fraction | undefined;
}

/** A coast-down as a table: plain numbers, in s and m/s. */
export interface SimulatedCoastDown {
  /** Time of every row, in s. */
  readonly time: readonly number[];
  /** Speed of every row, in m/s. */
  readonly speed: readonly number[];
}

const MOST_ROWS = 20_000;
/** Rows between looks at whether the end was reached. */
const BATCH = 64;

/**
 * The coast-down that a vehicle should show: to compare with a log, to plan a test, to try {@link coastDown}.
 *
 * @param options - road load, speeds, time step, wind, grade
 * @returns times and speeds, from the start to the last row that is not slower than `to`
 * @throws InputError `INCONSISTENT` when `to` is not below `from`, `NOT_VALID_HERE` when the vehicle does not slow down to it,
 *   `OUT_OF_RANGE`, `NEGATIVE`, `WRONG_CHOICE`, and what `readOptions` throws
 * @example
 * const load = roadLoad({ mass: q("2 t"), dragArea: q("0.7 m²"), rollingResistanceCoefficient: 0.01, airDensity: q("1.189 kg/m³") });
 * const { time, speed } = simulateCoastDown({ load, from: q("100 km/h"), to: q("20 km/h"), step: q("1 s") });
 * time.length; // 150
 */
export function simulateCoastDown(options: SimulateCoastDownOptions): SimulatedCoastDown {
  const { from, to, step, headWind } = readOptions(
    "simulateCoastDown",
    options,
    {
      from: { unit: "m/s", above: 0, atMost: 150 },
      to: { unit: "m/s", atLeast: 0, atMost: 150 },
      step: { unit: "s", atLeast: 0.01, atMost: 10 },
      headWind: { unit: "m/s", atLeast: -30, atMost: 30, optional: true },
    },
    ["load", "grade?"],
  );
  const { load } = options;
  assertRoadLoad(load);
  if (!(to < from)) {
    throw new InputError("INCONSISTENT", `to must be below from: got ${options.to} and ${options.from}`, {
      options: ["from", "to"],
    });
  }
  const numbers = splitNumbers(load, readGrade(options.grade));
  const { constant, linear, quadratic } = numbers;
  const coefficients = { constant, linear, quadratic, directional: 0 };
  const time: number[] = [];
  const speed: number[] = [];
  let start = from;
  while (time.length < MOST_ROWS) {
    const offset = time.length;
    const run: PreparedRun = {
      direction: "out",
      time: Float64Array.from({ length: BATCH + 1 }, (_, i) => i * step),
      speed: new Float64Array(BATCH + 1),
      headWind: new Float64Array(BATCH + 1).fill(headWind ?? 0),
      ...{ tyreFactor: 1, airFactor: 1, gradeForce: numbers.gradeForce, cosine: 1 },
    };
    const found = simulate(run, coefficients, start, numbers.inertiaMass).speed;
    for (let i = 0; i < BATCH; i++) {
      const v = found[i] as number;
      if (v < to) return Object.freeze({ time: Object.freeze(time), speed: Object.freeze(speed) });
      time.push((offset + i) * step);
      speed.push(v);
    }
    start = found[BATCH] as number;
    if (!Number.isFinite(start)) break;
  }
  throw new InputError(
    "NOT_VALID_HERE",
    `the vehicle does not slow down to ${options.to} in ${MOST_ROWS} rows: check grade, wind and load`,
    {},
  );
}
