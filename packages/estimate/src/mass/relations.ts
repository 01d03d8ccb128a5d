import { type Mass, type Quantity, type Relation, relation, type Source } from "@tarewatt/units";

/** Inputs of {@link comparatorBaseMass}. */
export interface ComparatorBaseMassInputs {
  /** Curb mass of the comparator. */
  readonly curbMass: Quantity<Mass>;
  /** Mass of its whole pack. */
  readonly packMass: Quantity<Mass>;
}

/**
 * Base mass of a comparator: its curb mass without the pack.
 *
 * @example
 * comparatorBaseMass({ curbMass: q("2480 kg"), packMass: q("560 kg") }); // 1920 kg
 */
export const comparatorBaseMass: Relation<ComparatorBaseMassInputs, Quantity<Mass>> = /* @__PURE__ */ relation({
  name: "base mass of a comparator",
  inputs: {
    curbMass: { symbol: "m_curb", unit: "kg", meaning: "curb mass of the comparator", above: 0 },
    packMass: { symbol: "m_pack", unit: "kg", meaning: "mass of its pack", atLeast: 0 },
  },
  result: { symbol: "m_base", unit: "kg" },
  expression: "m_curb − m_pack",
  source: { document: "definition of base mass: curb mass less pack mass", status: "definition" },
  evaluate: ({ curbMass, packMass }) => curbMass - packMass,
});

/** Inputs of {@link adjustedBaseMass}. */
export interface AdjustedBaseMassInputs {
  /** Base mass of the comparator. */
  readonly baseMass: Quantity<Mass>;
  /** What the vehicle to be estimated weighs more; negative when it weighs less. */
  readonly adjustment: Quantity<Mass>;
}

/**
 * Base mass of the vehicle to be estimated, as one comparator says.
 *
 * @example
 * adjustedBaseMass({ baseMass: q("1920 kg"), adjustment: q("70 kg") }); // 1990 kg
 */
export const adjustedBaseMass: Relation<AdjustedBaseMassInputs, Quantity<Mass>> = /* @__PURE__ */ relation({
  name: "base mass, as this comparator says",
  inputs: {
    baseMass: { symbol: "m_base", unit: "kg", meaning: "base mass of the comparator", atLeast: 0 },
    adjustment: { symbol: "Δm", unit: "kg", meaning: "stated differences" },
  },
  result: { symbol: "m_base′", unit: "kg" },
  expression: "m_base + Δm",
  source: { document: "the stated adjustments", status: "definition" },
  evaluate: ({ baseMass, adjustment }) => baseMass + adjustment,
});

/** Inputs of {@link curbMass}. */
export interface CurbMassInputs {
  /** Curb mass without the pack. */
  readonly baseMass: Quantity<Mass>;
  /** Mass of the whole pack. */
  readonly packMass: Quantity<Mass>;
  /** Mass of the pack that the base was built to carry. */
  readonly referencePackMass: Quantity<Mass>;
  /** Structure, brakes and suspension added for each kilogram of pack beyond that, kg/kg, 0 to 1. */
  readonly secondaryMass: number;
}

/**
 * Curb mass from base mass and pack mass, with the secondary mass that a heavier pack brings along.
 *
 * @example
 * curbMass({ baseMass: q("1990 kg"), packMass: q("600 kg"), referencePackMass: q("550 kg"), secondaryMass: 0.3 }); // 2605 kg
 */
export const curbMass: Relation<CurbMassInputs, Quantity<Mass>> = /* @__PURE__ */ relation({
  name: "curb mass",
  inputs: {
    baseMass: { symbol: "m_base", unit: "kg", meaning: "base mass: curb mass without the pack", above: 0 },
    packMass: { symbol: "m_pack", unit: "kg", meaning: "mass of the pack", atLeast: 0 },
    referencePackMass: { symbol: "m_ref", unit: "kg", meaning: "mean pack mass of the comparators", atLeast: 0 },
    secondaryMass: {
      symbol: "γ",
      unit: "1",
      meaning: "secondary mass for each kilogram of pack",
      atLeast: 0,
      atMost: 1,
    },
  },
  result: { symbol: "m_curb", unit: "kg" },
  expression: "m_base + m_pack + γ·(m_pack − m_ref)",
  source: { document: "sum of masses; secondary mass as a linear influence coefficient", status: "definition" },
  evaluate: ({ baseMass, packMass, referencePackMass, secondaryMass }) =>
    baseMass + packMass + secondaryMass * (packMass - referencePackMass),
});

/** Inputs of {@link loadedMass}. */
export interface LoadedMassInputs {
  /** Curb mass, without driver. */
  readonly curbMass: Quantity<Mass>;
  /** Driver, passengers and luggage. */
  readonly payload: Quantity<Mass>;
}

/**
 * Mass that is moved: curb mass and payload.
 *
 * @example
 * loadedMass({ curbMass: q("2605 kg"), payload: q("150 kg") }); // 2755 kg
 */
export const loadedMass: Relation<LoadedMassInputs, Quantity<Mass>> = /* @__PURE__ */ relation({
  name: "mass on the road",
  inputs: {
    curbMass: { symbol: "m_curb", unit: "kg", meaning: "curb mass", above: 0 },
    payload: { symbol: "m_load", unit: "kg", meaning: "driver, passengers and luggage", atLeast: 0 },
  },
  result: { symbol: "m", unit: "kg" },
  expression: "m_curb + m_load",
  source: { document: "sum of masses", status: "definition" },
  evaluate: ({ curbMass, payload }) => curbMass + payload,
});

/** A published influence of primary on secondary mass, kg/kg. */
export interface SecondaryMassOfRedesign {
  /** Mean over the vehicles. */
  readonly mean: number;
  /** 5th percentile over the vehicles. */
  readonly percentile5: number;
  /** Where it is from. */
  readonly source: Source;
}

/**
 * Secondary mass saved for each kilogram of primary mass saved, when every subsystem can be redesigned for it: mean 0.95, 5th percentile
 * 0.77, over 77 vehicles of 13 makers. A pack that only grows within a given body brings far less along.
 */
export const secondaryMassOfRedesign: SecondaryMassOfRedesign = {
  mean: 0.95,
  percentile5: 0.77,
  source: {
    document:
      "Evaluating the potential for secondary mass savings, Environmental Science & Technology 46 (2012), abstract",
    status: "seen",
  },
};
