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

/**
 * How far beyond L and H, as a part of the distance between them, a vehicle may lie before it is of another family: common practice,
 * no source.
 */
const BEYOND = 0.5;

/** The place between H (0) and L (1), where it is one: H lies above L, and the vehicle between them or near. */
function placeBelowHigh(high: number, value: number, low: number): number {
  const place = (high - value) / (high - low);
  return high > low && place >= -BEYOND && place <= 1 + BEYOND ? place : Number.NaN;
}

const interpolation = { document: "UN GTR No. 15", section: "annex 7, 3.2.3.2.2.2", status: "memory" } as const;

/** Inputs of {@link individualConstantTerm}. */
export interface IndividualConstantTermInputs {
  /** Constant term of vehicle H, the one with the higher load. */
  readonly highConstant: Quantity<Force>;
  /** Constant term of vehicle L. */
  readonly lowConstant: Quantity<Force>;
  /** Test mass of H. */
  readonly highMass: Quantity<Mass>;
  /** Rolling resistance coefficient of H. */
  readonly highRolling: Fraction;
  /** Test mass of L. */
  readonly lowMass: Quantity<Mass>;
  /** Rolling resistance coefficient of L. */
  readonly lowRolling: Fraction;
  /** Test mass of the individual vehicle. */
  readonly testMass: Quantity<Mass>;
  /** Rolling resistance coefficient of the individual vehicle. */
  readonly rolling: Fraction;
}

/**
 * Constant term of an individual vehicle of an interpolation family, between vehicles L and H by mass times rolling resistance.
 *
 * @throws InputError `NOT_VALID_HERE` when H has no more rolling resistance force than L (swapped, perhaps) or the vehicle lies more than
 *   half their distance beyond them, `NEGATIVE`, `OUT_OF_RANGE`; otherwise as
 *   every relation
 * @example
 * individualConstantTerm({
 *   ...{ highConstant: q("200 N"), highMass: q("2400 kg"), highRolling: 0.0098 },
 *   ...{ lowConstant: q("150 N"), lowMass: q("2200 kg"), lowRolling: 0.0071 },
 *   ...{ testMass: q("2300 kg"), rolling: 0.0084 },
 * }); // 173.4 N
 */
export const individualConstantTerm: Relation<IndividualConstantTermInputs, Quantity<Force>> = /* @__PURE__ */ relation(
  {
    name: "constant term of an individual vehicle",
    inputs: {
      highConstant: { symbol: "f_0H", unit: "N", meaning: "constant term of vehicle H", atLeast: 0 },
      lowConstant: { symbol: "f_0L", unit: "N", meaning: "constant term of vehicle L", atLeast: 0 },
      highMass: { symbol: "TM_H", meaning: "test mass of H", unit: "kg", above: 100 },
      highRolling: { symbol: "RR_H", meaning: "rolling resistance coefficient of H", unit: "1", above: 0, atMost: 0.1 },
      lowMass: { symbol: "TM_L", meaning: "test mass of L", unit: "kg", above: 0 },
      lowRolling: {
        symbol: "RR_L",
        meaning: "rolling resistance coefficient of L",
        unit: "1",
        atLeast: 0,
        atMost: 0.1,
      },
      testMass: { symbol: "TM", meaning: "test mass", unit: "kg", above: 0 },
      rolling: { symbol: "RR", meaning: "rolling resistance coefficient", unit: "1", atLeast: 0, atMost: 0.1 },
    },
    result: { symbol: "f_0", unit: "N" },
    expression: "f_0H − (f_0H − f_0L)·(TM_H·RR_H − TM·RR)/(TM_H·RR_H − TM_L·RR_L)",
    source: interpolation,
    validity:
      "H has the greater mass times rolling resistance, and the vehicle lies between L and H or at most half their distance beyond",
    evaluate: ({ highConstant, lowConstant, highMass, highRolling, lowMass, lowRolling, testMass, rolling }) => {
      const place = placeBelowHigh(highMass * highRolling, testMass * rolling, lowMass * lowRolling);
      return highConstant - (highConstant - lowConstant) * place;
    },
  },
);

/** Inputs of {@link individualQuadraticTerm}. */
export interface IndividualQuadraticTermInputs {
  /** Quadratic term of vehicle H, the one with the higher load. */
  readonly highQuadratic: Quantity<ForcePerSpeedSquared>;
  /** Quadratic term of vehicle L. */
  readonly lowQuadratic: Quantity<ForcePerSpeedSquared>;
  /** Drag area of H less that of L. */
  readonly dragAreaRange: Quantity<Area>;
  /** Drag area of the individual vehicle less that of L. */
  readonly dragAreaAboveLow: Quantity<Area>;
}

/**
 * Quadratic term of an individual vehicle of an interpolation family, between vehicles L and H by drag area.
 *
 * @throws InputError `NOT_VALID_HERE` more than half their distance beyond L or H, `NEGATIVE`, `OUT_OF_RANGE`; otherwise as every relation
 * @example
 * individualQuadraticTerm({
 *   ...{ highQuadratic: q("0.034 N/(km/h)²"), lowQuadratic: q("0.030 N/(km/h)²") },
 *   ...{ dragAreaRange: q("0.09 m²"), dragAreaAboveLow: q("0.03 m²") },
 * }).in("N/(km/h)²"); // 0.03133
 */
export const individualQuadraticTerm: Relation<
  IndividualQuadraticTermInputs,
  Quantity<ForcePerSpeedSquared>
> = /* @__PURE__ */ relation({
  name: "quadratic term of an individual vehicle",
  inputs: {
    highQuadratic: { symbol: "f_2H", unit: "N/(km/h)²", meaning: "quadratic term of vehicle H", atLeast: 0 },
    lowQuadratic: { symbol: "f_2L", unit: "N/(km/h)²", meaning: "quadratic term of vehicle L", atLeast: 0 },
    dragAreaRange: { symbol: "Δ_LH", unit: "m²", meaning: "drag area of H less that of L", above: 0, atMost: 5 },
    dragAreaAboveLow: { symbol: "Δ_ind", unit: "m²", meaning: "drag area less that of L", atLeast: -5, atMost: 5 },
  },
  result: { symbol: "f_2", unit: "N/(km/h)²" },
  expression: "f_2H − (f_2H − f_2L)·(Δ_LH − Δ_ind)/Δ_LH",
  source: interpolation,
  validity: "between vehicles L and H of one family, or at most half their distance beyond",
  evaluate: ({ highQuadratic, lowQuadratic, dragAreaRange, dragAreaAboveLow }) =>
    highQuadratic - (highQuadratic - lowQuadratic) * placeBelowHigh(dragAreaRange, dragAreaAboveLow, 0),
});
