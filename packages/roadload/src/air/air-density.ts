import {
  type Density,
  InputError,
  type Length,
  type Pressure,
  type Quantity,
  quantity,
  readOptions,
  type Temperature,
} from "@tarewatt/units";
import type { Fraction } from "../fraction.js";
import { moistAirDensity } from "./moist-air-density.js";
import { saturationVapourPressure } from "./saturation-vapour-pressure.js";
import { standardAtmospherePressure } from "./standard-atmosphere.js";

/** Options of {@link airDensity}: a pressure or an altitude, not both. */
export type AirDensityOptions = {
  /** Temperature of the air, −45 to 60 °C. */
  readonly temperature: Quantity<Temperature>;
  /** Relative humidity over water, 0 to 1; dry air when left out. */
  readonly relativeHumidity?: Fraction | undefined;
} & (
  | {
      /** Pressure of the air at the place itself (not reduced to sea level), 20 to 120 kPa. */
      readonly pressure: Quantity<Pressure>;
      /** Not together with a pressure. */
      readonly altitude?: undefined;
    }
  | {
      /** Geopotential altitude, −1000 to 11 000 m; the pressure is that of the standard atmosphere there. */
      readonly altitude: Quantity<Length>;
      /** Not together with an altitude. */
      readonly pressure?: undefined;
    }
);

/**
 * Density of air from temperature, pressure or altitude, and humidity.
 *
 * @param options - temperature, pressure or altitude, relative humidity (dry when left out)
 * @returns the density
 * @throws InputError `MISSING_OPTION` when neither pressure nor altitude is given, `INCONSISTENT` when both are,
 *   `OUT_OF_RANGE`, `NOT_A_FRACTION`, and what `readOptions` throws
 * @example
 * airDensity({ temperature: q("-7 °C"), pressure: q("101325 Pa") }); // 1.326 kg/m³
 */
export function airDensity(options: AirDensityOptions): Quantity<Density> {
  const { temperature, pressure, altitude, relativeHumidity } = readOptions("airDensity", options, {
    temperature: { unit: "°C", atLeast: -45, atMost: 60 },
    pressure: { unit: "Pa", atLeast: 20_000, atMost: 120_000, optional: true },
    altitude: { unit: "m", atLeast: -1000, atMost: 11_000, optional: true },
    relativeHumidity: { unit: "1", atLeast: 0, atMost: 1, optional: true },
  });
  if (pressure !== undefined && altitude !== undefined) {
    throw new InputError(
      "INCONSISTENT",
      `airDensity takes a pressure or an altitude, not both: got ${options.pressure} and ${options.altitude}`,
      { options: ["pressure", "altitude"] },
    );
  }
  const density = moistAirDensity.of({
    temperature: temperature + 273.15,
    pressure: pressure ?? pressureAt(altitude),
    vapourPressure: (relativeHumidity ?? 0) * saturationVapourPressure.of({ temperature }),
  });
  return quantity(density, "kg/m³");
}

function pressureAt(altitude: number | undefined): number {
  if (altitude === undefined) {
    throw new InputError(
      "MISSING_OPTION",
      "airDensity needs the option 'pressure' or the option 'altitude', q(\"101.325 kPa\") or q(\"0 m\") for example",
      { options: ["pressure", "altitude"] },
    );
  }
  return standardAtmospherePressure.of({ altitude });
}
