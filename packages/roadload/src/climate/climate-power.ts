import { type Power, type Quantity, type Relation, relation } from "@tarewatt/units";

/** Inputs of {@link heatingPower} and {@link coolingPower}. */
export interface ClimatePowerInputs {
  /** Heat that leaves through body and glass: see {@link cabinEnvelopeHeat}. */
  readonly envelopeHeat: Quantity<Power>;
  /** Heat that leaves with the air: see {@link cabinFreshAirHeat}. */
  readonly airHeat: Quantity<Power>;
  /** Heat of sun and people: see {@link cabinGains}. */
  readonly gains: Quantity<Power>;
  /** Heat moved per electric energy, 0.5 to 10: 1 for a resistance heater. */
  readonly performance: number;
  /** Electric power of the fans. */
  readonly fans: Quantity<Power>;
}

const inputs = {
  envelopeHeat: { symbol: "Q_e", unit: "W", meaning: "heat through body and glass" },
  airHeat: { symbol: "Q_a", unit: "W", meaning: "heat that leaves with the air" },
  gains: { symbol: "Q_g", unit: "W", meaning: "heat of sun and people", atLeast: 0 },
  performance: { symbol: "COP", unit: "1", meaning: "heat moved per electric energy", atLeast: 0.5, atMost: 10 },
  fans: { symbol: "P_f", unit: "W", meaning: "power of the fans", atLeast: 0 },
} as const;

/** @internal */
export const source = {
  document: "definition of the coefficient of performance; heat balance of the cabin",
  status: "definition",
} as const;

/**
 * Electric power that keeps a cabin warm, at the battery's terminals.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`; otherwise as every relation
 * @example
 * heatingPower({ envelopeHeat: q("2 kW"), airHeat: q("2.5 kW"), gains: q("100 W"), performance: 2, fans: q("100 W") }).in("kW"); // 2.3
 */
export const heatingPower: Relation<ClimatePowerInputs, Quantity<Power>> = /* @__PURE__ */ relation({
  name: "electric power of heating",
  inputs,
  result: { symbol: "P_h", unit: "W" },
  expression: "max(0, Q_e + Q_a − Q_g)/COP + P_f",
  source,
  evaluate: ({ envelopeHeat, airHeat, gains, performance, fans }) =>
    Math.max(0, envelopeHeat + airHeat - gains) / performance + fans,
});

/**
 * Electric power that keeps a cabin cool, at the battery's terminals. What it takes to dry the air is not counted.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`; otherwise as every relation
 * @example
 * coolingPower({ envelopeHeat: q("-700 W"), airHeat: q("-900 W"), gains: q("800 W"), performance: 2, fans: q("100 W") }).in("kW"); // 1.3
 */
export const coolingPower: Relation<ClimatePowerInputs, Quantity<Power>> = /* @__PURE__ */ relation({
  name: "electric power of cooling",
  inputs,
  result: { symbol: "P_c", unit: "W" },
  expression: "max(0, Q_g − Q_e − Q_a)/COP + P_f",
  source,
  validity: "dry air: in moist air condensing takes more",
  evaluate: ({ envelopeHeat, airHeat, gains, performance, fans }) =>
    Math.max(0, gains - envelopeHeat - airHeat) / performance + fans,
});
