import {
  type Energy,
  type Mass,
  type Quantity,
  type Ratio,
  type Relation,
  relation,
  type SpecificEnergy,
} from "@tarewatt/units";
import { cellMassFraction } from "./relation-inputs.js";

/** Inputs of {@link impliedCellSpecificEnergy}. */
export interface ImpliedCellSpecificEnergyInputs {
  /** Total energy of the pack, not the usable share of it. Not negative. */
  readonly energy: Quantity<Energy>;
  /** Mass of the pack. Greater than zero. */
  readonly packMass: Quantity<Mass>;
  /** Mass of the cells over mass of the pack: more than 0, at most 1. */
  readonly cellMassFraction: number | Quantity<Ratio>;
}

/**
 * Specific energy that the cells of a pack must have: the mass of a pack turned round.
 *
 * Returns Wh/kg of the cell, on the total energy. The inverse of {@link packMassOf}. Source: definition of the cell mass fraction.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`, `NOT_A_FRACTION`, `WRONG_DIMENSION`, `UNKNOWN_OPTION`, `NOT_VALID_HERE`
 * @example
 * impliedCellSpecificEnergy({ energy: q("65 kWh"), packMass: q("400 kg"), cellMassFraction: 0.65 }); // 250 Wh/kg
 */
export const impliedCellSpecificEnergy: Relation<
  ImpliedCellSpecificEnergyInputs,
  Quantity<SpecificEnergy>
> = /* @__PURE__ */ relation({
  name: "specific energy that the cells of a pack must have",
  inputs: {
    energy: { symbol: "E", unit: "kWh", meaning: "total energy of the pack", atLeast: 0 },
    packMass: { symbol: "m_pack", unit: "kg", meaning: "mass of the pack", above: 0 },
    cellMassFraction,
  },
  result: { symbol: "e_c", unit: "Wh/kg" },
  expression: "1000·E/(m_pack·f_m)",
  source: { document: "definition of the cell mass fraction", status: "definition" },
  evaluate: ({ energy, packMass, cellMassFraction }) => (1000 * energy) / (packMass * cellMassFraction),
});

/** Inputs of {@link impliedCellMassFraction}. */
export interface ImpliedCellMassFractionInputs {
  /** Total energy of the pack, not the usable share of it. Not negative. */
  readonly energy: Quantity<Energy>;
  /** Mass of the pack. Greater than zero. */
  readonly packMass: Quantity<Mass>;
  /** Specific energy of the cell, on the same total energy. Greater than zero. */
  readonly cellSpecificEnergy: Quantity<SpecificEnergy>;
}

/**
 * Cell mass fraction that a pack must have when the specific energy of its cells is known.
 *
 * Returns a fraction; above 1 when the pack would be lighter than its cells. Source: definition of the cell mass fraction.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`, `WRONG_DIMENSION`, `UNKNOWN_OPTION`, `NOT_VALID_HERE`
 * @example
 * impliedCellMassFraction({ energy: q("65 kWh"), packMass: q("400 kg"), cellSpecificEnergy: q("250 Wh/kg") }); // 0.65
 */
export const impliedCellMassFraction: Relation<ImpliedCellMassFractionInputs, number> = /* @__PURE__ */ relation({
  name: "cell mass fraction that a pack must have",
  inputs: {
    energy: { symbol: "E", unit: "kWh", meaning: "total energy of the pack", atLeast: 0 },
    packMass: { symbol: "m_pack", unit: "kg", meaning: "mass of the pack", above: 0 },
    cellSpecificEnergy: { symbol: "e_c", unit: "Wh/kg", meaning: "specific energy of the cell", above: 0 },
  },
  result: { symbol: "f_m", unit: "1" },
  expression: "1000·E/(m_pack·e_c)",
  source: { document: "definition of the cell mass fraction", status: "definition" },
  evaluate: ({ energy, packMass, cellSpecificEnergy }) => (1000 * energy) / (packMass * cellSpecificEnergy),
});
