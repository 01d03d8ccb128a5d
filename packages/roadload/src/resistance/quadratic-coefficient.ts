import {
  type Area,
  type Density,
  type ForcePerSpeedSquared,
  type Quantity,
  type Relation,
  relation,
} from "@tarewatt/units";

/** Inputs of {@link quadraticCoefficient}. */
export interface QuadraticCoefficientInputs {
  /** Density of the air. */
  readonly airDensity: Quantity<Density>;
  /** Drag area. */
  readonly dragArea: Quantity<Area>;
}

/**
 * Quadratic coefficient of a road load in still air: the aerodynamic drag per speed squared.
 *
 * @throws InputError `NEGATIVE`; otherwise as every relation
 * @example
 * quadraticCoefficient({ airDensity: q("1.2 kg/m³"), dragArea: q("0.75 m²") }); // 0.45 N/(m/s)²
 */
export const quadraticCoefficient: Relation<
  QuadraticCoefficientInputs,
  Quantity<ForcePerSpeedSquared>
> = /* @__PURE__ */ relation({
  name: "quadratic coefficient in still air",
  inputs: {
    airDensity: { symbol: "ρ", unit: "kg/m³", meaning: "density of the air", atLeast: 0 },
    dragArea: { symbol: "C_dA", unit: "m²", meaning: "drag area", atLeast: 0 },
  },
  result: { symbol: "C", unit: "N/(m/s)²" },
  expression: "½·ρ·C_dA",
  source: { document: "aerodynamic drag divided by speed squared", status: "definition" },
  evaluate: ({ airDensity, dragArea }) => 0.5 * airDensity * dragArea,
});
