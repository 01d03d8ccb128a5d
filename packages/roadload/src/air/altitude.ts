import { type Density, type Length, type Pressure, type Quantity, type Relation, relation } from "@tarewatt/units";
import type { StandardAtmosphereInputs } from "./standard-atmosphere.js";

/** Inputs of {@link geopotentialAltitude}. */
export interface GeopotentialAltitudeInputs {
  /** Geometric altitude above sea level, as maps and satellites give it: −1000 to 11 000 m. */
  readonly geometricAltitude: Quantity<Length>;
}

/**
 * Geopotential altitude, which the standard atmosphere counts in: less than the geometric one, as gravity falls with height, by
 * 4 m at 5000 m.
 *
 * @throws InputError `OUT_OF_RANGE` outside −1000 to 11 000 m; otherwise as every relation
 * @example
 * geopotentialAltitude({ geometricAltitude: q("5000 m") }); // 4996 m
 */
export const geopotentialAltitude: Relation<GeopotentialAltitudeInputs, Quantity<Length>> = /* @__PURE__ */ relation({
  name: "geopotential altitude",
  inputs: {
    geometricAltitude: { symbol: "Z", unit: "m", meaning: "geometric altitude", atLeast: -1000, atMost: 11_000 },
  },
  result: { symbol: "H", unit: "m" },
  expression: "6356766·Z/(6356766 + Z)",
  source: { document: "ISO 2533:1975", section: "geopotential and geometric altitude", status: "memory" },
  validity: "mean gravity at 45° of latitude",
  evaluate: ({ geometricAltitude }) => (6_356_766 * geometricAltitude) / (6_356_766 + geometricAltitude),
});

/**
 * Air density of the standard atmosphere at an altitude: dry, and as warm as the standard has it. For the air of a day and a
 * place see {@link airDensity}.
 *
 * @throws InputError `OUT_OF_RANGE` outside −1000 to 11 000 m; otherwise as every relation
 * @example
 * standardAtmosphereDensity({ altitude: q("1500 m") }); // 1.058 kg/m³
 */
export const standardAtmosphereDensity: Relation<
  StandardAtmosphereInputs,
  Quantity<Density>
> = /* @__PURE__ */ relation({
  name: "density of the standard atmosphere",
  inputs: {
    altitude: { symbol: "H", unit: "m", meaning: "geopotential altitude", atLeast: -1000, atMost: 11_000 },
  },
  result: { symbol: "ρ", unit: "kg/m³" },
  expression: "101325/(287.05287·288.15)·(1 − 0.0065·H/288.15)^(9.80665/(287.05287·0.0065) − 1)",
  source: { document: "ISO 2533:1975", section: "troposphere", status: "memory" },
  validity: "troposphere, geopotential altitude from −1000 to 11 000 m",
  evaluate: ({ altitude }) =>
    (101_325 / (287.05287 * 288.15)) * (1 - (0.0065 * altitude) / 288.15) ** (9.80665 / (287.05287 * 0.0065) - 1),
});

/** Inputs of {@link stationPressure}. */
export interface StationPressureInputs {
  /** Pressure as a weather report gives it, reduced to sea level by the standard atmosphere (QNH): 90 to 110 kPa. */
  readonly seaLevelPressure: Quantity<Pressure>;
  /** Geopotential altitude of the place, −500 to 5000 m. */
  readonly altitude: Quantity<Length>;
}

/**
 * Pressure at a place from the one that a weather report reduces to sea level.
 *
 * Reports for aviation (QNH) are reduced by the standard atmosphere, as here; those for the public often by the temperature of
 * the day, which at 1000 m and −20 °C is 1.5 % more (computed).
 *
 * @throws InputError `OUT_OF_RANGE`; otherwise as every relation
 * @example
 * stationPressure({ seaLevelPressure: q("1025 hPa"), altitude: q("500 m") }).in("hPa"); // 965.8
 */
export const stationPressure: Relation<StationPressureInputs, Quantity<Pressure>> = /* @__PURE__ */ relation({
  name: "pressure at the place",
  inputs: {
    seaLevelPressure: {
      symbol: "p_0",
      unit: "Pa",
      meaning: "pressure reduced to sea level",
      atLeast: 90_000,
      atMost: 110_000,
    },
    altitude: { symbol: "H", unit: "m", meaning: "geopotential altitude", atLeast: -500, atMost: 5000 },
  },
  result: { symbol: "p", unit: "Pa" },
  expression:
    "(p_0^(287.05287·0.0065/9.80665) − 101325^(287.05287·0.0065/9.80665)·0.0065·H/288.15)^(9.80665/(287.05287·0.0065))",
  source: { document: "ICAO Doc 7488", section: "definition of QNH by the standard atmosphere", status: "memory" },
  evaluate: ({ seaLevelPressure, altitude }) => {
    const power = (287.05287 * 0.0065) / 9.80665;
    return (seaLevelPressure ** power - (101_325 ** power * 0.0065 * altitude) / 288.15) ** (1 / power);
  },
});
