import {
  type ElectricResistance,
  type Power,
  type Quantity,
  type Relation,
  relation,
  type Voltage,
} from "@tarewatt/units";

/** Inputs of {@link greatestPower}. */
export interface GreatestPowerInputs {
  /** Voltage without current. Greater than zero. */
  readonly openCircuitVoltage: Quantity<Voltage>;
  /** Resistance behind it. Greater than zero. */
  readonly resistance: Quantity<ElectricResistance>;
}

/**
 * Greatest power that a source with resistance can give at its terminals: at half its voltage, when half is lost inside.
 *
 * Returns watts. No vehicle comes near: voltage limits, fuses and heat end it long before.
 * Source: maximum of P = I·(U − I·R).
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`, `WRONG_DIMENSION`, `UNKNOWN_OPTION`
 * @example
 * greatestPower({ openCircuitVoltage: q("350 V"), resistance: q("80 mΩ") }); // 382.8 kW
 */
export const greatestPower: Relation<GreatestPowerInputs, Quantity<Power>> = /* @__PURE__ */ relation({
  name: "greatest power of a source",
  inputs: {
    openCircuitVoltage: { symbol: "U", unit: "V", meaning: "open-circuit voltage", above: 0 },
    resistance: { symbol: "R", unit: "Ω", meaning: "resistance", above: 0 },
  },
  result: { symbol: "P_max", unit: "W" },
  expression: "U²/(4·R)",
  source: { document: "maximum of P = I·(U − I·R)", status: "definition" },
  evaluate: ({ openCircuitVoltage, resistance }) => openCircuitVoltage ** 2 / (4 * resistance),
});

/** Inputs of {@link powerAtVoltage}. */
export interface PowerAtVoltageInputs extends GreatestPowerInputs {
  /** Voltage at the terminals. Not negative. */
  readonly terminalVoltage: Quantity<Voltage>;
}

/**
 * Power of a source with resistance at a given terminal voltage: the most it may give at its lowest, or take at its
 * highest, voltage.
 *
 * Returns watts, positive when the source discharges (terminal voltage below the open-circuit voltage), negative when it is
 * charged. At a lowest voltage below half the open-circuit voltage {@link greatestPower} is the limit instead.
 * Source: definition, P = U_t·I with I = (U − U_t)/R.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`, `WRONG_DIMENSION`, `UNKNOWN_OPTION`
 * @example
 * const pack = { openCircuitVoltage: q("350 V"), resistance: q("80 mΩ") };
 * powerAtVoltage({ ...pack, terminalVoltage: q("280 V") }); // 245 kW
 * powerAtVoltage({ ...pack, terminalVoltage: q("400 V") }); // -250 kW
 */
export const powerAtVoltage: Relation<PowerAtVoltageInputs, Quantity<Power>> = /* @__PURE__ */ relation({
  name: "power at a terminal voltage",
  inputs: {
    openCircuitVoltage: { symbol: "U", unit: "V", meaning: "open-circuit voltage", above: 0 },
    resistance: { symbol: "R", unit: "Ω", meaning: "resistance", above: 0 },
    terminalVoltage: { symbol: "U_t", unit: "V", meaning: "voltage at the terminals", atLeast: 0 },
  },
  result: { symbol: "P", unit: "W" },
  expression: "U_t·(U − U_t)/R",
  source: { document: "P = U_t·(U − U_t)/R", status: "definition" },
  evaluate: ({ openCircuitVoltage, resistance, terminalVoltage }) =>
    (terminalVoltage * (openCircuitVoltage - terminalVoltage)) / resistance,
});
