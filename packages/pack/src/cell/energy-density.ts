import { type Energy, type EnergyDensity, type Quantity, type Relation, relation, type Volume } from "@tarewatt/units";

/** Inputs of {@link energyDensity}. */
export interface EnergyDensityInputs {
  /** Energy of the cell or pack; say elsewhere whether it is total or usable. Not negative. */
  readonly energy: Quantity<Energy>;
  /** Volume of the same cell or pack. Greater than zero. */
  readonly volume: Quantity<Volume>;
}

/**
 * Energy density: energy per volume, of a cell or of a pack.
 *
 * Returns watt hours per litre, on the same basis (total or usable) as the energy given. Source: definition.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`, `WRONG_DIMENSION`, `UNKNOWN_OPTION`, `NOT_VALID_HERE`
 * @example
 * energyDensity({ energy: q("85.56 Wh"), volume: q("133 mL") }); // 643.308 Wh/L
 */
export const energyDensity: Relation<EnergyDensityInputs, Quantity<EnergyDensity>> = /* @__PURE__ */ relation({
  name: "energy density",
  inputs: {
    energy: { symbol: "E", unit: "Wh", meaning: "energy", atLeast: 0 },
    volume: { symbol: "V", unit: "L", meaning: "volume", above: 0 },
  },
  result: { symbol: "w", unit: "Wh/L" },
  expression: "E/V",
  source: { document: "definition of energy density", status: "definition" },
  evaluate: ({ energy, volume }) => energy / volume,
});
