import {
  type Energy,
  type EnergyPerDistance,
  type Length,
  type Quantity,
  type Relation,
  relation,
} from "@tarewatt/units";

/** Where the interpolation is from. @internal */
export const interpolationSource = { document: "UN GTR No. 15", section: "annex 8, 4.5", status: "memory" } as const;

/** Inputs of {@link interpolationCoefficient}. */
export interface InterpolationCoefficientInputs {
  /** Cycle energy of the individual vehicle. */
  readonly individual: Quantity<Energy>;
  /** Cycle energy of vehicle L, the one that takes least. */
  readonly low: Quantity<Energy>;
  /** What vehicle H, the one that takes most, takes more than vehicle L. */
  readonly difference: Quantity<Energy>;
}

/**
 * Where an individual vehicle stands between the two that were tested, by the energy at the wheels that its road load takes.
 *
 * @throws InputError `OUT_OF_RANGE` when L and H take the same; otherwise as every relation
 * @example
 * interpolationCoefficient({ individual: q("11.5 MJ"), low: q("11 MJ"), difference: q("2 MJ") }); // 0.25
 */
export const interpolationCoefficient: Relation<InterpolationCoefficientInputs, number> = /* @__PURE__ */ relation({
  name: "interpolation coefficient",
  inputs: {
    individual: { symbol: "E_ind", unit: "MJ", meaning: "cycle energy of the individual vehicle", above: 0 },
    low: { symbol: "E_L", unit: "MJ", meaning: "cycle energy of vehicle L", above: 0 },
    difference: { symbol: "ΔE", unit: "MJ", meaning: "what vehicle H takes more than vehicle L", above: 0 },
  },
  result: { symbol: "K", unit: "1" },
  expression: "(E_ind − E_L)/ΔE",
  source: interpolationSource,
  evaluate: ({ individual, low, difference }) => (individual - low) / difference,
});

/** Inputs of {@link interpolatedConsumption}. */
export interface InterpolatedConsumptionInputs {
  /** Consumption of vehicle L. */
  readonly low: Quantity<EnergyPerDistance>;
  /** Consumption of vehicle H. */
  readonly high: Quantity<EnergyPerDistance>;
  /** Where the vehicle stands between them: see {@link interpolationCoefficient}. */
  readonly coefficient: number;
}

/**
 * Consumption of an individual vehicle, on the straight line between L and H.
 *
 * @throws InputError `NEGATIVE`; otherwise as every relation
 * @example
 * interpolatedConsumption({ low: q("15.6 kWh/100 km"), high: q("18 kWh/100 km"), coefficient: 0.25 }); // 16.2 kWh/100 km
 */
export const interpolatedConsumption: Relation<
  InterpolatedConsumptionInputs,
  Quantity<EnergyPerDistance>
> = /* @__PURE__ */ relation({
  name: "consumption between vehicles L and H",
  inputs: {
    low: { symbol: "e_L", unit: "kWh/100 km", meaning: "consumption of vehicle L", atLeast: 0 },
    high: { symbol: "e_H", unit: "kWh/100 km", meaning: "consumption of vehicle H", atLeast: 0 },
    coefficient: { symbol: "K", unit: "1", meaning: "interpolation coefficient" },
  },
  result: { symbol: "e_ind", unit: "kWh/100 km" },
  expression: "e_L + K·(e_H − e_L)",
  source: interpolationSource,
  evaluate: ({ low, high, coefficient }) => low + coefficient * (high - low),
});

/** Inputs of {@link interpolatedRange}. */
export interface InterpolatedRangeInputs {
  /** Range of vehicle L. */
  readonly low: Quantity<Length>;
  /** Range of vehicle H. */
  readonly high: Quantity<Length>;
  /** Where the vehicle stands between them: see {@link interpolationCoefficient}. */
  readonly coefficient: number;
}

/**
 * Pure electric range of an individual vehicle, on the straight line between L and H.
 *
 * @throws InputError `NEGATIVE`; otherwise as every relation
 * @example
 * interpolatedRange({ low: q("540 km"), high: q("470 km"), coefficient: 0.25 }); // 522.5 km
 */
export const interpolatedRange: Relation<InterpolatedRangeInputs, Quantity<Length>> = /* @__PURE__ */ relation({
  name: "range between vehicles L and H",
  inputs: {
    low: { symbol: "R_L", unit: "km", meaning: "range of vehicle L", atLeast: 0 },
    high: { symbol: "R_H", unit: "km", meaning: "range of vehicle H", atLeast: 0 },
    coefficient: { symbol: "K", unit: "1", meaning: "interpolation coefficient" },
  },
  result: { symbol: "R_ind", unit: "km" },
  expression: "R_L + K·(R_H − R_L)",
  source: interpolationSource,
  evaluate: ({ low, high, coefficient }) => low + coefficient * (high - low),
});
