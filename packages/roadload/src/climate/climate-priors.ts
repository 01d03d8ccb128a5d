import type { Source } from "@tarewatt/units";

const supplier: Source = /* @__PURE__ */ Object.freeze({
  document: "engineering article of a supplier of thermal systems",
  section: "compact car, −15 °C outside, 22 °C inside: 2.0 kW through body and glass, 2.5 kW with exhaust air",
  status: "seen",
});
const assumed: Source = /* @__PURE__ */ Object.freeze({
  document: "an assumption for smaller and larger cabins: common practice, no source",
  status: "common practice",
});
const association: Source = /* @__PURE__ */ Object.freeze({
  document: "a German motoring association, 2022, as reported by the press",
  section: "seven battery-electric cars, −10 to 20 °C: 1.5 to 2.3 kWh, mean 1.81, in 12.5 to more than 40 min",
  status: "quoted",
});
const people: Source = /* @__PURE__ */ Object.freeze({
  document: "ASHRAE Handbook, Fundamentals",
  section: "cooling loads: people seated, very light work, sensible heat",
  status: "memory",
});

/** A figure of a cabin, as plain numbers. */
export interface CabinPrior {
  /** Low end. */
  readonly low: number;
  /** Most likely value. */
  readonly likely: number;
  /** High end. */
  readonly high: number;
  /** Where the most likely value is from. */
  readonly source: Source;
  /** Where the two ends are from. */
  readonly endsSource: Source;
}

/**
 * Figures of cabins of passenger cars, where nothing better is known.
 *
 * - `envelope`: heat flow through body and glass, in W/K;
 * - `freshAir`: air that the fans move, in kg/s, all fresh: the exhaust air of the same car;
 * - `warmUp`: electric energy that warms a cabin up, in Wh/K: parked, what is lost meanwhile included;
 * - `warmUpTime`: how long that took, in min: 12.5 to more than 40, between them assumed;
 * - `heatPerOccupant`: heat of a person, in W, without the vapour.
 */
export const cabinPriors: Readonly<
  Record<"envelope" | "freshAir" | "warmUp" | "warmUpTime" | "heatPerOccupant", CabinPrior>
> = /* @__PURE__ */ Object.freeze({
  envelope: /* @__PURE__ */ Object.freeze({ low: 40, likely: 54, high: 75, source: supplier, endsSource: assumed }),
  freshAir: /* @__PURE__ */ Object.freeze({
    low: 0.04,
    likely: 0.067,
    high: 0.09,
    source: supplier,
    endsSource: assumed,
  }),
  warmUp: /* @__PURE__ */ Object.freeze({
    low: 50,
    likely: 60.3,
    high: 77,
    source: association,
    endsSource: association,
  }),
  warmUpTime: /* @__PURE__ */ Object.freeze({
    low: 12.5,
    likely: 25,
    high: 40,
    source: assumed,
    endsSource: association,
  }),
  heatPerOccupant: /* @__PURE__ */ Object.freeze({
    low: 65,
    likely: 70,
    high: 75,
    source: people,
    endsSource: assumed,
  }),
});

const parameterSets: Source = /* @__PURE__ */ Object.freeze({
  document: "battery-model parameter sets: 852 (50 Ah, NMC), 830 (pouch), 850 and 1045",
  status: "quoted",
});

/** Specific heat of lithium-ion cells in J/(kg·K): four published figures, 830, 850, 852 and 1045, seen quoted. */
export const cellSpecificHeat = /* @__PURE__ */ Object.freeze({
  /** Low end. */
  low: 830,
  /** Most likely value. */
  likely: 850,
  /** High end. */
  high: 1045,
  /** Where the figures are from. */
  source: parameterSets,
} as const);
