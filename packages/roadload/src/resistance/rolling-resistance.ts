import { type Force, type Mass, type Quantity, type Relation, relation } from "@tarewatt/units";
import type { Fraction } from "../fraction.js";
import { standardGravity } from "./gravity.js";

/** Inputs of {@link rollingResistance}. */
export interface RollingResistanceInputs {
  /** Mass that the tyres carry. */
  readonly mass: Quantity<Mass>;
  /** Rolling resistance force per load, 0 to 0.5; 9 kg/t or 9 N/kN is 0.009. */
  readonly rollingResistanceCoefficient: Fraction;
  /** Rise over run, positive uphill: 0.06 for 6 %. */
  readonly grade: Fraction;
}

/**
 * Rolling resistance of the tyres on a grade, positive against the direction of travel.
 *
 * Takes standard gravity. The coefficient is that of the speed, pressure and temperature that are meant.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`, `NOT_A_FRACTION`; otherwise as every relation
 * @example
 * rollingResistance({ mass: q("2000 kg"), rollingResistanceCoefficient: 0.009, grade: 0 }); // 176.5 N
 */
export const rollingResistance: Relation<RollingResistanceInputs, Quantity<Force>> = /* @__PURE__ */ relation({
  name: "rolling resistance",
  inputs: {
    mass: { symbol: "m", unit: "kg", meaning: "mass carried by the tyres", atLeast: 0 },
    rollingResistanceCoefficient: {
      symbol: "c_rr",
      unit: "1",
      meaning: "rolling resistance coefficient",
      atLeast: 0,
      atMost: 0.5,
    },
    grade: { symbol: "G", unit: "1", meaning: "grade, rise over run", atLeast: -1, atMost: 1 },
  },
  result: { symbol: "F_r", unit: "N" },
  expression: "c_rr·m·9.80665·cos(atan(G))",
  source: {
    document: "definition of the rolling resistance coefficient: resistance per load on the road",
    section: "standard gravity of 40 CFR 1066.210(d)",
    status: "definition",
  },
  evaluate: ({ mass, rollingResistanceCoefficient, grade }) =>
    rollingResistanceCoefficient * mass * standardGravity.value * cosineOf(grade),
});

/** Cosine of the angle of a grade. @internal */
export function cosineOf(grade: number): number {
  return 1 / Math.sqrt(1 + grade * grade);
}

/** Sine of the angle of a grade. @internal */
export function sineOf(grade: number): number {
  return grade / Math.sqrt(1 + grade * grade);
}
