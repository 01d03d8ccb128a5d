import { InputError, type Quantity, quantity, readOptions, type Speed, type Step } from "@tarewatt/units";
import { cautionsOf } from "../check/towing.js";
import type { Fraction } from "../fraction.js";
import type { RoadLoad } from "../resistance/road-load.js";
import { readGrade, splitNumbers } from "../resistance/road-load-numbers.js";
import { readThrust, type ThrustLimit, type ThrustOptions, thrustNames, warningsOfThrust } from "./thrust.js";

/** Options of {@link topSpeed}. */
export interface TopSpeedOptions extends ThrustOptions {
  /** Resistance of the vehicle. */
  readonly load: RoadLoad;
  /** Speed that gears, motor or an agreed limiter do not let it pass; none when left out. */
  readonly limiter?: Quantity<Speed> | undefined;
  /** Grade of the road, rise over run; level when left out. */
  readonly grade?: Fraction | undefined;
}

/** The largest speed that a vehicle holds. Made by {@link topSpeed}. */
export interface TopSpeedResult {
  /** The speed. */
  readonly speed: Quantity<Speed>;
  /** What limits it; `"gearing"` when the motor turns no faster. */
  readonly limitedBy: ThrustLimit | "limiter" | "gearing";
  /** What a reader should doubt; empty when there is nothing. */
  readonly warnings: readonly string[];
  /** The resistance at this speed, and the power at the wheels that it takes: what the thrust just holds. */
  working(): Step[];
  /** What is dangerous, such as something towed; empty when there is nothing. */
  readonly cautions: readonly string[];
}

/** Largest speed that is looked at, in m/s: 540 km/h. */
const FASTEST = 150;
const STEPS = 600;
const HALVINGS = 50;

/**
 * Largest speed at which the thrust still holds the resistance.
 *
 * @param options - load, thrust, limiter, grade
 * @returns the speed and what limits it
 * @throws InputError `NOT_VALID_HERE` when the vehicle holds no speed, or every speed up to 150 m/s, and what {@link sprint} throws
 * @example
 * const load = roadLoad({
 *   ...{ mass: q("2000 kg"), dragArea: q("0.7 m²"), rollingResistanceCoefficient: 0.009, airDensity: q("1.189 kg/m³") },
 * });
 * topSpeed({ load, power: q("150 kW") }).speed.in("km/h"); // 249.0...
 */
export function topSpeed(options: TopSpeedOptions): TopSpeedResult {
  const { limiter } = readOptions(
    "topSpeed",
    options,
    { limiter: { unit: "m/s", above: 0, atMost: FASTEST, optional: true } },
    ["load", "grade?", ...thrustNames],
  );
  const grade = readGrade(options.grade);
  const { load } = options;
  const { constant, gradeForce, linear, quadratic } = splitNumbers(load, grade);
  const thrust = readThrust("topSpeed", options, load);
  const spare = (v: number): number => thrust.force(v) - constant - gradeForce - v * (linear + quadratic * v);
  const most = limiter ?? FASTEST;
  const found = highest(spare, most);
  if (found === undefined) {
    throw new InputError("NOT_VALID_HERE", "the vehicle holds no speed: its resistance is larger than its thrust", {});
  }
  if (found === most && limiter === undefined) {
    throw new InputError("NOT_VALID_HERE", `nothing limits the vehicle up to ${FASTEST} m/s: check the power`, {});
  }
  const atLimiter = found === most;
  // A force that is there just below and gone just above is cut off by the motor's speed.
  const cutOff = !atLimiter && spare(found * (1 - 1e-9)) > 1e-3 * Math.abs(thrust.force(found * (1 - 1e-9)));
  const speed = quantity(found * 3.6, "km/h");
  return Object.freeze({
    speed,
    limitedBy: atLimiter ? "limiter" : cutOff ? "gearing" : thrust.limitAt(found),
    warnings: Object.freeze(warningsOfThrust(load, options)),
    cautions: cautionsOf(load),
    working: () => load.at(speed, { grade }).working(),
  });
}

/** Largest speed up to a limit at which the spare force is not negative. */
function highest(spare: (speed: number) => number, most: number): number | undefined {
  if (spare(most) >= 0) return most;
  for (let i = STEPS - 1; i > 0; i--) {
    let low = (most * i) / STEPS;
    if (!(spare(low) >= 0)) continue;
    let high = (most * (i + 1)) / STEPS;
    for (let halving = 0; halving < HALVINGS; halving++) {
      const middle = (low + high) / 2;
      if (spare(middle) >= 0) low = middle;
      else high = middle;
    }
    return low;
  }
  return undefined;
}
