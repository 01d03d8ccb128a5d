import { type Energy, type Mass, type Quantity, type Relation, relation, type SpecificEnergy } from "@tarewatt/units";

/** Inputs of {@link specificEnergy}. */
export interface SpecificEnergyInputs {
  /** Energy of the cell or pack; say elsewhere whether it is total or usable. Not negative. */
  readonly energy: Quantity<Energy>;
  /** Mass of the same cell or pack. Greater than zero. */
  readonly mass: Quantity<Mass>;
}

/**
 * Specific energy: energy per mass, of a cell or of a pack.
 *
 * Returns watt hours per kilogram, on the same basis (total or usable) as the energy given. Source: definition.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`, `WRONG_DIMENSION`, `UNKNOWN_OPTION`, `NOT_VALID_HERE`
 * @example
 * specificEnergy({ energy: q("98 kWh"), mass: q("527 kg") }); // 185.958 Wh/kg
 */
export const specificEnergy: Relation<SpecificEnergyInputs, Quantity<SpecificEnergy>> = /* @__PURE__ */ relation({
  name: "specific energy",
  inputs: {
    energy: { symbol: "E", unit: "Wh", meaning: "energy", atLeast: 0 },
    mass: { symbol: "m", unit: "kg", meaning: "mass", above: 0 },
  },
  result: { symbol: "e", unit: "Wh/kg" },
  expression: "E/m",
  source: { document: "definition of specific energy", status: "definition" },
  evaluate: ({ energy, mass }) => energy / mass,
});
