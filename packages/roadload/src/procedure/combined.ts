import {
  type DistancePerEnergy,
  type EnergyPerDistance,
  type Length,
  type Quantity,
  type Relation,
  relation,
  type Source,
} from "@tarewatt/units";

const source: Source = /* @__PURE__ */ Object.freeze({ document: "40 CFR 600.206", status: "seen" });

/** Weights of city and highway: see {@link combinedWeights}. */
export interface CombinedWeights {
  /** Part of the distance in the city. */
  readonly city: number;
  /** Part of the distance on the highway. */
  readonly highway: number;
  /** Where the values are from. */
  readonly source: Source;
}

/** Weights of the US combined value. */
export const combinedWeights: CombinedWeights = /* @__PURE__ */ Object.freeze({ city: 0.55, highway: 0.45, source });

/** Inputs of {@link combinedFuelEconomy}. */
export interface CombinedFuelEconomyInputs {
  /** Distance per energy in the city. */
  readonly city: Quantity<DistancePerEnergy>;
  /** Distance per energy on the highway. */
  readonly highway: Quantity<DistancePerEnergy>;
}

/**
 * Combined fuel economy: harmonic mean of city and highway, 55 % and 45 % of the distance.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`; otherwise as every relation
 * @example
 * combinedFuelEconomy({ city: q("110 MPGe"), highway: q("95 MPGe") }).in("MPGe"); // 102.7
 */
export const combinedFuelEconomy: Relation<
  CombinedFuelEconomyInputs,
  Quantity<DistancePerEnergy>
> = /* @__PURE__ */ relation({
  name: "combined fuel economy",
  inputs: {
    city: { symbol: "FE_c", unit: "MPGe", meaning: "city fuel economy", above: 0 },
    highway: { symbol: "FE_h", unit: "MPGe", meaning: "highway fuel economy", above: 0 },
  },
  result: { symbol: "FE", unit: "MPGe" },
  expression: "1/(0.55/FE_c + 0.45/FE_h)",
  source,
  evaluate: ({ city, highway }) => 1 / (combinedWeights.city / city + combinedWeights.highway / highway),
});

/** Inputs of {@link combinedConsumption}. */
export interface CombinedConsumptionInputs {
  /** Consumption in the city, at any boundary. */
  readonly city: Quantity<EnergyPerDistance>;
  /** Consumption on the highway, at the same boundary. */
  readonly highway: Quantity<EnergyPerDistance>;
}

/**
 * Combined consumption: arithmetic mean of city and highway, 55 % and 45 % of the distance.
 *
 * @throws InputError `NEGATIVE`; otherwise as every relation
 * @example
 * combinedConsumption({ city: q("265 Wh/mi"), highway: q("220 Wh/mi") }).in("Wh/mi"); // 244.75
 */
export const combinedConsumption: Relation<
  CombinedConsumptionInputs,
  Quantity<EnergyPerDistance>
> = /* @__PURE__ */ relation({
  name: "combined consumption",
  inputs: {
    city: { symbol: "e_c", unit: "Wh/mi", meaning: "city consumption", atLeast: 0 },
    highway: { symbol: "e_h", unit: "Wh/mi", meaning: "highway consumption", atLeast: 0 },
  },
  result: { symbol: "e", unit: "Wh/mi" },
  expression: "0.55·e_c + 0.45·e_h",
  source: { document: "10 CFR 474", section: "appendix A", status: "seen" },
  evaluate: ({ city, highway }) => combinedWeights.city * city + combinedWeights.highway * highway,
});

/** Inputs of {@link combinedRange}. */
export interface CombinedRangeInputs {
  /** Range in the city. */
  readonly city: Quantity<Length>;
  /** Range on the highway. */
  readonly highway: Quantity<Length>;
}

/**
 * Combined range: arithmetic mean of city and highway, 55 % and 45 %, as US labels have it.
 *
 * @throws InputError `NEGATIVE`; otherwise as every relation
 * @example
 * combinedRange({ city: q("300 mi"), highway: q("220 mi") }).in("mi"); // 264
 */
export const combinedRange: Relation<CombinedRangeInputs, Quantity<Length>> = /* @__PURE__ */ relation({
  name: "combined range",
  inputs: {
    city: { symbol: "R_c", unit: "mi", meaning: "city range", atLeast: 0 },
    highway: { symbol: "R_h", unit: "mi", meaning: "highway range", atLeast: 0 },
  },
  result: { symbol: "R", unit: "mi" },
  expression: "0.55·R_c + 0.45·R_h",
  source: { document: "answer of the US to the UN guide on electric vehicles, EVE-05-12e (2013)", status: "seen" },
  evaluate: ({ city, highway }) => combinedWeights.city * city + combinedWeights.highway * highway,
});
