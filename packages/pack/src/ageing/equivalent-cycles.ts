import {
  type Energy,
  type EnergyPerDistance,
  type Length,
  type Quantity,
  type Relation,
  relation,
} from "@tarewatt/units";

/** Inputs of {@link equivalentCycles}. */
export interface EquivalentCyclesInputs {
  /** Distance driven. Not negative. */
  readonly distance: Quantity<Length>;
  /** Consumption at the battery. Not negative. */
  readonly consumption: Quantity<EnergyPerDistance>;
  /** Usable energy. Greater than zero. */
  readonly usableEnergy: Quantity<Energy>;
}

/**
 * Full equivalent cycles that a distance costs: how often the usable energy was drawn.
 *
 * Returns a number. Energy that braking brings back is in the consumption already, so the cells turn over a little more.
 * Source: definition.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`, `WRONG_DIMENSION`, `UNKNOWN_OPTION`, `MISSING_OPTION`
 * @example
 * equivalentCycles({ distance: q("18000 km"), consumption: q("20 kWh/100 km"), usableEnergy: q("90 kWh") }); // 40
 */
export const equivalentCycles: Relation<EquivalentCyclesInputs, number> = /* @__PURE__ */ relation({
  name: "full equivalent cycles",
  inputs: {
    distance: { symbol: "S", unit: "km", meaning: "distance", atLeast: 0 },
    consumption: { symbol: "e", unit: "kWh/km", meaning: "consumption at the battery", atLeast: 0 },
    usableEnergy: { symbol: "E_u", unit: "kWh", meaning: "usable energy", above: 0 },
  },
  result: { symbol: "N", unit: "1" },
  expression: "S·e/E_u",
  source: { document: "definition of a full equivalent cycle", status: "definition" },
  evaluate: ({ distance, consumption, usableEnergy }) => (distance * consumption) / usableEnergy,
});
