import { type ElectricCharge, type Quantity, type Relation, relation } from "@tarewatt/units";

/** Inputs of {@link capacityInParallel}. */
export interface CapacityInParallelInputs {
  /** Cells in parallel. At least one. */
  readonly parallel: number;
  /** Capacity of one cell. Not negative. */
  readonly cellCapacity: Quantity<ElectricCharge>;
}

/**
 * Capacity of cells in parallel, which is that of the pack: cells in series share one charge.
 *
 * Returns ampere hours. Valid for equal cells. Source: charges in parallel add.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`, `WRONG_DIMENSION`, `UNKNOWN_OPTION`
 * @example
 * capacityInParallel({ parallel: 2, cellCapacity: q("140 Ah") }); // 280 Ah
 */
export const capacityInParallel: Relation<
  CapacityInParallelInputs,
  Quantity<ElectricCharge>
> = /* @__PURE__ */ relation({
  name: "capacity of cells in parallel",
  inputs: {
    parallel: { symbol: "N_p", unit: "1", meaning: "cells in parallel", atLeast: 1 },
    cellCapacity: { symbol: "Q_c", unit: "Ah", meaning: "capacity of a cell", atLeast: 0 },
  },
  result: { symbol: "Q", unit: "Ah" },
  expression: "N_p·Q_c",
  source: { document: "charges in parallel add", status: "definition" },
  validity: "for equal cells",
  evaluate: ({ parallel, cellCapacity }) => parallel * cellCapacity,
});
