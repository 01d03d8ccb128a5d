import { readNumber, readOptions } from "@tarewatt/units";
import type { Fraction } from "../fraction.js";
import { assertRoadLoad } from "./assert-road-load.js";
import { standardGravity } from "./gravity.js";
import type { RoadLoad, RoadOptions } from "./road-load.js";
import { cosineOf, sineOf } from "./rolling-resistance.js";

/** Plain numbers of a road load for the loops: N, N/(m/s), N/(m/s)², kg. */
export interface RoadLoadNumbers {
  /** Constant force in N; on a grade it holds the weight along the road, too. */
  readonly constant: number;
  /** Force per speed in N/(m/s). */
  readonly linear: number;
  /** Force per speed squared in N/(m/s)². */
  readonly quadratic: number;
  /** Mass to accelerate, in kg, with the rotating parts. */
  readonly inertiaMass: number;
}

/**
 * The plain SI numbers of a road load, for {@link wheelEnergy} and {@link wheelEnergies}.
 *
 * @param load - physical or certified road load
 * @param options - grade; level when left out
 * @returns numbers in N, N/(m/s), N/(m/s)² and kg
 * @throws InputError `WRONG_CHOICE` when `load` is no road load, `OUT_OF_RANGE`, `NOT_A_FRACTION`, and what `readOptions`
 *   throws
 * @example
 * const load = certifiedRoadLoad({
 *   ...{ constant: q("30 lbf"), linear: q("0 lbf/mph"), quadratic: q("0.018 lbf/mph²") },
 *   conditions: { testMass: q("4000 lb") },
 * });
 * wheelEnergy(udds, roadLoadNumbers(load)).driving > 0; // true
 */
export function roadLoadNumbers(load: RoadLoad, options: RoadOptions = {}): RoadLoadNumbers {
  readOptions("roadLoadNumbers", options, {}, ["grade?"]);
  const { constant, gradeForce, linear, quadratic, inertiaMass } = splitNumbers(load, readGrade(options.grade));
  return { constant: constant + gradeForce, linear, quadratic, inertiaMass };
}

/** The numbers with the grade force apart. @internal */
export interface SplitNumbers extends RoadLoadNumbers {
  readonly gradeForce: number;
}

/** @internal */
export function splitNumbers(load: RoadLoad, grade: number): SplitNumbers {
  assertRoadLoad(load);
  const { coefficients, mass, inertiaMass } = load;
  return {
    // On a grade the wheels carry the cosine of the weight; the regulation's dynamometer form does the same to A.
    constant: coefficients.constant.in("N") * cosineOf(grade),
    gradeForce: mass.in("kg") * standardGravity.value * sineOf(grade),
    linear: coefficients.linear.in("N/(m/s)"),
    quadratic: coefficients.quadratic.in("N/(m/s)²"),
    inertiaMass: inertiaMass.in("kg"),
  };
}

/** @internal */
export function readGrade(grade: Fraction | undefined): number {
  if (grade === undefined) return 0;
  return readNumber("grade", grade, { unit: "1", atLeast: -1, atMost: 1 });
}
