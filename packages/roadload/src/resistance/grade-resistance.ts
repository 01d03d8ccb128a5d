import { type Force, type Mass, type Quantity, type Relation, relation } from "@tarewatt/units";
import type { Fraction } from "../fraction.js";
import { standardGravity } from "./gravity.js";
import { sineOf } from "./rolling-resistance.js";

/** Inputs of {@link gradeResistance}. */
export interface GradeResistanceInputs {
  /** Mass of the vehicle with its load, without any allowance for rotating parts. */
  readonly mass: Quantity<Mass>;
  /** Rise over run, positive uphill: 0.06 for 6 %. */
  readonly grade: Fraction;
}

/**
 * Part of the weight that acts along the road: positive uphill, negative downhill. Takes standard gravity.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`, `NOT_A_FRACTION`; otherwise as every relation
 * @example
 * gradeResistance({ mass: q("2000 kg"), grade: 0.06 }); // 1175 N
 */
export const gradeResistance: Relation<GradeResistanceInputs, Quantity<Force>> = /* @__PURE__ */ relation({
  name: "grade resistance",
  inputs: {
    mass: { symbol: "m", unit: "kg", meaning: "mass", atLeast: 0 },
    grade: { symbol: "G", unit: "1", meaning: "grade, rise over run", atLeast: -1, atMost: 1 },
  },
  result: { symbol: "F_g", unit: "N" },
  expression: "m·9.80665·sin(atan(G))",
  source: { document: "component of the weight along the road", status: "definition" },
  evaluate: ({ mass, grade }) => mass * standardGravity.value * sineOf(grade),
});
