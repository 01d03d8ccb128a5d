import {
  type ElectricCurrent,
  type ElectricResistance,
  type Power,
  type Quantity,
  type Relation,
  relation,
  type Voltage,
} from "@tarewatt/units";

/** Inputs of {@link currentAtPower}. */
export interface CurrentAtPowerInputs {
  /** Voltage without current. Greater than zero. */
  readonly openCircuitVoltage: Quantity<Voltage>;
  /** Resistance behind it. Not negative. */
  readonly resistance: Quantity<ElectricResistance>;
  /** Power at the terminals: positive when the source discharges, negative when it is charged. */
  readonly power: Quantity<Power>;
}

/**
 * Current of a source with resistance that gives, or takes, a power at its terminals.
 *
 * Returns amperes, positive discharging. Of the two currents that give one power it is the smaller, at which a vehicle works.
 * It is written so that it also holds without resistance, where the usual form divides by zero:
 * 2P/(U + √(U² − 4RP)) = (U − √(U² − 4RP))/(2R). Valid up to the greatest power of the source, U²/(4R).
 * Source: definition, P = I·(U − I·R).
 *
 * @throws InputError `NOT_VALID_HERE` above the greatest power, `NEGATIVE`, `OUT_OF_RANGE`, `WRONG_DIMENSION`
 * @example
 * currentAtPower({ openCircuitVoltage: q("350 V"), resistance: q("80 mΩ"), power: q("100 kW") }); // 307.3 A
 */
export const currentAtPower: Relation<CurrentAtPowerInputs, Quantity<ElectricCurrent>> = /* @__PURE__ */ relation({
  name: "current at a power",
  inputs: {
    openCircuitVoltage: { symbol: "U", unit: "V", meaning: "open-circuit voltage", above: 0 },
    resistance: { symbol: "R", unit: "Ω", meaning: "resistance", atLeast: 0 },
    power: { symbol: "P", unit: "W", meaning: "power at the terminals, positive discharging" },
  },
  result: { symbol: "I", unit: "A" },
  expression: "2·P/(U + √(U² − 4·R·P))",
  source: { document: "P = I·(U − I·R), solved for I", status: "definition" },
  validity: "up to the greatest power of the source, U²/(4R)",
  evaluate: ({ openCircuitVoltage, resistance, power }) =>
    (2 * power) / (openCircuitVoltage + Math.sqrt(openCircuitVoltage ** 2 - 4 * resistance * power)),
});
