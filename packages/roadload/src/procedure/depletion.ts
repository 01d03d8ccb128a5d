import {
  type Energy,
  type EnergyPerDistance,
  type Length,
  type Quantity,
  type Relation,
  relation,
} from "@tarewatt/units";
import type { Fraction } from "../fraction.js";

/** Inputs of {@link firstCycleWeight}. */
export interface FirstCycleWeightInputs {
  /** Energy of the first cycle, at the battery. */
  readonly energy: Quantity<Energy>;
  /** Energy that the battery gives over the whole test. */
  readonly usableEnergy: Quantity<Energy>;
}

/**
 * Weight of the first cycle of a test that empties the battery: it is driven cold once in a range, so it weighs what it takes
 * of the battery; the later ones share the rest.
 *
 * The same rule in SAE J1634 and in UN GTR No. 15, annex 8, both from memory.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`; otherwise as every relation
 * @example
 * firstCycleWeight({ energy: q("4.2 kWh"), usableEnergy: q("60 kWh") }); // 0.07
 */
export const firstCycleWeight: Relation<FirstCycleWeightInputs, number> = /* @__PURE__ */ relation({
  name: "weight of the first cycle",
  inputs: {
    energy: { symbol: "E_1", unit: "kWh", meaning: "energy of the first cycle", atLeast: 0 },
    usableEnergy: { symbol: "E_u", unit: "kWh", meaning: "energy that the battery gives over the test", above: 0 },
  },
  result: { symbol: "K_1", unit: "1" },
  expression: "E_1/E_u",
  source: { document: "SAE J1634, section 8; UN GTR No. 15, annex 8, 4.4.2.1", status: "memory" },
  evaluate: ({ energy, usableEnergy }) => energy / usableEnergy,
});

/** Inputs of {@link weightedConsumption}. */
export interface WeightedConsumptionInputs {
  /** Weight of the first cycle, see {@link firstCycleWeight}. */
  readonly firstWeight: Fraction;
  /** Consumption of the first cycle. */
  readonly first: Quantity<EnergyPerDistance>;
  /** Mean consumption of the later cycles, which weigh the same. */
  readonly later: Quantity<EnergyPerDistance>;
}

/**
 * Consumption over a test that empties the battery: the first cycle by its weight, the later ones by the rest.
 *
 * @throws InputError `NEGATIVE`, `NOT_A_FRACTION`; otherwise as every relation
 * @example
 * weightedConsumption({ firstWeight: 0.07, first: q("180.52 Wh/km"), later: q("167.63 Wh/km") }).in("Wh/km"); // 168.53
 */
export const weightedConsumption: Relation<
  WeightedConsumptionInputs,
  Quantity<EnergyPerDistance>
> = /* @__PURE__ */ relation({
  name: "weighted consumption",
  inputs: {
    firstWeight: { symbol: "K_1", unit: "1", meaning: "weight of the first cycle", atLeast: 0, atMost: 1 },
    first: { symbol: "e_1", unit: "Wh/km", meaning: "consumption of the first cycle", atLeast: 0 },
    later: { symbol: "e_r", unit: "Wh/km", meaning: "mean consumption of the later cycles", atLeast: 0 },
  },
  result: { symbol: "e", unit: "Wh/km" },
  expression: "K_1·e_1 + (1 − K_1)·e_r",
  source: { document: "SAE J1634, section 8; UN GTR No. 15, annex 8, 4.4.2.1", status: "memory" },
  evaluate: ({ firstWeight, first, later }) => firstWeight * first + (1 - firstWeight) * later,
});

/** Inputs of {@link rechargeAllocationFactor}. */
export interface RechargeAllocationFactorInputs {
  /** Energy from the wall that fills the battery after the test. */
  readonly rechargeEnergy: Quantity<Energy>;
  /** Energy that the battery gave over the test. */
  readonly usableEnergy: Quantity<Energy>;
}

/**
 * Recharge allocation factor (RAF): wall energy per battery energy, which takes every consumption of a test to the wall.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`; otherwise as every relation
 * @example
 * rechargeAllocationFactor({ rechargeEnergy: q("90 kWh"), usableEnergy: q("80 kWh") }); // 1.125
 */
export const rechargeAllocationFactor: Relation<RechargeAllocationFactorInputs, number> = /* @__PURE__ */ relation({
  name: "recharge allocation factor",
  inputs: {
    rechargeEnergy: { symbol: "E_ac", unit: "kWh", meaning: "energy from the wall for the recharge", above: 0 },
    usableEnergy: { symbol: "E_u", unit: "kWh", meaning: "energy that the battery gave over the test", above: 0 },
  },
  result: { symbol: "RAF", unit: "1" },
  expression: "E_ac/E_u",
  source: { document: "SAE J1634, section 8", status: "memory" },
  evaluate: ({ rechargeEnergy, usableEnergy }) => rechargeEnergy / usableEnergy,
});

/** Inputs of {@link repeatedCycleRange}. */
export interface RepeatedCycleRangeInputs {
  /** Energy that the battery gives from full to empty. */
  readonly usableEnergy: Quantity<Energy>;
  /** Energy of the first cycle, at the battery; not more than that. */
  readonly first: Quantity<Energy>;
  /** Energy of each later cycle, at the battery. */
  readonly later: Quantity<Energy>;
  /** Length of the cycle. */
  readonly distance: Quantity<Length>;
}

/**
 * Distance driven on a repeated cycle until the battery is empty: the first cycle is cold, the others are alike. A last cycle
 * that is not finished counts by its energy.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`; otherwise as every relation
 * @example
 * repeatedCycleRange({ usableEnergy: q("60 kWh"), first: q("2 kWh"), later: q("1.45 kWh"), distance: q("11 km") }); // 451 km
 */
export const repeatedCycleRange: Relation<RepeatedCycleRangeInputs, Quantity<Length>> = /* @__PURE__ */ relation({
  name: "range on a repeated cycle",
  inputs: {
    usableEnergy: { symbol: "E_u", unit: "kWh", meaning: "usable energy of the battery", above: 0 },
    first: { symbol: "E_1", unit: "kWh", meaning: "energy of the first cycle", atLeast: 0 },
    later: { symbol: "E_r", unit: "kWh", meaning: "energy of each later cycle", above: 0 },
    distance: { symbol: "d", unit: "km", meaning: "length of the cycle", above: 0 },
  },
  result: { symbol: "R", unit: "km" },
  expression: "d·(1 + (E_u − E_1)/E_r)",
  source: { document: "definition of the distance driven until the battery is empty", status: "definition" },
  evaluate: ({ usableEnergy, first, later, distance }) => distance * (1 + (usableEnergy - first) / later),
});

/** Inputs of {@link consumptionOverRange}. */
export interface ConsumptionOverRangeInputs {
  /** Energy that the battery gives from full to empty. */
  readonly usableEnergy: Quantity<Energy>;
  /** Distance driven with it. */
  readonly range: Quantity<Length>;
}

/**
 * Consumption over a whole range: usable energy per distance driven.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`; otherwise as every relation
 * @example
 * consumptionOverRange({ usableEnergy: q("60 kWh"), range: q("400 km") }).in("Wh/km"); // 150
 */
export const consumptionOverRange: Relation<
  ConsumptionOverRangeInputs,
  Quantity<EnergyPerDistance>
> = /* @__PURE__ */ relation({
  name: "consumption over the range",
  inputs: {
    usableEnergy: { symbol: "E_u", unit: "kWh", meaning: "usable energy of the battery", atLeast: 0 },
    range: { symbol: "R", unit: "km", meaning: "distance driven with it", above: 0 },
  },
  result: { symbol: "e", unit: "Wh/km" },
  expression: "1000·E_u/R",
  source: { document: "definition of a mean consumption", status: "definition" },
  evaluate: ({ usableEnergy, range }) => (1000 * usableEnergy) / range,
});

/** Inputs of {@link testConsumptionAtWall}. */
export interface TestConsumptionAtWallInputs {
  /** Consumption at the battery. */
  readonly atBattery: Quantity<EnergyPerDistance>;
  /** Wall energy per battery energy: see {@link rechargeAllocationFactor}. */
  readonly factor: number;
}

/**
 * Consumption of a test at the wall, from that at the battery.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`; otherwise as every relation
 * @example
 * testConsumptionAtWall({ atBattery: q("150 Wh/km"), factor: 1.12 }).in("Wh/km"); // 168
 */
export const testConsumptionAtWall: Relation<
  TestConsumptionAtWallInputs,
  Quantity<EnergyPerDistance>
> = /* @__PURE__ */ relation({
  name: "consumption at the wall",
  inputs: {
    atBattery: { symbol: "e_bat", unit: "Wh/km", meaning: "consumption at the battery", atLeast: 0 },
    factor: { symbol: "RAF", unit: "1", meaning: "wall energy per battery energy", atLeast: 1 },
  },
  result: { symbol: "e_ac", unit: "Wh/km" },
  expression: "RAF·e_bat",
  source: { document: "SAE J1634, section 8", status: "memory" },
  evaluate: ({ atBattery, factor }) => factor * atBattery,
});
