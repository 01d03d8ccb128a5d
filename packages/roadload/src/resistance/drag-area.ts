import { type Area, type Quantity, type Relation, relation } from "@tarewatt/units";
import type { Fraction } from "../fraction.js";

/** Inputs of {@link dragArea}. */
export interface DragAreaInputs {
  /** Drag coefficient c_d, referred to the frontal area, 0 to 2. */
  readonly dragCoefficient: Fraction;
  /** Frontal area: the projection along the direction of travel. */
  readonly frontalArea: Quantity<Area>;
}

/**
 * Drag area: drag coefficient times frontal area.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`; otherwise as every relation
 * @example
 * dragArea({ dragCoefficient: 0.29, frontalArea: q("3.1 m²") }); // 0.899 m²
 */
export const dragArea: Relation<DragAreaInputs, Quantity<Area>> = /* @__PURE__ */ relation({
  name: "drag area",
  inputs: {
    dragCoefficient: { symbol: "c_d", unit: "1", meaning: "drag coefficient", atLeast: 0, atMost: 2 },
    frontalArea: { symbol: "A_f", unit: "m²", meaning: "frontal area", above: 0 },
  },
  result: { symbol: "C_dA", unit: "m²" },
  expression: "c_d·A_f",
  source: { document: "definition of the drag coefficient", status: "definition" },
  evaluate: ({ dragCoefficient, frontalArea }) => dragCoefficient * frontalArea,
});
