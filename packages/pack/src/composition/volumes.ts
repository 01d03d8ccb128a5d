import { type Quantity, type Ratio, type Relation, relation, type Volume } from "@tarewatt/units";

/** Inputs of {@link volumeOfCells}. */
export interface VolumeOfCellsInputs {
  /** Number of cells. At least one. */
  readonly cellCount: number;
  /** Volume of one cell. Not negative. */
  readonly cellVolume: Quantity<Volume>;
}

/**
 * Volume of so many equal cells, without any space between them.
 *
 * Returns litres. Source: volumes add.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`, `WRONG_DIMENSION`, `UNKNOWN_OPTION`
 * @example
 * volumeOfCells({ cellCount: 192, cellVolume: q("785 mL") }); // 150.72 L
 */
export const volumeOfCells: Relation<VolumeOfCellsInputs, Quantity<Volume>> = /* @__PURE__ */ relation({
  name: "volume of the cells",
  inputs: {
    cellCount: { symbol: "N", unit: "1", meaning: "number of cells", atLeast: 1 },
    cellVolume: { symbol: "V_c", unit: "L", meaning: "volume of a cell", atLeast: 0 },
  },
  result: { symbol: "V_cells", unit: "L" },
  expression: "N·V_c",
  source: { document: "volumes add", status: "definition" },
  evaluate: ({ cellCount, cellVolume }) => cellCount * cellVolume,
});

/** Inputs of {@link volumeOfPack}. */
export interface VolumeOfPackInputs {
  /** Volume of all cells. Not negative. */
  readonly cellsVolume: Quantity<Volume>;
  /** Volume of the cells over volume of the pack: more than 0, at most 1. */
  readonly cellVolumeFraction: number | Quantity<Ratio>;
}

/**
 * Volume of a pack from the volume of its cells.
 *
 * Returns litres. Source: definition of the cell volume fraction.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`, `NOT_A_FRACTION`, `WRONG_DIMENSION`, `UNKNOWN_OPTION`, `NOT_VALID_HERE`
 * @example
 * volumeOfPack({ cellsVolume: q("150 L"), cellVolumeFraction: 0.6 }); // 250 L
 */
export const volumeOfPack: Relation<VolumeOfPackInputs, Quantity<Volume>> = /* @__PURE__ */ relation({
  name: "volume of the pack",
  inputs: {
    cellsVolume: { symbol: "V_cells", unit: "L", meaning: "volume of the cells", atLeast: 0 },
    cellVolumeFraction: {
      symbol: "f_V",
      unit: "1",
      meaning: "volume of the cells over volume of the pack",
      above: 0,
      atMost: 1,
    },
  },
  result: { symbol: "V", unit: "L" },
  expression: "V_cells/f_V",
  source: { document: "definition of the cell volume fraction", status: "definition" },
  evaluate: ({ cellsVolume, cellVolumeFraction }) => cellsVolume / cellVolumeFraction,
});
