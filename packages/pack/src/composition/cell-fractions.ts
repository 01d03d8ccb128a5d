import { type Mass, type Quantity, type Relation, relation, type Volume } from "@tarewatt/units";

/** Inputs of {@link cellMassFractionOf}. */
export interface CellMassFractionOfInputs {
  /** Mass of all cells. Not negative. */
  readonly cellsMass: Quantity<Mass>;
  /** Mass of the pack that they are in. Greater than zero. */
  readonly packMass: Quantity<Mass>;
}

/**
 * Cell mass fraction: mass of the cells over mass of the pack.
 *
 * Returns a fraction; above 1 when the two masses cannot belong together. What counts as pack differs between authors: brackets,
 * coolant and the charger stand on either side. Source: definition.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`, `WRONG_DIMENSION`, `UNKNOWN_OPTION`, `NOT_VALID_HERE`
 * @example
 * cellMassFractionOf({ cellsMass: q("390 kg"), packMass: q("520 kg") }); // 0.75
 */
export const cellMassFractionOf: Relation<CellMassFractionOfInputs, number> = /* @__PURE__ */ relation({
  name: "cell mass fraction",
  inputs: {
    cellsMass: { symbol: "m_cells", unit: "kg", meaning: "mass of the cells", atLeast: 0 },
    packMass: { symbol: "m_pack", unit: "kg", meaning: "mass of the pack", above: 0 },
  },
  result: { symbol: "f_m", unit: "1" },
  expression: "m_cells/m_pack",
  source: { document: "definition of the cell mass fraction", status: "definition" },
  evaluate: ({ cellsMass, packMass }) => cellsMass / packMass,
});

/** Inputs of {@link cellVolumeFractionOf}. */
export interface CellVolumeFractionOfInputs {
  /** Volume of all cells. Not negative. */
  readonly cellsVolume: Quantity<Volume>;
  /** Volume of the pack that they are in. Greater than zero. */
  readonly packVolume: Quantity<Volume>;
}

/**
 * Cell volume fraction: volume of the cells over volume of the pack.
 *
 * Returns a fraction; above 1 when the two volumes cannot belong together. Source: definition.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`, `WRONG_DIMENSION`, `UNKNOWN_OPTION`, `NOT_VALID_HERE`
 * @example
 * cellVolumeFractionOf({ cellsVolume: q("150 L"), packVolume: q("250 L") }); // 0.6
 */
export const cellVolumeFractionOf: Relation<CellVolumeFractionOfInputs, number> = /* @__PURE__ */ relation({
  name: "cell volume fraction",
  inputs: {
    cellsVolume: { symbol: "V_cells", unit: "L", meaning: "volume of the cells", atLeast: 0 },
    packVolume: { symbol: "V", unit: "L", meaning: "volume of the pack", above: 0 },
  },
  result: { symbol: "f_V", unit: "1" },
  expression: "V_cells/V",
  source: { document: "definition of the cell volume fraction", status: "definition" },
  evaluate: ({ cellsVolume, packVolume }) => cellsVolume / packVolume,
});
