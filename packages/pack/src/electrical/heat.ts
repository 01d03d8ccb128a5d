import {
  type ElectricCurrent,
  type ElectricResistance,
  type Power,
  type Quantity,
  type Quotient,
  type Relation,
  relation,
  type Temperature,
  type TemperatureDifference,
  type Voltage,
} from "@tarewatt/units";

/** Inputs of {@link resistiveHeat}. */
export interface ResistiveHeatInputs {
  /** Current; its sign does not matter. */
  readonly current: Quantity<ElectricCurrent>;
  /** Resistance that it passes. Not negative. */
  readonly resistance: Quantity<ElectricResistance>;
}

/**
 * Heat that a current leaves in a resistance.
 *
 * Returns watts, never negative. Source: Joule's law.
 *
 * @throws InputError `NEGATIVE`, `WRONG_DIMENSION`, `UNKNOWN_OPTION`, `MISSING_OPTION`
 * @example
 * resistiveHeat({ current: q("100 A"), resistance: q("1 mΩ") }); // 10 W
 */
export const resistiveHeat: Relation<ResistiveHeatInputs, Quantity<Power>> = /* @__PURE__ */ relation({
  name: "heat in a resistance",
  inputs: {
    current: { symbol: "I", unit: "A", meaning: "current" },
    resistance: { symbol: "R", unit: "Ω", meaning: "resistance", atLeast: 0 },
  },
  result: { symbol: "Q_r", unit: "W" },
  expression: "I²·R",
  source: { document: "Joule's law", status: "definition" },
  evaluate: ({ current, resistance }) => current ** 2 * resistance,
});

/** Inputs of {@link reversibleHeat}. */
export interface ReversibleHeatInputs {
  /** Current through the cell, positive discharging. */
  readonly current: Quantity<ElectricCurrent>;
  /** Temperature of the cell, at least absolute zero. */
  readonly temperature: Quantity<Temperature>;
  /** Change of the open-circuit voltage with temperature (dU/dT), at constant state of charge; either sign. */
  readonly entropicCoefficient: Quantity<Quotient<Voltage, TemperatureDifference>>;
}

/**
 * Heat that a cell sets free (positive) or takes up (negative) without any loss, because its open-circuit voltage depends on
 * its temperature.
 *
 * Returns watts of one cell. Over a discharge and the charge that undoes it, it sums to nothing, so no energy balance here
 * counts it; it matters for temperatures at low current only. Cells of one chemistry differ in it, sign included: use
 * measured values of the cell at hand. Source: thermodynamics of cells, from memory.
 *
 * @throws InputError `WRONG_DIMENSION`, `OUT_OF_RANGE`, `UNKNOWN_OPTION`, `MISSING_OPTION`
 * @example
 * reversibleHeat({ current: q("50 A"), temperature: q("25 °C"), entropicCoefficient: q("-0.2 mV/K") }); // 2.98 W
 */
export const reversibleHeat: Relation<ReversibleHeatInputs, Quantity<Power>> = /* @__PURE__ */ relation({
  name: "reversible heat of a cell",
  inputs: {
    current: { symbol: "I", unit: "A", meaning: "current, positive discharging" },
    temperature: { symbol: "T", unit: "K", meaning: "temperature of the cell", atLeast: 0 },
    entropicCoefficient: { symbol: "U_T", unit: "V/K", meaning: "change of the open-circuit voltage with temperature" },
  },
  result: { symbol: "Q_rev", unit: "W" },
  expression: "−I·T·U_T",
  source: { document: "entropy of the cell reaction, −I·T·dU/dT", status: "memory" },
  evaluate: ({ current, temperature, entropicCoefficient }) => -current * temperature * entropicCoefficient,
});
