import {
  type Acceleration,
  type Force,
  type Length,
  type Mass,
  type Quantity,
  type Relation,
  relation,
} from "@tarewatt/units";
import type { Fraction } from "../fraction.js";
import { standardGravity } from "../resistance/gravity.js";

/** Inputs of {@link frontAxleLoad} and {@link rearAxleLoad}. */
export interface AxleLoadInputs {
  /** Mass of the vehicle. */
  readonly mass: Quantity<Mass>;
  /** Part of the weight on the front axle at rest. */
  readonly frontShare: Fraction;
  /** Height of the centre of gravity. */
  readonly centreOfGravityHeight: Quantity<Length>;
  /** Distance between the axles. */
  readonly wheelbase: Quantity<Length>;
  /** Acceleration; negative while braking. */
  readonly acceleration: Quantity<Acceleration>;
}

const inputs = {
  mass: { symbol: "m", unit: "kg", meaning: "mass", above: 0 },
  frontShare: { symbol: "s_f", unit: "1", meaning: "part of the weight on the front axle", atLeast: 0, atMost: 1 },
  centreOfGravityHeight: { symbol: "h", unit: "m", meaning: "height of the centre of gravity", atLeast: 0, atMost: 3 },
  wheelbase: { symbol: "L", unit: "m", meaning: "wheelbase", above: 0, atMost: 10 },
  acceleration: { symbol: "a", unit: "m/s²", meaning: "acceleration", atLeast: -20, atMost: 20 },
} as const;
const source = { document: "balance of moments of a vehicle on a level road", status: "definition" } as const;
const validity = "level road; aerodynamic lift and pitching of the body left out";

/**
 * Load on the front axle of an accelerating vehicle; more when it brakes. Negative when the axle would lift.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`, `NOT_A_FRACTION`; otherwise as every relation
 * @example
 * const car = { mass: q("2000 kg"), frontShare: 0.5, centreOfGravityHeight: q("0.55 m"), wheelbase: q("2.9 m") };
 * frontAxleLoad({ ...car, acceleration: q("3 m/s²") }).in("kN"); // 8.669
 */
export const frontAxleLoad: Relation<AxleLoadInputs, Quantity<Force>> = /* @__PURE__ */ relation({
  name: "load on the front axle",
  inputs,
  result: { symbol: "N_f", unit: "N" },
  expression: "m·(9.80665·s_f − a·h/L)",
  source,
  validity,
  evaluate: ({ mass, frontShare, centreOfGravityHeight, wheelbase, acceleration }) =>
    mass * (standardGravity.value * frontShare - (acceleration * centreOfGravityHeight) / wheelbase),
});

/**
 * Load on the rear axle of an accelerating vehicle; less when it brakes. Negative when the axle would lift.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`, `NOT_A_FRACTION`; otherwise as every relation
 * @example
 * const car = { mass: q("2000 kg"), frontShare: 0.5, centreOfGravityHeight: q("0.55 m"), wheelbase: q("2.9 m") };
 * rearAxleLoad({ ...car, acceleration: q("3 m/s²") }).in("kN"); // 10.94
 */
export const rearAxleLoad: Relation<AxleLoadInputs, Quantity<Force>> = /* @__PURE__ */ relation({
  name: "load on the rear axle",
  inputs,
  result: { symbol: "N_r", unit: "N" },
  expression: "m·(9.80665·(1 − s_f) + a·h/L)",
  source,
  validity,
  evaluate: ({ mass, frontShare, centreOfGravityHeight, wheelbase, acceleration }) =>
    mass * (standardGravity.value * (1 - frontShare) + (acceleration * centreOfGravityHeight) / wheelbase),
});
