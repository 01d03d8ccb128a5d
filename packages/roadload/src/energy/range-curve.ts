import {
  type Energy,
  type EnergyPerDistance,
  InputError,
  type Length,
  type Power,
  type Quantity,
  quantity,
  readOptions,
  type Speed,
  type Step,
} from "@tarewatt/units";
import type { Fraction } from "../fraction.js";
import type { BatteryState } from "./battery.js";
import { bestOf } from "./best-row.js";
import { type ClimateWithSpread, climateEnds, type RangeEnds, rangeEnds } from "./climate-ends.js";
import { readSpeeds } from "./read-speeds.js";
import type { BatteryBoundary } from "./scope.js";
import { rangeByBattery, rangeByEnergy, type SteadyRange } from "./steady-range.js";
import type { SteadyResult, SteadySpeedOptions } from "./steady-result.js";
import { steadySpeed } from "./steady-speed.js";

/** Options of {@link rangeCurve}: as for `steadySpeed`, with many speeds. */
export interface RangeCurveOptions extends Omit<SteadySpeedOptions, "speed" | "chargingEfficiency" | "climate"> {
  /** Heating and cooling, as for `steadySpeed`; with its `spread`, which `cabinClimate` gives, the ranges have ends, too. */
  readonly climate?: ClimateWithSpread | undefined;
  /** Speeds, rising, 2 to 1000. */
  readonly speeds: readonly Quantity<Speed>[];
  /** Energy that the driver can use between full and empty, at the boundary of the battery's consumption. Give it, or a battery. */
  readonly usableEnergy?: Quantity<Energy> | undefined;
  /**
   * The battery and how full it is at the start, in place of a usable energy: it is emptied down to the floor, or to where it gives too
   * little power for the speed.
   */
  readonly battery?: BatteryState | undefined;
  /** State of charge at which the vehicle is called empty; 0 when left out. Only with a battery. */
  readonly floor?: Fraction | undefined;
}

/** One speed of a {@link RangeCurve}. */
export interface RangeCurveRow {
  /** The speed. */
  readonly speed: Quantity<Speed>;
  /** Power of the battery; with a battery model the mean of its cells while it empties, without a warm-up. */
  readonly power: Quantity<Power>;
  /** Consumption at the battery; with a battery model that mean per speed. */
  readonly consumption: Quantity<EnergyPerDistance>;
  /** Range at this speed. */
  readonly range: Quantity<Length>;
  /** What the ends of the climate make of the range; only when the climate says them. */
  readonly rangeEnds?: RangeEnds;
  /** What ended the drive: the state of charge at its floor, or too little power. Only with a battery. */
  readonly endedBy?: "state of charge" | "power";
  /** State of charge at the end; only with a battery. */
  readonly stateOfCharge?: number;
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

/**
 * Range over steady speed, and the speed that takes the vehicle farthest. Empty means that the usable energy is spent; with a battery,
 * that its state of charge is at the floor, or that it gives too little power for the speed.
 *
 * Air, wind, altitude and temperature are in the road load that is given; heating and cooling in `climate`, which is why slow is
 * not best in the cold. Energy to warm up is taken once. The ends of a `cabinClimate` give every range its ends; spreads of all that is not
 * known are a matter of `@tarewatt/estimate`.
 *
 * @param options - speeds, usable energy or battery, road load, drivetrain, accessories, climate, grade
 * @returns rows for a table or a figure, and the best speed
 * @throws InputError `EMPTY` below two speeds, `TOO_LONG`, `INCONSISTENT` when they do not rise, or energy and
 *   battery are both given, `MISSING_OPTION` when neither is, `NOT_VALID_HERE` when none can be held
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
  const { speeds, usableEnergy, floor: _, ...driven } = options ?? {};
  const { floor } = readOptions(
    "rangeCurve",
    options,
    {
      usableEnergy: { unit: "kWh", atLeast: 0, optional: true },
      floor: { unit: "1", atLeast: 0, atMost: 1, optional: true },
    },
    ["speeds", "load", "drivetrain", "accessories", "grade?", "climate?", "battery?"],
  );
  const howFar = readHowFar(options, floor);
  const numbers = readSpeeds(speeds);
  const at = (speed: Quantity<Speed>, climate = driven.climate): SteadyRange | undefined => {
    const result = reachable(() => steadySpeed({ ...driven, climate, speed }));
    return result === undefined ? undefined : howFar(result);
  };
  const ends = climateEnds(options.climate);
  const withEnds = (row: RangeCurveRow): RangeCurveRow => {
    if (ends === undefined) return row;
    const [least, most] = ends.map((climate) => at(row.speed, climate)?.row.range);
    return Object.freeze({ ...row, rangeEnds: rangeEnds(row.range, most, least) });
  };
  const all = speeds.map((speed) => at(speed));
  const held = all.filter((each) => each !== undefined);
  const [first] = held;
  if (first === undefined) {
    throw new InputError("NOT_VALID_HERE", "the vehicle can hold none of these speeds: it has too little power", {});
  }
  const unit = first.row.speed.unit as "km/h";
  const within = numbers.filter((_each, index) => all[index] !== undefined);
  const rowAt = (v: number) => at(quantity(v, "m/s").to(unit))?.row;
  const best = bestOf(rowAt, Math.min(...within), Math.max(...within)) ?? first.row;
  const { batteryBoundary, cautions } = steadySpeed({ ...driven, speed: first.row.speed });
  return Object.freeze({
    procedure:
      options.battery === undefined
        ? "at steady speed until the usable energy is spent"
        : `at steady speed from a state of charge of ${options.battery.stateOfCharge} until it is ${floor ?? 0}, or the battery gives too little power`,
    rows: Object.freeze(held.map(({ row }) => withEnds(row))),
    best: withEnds(best),
    unreachable: Object.freeze(speeds.filter((_each, index) => all[index] === undefined)),
    batteryBoundary: batteryBoundary as RangeCurve["batteryBoundary"],
    warnings: Object.freeze([...new Set(held.flatMap(({ warnings }) => warnings))]),
    cautions,
    working: () => howFar(steadySpeed({ ...driven, speed: best.speed })).steps(),
  });
}

/** By a usable energy or by a battery: one of the two says what empty means. */
function readHowFar(
  { usableEnergy, battery }: RangeCurveOptions,
  floor: number | undefined,
): (result: SteadyResult) => SteadyRange {
  if (battery !== undefined) {
    if (usableEnergy === undefined) return (result) => rangeByBattery(battery, floor ?? 0, result);
    throw new InputError("INCONSISTENT", "rangeCurve must be given a usableEnergy or a battery: got both", {});
  }
  if (usableEnergy === undefined) {
    throw new InputError("MISSING_OPTION", "rangeCurve must be given a usableEnergy or a battery: got neither", {
      option: "usableEnergy",
    });
  }
  if (floor === undefined) return (result) => rangeByEnergy(usableEnergy, result);
  throw new InputError("INCONSISTENT", "floor is a state of charge of a battery: give a battery, or leave it out", {});
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
