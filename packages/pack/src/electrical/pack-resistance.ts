import { type ElectricResistance, type Quantity, type Relation, relation } from "@tarewatt/units";

/** Inputs of {@link packResistance}. */
export interface PackResistanceInputs {
  /** Resistance of one cell, of the pulse length that the answer is for. Not negative. */
  readonly cellResistance: Quantity<ElectricResistance>;
  /** Cells in series. At least one. */
  readonly series: number;
  /** Cells in parallel. At least one. */
  readonly parallel: number;
  /** Bars, fuses, contactors and cables between the cells and the terminals of the pack, together. Not negative. */
  readonly interconnectResistance: Quantity<ElectricResistance>;
}

/**
 * Resistance of a pack from that of its cells and of what joins them.
 *
 * Returns ohms. Equal cells are assumed: with unequal ones the strongest parallel string carries more than its share.
 * Source: resistances in series add, conductances in parallel add.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`, `WRONG_DIMENSION`, `UNKNOWN_OPTION`
 * @example
 * const cells = { cellResistance: q("1.38 mΩ"), series: 96, parallel: 2 };
 * packResistance({ ...cells, interconnectResistance: q("12 mΩ") }); // 78.24 mΩ
 */
export const packResistance: Relation<PackResistanceInputs, Quantity<ElectricResistance>> = /* @__PURE__ */ relation({
  name: "resistance of the pack",
  inputs: {
    cellResistance: { symbol: "R_c", unit: "Ω", meaning: "resistance of a cell", atLeast: 0 },
    series: { symbol: "N_s", unit: "1", meaning: "cells in series", atLeast: 1 },
    parallel: { symbol: "N_p", unit: "1", meaning: "cells in parallel", atLeast: 1 },
    interconnectResistance: { symbol: "R_i", unit: "Ω", meaning: "resistance between the cells", atLeast: 0 },
  },
  result: { symbol: "R", unit: "Ω" },
  expression: "R_c·N_s/N_p + R_i",
  source: { document: "resistances in series, conductances in parallel add", status: "definition" },
  validity: "equal cells",
  evaluate: ({ cellResistance, series, parallel, interconnectResistance }) =>
    (cellResistance * series) / parallel + interconnectResistance,
});
