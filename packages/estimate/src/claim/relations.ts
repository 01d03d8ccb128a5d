import { type Relation, relation, type Source } from "@tarewatt/units";

const definition: Source = { document: "definition of a relative change", status: "definition" };

/** Inputs of {@link changeOfWhole}. */
export interface ChangeOfWholeInputs {
  /** Share of the part in the whole, 0 to 1. */
  readonly share: number;
  /** Relative change of the part: -0.1 for a tenth less. */
  readonly change: number;
}

/**
 * What the change of a part does to the whole: a body a tenth lighter makes a vehicle, of which it is a fifth, a fiftieth lighter.
 *
 * @throws InputError `NOT_A_FRACTION`, `NEGATIVE`; otherwise as every relation
 * @example
 * changeOfWhole({ share: 0.2, change: -0.1 }); // -0.02
 */
export const changeOfWhole: Relation<ChangeOfWholeInputs, number> = /* @__PURE__ */ relation({
  name: "change of the whole",
  inputs: {
    share: { symbol: "w", unit: "1", meaning: "share of the part in the whole", atLeast: 0, atMost: 1 },
    change: { symbol: "x", unit: "1", meaning: "relative change of the part", atLeast: -1, atMost: 10 },
  },
  result: { symbol: "y", unit: "1" },
  expression: "w·x",
  source: definition,
  evaluate: ({ share, change }) => share * change,
});

/** Inputs of {@link massChangeAtEqualEnergy}. */
export interface MassChangeAtEqualEnergyInputs {
  /** Relative change of the specific energy: 0.25 for a quarter more. */
  readonly specificEnergyChange: number;
}

/**
 * How much lighter a part gets that stores the same energy at another specific energy: a quarter more energy per mass makes it a fifth
 * lighter, not a quarter.
 *
 * @throws InputError `OUT_OF_RANGE`; otherwise as every relation
 * @example
 * massChangeAtEqualEnergy({ specificEnergyChange: 0.25 }); // -0.2
 */
export const massChangeAtEqualEnergy: Relation<MassChangeAtEqualEnergyInputs, number> = /* @__PURE__ */ relation({
  name: "change of mass at equal energy",
  inputs: {
    specificEnergyChange: {
      ...{ symbol: "x", unit: "1", meaning: "relative change of the specific energy" },
      ...{ atLeast: -0.99, atMost: 10 },
    },
  },
  result: { symbol: "y", unit: "1" },
  expression: "1/(1 + x) − 1",
  source: definition,
  evaluate: ({ specificEnergyChange }) => 1 / (1 + specificEnergyChange) - 1,
});

/** Inputs of {@link changeLeft}. */
export interface ChangeLeftInputs {
  /** Relative change of the whole, as stated. */
  readonly stated: number;
  /** Relative change of the whole that something else brings already. */
  readonly explained: number;
}

/**
 * What is left of a stated change when a part of it is explained by something else, as a change of what the explanation leaves.
 *
 * @throws InputError `OUT_OF_RANGE`; otherwise as every relation
 * @example
 * changeLeft({ stated: -0.15, explained: -0.1 }); // -0.0556
 */
export const changeLeft: Relation<ChangeLeftInputs, number> = /* @__PURE__ */ relation({
  name: "change that is left",
  inputs: {
    stated: { symbol: "x", unit: "1", meaning: "stated change of the whole", atLeast: -1, atMost: 10 },
    explained: { symbol: "x_e", unit: "1", meaning: "change explained already", atLeast: -0.99, atMost: 10 },
  },
  result: { symbol: "x_l", unit: "1" },
  expression: "(1 + x)/(1 + x_e) − 1",
  source: definition,
  evaluate: ({ stated, explained }) => (1 + stated) / (1 + explained) - 1,
});
