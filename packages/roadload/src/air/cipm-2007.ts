import {
  type Density,
  type Pressure,
  type Quantity,
  quantity,
  type Relation,
  readOptions,
  relation,
  type Source,
  type Step,
  type Temperature,
  type Working,
} from "@tarewatt/units";
import type { Fraction } from "../fraction.js";

const source: Source = /* @__PURE__ */ Object.freeze({
  document: "CIPM-2007, Metrologia 45 (2008) 149",
  section: "constants as quoted in nine open files",
  status: "quoted",
});
const validity = "15 to 27 °C, 600 to 1100 hPa (the range is remembered)";
const kelvin = { symbol: "T", unit: "K", meaning: "temperature", atLeast: 288.15, atMost: 300.15 } as const;
const pressure = { symbol: "p", unit: "Pa", meaning: "pressure", atLeast: 60_000, atMost: 110_000 } as const;
const vapourFraction = {
  symbol: "x_v",
  unit: "1",
  meaning: "mole fraction of vapour",
  atLeast: 0,
  atMost: 0.1,
} as const;

/** Inputs of {@link cipmVapourFraction}. */
export interface CipmVapourFractionInputs {
  /** Relative humidity, 0 to 1. */
  readonly relativeHumidity: Fraction;
  /** Pressure. */
  readonly pressure: Quantity<Pressure>;
  /** Temperature, 15 to 27 °C. */
  readonly temperature: Quantity<Temperature>;
}

/**
 * Mole fraction of water vapour after CIPM-2007: saturation pressure, enhanced by the air above it, times relative humidity.
 *
 * @throws InputError `NEGATIVE`, `NOT_A_FRACTION`, `OUT_OF_RANGE`; otherwise as every relation
 * @example
 * const place = { pressure: q("101325 Pa"), temperature: q("20 °C") };
 * cipmVapourFraction({ relativeHumidity: 0.5, ...place }); // 0.01159
 */
export const cipmVapourFraction: Relation<CipmVapourFractionInputs, number> = /* @__PURE__ */ relation({
  name: "mole fraction of vapour",
  inputs: {
    relativeHumidity: { symbol: "h", unit: "1", meaning: "relative humidity", atLeast: 0, atMost: 1 },
    pressure,
    temperature: kelvin,
  },
  result: { symbol: "x_v", unit: "1" },
  expression:
    "h·(1.00062 + 0.0000000314·p + 0.00000056·(T − 273.15)²)·exp(0.000012378847·T² − 0.019121316·T + 33.93711047 − 6343.1645/T)/p",
  source,
  validity,
  evaluate: ({ relativeHumidity, pressure, temperature }) => {
    const enhancement = 1.00062 + 3.14e-8 * pressure + 5.6e-7 * (temperature - 273.15) ** 2;
    const saturation = Math.exp(
      1.2378847e-5 * temperature ** 2 - 1.9121316e-2 * temperature + 33.93711047 - 6343.1645 / temperature,
    );
    return (relativeHumidity * enhancement * saturation) / pressure;
  },
});

/** Inputs of {@link cipmCompressibility}. */
export interface CipmCompressibilityInputs {
  /** Pressure. */
  readonly pressure: Quantity<Pressure>;
  /** Temperature, 15 to 27 °C. */
  readonly temperature: Quantity<Temperature>;
  /** Mole fraction of vapour: see {@link cipmVapourFraction}. */
  readonly vapourFraction: Fraction;
}

/**
 * Compressibility factor of moist air after CIPM-2007: 1 for an ideal gas.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`; otherwise as every relation
 * @example
 * cipmCompressibility({ pressure: q("101325 Pa"), temperature: q("20 °C"), vapourFraction: 0.0115893 }); // 0.999615
 */
export const cipmCompressibility: Relation<CipmCompressibilityInputs, number> = /* @__PURE__ */ relation({
  name: "compressibility factor of moist air",
  inputs: { pressure, temperature: kelvin, vapourFraction },
  result: { symbol: "Z", unit: "1" },
  expression:
    "1 − p/T·(0.00000158123 − 0.000000029331·(T − 273.15) + 0.00000000011043·(T − 273.15)² + (0.000005707 − 0.00000002051·(T − 273.15))·x_v + " +
    "(0.00019898 − 0.000002376·(T − 273.15))·x_v²) + (p/T)²·(0.0000000000183 − 0.00000000765·x_v²)",
  source,
  validity,
  evaluate: ({ pressure, temperature, vapourFraction }) => {
    const t = temperature - 273.15;
    const ratio = pressure / temperature;
    const dry = 1.58123e-6 - 2.9331e-8 * t + 1.1043e-10 * t ** 2;
    const moist = (5.707e-6 - 2.051e-8 * t) * vapourFraction + (1.9898e-4 - 2.376e-6 * t) * vapourFraction ** 2;
    return 1 - ratio * (dry + moist) + ratio ** 2 * (1.83e-11 - 0.765e-8 * vapourFraction ** 2);
  },
});

/** Inputs of {@link cipmDensity}. */
export interface CipmDensityInputs extends CipmCompressibilityInputs {
  /** Compressibility factor: see {@link cipmCompressibility}. */
  readonly compressibility: number;
}

/**
 * Density of moist air after CIPM-2007, with 400 ppm of carbon dioxide.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`; otherwise as every relation
 * @example
 * cipmDensity({
 *   pressure: q("101325 Pa"), temperature: q("20 °C"), vapourFraction: 0.0115893, compressibility: 0.9996148,
 * }).in("kg/m³"); // 1.19931
 */
export const cipmDensity: Relation<CipmDensityInputs, Quantity<Density>> = /* @__PURE__ */ relation({
  name: "density of moist air (CIPM-2007)",
  inputs: {
    pressure,
    temperature: kelvin,
    vapourFraction,
    compressibility: { symbol: "Z", unit: "1", meaning: "compressibility factor", atLeast: 0.99, atMost: 1.01 },
  },
  result: { symbol: "ρ", unit: "kg/m³" },
  expression: "p·0.02896546/(Z·8.314472·T)·(1 − x_v·(1 − 18.01528/28.96546))",
  source,
  validity,
  evaluate: ({ pressure, temperature, vapourFraction, compressibility }) =>
    ((pressure * 0.02896546) / (compressibility * 8.314472 * temperature)) *
    (1 - vapourFraction * (1 - 18.01528 / 28.96546)),
});

/** Options of {@link metrologicalAirDensity}. */
export interface MetrologicalAirDensityOptions {
  /** Temperature, 15 to 27 °C. */
  readonly temperature: Quantity<Temperature>;
  /** Pressure, 600 to 1100 hPa. */
  readonly pressure: Quantity<Pressure>;
  /** Relative humidity, 0 to 1. */
  readonly relativeHumidity: Fraction;
}

/** Density of air with how it came about. */
export interface MetrologicalAirDensity {
  /** Density, with 400 ppm of carbon dioxide. */
  readonly density: Quantity<Density>;
  /** Relative standard uncertainty of the equation alone, from memory of its publication; the instruments' comes on top. */
  readonly relativeUncertainty: number;
  /** How the number came about. */
  working(): Step[];
}

/**
 * Density of air by the equation that metrology uses, CIPM-2007, for a laboratory or a wind tunnel. On the road use
 * {@link airDensity}: it differs by less than 0.05 % here, and holds in a far wider range.
 *
 * @param options - temperature, pressure, humidity
 * @returns density, with its uncertainty
 * @throws InputError `OUT_OF_RANGE` outside the range of the equation, `NOT_A_FRACTION`, `NEGATIVE`, and what `readOptions` throws
 * @example
 * const place = { temperature: q("20 °C"), pressure: q("101325 Pa"), relativeHumidity: 0.5 };
 * metrologicalAirDensity(place).density.in("kg/m³"); // 1.199314
 */
export function metrologicalAirDensity(options: MetrologicalAirDensityOptions): MetrologicalAirDensity {
  const { temperature, pressure, relativeHumidity } = readOptions("metrologicalAirDensity", options, {
    temperature: { unit: "K", atLeast: kelvin.atLeast, atMost: kelvin.atMost },
    pressure: { unit: "Pa", atLeast: 60_000, atMost: 110_000 },
    relativeHumidity: { unit: "1", atLeast: 0, atMost: 1 },
  });
  const compute = (working?: Working): number => {
    const vapourFraction = cipmVapourFraction.of({ relativeHumidity, pressure, temperature }, working);
    const compressibility = cipmCompressibility.of({ pressure, temperature, vapourFraction }, working);
    return cipmDensity.of({ pressure, temperature, vapourFraction, compressibility }, working);
  };
  return Object.freeze({
    density: quantity(compute(), "kg/m³"),
    relativeUncertainty: 2.2e-5,
    working: () => {
      const working: Working = [];
      compute(working);
      return working;
    },
  });
}
