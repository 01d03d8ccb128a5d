import {
  type Area,
  type Force,
  type ForcePerSpeedSquared,
  type Mass,
  type Quantity,
  type Relation,
  relation,
} from "@tarewatt/units";
import type { Fraction } from "../fraction.js";

const matrix = {
  document: "UN GTR No. 15",
  section: "annex 4, 5.1 (the numbers from memory)",
  status: "memory",
} as const;

/** Inputs of {@link matrixConstantTerm}. */
export interface MatrixConstantTermInputs {
  /** Constant term of the representative vehicle. */
  readonly constant: Quantity<Force>;
  /** Its test mass. */
  readonly representativeMass: Quantity<Mass>;
  /** Rolling resistance coefficient of its tyres: the value of their class. */
  readonly representativeRolling: Fraction;
  /** Test mass of the vehicle that is wanted. */
  readonly testMass: Quantity<Mass>;
  /** Rolling resistance coefficient of its tyres. */
  readonly rolling: Fraction;
}

/**
 * Constant term of a member of a road-load matrix family, from that of the representative vehicle. For vehicles of 3000 kg laden mass
 * and more. Of a change for the better 80 % count, of one for the worse 95 %: the regulation errs on the safe side.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`; otherwise as every relation
 * @example
 * matrixConstantTerm({
 *   constant: q("300 N"), representativeMass: q("2500 kg"), representativeRolling: 0.0084, testMass: q("2700 kg"), rolling: 0.0084,
 * }); // 322.8 N
 */
export const matrixConstantTerm: Relation<MatrixConstantTermInputs, Quantity<Force>> = /* @__PURE__ */ relation({
  name: "constant term in a matrix family",
  inputs: {
    constant: { symbol: "f_0r", unit: "N", meaning: "constant term of the representative vehicle", atLeast: 0 },
    representativeMass: { symbol: "TM_r", meaning: "its test mass", unit: "kg", above: 0 },
    representativeRolling: {
      symbol: "RR_r",
      meaning: "its rolling resistance coefficient",
      unit: "1",
      atLeast: 0,
      atMost: 0.1,
    },
    testMass: { symbol: "TM", meaning: "test mass that is wanted", unit: "kg", above: 0 },
    rolling: { symbol: "RR", meaning: "rolling resistance coefficient", unit: "1", atLeast: 0, atMost: 0.1 },
  },
  result: { symbol: "f_0", unit: "N" },
  expression:
    "max(0.05·f_0r + 0.95·(f_0r·TM/TM_r + (RR − RR_r)·9.81·TM), 0.2·f_0r + 0.8·(f_0r·TM/TM_r + (RR − RR_r)·9.81·TM))",
  source: matrix,
  validity: "vehicles of 3000 kg laden mass and more",
  evaluate: ({ constant, representativeMass, representativeRolling, testMass, rolling }) => {
    const scaled = (constant * testMass) / representativeMass + (rolling - representativeRolling) * 9.81 * testMass;
    return Math.max(0.05 * constant + 0.95 * scaled, 0.2 * constant + 0.8 * scaled);
  },
});

/** Inputs of {@link matrixQuadraticTerm}. */
export interface MatrixQuadraticTermInputs {
  /** Quadratic term of the representative vehicle. */
  readonly quadratic: Quantity<ForcePerSpeedSquared>;
  /** Its frontal area. */
  readonly representativeArea: Quantity<Area>;
  /** Frontal area of the vehicle that is wanted. */
  readonly frontalArea: Quantity<Area>;
}

/**
 * Quadratic term of a member of a road-load matrix family, by frontal area. The linear term is zero there.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`; otherwise as every relation
 * @example
 * matrixQuadraticTerm({
 *   quadratic: q("0.05 N/(km/h)²"), representativeArea: q("4 m²"), frontalArea: q("4.4 m²"),
 * }).in("N/(km/h)²"); // 0.05475
 */
export const matrixQuadraticTerm: Relation<
  MatrixQuadraticTermInputs,
  Quantity<ForcePerSpeedSquared>
> = /* @__PURE__ */ relation({
  name: "quadratic term in a matrix family",
  inputs: {
    quadratic: {
      symbol: "f_2r",
      unit: "N/(km/h)²",
      meaning: "quadratic term of the representative vehicle",
      atLeast: 0,
    },
    representativeArea: { symbol: "A_r", unit: "m²", meaning: "its frontal area", above: 0, atMost: 20 },
    frontalArea: { symbol: "A_f", unit: "m²", meaning: "frontal area that is wanted", above: 0, atMost: 20 },
  },
  result: { symbol: "f_2", unit: "N/(km/h)²" },
  expression: "max(0.05·f_2r + 0.95·f_2r·A_f/A_r, 0.2·f_2r + 0.8·f_2r·A_f/A_r)",
  source: matrix,
  validity: "vehicles of 3000 kg laden mass and more",
  evaluate: ({ quadratic, representativeArea, frontalArea }) => {
    const scaled = (quadratic * frontalArea) / representativeArea;
    return Math.max(0.05 * quadratic + 0.95 * scaled, 0.2 * quadratic + 0.8 * scaled);
  },
});
