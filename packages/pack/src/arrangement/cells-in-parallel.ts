import { type Energy, type Quantity, type Relation, type RelationInput, relation, type Source } from "@tarewatt/units";

/** Inputs of {@link cellsInParallel} and {@link cellsInParallelAtLeast}. */
export interface CellsInParallelInputs {
  /** Total energy wanted of the pack. Not negative. */
  readonly packEnergy: Quantity<Energy>;
  /** Cells in series. At least one. */
  readonly series: number;
  /** Energy of one cell. Greater than zero. */
  readonly cellEnergy: Quantity<Energy>;
}

const inputs: Readonly<Record<keyof CellsInParallelInputs, RelationInput>> = {
  packEnergy: { symbol: "E", unit: "Wh", meaning: "total energy wanted of the pack", atLeast: 0 },
  series: { symbol: "N_s", unit: "1", meaning: "cells in series", atLeast: 1 },
  cellEnergy: { symbol: "E_c", unit: "Wh", meaning: "energy of a cell", above: 0 },
};
const source: Source = { document: "energies of cells add", status: "definition" };

/**
 * Number of cells in parallel whose energy comes nearest to the one wanted: a whole number, at least one.
 *
 * An energy half-way between two numbers takes the larger. Source: energies of cells add.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`, `WRONG_DIMENSION`, `UNKNOWN_OPTION`, `NOT_VALID_HERE`
 * @example
 * cellsInParallel({ packEnergy: q("75 kWh"), series: 96, cellEnergy: q("85.5625 Wh") }); // 9
 */
export const cellsInParallel: Relation<CellsInParallelInputs, number> = /* @__PURE__ */ relation({
  name: "cells in parallel: the nearest whole number, at least one",
  inputs,
  result: { symbol: "N_p", unit: "1" },
  expression: "max(1, round(E/(N_s·E_c)))",
  source,
  evaluate: ({ packEnergy, series, cellEnergy }) => Math.max(1, Math.round(packEnergy / (series * cellEnergy))),
});

/** An exact hit can come out a few units of the last binary digit too large, and must not cost a whole string. */
const EXACT_HIT = 0.999999999999;

/**
 * Smallest number of cells in parallel whose energy is at least the one wanted: a whole number, at least one.
 *
 * Source: energies of cells add.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`, `WRONG_DIMENSION`, `UNKNOWN_OPTION`, `NOT_VALID_HERE`
 * @example
 * cellsInParallelAtLeast({ packEnergy: q("75 kWh"), series: 96, cellEnergy: q("85.5625 Wh") }); // 10
 */
export const cellsInParallelAtLeast: Relation<CellsInParallelInputs, number> = /* @__PURE__ */ relation({
  name: "cells in parallel: the smallest whole number that reaches the energy",
  inputs,
  result: { symbol: "N_p", unit: "1" },
  expression: "max(1, ceil(E/(N_s·E_c)))",
  source,
  evaluate: ({ packEnergy, series, cellEnergy }) =>
    Math.max(1, Math.ceil((packEnergy / (series * cellEnergy)) * EXACT_HIT)),
});
