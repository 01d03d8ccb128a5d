import {
  type EnergyPerDistance,
  type Length,
  type Quantity,
  type Relation,
  relation,
  type Source,
} from "@tarewatt/units";
import type { Fraction } from "../fraction.js";

const source: Source = /* @__PURE__ */ Object.freeze({
  document: "40 CFR 600.116-12 (a)(6), 600.210-12 (d)(3)",
  section: "as documentation of numerical software has it",
  status: "quoted",
});

/** Inputs of {@link labelRange}. */
export interface LabelRangeInputs {
  /** Unadjusted range. */
  readonly range: Quantity<Length>;
  /** Label figure per unadjusted one. */
  readonly factor: Fraction;
}

/**
 * Range of a US label: the unadjusted one times the adjustment.
 *
 * @throws InputError `NEGATIVE`, `NOT_A_FRACTION`; otherwise as every relation
 * @example
 * labelRange({ range: q("334 mi"), factor: 0.7 }).in("mi"); // 233.8
 */
export const labelRange: Relation<LabelRangeInputs, Quantity<Length>> = /* @__PURE__ */ relation({
  name: "range of the label",
  inputs: {
    range: { symbol: "R", unit: "mi", meaning: "unadjusted range", atLeast: 0 },
    factor: { symbol: "f", unit: "1", meaning: "label figure per unadjusted one", above: 0, atMost: 1 },
  },
  result: { symbol: "R_label", unit: "mi" },
  expression: "f·R",
  source,
  evaluate: ({ range, factor }) => factor * range,
});

/** Inputs of {@link labelConsumption}. */
export interface LabelConsumptionInputs {
  /** Unadjusted consumption, at any boundary. */
  readonly consumption: Quantity<EnergyPerDistance>;
  /** Label figure per unadjusted one. */
  readonly factor: Fraction;
}

/**
 * Consumption of a US label: the unadjusted one per the adjustment, which is that of the fuel economy.
 *
 * @throws InputError `NEGATIVE`, `NOT_A_FRACTION`; otherwise as every relation
 * @example
 * labelConsumption({ consumption: q("245 Wh/mi"), factor: 0.7 }).in("Wh/mi"); // 350
 */
export const labelConsumption: Relation<LabelConsumptionInputs, Quantity<EnergyPerDistance>> = /* @__PURE__ */ relation(
  {
    name: "consumption of the label",
    inputs: {
      consumption: { symbol: "e", unit: "Wh/mi", meaning: "unadjusted consumption", atLeast: 0 },
      factor: { symbol: "f", unit: "1", meaning: "label figure per unadjusted one", above: 0, atMost: 1 },
    },
    result: { symbol: "e_label", unit: "Wh/mi" },
    expression: "e/f",
    source,
    evaluate: ({ consumption, factor }) => consumption / factor,
  },
);
