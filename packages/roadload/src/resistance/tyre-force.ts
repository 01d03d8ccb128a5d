import {
  type Force,
  type Pressure,
  type Quantity,
  type Relation,
  relation,
  type Speed,
  type Temperature,
} from "@tarewatt/units";

/** Inputs of {@link tyreForce}. The coefficients are those of a report in kPa, N and km/h, as SAE J2452 prints them. */
export interface TyreForceInputs {
  /** Number of tyres that share the load, at least 1. */
  readonly tyres: number;
  /** Inflation pressure. */
  readonly pressure: Quantity<Pressure>;
  /** Load on all of these tyres together. */
  readonly load: Quantity<Force>;
  /** Speed of the vehicle. */
  readonly speed: Quantity<Speed>;
  /** Exponent α of the pressure, usually negative. */
  readonly pressureExponent: number;
  /** Exponent β of the load, near 1. */
  readonly loadExponent: number;
  /** Coefficient a. */
  readonly constant: number;
  /** Coefficient b, for a speed in km/h. */
  readonly linear: number;
  /** Coefficient c, for a speed in km/h. */
  readonly quadratic: number;
}

/**
 * Rolling resistance of a group of tyres from the coefficients of an SAE J2452 report.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`; otherwise as every relation
 * @example
 * tyreForce({
 *   tyres: 4, pressure: q("250 kPa"), load: q("19 kN"), speed: q("80 km/h"), pressureExponent: -0.4, loadExponent: 0.9,
 *   constant: 0.15, linear: 1e-4, quadratic: 1e-6,
 * }); // 147.167 N
 */
export const tyreForce: Relation<TyreForceInputs, Quantity<Force>> = /* @__PURE__ */ relation({
  name: "rolling resistance of tyres (SAE J2452)",
  inputs: {
    tyres: { symbol: "n", unit: "1", meaning: "number of tyres", atLeast: 1, atMost: 50 },
    pressure: { symbol: "p", unit: "kPa", meaning: "inflation pressure", atLeast: 50, atMost: 2000 },
    load: { symbol: "L", unit: "N", meaning: "load on all these tyres", above: 0 },
    speed: { symbol: "V", unit: "km/h", meaning: "speed", atLeast: 0, atMost: 300 },
    pressureExponent: { symbol: "α", unit: "1", meaning: "exponent of the pressure", atLeast: -3, atMost: 3 },
    loadExponent: { symbol: "β", unit: "1", meaning: "exponent of the load", atLeast: 0, atMost: 3 },
    constant: { symbol: "a", unit: "1", meaning: "constant coefficient" },
    linear: { symbol: "b", unit: "1", meaning: "coefficient of speed in km/h" },
    quadratic: { symbol: "c", unit: "1", meaning: "coefficient of the square of speed in km/h" },
  },
  result: { symbol: "F_t", unit: "N" },
  expression: "n·p^α·(L/n)^β·(a + b·V + c·V²)",
  source: { document: "40 CFR 1037.528, after SAE J2452", status: "seen" },
  validity: "coefficients for pressure in kPa, load in N and speed in km/h, at the laboratory's 24 °C",
  evaluate: ({ tyres, pressure, load, speed, pressureExponent, loadExponent, constant, linear, quadratic }) =>
    tyres *
    pressure ** pressureExponent *
    (load / tyres) ** loadExponent *
    (constant + linear * speed + quadratic * speed ** 2),
});

/** Inputs of {@link tyreForceAtTemperature}. */
export interface TyreForceAtTemperatureInputs {
  /** Tyre force in the laboratory, at 24 °C. */
  readonly force: Quantity<Force>;
  /** Temperature of the air on the road, −20 to 50 °C. */
  readonly temperature: Quantity<Temperature>;
}

/**
 * Tyre force of the laboratory at 24 °C, taken to the temperature of the road: a warmer road, a smaller force.
 *
 * @throws InputError `OUT_OF_RANGE` outside −20 to 50 °C; otherwise as every relation
 * @example
 * tyreForceAtTemperature({ force: q("1028.7 N"), temperature: q("25.5 °C") }); // 1019 N
 */
export const tyreForceAtTemperature: Relation<TyreForceAtTemperatureInputs, Quantity<Force>> = /* @__PURE__ */ relation(
  {
    name: "tyre force at the temperature of the road",
    inputs: {
      force: { symbol: "F_t", unit: "N", meaning: "tyre force at 24 °C", atLeast: 0 },
      temperature: { symbol: "T", unit: "°C", meaning: "temperature on the road", atLeast: -20, atMost: 50 },
    },
    result: { symbol: "F_adj", unit: "N" },
    expression: "F_t·(1 + 0.006·(24 − T))",
    source: { document: "40 CFR 1037.528", status: "seen" },
    validity: "near 24 °C: the rule was made for coast-downs, and its slope is that of truck tyres",
    evaluate: ({ force, temperature }) => force * (1 + 0.006 * (24 - temperature)),
  },
);
