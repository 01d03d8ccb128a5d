import {
  type ElectricCharge,
  type Energy,
  type Quantity,
  type Relation,
  relation,
  type Voltage,
} from "@tarewatt/units";

/** Inputs of {@link cellEnergy}. */
export interface CellEnergyInputs {
  /** Capacity: the charge that a full cell delivers. Not negative. */
  readonly capacity: Quantity<ElectricCharge>;
  /** Nominal voltage: the mean voltage over a slow discharge. Not negative. */
  readonly nominalVoltage: Quantity<Voltage>;
}

/**
 * Energy that a full cell delivers: its capacity at its nominal voltage.
 *
 * Returns watt hours, at the terminals of the cell. Valid at the rate and the temperature that the capacity was stated for.
 * Source: definition of the nominal voltage as energy per charge.
 *
 * @throws InputError `NEGATIVE`, `WRONG_DIMENSION`, `UNKNOWN_OPTION`
 * @example
 * cellEnergy({ capacity: q("140 Ah"), nominalVoltage: q("3.65 V") }); // 511 Wh
 */
export const cellEnergy: Relation<CellEnergyInputs, Quantity<Energy>> = /* @__PURE__ */ relation({
  name: "energy of a cell",
  inputs: {
    capacity: { symbol: "Q", unit: "Ah", meaning: "capacity of the cell", atLeast: 0 },
    nominalVoltage: { symbol: "U", unit: "V", meaning: "nominal voltage of the cell", atLeast: 0 },
  },
  result: { symbol: "E", unit: "Wh" },
  expression: "Q·U",
  source: { document: "definition of the nominal voltage as energy per charge", status: "definition" },
  validity: "at the rate and the temperature that the capacity was stated for",
  evaluate: ({ capacity, nominalVoltage }) => capacity * nominalVoltage,
});
