import { type Quantity, quantity, readOptions, type Speed } from "@tarewatt/units";
import { certifiedFromParts } from "./certified-road-load.js";
import { toCertified } from "./conversion.js";
import { assertRoadLoad, type CertifiedRoadLoad, type RoadLoad } from "./road-load.js";
import { towingOf } from "./towing.js";

/** Options of {@link roadLoadInWind}. */
export interface RoadLoadInWindOptions {
  /** Wind against the vehicle, negative from behind, −30 to 30 m/s: see {@link headWind}. */
  readonly headWind: Quantity<Speed>;
}

/**
 * A road load in a steady wind along the road: A + C·w² + (B + 2·C·w)·v + C·v².
 *
 * Exact while the air meets the vehicle from the front, v + w ≥ 0; below that a tail wind pushes, and the result is too high. Yaw is
 * not counted: for wind from all directions see {@link windAveragedDragArea}. The whole quadratic coefficient is taken for air.
 *
 * @param load - road load in still air, physical or certified
 * @param options - wind
 * @returns the load in the wind, as coefficients
 * @throws InputError `WRONG_CHOICE` when it is no road load, `OUT_OF_RANGE`, and what `readOptions` throws
 * @example
 * const load = roadLoad({ mass: q("2 t"), dragArea: q("0.7 m²"), rollingResistanceCoefficient: 0.009, airDensity: q("1.2 kg/m³") });
 * roadLoadInWind(load, { headWind: q("5 m/s") }).at(q("25 m/s")).total; // 554.5 N
 */
export function roadLoadInWind(load: RoadLoad, options: RoadLoadInWindOptions): CertifiedRoadLoad {
  assertRoadLoad(load);
  const { headWind } = readOptions("roadLoadInWind", options, { headWind: { unit: "m/s", atLeast: -30, atMost: 30 } });
  const { coefficients, conditions, holds, rotatingMassFraction, warnings } =
    load.form === "physical" ? toCertified(load) : load;
  const quadratic = coefficients.quadratic.in("N/(m/s)²");
  const tail = `a tail wind of ${(-headWind).toFixed(1)} m/s: below that speed the air pushes, and the force given is too high`;
  return certifiedFromParts({
    coefficients: Object.freeze({
      constant: quantity(coefficients.constant.in("N") + quadratic * headWind ** 2, "N"),
      linear: quantity(coefficients.linear.in("N/(m/s)") + 2 * quadratic * headWind, "N/(m/s)"),
      quadratic: coefficients.quadratic,
    }),
    conditions: Object.freeze({
      ...conditions,
      standard: `${conditions.standard ?? "road load"}, in a head wind of ${Number(headWind.toFixed(2))} m/s`,
    }),
    ...{ holds, rotatingMassFraction },
    ...towingOf(load),
    warnings: Object.freeze([...warnings, ...(headWind < 0 ? [tail] : [])]),
  });
}
