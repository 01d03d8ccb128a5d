import { type Pressure, type Quantity, type Relation, relation, type Temperature } from "@tarewatt/units";

/** Inputs of {@link saturationVapourPressure}. */
export interface SaturationVapourPressureInputs {
  /** Temperature of the air, −45 to 60 °C. */
  readonly temperature: Quantity<Temperature>;
}

/**
 * Pressure of water vapour in saturated air, over liquid water also below freezing (Magnus formula).
 *
 * @throws InputError `OUT_OF_RANGE` outside −45 to 60 °C; otherwise as every relation
 * @example
 * saturationVapourPressure({ temperature: q("20 °C") }); // 2333 Pa
 */
export const saturationVapourPressure: Relation<
  SaturationVapourPressureInputs,
  Quantity<Pressure>
> = /* @__PURE__ */ relation({
  name: "saturation pressure of water vapour",
  inputs: {
    temperature: { symbol: "t", unit: "°C", meaning: "temperature of the air", atLeast: -45, atMost: 60 },
  },
  result: { symbol: "e_s", unit: "Pa" },
  expression: "611.2·exp(17.62·t/(243.12 + t))",
  source: { document: "WMO Guide No. 8, Magnus formula over water", status: "quoted" },
  validity: "−45 to 60 °C (the range is remembered)",
  evaluate: ({ temperature }) => 611.2 * Math.exp((17.62 * temperature) / (243.12 + temperature)),
});
