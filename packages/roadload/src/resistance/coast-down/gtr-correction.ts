import {
  type Force,
  type ForcePerSpeed,
  type ForcePerSpeedSquared,
  type Mass,
  type Pressure,
  type Quantity,
  type Relation,
  relation,
  type Source,
  type Speed,
  type Temperature,
} from "@tarewatt/units";

const source: Source = /* @__PURE__ */ Object.freeze({
  document: "UN GTR No. 15",
  section: "annex 4, 4.5.5",
  status: "memory",
});
const validity = "5 to 35 °C, where coast-downs are run";
const temperature = {
  symbol: "T",
  unit: "°C",
  meaning: "mean temperature of the air",
  atLeast: -20,
  atMost: 50,
} as const;

/** Inputs of {@link correctedConstant}. */
export interface CorrectedConstantInputs {
  /** Constant coefficient as measured. */
  readonly constant: Quantity<Force>;
  /** Quadratic coefficient as measured. */
  readonly quadratic: Quantity<ForcePerSpeedSquared>;
  /** Mean wind along the road. */
  readonly windSpeed: Quantity<Speed>;
  /** Test mass that the coefficient is wanted for. */
  readonly testMass: Quantity<Mass>;
  /** Mean of the masses before and after the test. */
  readonly massAsTested: Quantity<Mass>;
  /** Mean temperature of the air, −20 to 50 °C. */
  readonly temperature: Quantity<Temperature>;
}

/**
 * Constant coefficient of a coast-down at the reference: wind, mass and temperature taken out. {@link coastDown} does the same to
 * logged speeds; this is for coefficients as measured.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`; otherwise as every relation
 * @example
 * correctedConstant({
 *   constant: q("150 N"), quadratic: q("0.4 N/(m/s)²"), windSpeed: q("2 m/s"), testMass: q("2000 kg"),
 *   massAsTested: q("2010 kg"), temperature: q("12 °C"),
 * }); // 137.5 N
 */
export const correctedConstant: Relation<CorrectedConstantInputs, Quantity<Force>> = /* @__PURE__ */ relation({
  name: "constant coefficient of a coast-down, corrected",
  inputs: {
    constant: { symbol: "f_0", unit: "N", meaning: "constant coefficient as measured", atLeast: 0 },
    quadratic: { symbol: "f_2", unit: "N/(m/s)²", meaning: "quadratic coefficient as measured", atLeast: 0 },
    windSpeed: { symbol: "w", unit: "m/s", meaning: "mean wind along the road", atLeast: 0, atMost: 15 },
    testMass: { symbol: "TM", unit: "kg", meaning: "test mass", above: 0 },
    massAsTested: { symbol: "m_av", unit: "kg", meaning: "mean mass during the test", above: 0 },
    temperature,
  },
  result: { symbol: "f_0*", unit: "N" },
  expression: "(f_0 − f_2·w² − f_0·(1 − TM/m_av))·(1 + 0.0086·(T − 20))",
  source,
  validity,
  evaluate: ({ constant, quadratic, windSpeed, testMass, massAsTested, temperature }) =>
    (constant - quadratic * windSpeed ** 2 - constant * (1 - testMass / massAsTested)) *
    (1 + 0.0086 * (temperature - 20)),
});

/** Inputs of {@link correctedLinear}. */
export interface CorrectedLinearInputs {
  /** Linear coefficient as measured. */
  readonly linear: Quantity<ForcePerSpeed>;
  /** Mean temperature of the air, −20 to 50 °C. */
  readonly temperature: Quantity<Temperature>;
}

/**
 * Linear coefficient of a coast-down at 20 °C.
 *
 * @throws InputError `OUT_OF_RANGE`; otherwise as every relation
 * @example
 * correctedLinear({ linear: q("1 N/(m/s)"), temperature: q("12 °C") }).in("N/(m/s)"); // 0.9312
 */
export const correctedLinear: Relation<CorrectedLinearInputs, Quantity<ForcePerSpeed>> = /* @__PURE__ */ relation({
  name: "linear coefficient of a coast-down, corrected",
  inputs: { linear: { symbol: "f_1", unit: "N/(m/s)", meaning: "linear coefficient as measured" }, temperature },
  result: { symbol: "f_1*", unit: "N/(m/s)" },
  expression: "f_1·(1 + 0.0086·(T − 20))",
  source,
  validity,
  evaluate: ({ linear, temperature }) => linear * (1 + 0.0086 * (temperature - 20)),
});

/** Inputs of {@link correctedQuadratic}. */
export interface CorrectedQuadraticInputs {
  /** Quadratic coefficient as measured. */
  readonly quadratic: Quantity<ForcePerSpeedSquared>;
  /** Mean temperature of the air, −20 to 50 °C. */
  readonly temperature: Quantity<Temperature>;
  /** Mean pressure of the air, 50 to 110 kPa. */
  readonly pressure: Quantity<Pressure>;
}

/**
 * Quadratic coefficient of a coast-down in the air of reference, 20 °C and 100 kPa.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`; otherwise as every relation
 * @example
 * correctedQuadratic({ quadratic: q("0.4 N/(m/s)²"), temperature: q("12 °C"), pressure: q("98 kPa") }).in("N/(m/s)²"); // 0.3972
 */
export const correctedQuadratic: Relation<
  CorrectedQuadraticInputs,
  Quantity<ForcePerSpeedSquared>
> = /* @__PURE__ */ relation({
  name: "quadratic coefficient of a coast-down, corrected",
  inputs: {
    quadratic: { symbol: "f_2", unit: "N/(m/s)²", meaning: "quadratic coefficient as measured" },
    temperature: { symbol: "T", unit: "K", meaning: "mean temperature of the air", atLeast: 253.15, atMost: 323.15 },
    pressure: { symbol: "p", unit: "kPa", meaning: "mean pressure of the air", atLeast: 50, atMost: 110 },
  },
  result: { symbol: "f_2*", unit: "N/(m/s)²" },
  expression: "f_2·T/293·100/p",
  source,
  validity,
  evaluate: ({ quadratic, temperature, pressure }) => (((quadratic * temperature) / 293) * 100) / pressure,
});
