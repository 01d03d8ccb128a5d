import { type Force, type Length, type Mass, type Quantity, type Relation, relation } from "@tarewatt/units";
import type { Fraction } from "../fraction.js";
import { standardGravity } from "../resistance/gravity.js";

/** Inputs of {@link tractionLimitFront} and {@link tractionLimitRear}. */
export interface TractionLimitInputs {
  /** Mass of the vehicle. */
  readonly mass: Quantity<Mass>;
  /** Friction between tyres and road. */
  readonly friction: Fraction;
  /** Part of the weight on the front axle at rest. */
  readonly frontShare: Fraction;
  /** Height of the centre of gravity. */
  readonly centreOfGravityHeight: Quantity<Length>;
  /** Distance between the axles. */
  readonly wheelbase: Quantity<Length>;
}

const inputs = {
  mass: { symbol: "m", unit: "kg", meaning: "mass", above: 0 },
  friction: { symbol: "μ", unit: "1", meaning: "friction between tyres and road", atLeast: 0, atMost: 2 },
  frontShare: { symbol: "s_f", unit: "1", meaning: "part of the weight on the front axle", atLeast: 0, atMost: 1 },
  centreOfGravityHeight: { symbol: "h", unit: "m", meaning: "height of the centre of gravity", atLeast: 0, atMost: 3 },
  wheelbase: { symbol: "L", unit: "m", meaning: "wheelbase", above: 0, atMost: 10 },
} as const;
const result = { symbol: "F_max", unit: "N" } as const;
const source = {
  document: "balance of moments of an accelerating vehicle",
  section: "rolling resistance, drag and the inertia of rotating parts left out",
  status: "memory",
} as const;

/**
 * Largest force of a driven front axle: the axle loses load as the vehicle accelerates.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`, `NOT_A_FRACTION`; otherwise as every relation
 * @example
 * const car = { mass: q("2000 kg"), frontShare: 0.5, centreOfGravityHeight: q("0.55 m"), wheelbase: q("2.9 m") };
 * tractionLimitFront({ ...car, friction: 0.8 }).in("kN"); // 6.812
 */
export const tractionLimitFront: Relation<TractionLimitInputs, Quantity<Force>> = /* @__PURE__ */ relation({
  name: "largest force of a driven front axle",
  inputs,
  result,
  source,
  expression: "μ·m·9.80665·s_f/(1 + μ·h/L)",
  validity: "level road, no aerodynamic lift",
  evaluate: ({ mass, friction, frontShare, centreOfGravityHeight, wheelbase }) =>
    (friction * mass * standardGravity.value * frontShare) / (1 + (friction * centreOfGravityHeight) / wheelbase),
});

/**
 * Largest force of a driven rear axle: the axle gains load as the vehicle accelerates, until the front would lift.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`, `NOT_A_FRACTION`; otherwise as every relation
 * @example
 * const car = { mass: q("2000 kg"), frontShare: 0.5, centreOfGravityHeight: q("0.55 m"), wheelbase: q("2.9 m") };
 * tractionLimitRear({ ...car, friction: 0.8 }).in("kN"); // 9.249
 */
export const tractionLimitRear: Relation<TractionLimitInputs, Quantity<Force>> = /* @__PURE__ */ relation({
  name: "largest force of a driven rear axle",
  inputs,
  result,
  source,
  expression: "μ·m·9.80665·min(1, (1 − s_f)/max(1 − μ·h/L, 1 − s_f))",
  validity: "level road, no aerodynamic lift; with all the weight on the rear axle it is that of all wheels",
  evaluate: ({ mass, friction, frontShare, centreOfGravityHeight, wheelbase }) => {
    const rear = 1 - frontShare;
    const shifted = 1 - (friction * centreOfGravityHeight) / wheelbase;
    // No vehicle stands on more than all its weight.
    return friction * mass * standardGravity.value * Math.min(1, rear / Math.max(shifted, rear));
  },
});
