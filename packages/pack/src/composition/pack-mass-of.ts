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

/** Inputs of {@link packMassOf}. */
export interface PackMassOfInputs {
  /** Total energy of the pack, not the usable share of it. Not negative. */
  readonly energy: Quantity<Energy>;
  /** Specific energy of the cell, on the same total energy. Greater than zero. */
  readonly cellSpecificEnergy: Quantity<SpecificEnergy>;
  /** Mass of the cells over mass of the pack: more than 0, at most 1. */
  readonly cellMassFraction: number | Quantity<Ratio>;
}

/**
 * Mass of a pack, top down: its energy over the specific energy that the pack keeps of its cells.
 *
 * Returns kilograms. Cells are not rounded to whole ones, so that the mass is smooth in its inputs; {@link composePack}
 * does round. In a loop call `packMassOf.of` with plain numbers in kWh, Wh/kg and 1. Source: definition of the cell mass
 * fraction.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`, `NOT_A_FRACTION`, `WRONG_DIMENSION`, `UNKNOWN_OPTION`, `NOT_VALID_HERE`
 * @example
 * packMassOf({ energy: q("98 kWh"), cellSpecificEnergy: q("255 Wh/kg"), cellMassFraction: 0.74 }); // 519.343 kg
 */
export const packMassOf: Relation<PackMassOfInputs, Quantity<Mass>> = /* @__PURE__ */ relation({
  name: "mass of a pack from its energy",
  inputs: {
    energy: { symbol: "E", unit: "kWh", meaning: "total energy of the pack", atLeast: 0 },
    cellSpecificEnergy: { symbol: "e_c", unit: "Wh/kg", meaning: "specific energy of the cell", above: 0 },
    cellMassFraction,
  },
  result: { symbol: "m_pack", unit: "kg" },
  expression: "1000·E/(e_c·f_m)",
  source: { document: "definition of the cell mass fraction", status: "definition" },
  validity: "cells not rounded to whole ones",
  evaluate: ({ energy, cellSpecificEnergy, cellMassFraction }) =>
    (1000 * energy) / (cellSpecificEnergy * cellMassFraction),
});
