import { type Energy, type Quantity, type Relation, relation } from "@tarewatt/units";

/** Inputs of {@link energyOfCells}. */
export interface EnergyOfCellsInputs {
  /** Number of cells. At least one. */
  readonly cellCount: number;
  /** Energy of one cell. Not negative. */
  readonly cellEnergy: Quantity<Energy>;
}

/**
 * Total energy of so many equal cells: the total energy of the pack.
 *
 * Returns watt hours, the whole energy of the cells and not only what a battery management lets a driver use. Source:
 * energies add.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`, `WRONG_DIMENSION`, `UNKNOWN_OPTION`
 * @example
 * energyOfCells({ cellCount: 192, cellEnergy: q("511 Wh") }); // 98112 Wh
 */
export const energyOfCells: Relation<EnergyOfCellsInputs, Quantity<Energy>> = /* @__PURE__ */ relation({
  name: "total energy of the cells",
  inputs: {
    cellCount: { symbol: "N", unit: "1", meaning: "number of cells", atLeast: 1 },
    cellEnergy: { symbol: "E_c", unit: "Wh", meaning: "energy of a cell", atLeast: 0 },
  },
  result: { symbol: "E", unit: "Wh" },
  expression: "N·E_c",
  source: { document: "energies of cells add", status: "definition" },
  evaluate: ({ cellCount, cellEnergy }) => cellCount * cellEnergy,
});
