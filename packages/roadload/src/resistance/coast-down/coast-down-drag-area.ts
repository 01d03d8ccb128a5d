import {
  type Area,
  type Force,
  type Pressure,
  type Quantity,
  type Relation,
  relation,
  type SpeedSquared,
  type Temperature,
} from "@tarewatt/units";

/** Inputs of {@link coastDownDragArea}: means over the fast and over the slow part of a coast-down. */
export interface CoastDownDragAreaInputs {
  /** Road-load force of the fast part: see {@link coastDownForce}. */
  readonly fastForce: Quantity<Force>;
  /** Road-load force of the slow part. */
  readonly slowForce: Quantity<Force>;
  /** By how much driveline spin is more in the fast part: see {@link spinForce}. */
  readonly spinDifference: Quantity<Force>;
  /** By how much tyres resist more in the fast part: see {@link tyreForce}. */
  readonly tyreDifference: Quantity<Force>;
  /** Mean square of the air speed in the fast part. */
  readonly fastAirSpeedSquared: Quantity<SpeedSquared>;
  /** Mean square of the air speed in the slow part. */
  readonly slowAirSpeedSquared: Quantity<SpeedSquared>;
  /** Temperature of the air, −40 to 50 °C. */
  readonly temperature: Quantity<Temperature>;
  /** Pressure of the air, 50 to 110 kPa. */
  readonly pressure: Quantity<Pressure>;
}

/**
 * Drag area from what the road load of a coast-down grows between a slow and a fast part, tyres and spin taken out.
 *
 * The equation stands in the regulation as an image that was not seen: its layout is from memory, its inputs and the other
 * steps were seen.
 *
 * @throws InputError `NOT_VALID_HERE` when both parts are equally fast, `NEGATIVE`, `OUT_OF_RANGE`; otherwise as every relation
 * @example
 * coastDownDragArea({
 *   fastForce: q("4645.5 N"), slowForce: q("1005 N"), spinDifference: q("77 N"), tyreDifference: q("187.4 N"),
 *   fastAirSpeedSquared: q("933.4 m²/s²"), slowAirSpeedSquared: q("43.12 m²/s²"),
 *   temperature: q("285.97 K"), pressure: q("101727 Pa"),
 * }); // 6.120 m²
 */
export const coastDownDragArea: Relation<CoastDownDragAreaInputs, Quantity<Area>> = /* @__PURE__ */ relation({
  name: "drag area from a coast-down",
  inputs: {
    fastForce: { symbol: "F_hi", unit: "N", meaning: "force of the fast part" },
    slowForce: { symbol: "F_lo", unit: "N", meaning: "force of the slow part" },
    spinDifference: { symbol: "ΔF_spin", unit: "N", meaning: "growth of the driveline spin" },
    tyreDifference: { symbol: "ΔF_t", unit: "N", meaning: "growth of the rolling resistance" },
    fastAirSpeedSquared: {
      symbol: "V_hi",
      unit: "m²/s²",
      meaning: "mean square of the air speed, fast part",
      above: 0,
      atMost: 10_000,
    },
    slowAirSpeedSquared: {
      symbol: "V_lo",
      unit: "m²/s²",
      meaning: "mean square of the air speed, slow part",
      atLeast: 0,
    },
    temperature: { symbol: "T", unit: "K", meaning: "temperature of the air", atLeast: 233.15, atMost: 323.15 },
    pressure: { symbol: "p", unit: "Pa", meaning: "pressure of the air", atLeast: 50_000, atMost: 110_000 },
  },
  result: { symbol: "C_dA", unit: "m²" },
  expression: "2·(F_hi − F_lo − ΔF_spin − ΔF_t)/(V_hi − V_lo)·287.058·T/p",
  source: { document: "40 CFR 1037.528", section: "layout of the equation from memory", status: "memory" },
  validity: "the fast part is faster, its yaw about that of the slow part",
  evaluate: ({
    fastForce,
    slowForce,
    spinDifference,
    tyreDifference,
    fastAirSpeedSquared,
    slowAirSpeedSquared,
    temperature,
    pressure,
  }) =>
    (((2 * (fastForce - slowForce - spinDifference - tyreDifference)) / (fastAirSpeedSquared - slowAirSpeedSquared)) *
      287.058 *
      temperature) /
    pressure,
});
