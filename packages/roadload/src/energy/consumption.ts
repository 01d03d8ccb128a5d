import {
  type Energy,
  type EnergyPerDistance,
  type Length,
  type Power,
  type Quantity,
  type Relation,
  relation,
  type Speed,
} from "@tarewatt/units";
import type { Fraction } from "../fraction.js";

/** Inputs of {@link consumptionOf}. */
export interface ConsumptionOfInputs {
  /** Energy at the boundary that is meant: wheel, battery or wall. */
  readonly energy: Quantity<Energy>;
  /** Distance travelled with it. */
  readonly distance: Quantity<Length>;
}

/**
 * Consumption: energy per distance, at the boundary of the energy.
 *
 * @throws InputError `OUT_OF_RANGE` when there is no distance; otherwise as every relation
 * @example
 * consumptionOf({ energy: q("3.5 kWh"), distance: q("23.27 km") }).in("Wh/km"); // 150.4
 */
export const consumptionOf: Relation<ConsumptionOfInputs, Quantity<EnergyPerDistance>> = /* @__PURE__ */ relation({
  name: "consumption",
  inputs: {
    energy: { symbol: "E", unit: "Wh", meaning: "energy" },
    distance: { symbol: "s", unit: "km", meaning: "distance", above: 0 },
  },
  result: { symbol: "e", unit: "Wh/km" },
  expression: "E/s",
  source: { document: "definition of consumption", status: "definition" },
  evaluate: ({ energy, distance }) => energy / distance,
});

/** Inputs of {@link steadyConsumption}. */
export interface SteadyConsumptionInputs {
  /** Power at the boundary that is meant. */
  readonly power: Quantity<Power>;
  /** Speed. */
  readonly speed: Quantity<Speed>;
}

/**
 * Consumption at a steady speed: power per speed, at the boundary of the power.
 *
 * @throws InputError `OUT_OF_RANGE` at standstill; otherwise as every relation
 * @example
 * steadyConsumption({ power: q("20 kW"), speed: q("110 km/h") }).in("Wh/km"); // 181.8
 */
export const steadyConsumption: Relation<
  SteadyConsumptionInputs,
  Quantity<EnergyPerDistance>
> = /* @__PURE__ */ relation({
  name: "consumption at a steady speed",
  inputs: {
    power: { symbol: "P", unit: "W", meaning: "power" },
    speed: { symbol: "v", unit: "km/h", meaning: "speed", above: 0 },
  },
  result: { symbol: "e", unit: "Wh/km" },
  expression: "P/v",
  source: { document: "definition of consumption", status: "definition" },
  evaluate: ({ power, speed }) => power / speed,
});

const chargingEfficiency = {
  symbol: "η_c",
  unit: "1",
  meaning: "battery energy per wall energy",
  above: 0,
  atMost: 1,
} as const;
const source = { document: "definition of the charging efficiency", status: "definition" } as const;

/** Inputs of {@link wallEnergy}. */
export interface WallEnergyInputs {
  /** Energy drawn from the battery. */
  readonly battery: Quantity<Energy>;
  /** Battery energy per wall energy, charger and charging of the battery together. */
  readonly chargingEfficiency: Fraction;
}

/**
 * Energy at the wall that replaces what was drawn from the battery.
 *
 * @throws InputError `OUT_OF_RANGE`, `NOT_A_FRACTION`; otherwise as every relation
 * @example
 * wallEnergy({ battery: q("3.5 kWh"), chargingEfficiency: 0.88 }).in("kWh"); // 3.977
 */
export const wallEnergy: Relation<WallEnergyInputs, Quantity<Energy>> = /* @__PURE__ */ relation({
  name: "energy at the wall",
  inputs: { battery: { symbol: "E_bat", unit: "Wh", meaning: "energy at the battery" }, chargingEfficiency },
  result: { symbol: "E_wall", unit: "Wh" },
  expression: "E_bat/η_c",
  source,
  evaluate: ({ battery, chargingEfficiency }) => battery / chargingEfficiency,
});

/** Inputs of {@link wallPower}. */
export interface WallPowerInputs {
  /** Power drawn from the battery. */
  readonly battery: Quantity<Power>;
  /** Battery energy per wall energy. */
  readonly chargingEfficiency: Fraction;
}

/**
 * Power at the wall that would replace, in the same time, what is drawn from the battery.
 *
 * @throws InputError `OUT_OF_RANGE`, `NOT_A_FRACTION`; otherwise as every relation
 * @example
 * wallPower({ battery: q("20 kW"), chargingEfficiency: 0.88 }).in("kW"); // 22.73
 */
export const wallPower: Relation<WallPowerInputs, Quantity<Power>> = /* @__PURE__ */ relation({
  name: "power at the wall",
  inputs: { battery: { symbol: "P_bat", unit: "W", meaning: "power of the battery" }, chargingEfficiency },
  result: { symbol: "P_wall", unit: "W" },
  expression: "P_bat/η_c",
  source,
  evaluate: ({ battery, chargingEfficiency }) => battery / chargingEfficiency,
});
