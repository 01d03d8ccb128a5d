import {
  type Force,
  type ForcePerSpeed,
  type ForcePerSpeedSquared,
  type Power,
  type Quantity,
  type Relation,
  relation,
  type Speed,
} from "@tarewatt/units";
import type { Fraction } from "../fraction.js";
import { cosineOf } from "./rolling-resistance.js";

/** Inputs of {@link totalResistance}. */
export interface TotalResistanceInputs {
  /** Rolling resistance. */
  readonly rolling: Quantity<Force>;
  /** Aerodynamic drag. */
  readonly aerodynamic: Quantity<Force>;
  /** Part of the weight along the road, negative downhill. */
  readonly grade: Quantity<Force>;
}

/**
 * Force at the wheels that holds a speed: rolling resistance, aerodynamic drag and grade.
 *
 * @throws InputError as every relation
 * @example
 * totalResistance({ rolling: q("180 N"), aerodynamic: q("400 N"), grade: q("0 N") }); // 580 N
 */
export const totalResistance: Relation<TotalResistanceInputs, Quantity<Force>> = /* @__PURE__ */ relation({
  name: "force at the wheels at a steady speed",
  inputs: {
    rolling: { symbol: "F_r", unit: "N", meaning: "rolling resistance" },
    aerodynamic: { symbol: "F_a", unit: "N", meaning: "aerodynamic drag" },
    grade: { symbol: "F_g", unit: "N", meaning: "grade resistance" },
  },
  result: { symbol: "F", unit: "N" },
  expression: "F_r + F_a + F_g",
  source: { document: "sum of the resistances", status: "definition" },
  evaluate: ({ rolling, aerodynamic, grade }) => rolling + aerodynamic + grade,
});

/** Inputs of {@link certifiedResistance}. */
export interface CertifiedResistanceInputs {
  /** Constant coefficient A. */
  readonly constant: Quantity<Force>;
  /** Linear coefficient B. */
  readonly linear: Quantity<ForcePerSpeed>;
  /** Quadratic coefficient C. */
  readonly quadratic: Quantity<ForcePerSpeedSquared>;
  /** Speed. */
  readonly speed: Quantity<Speed>;
  /** Rise over run, positive uphill. */
  readonly grade: Fraction;
  /** Part of the weight along the road, negative downhill: see {@link gradeResistance}. */
  readonly gradeForce: Quantity<Force>;
}

/**
 * Force at the wheels that holds a speed, from certified coefficients, in the form of a chassis dynamometer.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`, `NOT_A_FRACTION`; otherwise as every relation
 * @example
 * certifiedResistance({
 *   constant: q("30 lbf"), linear: q("0.2 lbf/mph"), quadratic: q("0.018 lbf/mph²"), speed: q("60 mph"), grade: 0,
 *   gradeForce: q("0 N"),
 * }).in("lbf"); // 106.8
 */
export const certifiedResistance: Relation<CertifiedResistanceInputs, Quantity<Force>> = /* @__PURE__ */ relation({
  name: "force at the wheels at a steady speed, from certified coefficients",
  inputs: {
    constant: { symbol: "A", unit: "N", meaning: "constant coefficient" },
    linear: { symbol: "B", unit: "N/(m/s)", meaning: "linear coefficient" },
    quadratic: { symbol: "C", unit: "N/(m/s)²", meaning: "quadratic coefficient" },
    speed: { symbol: "v", unit: "m/s", meaning: "speed", atLeast: 0, atMost: 150 },
    grade: { symbol: "G", unit: "1", meaning: "grade, rise over run", atLeast: -1, atMost: 1 },
    gradeForce: { symbol: "F_g", unit: "N", meaning: "grade resistance" },
  },
  result: { symbol: "F", unit: "N" },
  expression: "A·cos(atan(G)) + B·v + C·v² + F_g",
  source: { document: "40 CFR 1066.210", section: "(d)(4), layout of the equation from memory", status: "memory" },
  evaluate: ({ constant, linear, quadratic, speed, grade, gradeForce }) =>
    constant * cosineOf(grade) + linear * speed + quadratic * speed ** 2 + gradeForce,
});

/** Inputs of {@link wheelPower}. */
export interface WheelPowerInputs {
  /** Force at the wheels, negative when the vehicle must be held back. */
  readonly force: Quantity<Force>;
  /** Speed. */
  readonly speed: Quantity<Speed>;
}

/**
 * Power at the wheels: force times speed; negative when the vehicle is held back.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`; otherwise as every relation
 * @example
 * wheelPower({ force: q("580 N"), speed: q("110 km/h") }).in("kW"); // 17.72
 */
export const wheelPower: Relation<WheelPowerInputs, Quantity<Power>> = /* @__PURE__ */ relation({
  name: "power at the wheels",
  inputs: {
    force: { symbol: "F", unit: "N", meaning: "force at the wheels" },
    speed: { symbol: "v", unit: "m/s", meaning: "speed", atLeast: 0, atMost: 150 },
  },
  result: { symbol: "P_w", unit: "W" },
  expression: "F·v",
  source: { document: "power is force times speed", status: "definition" },
  evaluate: ({ force, speed }) => force * speed,
});
