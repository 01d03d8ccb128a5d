import {
  type Energy,
  type EnergyPerDistance,
  InputError,
  type Length,
  type Power,
  type Quantity,
  quantity,
  readNumber,
  readOptions,
  type Speed,
  type Step,
} from "@tarewatt/units";
import { rangeOn } from "./range.js";
import type { BatteryBoundary } from "./scope.js";
import { type SteadySpeedOptions, steadySpeed } from "./steady-speed.js";

/** Options of {@link rangeCurve}: as for `steadySpeed`, with many speeds. */
export interface RangeCurveOptions extends Omit<SteadySpeedOptions, "speed" | "chargingEfficiency"> {
  /** Speeds, rising, 2 to 1000. */
  readonly speeds: readonly Quantity<Speed>[];
  /** Energy that the driver can use between full and empty, at the boundary of the battery's consumption. */
  readonly usableEnergy: Quantity<Energy>;
}

/** One speed of a {@link RangeCurve}. */
export interface RangeCurveRow {
  /** The speed. */
  readonly speed: Quantity<Speed>;
  /** Power of the battery. */
  readonly power: Quantity<Power>;
  /** Consumption at the battery. */
  readonly consumption: Quantity<EnergyPerDistance>;
  /** Range at this speed. */
  readonly range: Quantity<Length>;
}

/** Range over steady speed. Made by {@link rangeCurve}. */
export interface RangeCurve {
  /** What was driven, and what empty means. */
  readonly procedure: string;
  /** One row a speed that can be held. */
  readonly rows: readonly RangeCurveRow[];
  /** The speed of the longest range, between the lowest and the highest one that can be held. */
  readonly best: RangeCurveRow;
  /** Speeds that the drivetrain cannot hold. */
  readonly unreachable: readonly Quantity<Speed>[];
  /** Where the consumption at the battery is counted. */
  readonly batteryBoundary: Exclude<BatteryBoundary, "wall">;
  /** What a reader should doubt; empty when there is nothing. */
  readonly warnings: readonly string[];
  /** How the best range came about, at its speed. */
  working(): Step[];
  /** What is dangerous, such as something towed; empty when there is nothing. */
  readonly cautions: readonly string[];
}

const MOST_SPEEDS = 1000;
/** Parts of the span that are looked at before the best one is searched more closely. */
const PARTS = 64;
/** (√5 − 1)/2 */
const GOLDEN = 0.618_033_988_749_894_9;
const NARROWINGS = 40;

/**
 * Range over steady speed, and the speed that takes the vehicle farthest. Empty means that the usable energy is spent.
 *
 * Air, wind, altitude and temperature are in the road load that is given; heating and cooling in `climate`, which is why slow is
 * not best in the cold. Energy to warm up is taken once.
 *
 * @param options - speeds, usable energy, road load, drivetrain, accessories, climate, grade
 * @returns rows for a table or a figure, and the best speed
 * @throws InputError `EMPTY` below two speeds, `TOO_LONG`, `INCONSISTENT` when they do not rise, `NOT_VALID_HERE` when none can be held
 *   or nothing is consumed, and what `steadySpeed` and `rangeOn` throw
 * @example
 * const load = roadLoad({
 *   ...{ mass: q("2000 kg"), dragArea: q("0.7 m²"), rollingResistanceCoefficient: 0.009, airDensity: q("1.189 kg/m³") },
 * });
 * const drivetrain = efficiencyDrivetrain({
 *   ...{ efficiency: 0.88, regeneration: { share: 0.9 }, contains: ["gears", "motor", "inverter"] },
 * });
 * const speeds = [q("10 km/h"), q("60 km/h"), q("110 km/h")];
 * rangeCurve({ speeds, usableEnergy: q("72 kWh"), load, drivetrain, accessories: q("350 W") }).best.speed.in("km/h"); // 25.8...
 */
export function rangeCurve(options: RangeCurveOptions): RangeCurve {
  const { speeds, usableEnergy, ...driven } = options ?? {};
  readOptions("rangeCurve", options, { usableEnergy: { unit: "kWh", atLeast: 0 } }, [
    ...["speeds", "load", "drivetrain", "accessories", "grade?", "climate?"],
  ]);
  const numbers = readSpeeds(speeds);
  const rowAt = (speed: Quantity<Speed>): RangeCurveRow | undefined => {
    const result = reachable(() => steadySpeed({ ...driven, speed }));
    if (result === undefined) return undefined;
    const { range } = rangeOn({ usableEnergy, result });
    return Object.freeze({ speed, power: result.power.atBattery, consumption: result.consumption.atBattery, range });
  };
  const all = speeds.map((speed) => rowAt(speed));
  const rows = all.filter((row) => row !== undefined);
  const first = rows[0];
  if (first === undefined) {
    throw new InputError("NOT_VALID_HERE", "the vehicle can hold none of these speeds: it has too little power", {});
  }
  const unit = first.speed.unit as "km/h";
  const held = all.flatMap((row, index) => (row === undefined ? [] : [numbers[index] as number]));
  const best = bestOf((v) => rowAt(quantity(v, "m/s").to(unit)), Math.min(...held), Math.max(...held)) ?? first;
  const result = steadySpeed({ ...driven, speed: first.speed });
  const { batteryBoundary, warnings, cautions } = rangeOn({ usableEnergy, result });
  return Object.freeze({
    procedure: "at steady speed until the usable energy is spent",
    rows: Object.freeze(rows),
    best,
    unreachable: Object.freeze(speeds.filter((_, index) => all[index] === undefined)),
    batteryBoundary,
    ...{ warnings, cautions },
    working: () => {
      const atBest = steadySpeed({ ...driven, speed: best.speed });
      return [...atBest.working(), ...rangeOn({ usableEnergy, result: atBest }).working()];
    },
  });
}

/** Undefined for a speed that cannot be held; everything else that is wrong stays an error. */
function reachable<T>(call: () => T): T | undefined {
  try {
    return call();
  } catch (error) {
    if (error instanceof InputError && error.code === "NOT_VALID_HERE") return undefined;
    throw error;
  }
}

/** The row of the longest range: the best of some parts, then golden sections around it. */
function bestOf(
  rowAt: (speed: number) => RangeCurveRow | undefined,
  from: number,
  to: number,
): RangeCurveRow | undefined {
  const metres = (speed: number): number => rowAt(speed)?.range.in("m") ?? 0;
  const step = (to - from) / PARTS;
  let best = from;
  for (let i = 1; i <= PARTS; i++) {
    const speed = i === PARTS ? to : from + step * i;
    if (metres(speed) > metres(best)) best = speed;
  }
  let low = Math.max(from, best - step);
  let high = Math.min(to, best + step);
  for (let i = 0; i < NARROWINGS; i++) {
    const left = high - GOLDEN * (high - low);
    const right = low + GOLDEN * (high - low);
    if (metres(left) < metres(right)) low = left;
    else high = right;
  }
  const middle = (low + high) / 2;
  return rowAt(metres(middle) >= metres(best) ? middle : best);
}

function readSpeeds(given: unknown): number[] {
  if (!Array.isArray(given) || given.length < 2) {
    throw new InputError("EMPTY", "speeds must list two speeds at least", { name: "speeds" });
  }
  if (given.length > MOST_SPEEDS) {
    const message = `speeds must be at most ${MOST_SPEEDS}: got ${given.length}`;
    throw new InputError("TOO_LONG", message, { atMost: MOST_SPEEDS });
  }
  const numbers = given.map((speed, i) => readNumber(`speeds[${i}]`, speed, { unit: "m/s", above: 0, atMost: 150 }));
  for (let i = 1; i < numbers.length; i++) {
    if ((numbers[i] as number) > (numbers[i - 1] as number)) continue;
    throw new InputError("INCONSISTENT", `speeds must rise: got ${given[i]} after ${given[i - 1]}`, { index: i });
  }
  return numbers;
}
