import { InputError, type Quantity, quantity, readOptions, type Speed } from "@tarewatt/units";
import { assertRoadLoad } from "./assert-road-load.js";
import { certifiedFromParts } from "./certified-road-load.js";
import { toCertified } from "./conversion.js";
import type { CertifiedRoadLoad, RoadLoad, RoadLoadCoefficients } from "./road-load.js";
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
 * not counted: for wind from all directions see {@link windAveragedDragArea}. The whole quadratic coefficient is taken for air. The
 * load says its `headWind`, so that `moveRoadLoad` and `withAddOns` know which part of its forces is the wind's.
 *
 * @param load - road load in still air, physical or certified
 * @param options - wind
 * @returns the load in the wind, as coefficients
 * @throws InputError `WRONG_CHOICE` when it is no road load, `INCONSISTENT` when it is in a wind already, `OUT_OF_RANGE`, and what
 *   `readOptions` throws
 * @example
 * const load = roadLoad({ mass: q("2 t"), dragArea: q("0.7 m²"), rollingResistanceCoefficient: 0.009, airDensity: q("1.2 kg/m³") });
 * roadLoadInWind(load, { headWind: q("5 m/s") }).at(q("25 m/s")).total; // 554.5 N
 */
export function roadLoadInWind(load: RoadLoad, options: RoadLoadInWindOptions): CertifiedRoadLoad {
  assertRoadLoad(load);
  readOptions("roadLoadInWind", options, { headWind: { unit: "m/s", atLeast: -30, atMost: 30 } });
  const still = load.form === "physical" ? toCertified(load) : load;
  if (still.headWind !== undefined) {
    throw new InputError(
      "INCONSISTENT",
      `the load is in a head wind of ${still.headWind} already: start from the load in still air, and give the whole wind`,
      { headWind: String(still.headWind) },
    );
  }
  return inWind(still, options.headWind);
}

/** A load in still air, put in the wind. @internal */
export function inWind(still: CertifiedRoadLoad, headWind: Quantity<Speed>): CertifiedRoadLoad {
  const { conditions, holds, rotatingMassFraction, warnings } = still;
  return certifiedFromParts({
    ...{ conditions, holds, rotatingMassFraction, headWind, ...towingOf(still) },
    coefficients: withWind(still, headWind.in("m/s"), 1),
    warnings: Object.freeze([...warnings, ...tailWind(headWind)]),
  });
}

/** The same load in still air: the wind is taken out again, exactly. @internal */
export function inStillAir(load: CertifiedRoadLoad): CertifiedRoadLoad {
  const { conditions, holds, rotatingMassFraction, warnings, headWind } = load;
  if (headWind === undefined) return load;
  return certifiedFromParts({
    ...{ conditions, holds, rotatingMassFraction, ...towingOf(load) },
    coefficients: withWind(load, headWind.in("m/s"), -1),
    warnings: Object.freeze(warnings.filter((text) => !tailWind(headWind).includes(text))),
  });
}

/** Coefficients with the terms of a wind added, or taken off. */
function withWind({ coefficients }: CertifiedRoadLoad, wind: number, sign: 1 | -1): RoadLoadCoefficients {
  const quadratic = coefficients.quadratic.in("N/(m/s)²");
  return Object.freeze({
    constant: quantity(coefficients.constant.in("N") + sign * quadratic * wind ** 2, "N"),
    linear: quantity(coefficients.linear.in("N/(m/s)") + sign * 2 * quadratic * wind, "N/(m/s)"),
    quadratic: coefficients.quadratic,
  });
}

function tailWind(headWind: Quantity<Speed>): string[] {
  const wind = headWind.in("m/s");
  if (wind >= 0) return [];
  return [`a tail wind of ${(-wind).toFixed(1)} m/s: below that speed the air pushes, and the force given is too high`];
}
