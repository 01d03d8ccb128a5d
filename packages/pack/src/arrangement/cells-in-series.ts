import { type Quantity, type Relation, relation, type Voltage } from "@tarewatt/units";

/** Inputs of {@link cellsInSeries}. */
export interface CellsInSeriesInputs {
  /** Nominal voltage wanted of the pack. Not negative. */
  readonly packVoltage: Quantity<Voltage>;
  /** Nominal voltage of one cell. Greater than zero. */
  readonly cellVoltage: Quantity<Voltage>;
}

/**
 * Number of cells in series whose nominal voltage comes nearest to the one wanted: a whole number, at least one.
 *
 * A voltage half-way between two numbers takes the larger. Source: voltages in series add.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`, `WRONG_DIMENSION`, `UNKNOWN_OPTION`, `NOT_VALID_HERE`
 * @example
 * cellsInSeries({ packVoltage: q("350 V"), cellVoltage: q("3.65 V") }); // 96
 */
export const cellsInSeries: Relation<CellsInSeriesInputs, number> = /* @__PURE__ */ relation({
  name: "cells in series: the nearest whole number, at least one",
  inputs: {
    packVoltage: { symbol: "U", unit: "V", meaning: "nominal voltage wanted of the pack", atLeast: 0 },
    cellVoltage: { symbol: "U_c", unit: "V", meaning: "nominal voltage of a cell", above: 0 },
  },
  result: { symbol: "N_s", unit: "1" },
  expression: "max(1, round(U/U_c))",
  source: { document: "voltages in series add", status: "definition" },
  evaluate: ({ packVoltage, cellVoltage }) => Math.max(1, Math.round(packVoltage / cellVoltage)),
});
