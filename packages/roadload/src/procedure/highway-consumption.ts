import { type EnergyPerDistance, type Quantity, type Relation, relation } from "@tarewatt/units";

/** Inputs of {@link highwayConsumption}. */
export interface HighwayConsumptionInputs {
  /** Consumption on the first HWFET. */
  readonly first: Quantity<EnergyPerDistance>;
  /** Consumption on the second HWFET. */
  readonly second: Quantity<EnergyPerDistance>;
}

/**
 * Highway consumption of the US multi-cycle test: mean of both HWFET. From memory.
 *
 * @throws InputError `NEGATIVE`; otherwise as every relation
 * @example
 * highwayConsumption({ first: q("250 Wh/mi"), second: q("254 Wh/mi") }).in("Wh/mi"); // 252
 */
export const highwayConsumption: Relation<
  HighwayConsumptionInputs,
  Quantity<EnergyPerDistance>
> = /* @__PURE__ */ relation({
  name: "mean of both HWFET",
  inputs: {
    first: { symbol: "e_1", unit: "Wh/mi", meaning: "consumption on the first HWFET", atLeast: 0 },
    second: { symbol: "e_2", unit: "Wh/mi", meaning: "consumption on the second HWFET", atLeast: 0 },
  },
  result: { symbol: "e_h", unit: "Wh/mi" },
  expression: "(e_1 + e_2)/2",
  source: { document: "SAE J1634", section: "8", status: "memory" },
  evaluate: ({ first, second }) => (first + second) / 2,
});
