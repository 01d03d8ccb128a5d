import { type Acceleration, type Force, type Mass, type Quantity, type Relation, relation } from "@tarewatt/units";

/** Inputs of {@link inertiaForce}. */
export interface InertiaForceInputs {
  /** Effective mass: mass of the vehicle with its load and the equivalent mass of its rotating parts. */
  readonly mass: Quantity<Mass>;
  /** Acceleration, positive when the speed grows. */
  readonly acceleration: Quantity<Acceleration>;
}

/**
 * Force that accelerates a vehicle; negative when it slows down.
 *
 * @throws InputError `NEGATIVE` when the mass is negative; otherwise as every relation
 * @example
 * inertiaForce({ mass: q("2060 kg"), acceleration: q("1.5 m/s²") }); // 3090 N
 */
export const inertiaForce: Relation<InertiaForceInputs, Quantity<Force>> = /* @__PURE__ */ relation({
  name: "inertia force",
  inputs: {
    mass: { symbol: "m_e", unit: "kg", meaning: "effective mass", atLeast: 0 },
    acceleration: { symbol: "a", unit: "m/s²", meaning: "acceleration" },
  },
  result: { symbol: "F_i", unit: "N" },
  expression: "m_e·a",
  source: { document: "Newton's second law", status: "definition" },
  evaluate: ({ mass, acceleration }) => mass * acceleration,
});
