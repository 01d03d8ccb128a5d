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

/** Inputs of {@link consumptionAtBattery} and {@link consumptionAtWall}. */
export interface ConsumptionInputs {
  /** Energy at the boundary that is meant. */
  readonly energy: Quantity<Energy>;
  /** Distance travelled with it. */
  readonly distance: Quantity<Length>;
}

const distance = { symbol: "s", unit: "m", meaning: "distance", above: 0 } as const;
const speed = { symbol: "v", unit: "m/s", meaning: "speed", above: 0 } as const;
const definition = { document: "definition of consumption; 3.6 J/m are 1 Wh/km", status: "definition" } as const;

/**
 * Consumption at the battery: energy at the battery per distance.
 *
 * @throws InputError `OUT_OF_RANGE` when there is no distance; otherwise as every relation
 * @example
 * consumptionAtBattery({ energy: q("3.5 kWh"), distance: q("23.27 km") }).in("Wh/km"); // 150.4
 */
export const consumptionAtBattery: Relation<ConsumptionInputs, Quantity<EnergyPerDistance>> = /* @__PURE__ */ relation({
  name: "consumption at the battery",
  inputs: { energy: { symbol: "E_bat", unit: "J", meaning: "energy at the battery" }, distance },
  result: { symbol: "e_bat", unit: "Wh/km" },
  expression: "E_bat/(3.6·s)",
  source: definition,
  evaluate: (n) => n.energy / (3.6 * n.distance),
});

/**
 * Consumption at the wall: energy at the wall per distance.
 *
 * @throws InputError `OUT_OF_RANGE` when there is no distance; otherwise as every relation
 * @example
 * consumptionAtWall({ energy: q("4 kWh"), distance: q("23.27 km") }).in("kWh/100 mi"); // 27.66
 */
export const consumptionAtWall: Relation<ConsumptionInputs, Quantity<EnergyPerDistance>> = /* @__PURE__ */ relation({
  name: "consumption at the wall",
  inputs: { energy: { symbol: "E_wall", unit: "J", meaning: "energy at the wall" }, distance },
  result: { symbol: "e_wall", unit: "Wh/km" },
  expression: "E_wall/(3.6·s)",
  source: definition,
  evaluate: (n) => n.energy / (3.6 * n.distance),
});

/** Inputs of {@link steadyConsumptionAtBattery} and {@link steadyConsumptionAtWall}. */
export interface SteadyConsumptionInputs {
  /** Power at the boundary that is meant. */
  readonly power: Quantity<Power>;
  /** Speed. */
  readonly speed: Quantity<Speed>;
}

/**
 * Consumption at the battery at a steady speed: power of the battery per speed.
 *
 * @throws InputError `OUT_OF_RANGE` at standstill; otherwise as every relation
 * @example
 * steadyConsumptionAtBattery({ power: q("20 kW"), speed: q("110 km/h") }).in("Wh/km"); // 181.8
 */
export const steadyConsumptionAtBattery: Relation<
  SteadyConsumptionInputs,
  Quantity<EnergyPerDistance>
> = /* @__PURE__ */ relation({
  name: "consumption at the battery at a steady speed",
  inputs: { power: { symbol: "P_bat", unit: "W", meaning: "power of the battery" }, speed },
  result: { symbol: "e_bat", unit: "Wh/km" },
  expression: "P_bat/(3.6·v)",
  source: definition,
  evaluate: (n) => n.power / (3.6 * n.speed),
});

/**
 * Consumption at the wall at a steady speed: power at the wall per speed.
 *
 * @throws InputError `OUT_OF_RANGE` at standstill; otherwise as every relation
 * @example
 * steadyConsumptionAtWall({ power: q("22.5 kW"), speed: q("110 km/h") }).in("Wh/km"); // 204.5
 */
export const steadyConsumptionAtWall: Relation<
  SteadyConsumptionInputs,
  Quantity<EnergyPerDistance>
> = /* @__PURE__ */ relation({
  name: "consumption at the wall at a steady speed",
  inputs: { power: { symbol: "P_wall", unit: "W", meaning: "power at the wall" }, speed },
  result: { symbol: "e_wall", unit: "Wh/km" },
  expression: "P_wall/(3.6·v)",
  source: definition,
  evaluate: (n) => n.power / (3.6 * n.speed),
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
  inputs: { battery: { symbol: "E_bat", unit: "J", meaning: "energy at the battery" }, chargingEfficiency },
  result: { symbol: "E_wall", unit: "J" },
  expression: "E_bat/η_c",
  source,
  evaluate: (n) => n.battery / n.chargingEfficiency,
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
  evaluate: (n) => n.battery / n.chargingEfficiency,
});
