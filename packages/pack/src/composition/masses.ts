import { type Mass, type Quantity, type Ratio, type Relation, relation } from "@tarewatt/units";
import { cellMassFraction } from "./relation-inputs.js";

/** Inputs of {@link massOfCells}. */
export interface MassOfCellsInputs {
  /** Number of cells. At least one. */
  readonly cellCount: number;
  /** Mass of one cell. Not negative. */
  readonly cellMass: Quantity<Mass>;
}

/**
 * Mass of so many equal cells.
 *
 * Returns kilograms. Source: masses add.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`, `WRONG_DIMENSION`, `UNKNOWN_OPTION`
 * @example
 * massOfCells({ cellCount: 192, cellMass: q("2.03 kg") }); // 389.76 kg
 */
export const massOfCells: Relation<MassOfCellsInputs, Quantity<Mass>> = /* @__PURE__ */ relation({
  name: "mass of the cells",
  inputs: {
    cellCount: { symbol: "N", unit: "1", meaning: "number of cells", atLeast: 1 },
    cellMass: { symbol: "m_c", unit: "kg", meaning: "mass of a cell", atLeast: 0 },
  },
  result: { symbol: "m_cells", unit: "kg" },
  expression: "N·m_c",
  source: { document: "masses add", status: "definition" },
  evaluate: ({ cellCount, cellMass }) => cellCount * cellMass,
});

/** Inputs of {@link massOfPack}. */
export interface MassOfPackInputs {
  /** Mass of all cells. Not negative. */
  readonly cellsMass: Quantity<Mass>;
  /** Mass of the cells over mass of the pack: more than 0, at most 1. */
  readonly cellMassFraction: number | Quantity<Ratio>;
}

/**
 * Mass of a pack from the mass of its cells.
 *
 * Returns kilograms. The pack counts with all that the fraction counted: housing, cooling, electronics as a rule. Source:
 * definition of the cell mass fraction.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`, `NOT_A_FRACTION`, `WRONG_DIMENSION`, `UNKNOWN_OPTION`, `NOT_VALID_HERE`
 * @example
 * massOfPack({ cellsMass: q("389.76 kg"), cellMassFraction: 0.74 }); // 526.703 kg
 */
export const massOfPack: Relation<MassOfPackInputs, Quantity<Mass>> = /* @__PURE__ */ relation({
  name: "mass of the pack",
  inputs: {
    cellsMass: { symbol: "m_cells", unit: "kg", meaning: "mass of the cells", atLeast: 0 },
    cellMassFraction,
  },
  result: { symbol: "m_pack", unit: "kg" },
  expression: "m_cells/f_m",
  source: { document: "definition of the cell mass fraction", status: "definition" },
  evaluate: ({ cellsMass, cellMassFraction }) => cellsMass / cellMassFraction,
});

/** Inputs of {@link massBesideCells}. */
export interface MassBesideCellsInputs {
  /** Mass of the pack. Not negative. */
  readonly packMass: Quantity<Mass>;
  /** Mass of all cells in it. Not negative. */
  readonly cellsMass: Quantity<Mass>;
}

/**
 * Mass of everything in a pack that is not a cell: housing, cooling, cables, electronics.
 *
 * Returns kilograms; negative when the two masses cannot belong together. Source: masses add.
 *
 * @throws InputError `NEGATIVE`, `WRONG_DIMENSION`, `UNKNOWN_OPTION`
 * @example
 * massBesideCells({ packMass: q("526.7 kg"), cellsMass: q("389.8 kg") }); // 136.9 kg
 */
export const massBesideCells: Relation<MassBesideCellsInputs, Quantity<Mass>> = /* @__PURE__ */ relation({
  name: "mass of the pack beside its cells",
  inputs: {
    packMass: { symbol: "m_pack", unit: "kg", meaning: "mass of the pack", atLeast: 0 },
    cellsMass: { symbol: "m_cells", unit: "kg", meaning: "mass of the cells", atLeast: 0 },
  },
  result: { symbol: "m_other", unit: "kg" },
  expression: "m_pack − m_cells",
  source: { document: "masses add", status: "definition" },
  evaluate: ({ packMass, cellsMass }) => packMass - cellsMass,
});
