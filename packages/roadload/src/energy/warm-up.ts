import {
  type Energy,
  type EnergyPerDistance,
  type Length,
  type Quantity,
  quantity,
  type Relation,
  relation,
} from "@tarewatt/units";

/** Energy that is taken once, at the start, however far the vehicle then goes. */
export interface WarmUp {
  /** The energy, at the battery. */
  readonly energy: Quantity<Energy>;
  /** Consumption at the battery without it: that of every repetition after the first. */
  readonly consumptionThereafter: Quantity<EnergyPerDistance>;
}

/**
 * What a result says of its warm-up; nothing without one.
 *
 * @param joules - energy to warm up
 * @param perMetre - consumption without it, in J/m
 * @internal
 */
export function warmUpPart(joules: number, perMetre: number): { readonly warmUp?: WarmUp } {
  if (joules === 0) return {};
  const consumptionThereafter = quantity(perMetre / 3.6, "Wh/km");
  return { warmUp: Object.freeze({ energy: quantity(joules / 3.6e6, "kWh"), consumptionThereafter }) };
}

/** Inputs of {@link rangeAfterWarmUp}. */
export interface RangeAfterWarmUpInputs {
  /** Usable energy of the battery, at the boundary of the consumption. */
  readonly usableEnergy: Quantity<Energy>;
  /** Energy that is taken once, at the start. */
  readonly warmUpEnergy: Quantity<Energy>;
  /** Consumption at the battery without it. */
  readonly consumption: Quantity<EnergyPerDistance>;
}

/**
 * Range when some energy is taken once, at the start: what is left of the usable energy, per consumption. Zero when nothing is left.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`; otherwise as every relation
 * @example
 * rangeAfterWarmUp({ usableEnergy: q("50 kWh"), warmUpEnergy: q("2 kWh"), consumption: q("160 Wh/km") }).in("km"); // 300
 */
export const rangeAfterWarmUp: Relation<RangeAfterWarmUpInputs, Quantity<Length>> = /* @__PURE__ */ relation({
  name: "range after a warm-up",
  inputs: {
    usableEnergy: { symbol: "E_u", unit: "kWh", meaning: "usable energy of the battery", atLeast: 0 },
    warmUpEnergy: { symbol: "E_w", unit: "kWh", meaning: "energy to warm up, once", atLeast: 0 },
    consumption: { symbol: "e_bat", unit: "Wh/km", meaning: "consumption at the battery thereafter", above: 0 },
  },
  result: { symbol: "R", unit: "km" },
  expression: "1000·max(0, E_u − E_w)/e_bat",
  source: { document: "definition of range at a constant consumption", status: "definition" },
  evaluate: ({ usableEnergy, warmUpEnergy, consumption }) =>
    (1000 * Math.max(0, usableEnergy - warmUpEnergy)) / consumption,
});
