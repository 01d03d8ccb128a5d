import {
  type Energy,
  type HeatCapacity,
  type Mass,
  type Quantity,
  type Relation,
  relation,
  type SpecificHeatCapacity,
  type Temperature,
  type ThermalConductance,
  type Time,
} from "@tarewatt/units";
import type { Fraction } from "../fraction.js";
import { source } from "./climate-power.js";

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
 * Electric energy that warms a cold cabin, what is lost meanwhile included. None when it is warm enough. Beside a power that holds the
 * temperature from the start it would count that loss twice: there {@link cabinStartEnergy} holds.
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

/** Inputs of {@link cabinHeatCapacity}. */
export interface CabinHeatCapacityInputs {
  /** Electric energy per kelvin of warming, losses included: see {@link cabinPriors}. */
  readonly perKelvin: Quantity<HeatCapacity>;
  /** Heat flow through body and glass of the same car per kelvin. */
  readonly envelope: Quantity<ThermalConductance>;
  /** How long the warming took. */
  readonly warmUpTime: Quantity<Time>;
  /** Size of the cabin per that of the car. */
  readonly size: number;
}

/**
 * Heat that a cabin takes up per kelvin: the energy of the warm-up tests, less what holding the temperature takes as long.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`; otherwise as every relation
 * @example
 * const size = 1;
 * cabinHeatCapacity({ perKelvin: q("60.3 Wh/K"), envelope: q("54 W/K"), warmUpTime: q("25 min"), size }); // 37.8 Wh/K
 */
export const cabinHeatCapacity: Relation<CabinHeatCapacityInputs, Quantity<HeatCapacity>> = /* @__PURE__ */ relation({
  name: "heat that the cabin takes up per kelvin",
  inputs: {
    perKelvin: { symbol: "c_w", unit: "Wh/K", meaning: "electric energy per kelvin", atLeast: 0, atMost: 1000 },
    envelope: { symbol: "UA_0", unit: "W/K", meaning: "heat flow per kelvin of the car", atLeast: 0, atMost: 1000 },
    warmUpTime: { symbol: "t_w", unit: "h", meaning: "duration of the warming", atLeast: 0, atMost: 24 },
    size: { symbol: "s", unit: "1", meaning: "size of the cabin per that of the car", atLeast: 0, atMost: 20 },
  },
  result: { symbol: "C_c", unit: "Wh/K" },
  expression: "s·max(0, c_w − UA_0·t_w)",
  source: {
    document: "energy of the warm-up less that of holding; with the size of the cabin: common practice, no source",
    status: "common practice",
  },
  validity: "tests with the air recirculated, by heaters of performance 1",
  evaluate: ({ perKelvin, envelope, warmUpTime, size }) => size * Math.max(0, perKelvin - envelope * warmUpTime),
});

/** Inputs of {@link cabinStartEnergy}. */
export interface CabinStartEnergyInputs {
  /** Heat that the cabin takes up per kelvin: see {@link cabinHeatCapacity}. */
  readonly heatCapacity: Quantity<HeatCapacity>;
  /** Temperature of the cabin before. */
  readonly soak: Quantity<Temperature>;
  /** Temperature that is wanted. */
  readonly target: Quantity<Temperature>;
  /** Heat moved per electric energy, 0.5 to 10: 1 for a resistance heater. */
  readonly performance: number;
}

/**
 * Electric energy that warms a cold cabin up or cools a hot one down, beside the power that holds the temperature meanwhile.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`; otherwise as every relation
 * @example
 * cabinStartEnergy({ heatCapacity: q("37.8 Wh/K"), soak: q("-7 °C"), target: q("21 °C"), performance: 1 }).in("kWh"); // 1.058
 */
export const cabinStartEnergy: Relation<CabinStartEnergyInputs, Quantity<Energy>> = /* @__PURE__ */ relation({
  name: "energy to bring the cabin to its temperature",
  inputs: {
    heatCapacity: { symbol: "C_c", unit: "Wh/K", meaning: "heat per kelvin", atLeast: 0, atMost: 20_000 },
    soak: { symbol: "T_0", unit: "°C", meaning: "temperature of the cabin before", atLeast: -40, atMost: 60 },
    target: { symbol: "T_in", unit: "°C", meaning: "temperature inside", atLeast: 0, atMost: 40 },
    performance: { symbol: "COP", unit: "1", meaning: "heat moved per electric energy", atLeast: 0.5, atMost: 10 },
  },
  result: { symbol: "E_s", unit: "Wh" },
  expression: "C_c·max(T_in − T_0, T_0 − T_in)/COP",
  source,
  evaluate: ({ heatCapacity, soak, target, performance }) => (heatCapacity * Math.abs(target - soak)) / performance,
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
