import {
  type Energy,
  type HeatCapacity,
  type Mass,
  type Power,
  type Quantity,
  type Relation,
  relation,
  type SpecificHeatCapacity,
  type Temperature,
} from "@tarewatt/units";
import type { Fraction } from "../fraction.js";

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
const source = {
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

/** Inputs of {@link cabinWarmUpEnergy}. */
export interface CabinWarmUpEnergyInputs {
  /** Electric energy per kelvin of warming: see {@link cabinPriors}. */
  readonly perKelvin: Quantity<HeatCapacity>;
  /** Temperature of the cabin before. */
  readonly soak: Quantity<Temperature>;
  /** Temperature that is wanted. */
  readonly target: Quantity<Temperature>;
}

/**
 * Electric energy that warms a cold cabin, what is lost meanwhile included. None when it is warm enough.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`; otherwise as every relation
 * @example
 * cabinWarmUpEnergy({ perKelvin: q("60.3 Wh/K"), soak: q("-10 °C"), target: q("20 °C") }).in("kWh"); // 1.809
 */
export const cabinWarmUpEnergy: Relation<CabinWarmUpEnergyInputs, Quantity<Energy>> = /* @__PURE__ */ relation({
  name: "energy to warm the cabin up",
  inputs: {
    perKelvin: { symbol: "c_w", unit: "Wh/K", meaning: "electric energy per kelvin", atLeast: 0, atMost: 1000 },
    soak: { symbol: "T_0", unit: "°C", meaning: "temperature of the cabin before", atLeast: -40, atMost: 60 },
    target: { symbol: "T_in", unit: "°C", meaning: "temperature inside", atLeast: 0, atMost: 40 },
  },
  result: { symbol: "E_w", unit: "Wh" },
  expression: "c_w·max(0, T_in − T_0)",
  source: {
    document:
      "a German motoring association, 2022: seven battery-electric cars in a cold chamber, as reported by the press",
    status: "quoted",
  },
  validity: "measured from −10 to 20 °C, parked",
  evaluate: ({ perKelvin, soak, target }) => perKelvin * Math.max(0, target - soak),
});

/** Inputs of {@link batteryHeatingEnergy}. */
export interface BatteryHeatingEnergyInputs {
  /** Mass that is heated: the cells, or the pack. */
  readonly mass: Quantity<Mass>;
  /** Specific heat: see {@link cellSpecificHeat}. */
  readonly specificHeat: Quantity<SpecificHeatCapacity>;
  /** Temperature before. */
  readonly from: Quantity<Temperature>;
  /** Temperature that is wanted. */
  readonly to: Quantity<Temperature>;
  /** Heat that arrives in the battery per electric energy, 0.2 to 5. */
  readonly efficiency: Fraction;
}

/**
 * Electric energy that heats a battery; none when it is warm enough. What it loses to the air meanwhile is in the efficiency.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`; otherwise as every relation
 * @example
 * batteryHeatingEnergy({
 *   mass: q("400 kg"), specificHeat: q("850 J/(kg·K)"), from: q("-10 °C"), to: q("15 °C"), efficiency: 0.9,
 * }).in("kWh"); // 2.623
 */
export const batteryHeatingEnergy: Relation<BatteryHeatingEnergyInputs, Quantity<Energy>> = /* @__PURE__ */ relation({
  name: "energy to heat the battery",
  inputs: {
    mass: { symbol: "m_b", unit: "kg", meaning: "mass that is heated", atLeast: 0, atMost: 20_000 },
    specificHeat: { symbol: "c_b", unit: "J/(kg·K)", meaning: "specific heat", above: 0, atMost: 5000 },
    from: { symbol: "T_1", unit: "°C", meaning: "temperature before", atLeast: -40, atMost: 60 },
    to: { symbol: "T_2", unit: "°C", meaning: "temperature wanted", atLeast: -40, atMost: 60 },
    efficiency: {
      symbol: "η_b",
      unit: "1",
      meaning: "heat in the battery per electric energy",
      atLeast: 0.2,
      atMost: 5,
    },
  },
  result: { symbol: "E_b", unit: "Wh" },
  expression: "m_b·c_b·max(0, T_2 − T_1)/(3600·η_b)",
  source: { document: "heat capacity times temperature difference", status: "definition" },
  evaluate: ({ mass, specificHeat, from, to, efficiency }) =>
    (mass * specificHeat * Math.max(0, to - from)) / (3600 * efficiency),
});
