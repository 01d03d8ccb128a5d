import { type Force, type Quantity, type Relation, relation, type Speed } from "@tarewatt/units";

/** Inputs of {@link spinForce}. The coefficients are those of an axle's report, in W and revolutions per second. */
export interface SpinForceInputs {
  /** Speed of the vehicle. */
  readonly speed: Quantity<Speed>;
  /** Revolutions of the tyre per metre. */
  readonly revolutionsPerMetre: number;
  /** Power at standstill, c_0, in W; a regression, which may be negative. */
  readonly constant: number;
  /** Power per revolution a second, c_1. */
  readonly linear: number;
  /** Power per its square, c_2. */
  readonly quadratic: number;
}

/**
 * Force at the wheels that turns an unloaded axle, from the power that a spin-loss test measured.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`; otherwise as every relation
 * @example
 * spinForce({
 *   speed: q("28.86 m/s"), revolutionsPerMetre: 0.315657, constant: -206.841, linear: 239.8279, quadratic: 21.27505,
 * }); // 129.7 N
 */
export const spinForce: Relation<SpinForceInputs, Quantity<Force>> = /* @__PURE__ */ relation({
  name: "force that spins an unloaded axle",
  inputs: {
    speed: { symbol: "v", unit: "m/s", meaning: "speed", above: 0, atMost: 150 },
    revolutionsPerMetre: { symbol: "n", unit: "1", meaning: "revolutions of the tyre per metre", above: 0, atMost: 2 },
    constant: { symbol: "c_0", unit: "1", meaning: "power at standstill, in W" },
    linear: { symbol: "c_1", unit: "1", meaning: "power per revolution a second, in J" },
    quadratic: { symbol: "c_2", unit: "1", meaning: "power per square of it, in J·s" },
  },
  result: { symbol: "F_spin", unit: "N" },
  expression: "(c_0 + c_1·n·v + c_2·(n·v)²)/v",
  source: { document: "40 CFR 1037.528", status: "seen" },
  evaluate: ({ speed, revolutionsPerMetre, constant, linear, quadratic }) => {
    const turns = revolutionsPerMetre * speed;
    return (constant + linear * turns + quadratic * turns ** 2) / speed;
  },
});
