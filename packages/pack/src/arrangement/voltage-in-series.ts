import { type Quantity, type Relation, relation, type Voltage } from "@tarewatt/units";

/** Inputs of {@link voltageInSeries}. */
export interface VoltageInSeriesInputs {
  /** Cells in series. At least one. */
  readonly series: number;
  /** Voltage of one cell: nominal, or at full charge. Not negative. */
  readonly cellVoltage: Quantity<Voltage>;
}

/**
 * Voltage of cells in series: nominal from nominal, highest from highest.
 *
 * Returns volts, without the drop that a current causes. Source: voltages in series add.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`, `WRONG_DIMENSION`, `UNKNOWN_OPTION`
 * @example
 * voltageInSeries({ series: 96, cellVoltage: q("4.2 V") }); // 403.2 V
 */
export const voltageInSeries: Relation<VoltageInSeriesInputs, Quantity<Voltage>> = /* @__PURE__ */ relation({
  name: "voltage of cells in series",
  inputs: {
    series: { symbol: "N_s", unit: "1", meaning: "cells in series", atLeast: 1 },
    cellVoltage: { symbol: "U_c", unit: "V", meaning: "voltage of a cell", atLeast: 0 },
  },
  result: { symbol: "U", unit: "V" },
  expression: "N_s·U_c",
  source: { document: "voltages in series add", status: "definition" },
  validity: "without current",
  evaluate: ({ series, cellVoltage }) => series * cellVoltage,
});
