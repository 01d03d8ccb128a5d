import { type Relation, relation } from "@tarewatt/units";

/** Inputs of {@link cellCount}. */
export interface CellCountInputs {
  /** Cells in series. At least one. */
  readonly series: number;
  /** Cells in parallel. At least one. */
  readonly parallel: number;
}

/**
 * Number of cells of a pack, from its arrangement.
 *
 * Valid when every group in series holds the same number of cells in parallel. Source: definition.
 *
 * @throws InputError `OUT_OF_RANGE`, `NOT_A_NUMBER`, `UNKNOWN_OPTION`
 * @example
 * cellCount({ series: 96, parallel: 2 }); // 192
 */
export const cellCount: Relation<CellCountInputs, number> = /* @__PURE__ */ relation({
  name: "number of cells",
  inputs: {
    series: { symbol: "N_s", unit: "1", meaning: "cells in series", atLeast: 1 },
    parallel: { symbol: "N_p", unit: "1", meaning: "cells in parallel", atLeast: 1 },
  },
  result: { symbol: "N", unit: "1" },
  expression: "N_s·N_p",
  source: { document: "definition of series and parallel", status: "definition" },
  evaluate: ({ series, parallel }) => series * parallel,
});
