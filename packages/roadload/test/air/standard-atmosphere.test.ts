import { q, quantity } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { published } from "../../../../test/support/published.js";
import {
  moistAirDensity,
  standardAtmosphere,
  standardAtmospherePressure,
  standardAtmosphereTemperature,
} from "../../src/index.js";
import { between, codeOf } from "../support.js";

const handbook = "Mechanical Engineers' Handbook, volume 4, table 6";
/** The handbook's altitudes are geometric; the radius of the earth is from memory (ISO 2533). */
const geopotential = (geometric: number) => quantity((6_356_766 * geometric) / (6_356_766 + geometric), "m");
const altitudes = [1000, 2000, 3000, 4000, 5000].map(geopotential);

describe("standard atmosphere", () => {
  published({
    quantity: "sea level: temperature",
    source: "summary of the US Standard Atmosphere, 1976",
    status: "seen",
    published: q("288.15 K"),
    computed: () => standardAtmosphereTemperature({ altitude: q("0 m") }),
    tolerance: 0,
    why: "the relation starts there",
  });
  published({
    quantity: "sea level: density of dry air",
    source: "summary of the US Standard Atmosphere, 1976",
    status: "seen",
    published: q("1.225 kg/m³"),
    computed: () =>
      moistAirDensity({
        temperature: standardAtmosphereTemperature({ altitude: q("0 m") }),
        pressure: standardAtmospherePressure({ altitude: q("0 m") }),
        vapourPressure: q("0 Pa"),
      }),
    tolerance: 0.0005,
    why: "last printed digit",
  });
  published({
    quantity: "exponent of the pressure",
    source: "summary of the US Standard Atmosphere, 1976",
    status: "seen",
    published: 5.255876,
    computed: () => {
      const { seaLevelPressure, seaLevelTemperature } = standardAtmosphere;
      const altitude = q("5000 m");
      return (
        Math.log(standardAtmospherePressure({ altitude }).in("Pa") / seaLevelPressure) /
        Math.log(standardAtmosphereTemperature({ altitude }).in("K") / seaLevelTemperature)
      );
    },
    tolerance: 5e-6,
    why: "the source's gas constant differs in the seventh digit",
  });
  published({
    quantity: "temperature at 1 to 5 km geometric altitude",
    source: handbook,
    status: "seen",
    published: [281.65, 275.15, 268.66, 262.17, 255.68].map((T) => quantity(T, "K")),
    computed: () => altitudes.map((altitude) => standardAtmosphereTemperature({ altitude })),
    tolerance: 0.006,
    why: "last printed digit",
  });
  published({
    quantity: "pressure at 1 to 5 km geometric altitude",
    source: handbook,
    status: "seen",
    published: [0.8988, 0.795, 0.7012, 0.6166, 0.5405].map((p) => quantity(p, "bar")),
    computed: () => altitudes.map((altitude) => standardAtmospherePressure({ altitude })),
    tolerance: 0.00006,
    why: "last printed digit",
  });
  published({
    quantity: "density at 1 to 5 km geometric altitude",
    source: handbook,
    status: "seen",
    published: [1.1117, 1.0066, 0.9093, 0.8194, 0.7364].map((rho) => quantity(rho, "kg/m³")),
    computed: () =>
      altitudes.map((altitude) =>
        moistAirDensity({
          temperature: standardAtmosphereTemperature({ altitude }),
          pressure: standardAtmospherePressure({ altitude }),
          vapourPressure: q("0 Pa"),
        }),
      ),
    tolerance: 0.0001,
    why: "last printed digit",
  });

  it("falls with altitude, in temperature and pressure", () => {
    fc.assert(
      fc.property(between(-1000, 10_900), between(1, 100), (low, step) => {
        const a = { altitude: quantity(low, "m") };
        const b = { altitude: quantity(low + step, "m") };
        expect(standardAtmosphereTemperature(b).compareTo(standardAtmosphereTemperature(a))).toBeLessThan(0);
        expect(standardAtmospherePressure(b).compareTo(standardAtmospherePressure(a))).toBeLessThan(0);
      }),
    );
  });

  it("ends at the top of the troposphere and 1 km below the sea", () => {
    for (const altitude of [q("11001 m"), q("-1001 m"), q("40000 ft")]) {
      expect(codeOf(() => standardAtmospherePressure({ altitude }))).toBe("OUT_OF_RANGE");
      expect(codeOf(() => standardAtmosphereTemperature({ altitude }))).toBe("OUT_OF_RANGE");
    }
  });
});
