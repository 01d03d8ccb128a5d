import {
  type Density,
  type Force,
  type ForcePerSpeedSquared,
  type Mass,
  type Quantity,
  type Relation,
  relation,
} from "@tarewatt/units";

const source = { document: "UN GTR No. 15", section: "annex 4, 4.5.5", status: "memory" } as const;

/** Inputs of {@link coefficientForMass}. */
export interface CoefficientForMassInputs {
  /** Constant coefficient. */
  readonly constant: Quantity<Force>;
  /** Mass that it is known for. */
  readonly from: Quantity<Mass>;
  /** Mass that it is wanted for. */
  readonly to: Quantity<Mass>;
}

/**
 * Constant coefficient of a road load at another mass: in proportion, as the load of the tyres.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`; otherwise as every relation
 * @example
 * coefficientForMass({ constant: q("150 N"), from: q("2000 kg"), to: q("2300 kg") }); // 172.5 N
 */
export const coefficientForMass: Relation<CoefficientForMassInputs, Quantity<Force>> = /* @__PURE__ */ relation({
  name: "constant coefficient at another mass",
  inputs: {
    constant: { symbol: "A", unit: "N", meaning: "constant coefficient" },
    from: { symbol: "m_1", unit: "kg", meaning: "mass that it is known for", above: 0 },
    to: { symbol: "m_2", unit: "kg", meaning: "mass that it is wanted for", above: 0 },
  },
  result: { symbol: "A_m", unit: "N" },
  expression: "A·m_2/m_1",
  source,
  validity: "while the constant coefficient is that of the tyres",
  evaluate: ({ constant, from, to }) => (constant * to) / from,
});

/** Inputs of {@link coefficientForTemperature}. */
export interface CoefficientForTemperatureInputs {
  /** Constant coefficient. */
  readonly constant: Quantity<Force>;
  /** Change of the tyres: see {@link tyreTemperatureFactor}. */
  readonly factor: number;
}

/**
 * Constant coefficient of a road load with tyres at another temperature. The linear one changes by the same factor.
 *
 * @throws InputError `NEGATIVE`; otherwise as every relation
 * @example
 * coefficientForTemperature({ constant: q("172.5 N"), factor: 1.148 }); // 198.0 N
 */
export const coefficientForTemperature: Relation<
  CoefficientForTemperatureInputs,
  Quantity<Force>
> = /* @__PURE__ */ relation({
  name: "constant coefficient at another temperature",
  inputs: {
    constant: { symbol: "A_m", unit: "N", meaning: "constant coefficient" },
    factor: { symbol: "f_T", unit: "1", meaning: "change of the tyres", atLeast: 0, atMost: 10 },
  },
  result: { symbol: "A_T", unit: "N" },
  expression: "A_m·f_T",
  source,
  evaluate: ({ constant, factor }) => constant * factor,
});

/** Inputs of {@link coefficientForRolling}. */
export interface CoefficientForRollingInputs {
  /** Constant coefficient. */
  readonly constant: Quantity<Force>;
  /** Rolling resistance per that before: on a wet road, in snow, on other tyres. */
  readonly factor: number;
}

/**
 * Constant coefficient of a road load on another surface or other tyres. The linear one changes by the same factor.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`; otherwise as every relation
 * @example
 * coefficientForRolling({ constant: q("172.5 N"), factor: 1.2 }); // 207.0 N
 */
export const coefficientForRolling: Relation<CoefficientForRollingInputs, Quantity<Force>> = /* @__PURE__ */ relation({
  name: "constant coefficient on another surface or other tyres",
  inputs: {
    constant: { symbol: "A_T", unit: "N", meaning: "constant coefficient" },
    factor: { symbol: "f_r", unit: "1", meaning: "rolling resistance per that before", atLeast: 0.2, atMost: 5 },
  },
  result: { symbol: "A_r", unit: "N" },
  expression: "A_T·f_r",
  source: { document: "rolling resistance is proportional to its coefficient", status: "definition" },
  evaluate: ({ constant, factor }) => constant * factor,
});

/** Inputs of {@link coefficientForDensity}. */
export interface CoefficientForDensityInputs {
  /** Quadratic coefficient. */
  readonly quadratic: Quantity<ForcePerSpeedSquared>;
  /** Density of the air that it is known for. */
  readonly from: Quantity<Density>;
  /** Density of the air that it is wanted for. */
  readonly to: Quantity<Density>;
}

/**
 * Quadratic coefficient of a road load in other air.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`; otherwise as every relation
 * @example
 * const quadratic = q("0.42 N/(m/s)²");
 * coefficientForDensity({ quadratic, from: q("1.189 kg/m³"), to: q("1.326 kg/m³") }).in("N/(m/s)²"); // 0.4684
 */
export const coefficientForDensity: Relation<
  CoefficientForDensityInputs,
  Quantity<ForcePerSpeedSquared>
> = /* @__PURE__ */ relation({
  name: "quadratic coefficient in other air",
  inputs: {
    quadratic: { symbol: "C", unit: "N/(m/s)²", meaning: "quadratic coefficient" },
    from: { symbol: "ρ_1", unit: "kg/m³", meaning: "density that it is known for", above: 0 },
    to: { symbol: "ρ_2", unit: "kg/m³", meaning: "density that it is wanted for", above: 0 },
  },
  result: { symbol: "C_ρ", unit: "N/(m/s)²" },
  expression: "C·ρ_2/ρ_1",
  source: { document: "drag is proportional to the density of the air", status: "definition" },
  evaluate: ({ quadratic, from, to }) => (quadratic * to) / from,
});
