import {
  type Length,
  type Pressure,
  type Quantity,
  type Relation,
  relation,
  type Source,
  type Temperature,
} from "@tarewatt/units";

const source: Source = /* @__PURE__ */ Object.freeze({
  document: "ISO 2533:1975",
  section: "troposphere",
  status: "memory",
});

/**
 * Constants of the standard atmosphere below 11 km, as plain numbers in SI units.
 *
 * ISO 2533:1975 from memory; the sea-level values were seen printed in a summary of the US Standard Atmosphere, 1976.
 */
export const standardAtmosphere = /* @__PURE__ */ Object.freeze({
  /** Temperature at sea level, in K. */
  seaLevelTemperature: 288.15,
  /** Pressure at sea level, in Pa. */
  seaLevelPressure: 101_325,
  /** Fall of temperature with altitude, in K/m. */
  lapseRate: 0.0065,
  /** Specific gas constant of dry air, in J/(kg·K). */
  gasConstant: 287.05287,
  /** Standard gravity, in m/s². */
  gravity: 9.80665,
  /** Where the values are from. */
  source,
} as const);

/** Inputs of {@link standardAtmosphereTemperature} and {@link standardAtmospherePressure}. */
export interface StandardAtmosphereInputs {
  /** Geopotential altitude above sea level: −1000 to 11 000 m; within 20 m of the geometric one there. */
  readonly altitude: Quantity<Length>;
}

const altitude = { symbol: "H", unit: "m", meaning: "geopotential altitude", atLeast: -1000, atMost: 11_000 } as const;
const validity = "troposphere, geopotential altitude from −1000 to 11 000 m";

/**
 * Air temperature of the standard atmosphere at an altitude.
 *
 * @throws InputError `OUT_OF_RANGE` outside −1000 to 11 000 m; otherwise as every relation
 * @example
 * standardAtmosphereTemperature({ altitude: q("1500 m") }); // 278.4 K
 */
export const standardAtmosphereTemperature: Relation<
  StandardAtmosphereInputs,
  Quantity<Temperature>
> = /* @__PURE__ */ relation({
  name: "temperature of the standard atmosphere",
  inputs: { altitude },
  result: { symbol: "T", unit: "K" },
  expression: "288.15 − 0.0065·H",
  source,
  validity,
  evaluate: (numbers) => standardAtmosphere.seaLevelTemperature - standardAtmosphere.lapseRate * numbers.altitude,
});

/**
 * Air pressure of the standard atmosphere at an altitude.
 *
 * @throws InputError `OUT_OF_RANGE` outside −1000 to 11 000 m; otherwise as every relation
 * @example
 * standardAtmospherePressure({ altitude: q("1500 m") }).in("kPa"); // 84.556
 */
export const standardAtmospherePressure: Relation<
  StandardAtmosphereInputs,
  Quantity<Pressure>
> = /* @__PURE__ */ relation({
  name: "pressure of the standard atmosphere",
  inputs: { altitude },
  result: { symbol: "p", unit: "Pa" },
  expression: "101325·(1 − 0.0065·H/288.15)^(9.80665/(287.05287·0.0065))",
  source,
  validity,
  evaluate: (numbers) => {
    const { seaLevelTemperature, seaLevelPressure, lapseRate, gasConstant, gravity } = standardAtmosphere;
    const ratio = 1 - (lapseRate * numbers.altitude) / seaLevelTemperature;
    return seaLevelPressure * ratio ** (gravity / (gasConstant * lapseRate));
  },
});
