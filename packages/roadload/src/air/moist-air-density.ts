import { type Density, type Pressure, type Quantity, type Relation, relation, type Temperature } from "@tarewatt/units";

/** Inputs of {@link moistAirDensity}. */
export interface MoistAirDensityInputs {
  /** Temperature of the air, −60 to 60 °C. */
  readonly temperature: Quantity<Temperature>;
  /** Total pressure, 20 to 120 kPa. */
  readonly pressure: Quantity<Pressure>;
  /** Part of the pressure that is water vapour, 0 to 20 kPa; zero in dry air. */
  readonly vapourPressure: Quantity<Pressure>;
}

/**
 * Density of moist air, dry air and vapour as ideal gases.
 *
 * Within about 0.04 % of the formula for metrology (CIPM-2007) near 20 °C and 100 kPa.
 *
 * @throws InputError `OUT_OF_RANGE` outside the ranges of the inputs; otherwise as every relation
 * @example
 * moistAirDensity({ temperature: q("20 °C"), pressure: q("101325 Pa"), vapourPressure: q("1166 Pa") }); // 1.199 kg/m³
 */
export const moistAirDensity: Relation<MoistAirDensityInputs, Quantity<Density>> = /* @__PURE__ */ relation({
  name: "density of moist air",
  inputs: {
    temperature: { symbol: "T", unit: "K", meaning: "temperature of the air", atLeast: 213.15, atMost: 333.15 },
    // The two ranges touch, so that vapour can never be more than all of the air.
    pressure: { symbol: "p", unit: "Pa", meaning: "total pressure", atLeast: 20_000, atMost: 120_000 },
    vapourPressure: { symbol: "e", unit: "Pa", meaning: "pressure of the vapour", atLeast: 0, atMost: 20_000 },
  },
  result: { symbol: "ρ", unit: "kg/m³" },
  expression: "(p − e)/(287.05·T) + e/(461.5·T)",
  source: { document: "ideal gas law with the gas constants of dry air and of water vapour", status: "memory" },
  validity: "−60 to 60 °C, 20 to 120 kPa",
  evaluate: ({ temperature, pressure, vapourPressure }) =>
    (pressure - vapourPressure) / (287.05 * temperature) + vapourPressure / (461.5 * temperature),
});
