import { type Mass, type Quantity, type Relation, relation } from "@tarewatt/units";
import type { Fraction } from "../fraction.js";

/**
 * Share of the vehicle load that a test carries in the world-wide procedure: 15 % for vehicles that carry persons
 * (category 1), 28 % for those that carry goods (category 2, from memory).
 *
 * @example
 * wltpLoadShare.persons; // 0.15
 */
export const wltpLoadShare = /* @__PURE__ */ Object.freeze({
  /** Category 1. */
  persons: 0.15,
  /** Category 2. */
  goods: 0.28,
} as const);

/** Inputs of {@link wltpTestMass}. */
export interface WltpTestMassInputs {
  /** Mass in running order: with a driver of 75 kg. */
  readonly massInRunningOrder: Quantity<Mass>;
  /** Mass of the optional equipment fitted. */
  readonly optionalEquipment: Quantity<Mass>;
  /** Vehicle load: technically permissible mass less mass in running order, optional equipment and 25 kg. */
  readonly vehicleLoad: Quantity<Mass>;
  /** Share of the vehicle load that is carried, see {@link wltpLoadShare}. */
  readonly loadShare: Fraction;
}

/**
 * Test mass of the world-wide procedure.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`, `NOT_A_FRACTION`; otherwise as every relation
 * @example
 * wltpTestMass({
 *   ...{ massInRunningOrder: q("2100 kg"), optionalEquipment: q("60 kg"), vehicleLoad: q("400 kg") },
 *   loadShare: wltpLoadShare.persons,
 * }); // 2245 kg
 */
export const wltpTestMass: Relation<WltpTestMassInputs, Quantity<Mass>> = /* @__PURE__ */ relation({
  name: "test mass of the world-wide procedure",
  inputs: {
    massInRunningOrder: { symbol: "m_ro", unit: "kg", meaning: "mass in running order", above: 0 },
    optionalEquipment: { symbol: "m_opt", unit: "kg", meaning: "optional equipment", atLeast: 0 },
    vehicleLoad: { symbol: "m_load", unit: "kg", meaning: "vehicle load", atLeast: 0 },
    loadShare: { symbol: "x", unit: "1", meaning: "share of the vehicle load", atLeast: 0, atMost: 1 },
  },
  result: { symbol: "TM", unit: "kg" },
  expression: "m_ro + m_opt + 25 + x·m_load",
  source: { document: "UN GTR No. 15", section: "annex 4, 4.2.1.3.1", status: "quoted" },
  evaluate: (n) => n.massInRunningOrder + n.optionalEquipment + 25 + n.loadShare * n.vehicleLoad,
});
