import { type Energy, type Quantity, type Ratio, type Relation, relation } from "@tarewatt/units";

/** Inputs of {@link usableEnergy}. */
export interface UsableEnergyInputs {
  /** Total energy of the pack. Not negative. */
  readonly totalEnergy: Quantity<Energy>;
  /** Usable energy over total energy: more than 0, at most 1. */
  readonly usableFraction: number | Quantity<Ratio>;
}

/**
 * Usable energy of a pack: the share of its total energy that a driver gets between full and empty.
 *
 * Returns kilowatt hours, at the battery. Source: definition of the usable fraction.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`, `NOT_A_FRACTION`, `WRONG_DIMENSION`, `UNKNOWN_OPTION`
 * @example
 * usableEnergy({ totalEnergy: q("98 kWh"), usableFraction: 0.93 }); // 91.14 kWh
 */
export const usableEnergy: Relation<UsableEnergyInputs, Quantity<Energy>> = /* @__PURE__ */ relation({
  name: "usable energy of the pack",
  inputs: {
    totalEnergy: { symbol: "E", unit: "kWh", meaning: "total energy of the pack", atLeast: 0 },
    usableFraction: { symbol: "f_u", unit: "1", meaning: "usable energy over total energy", above: 0, atMost: 1 },
  },
  result: { symbol: "E_u", unit: "kWh" },
  expression: "E·f_u",
  source: { document: "definition of the usable fraction", status: "definition" },
  evaluate: ({ totalEnergy, usableFraction }) => totalEnergy * usableFraction,
});
