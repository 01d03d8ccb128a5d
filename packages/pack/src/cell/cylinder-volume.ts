import { type Length, type Quantity, type Relation, relation, type Volume } from "@tarewatt/units";

/** Inputs of {@link cylinderVolume}. */
export interface CylinderVolumeInputs {
  /** Outer diameter of the cell. Not negative. */
  readonly diameter: Quantity<Length>;
  /** Overall height of the cell, terminals included. Not negative. */
  readonly height: Quantity<Length>;
}

/**
 * Volume of a cylindrical cell, taken as a plain cylinder over its outer sizes.
 *
 * Returns millilitres. A real cell is a few per cent larger than the sizes in its trade name. Source: geometry.
 *
 * @throws InputError `NEGATIVE`, `WRONG_DIMENSION`, `UNKNOWN_OPTION`
 * @example
 * cylinderVolume({ diameter: q("21 mm"), height: q("70 mm") }); // 24.2452 mL
 */
export const cylinderVolume: Relation<CylinderVolumeInputs, Quantity<Volume>> = /* @__PURE__ */ relation({
  name: "volume of a cylindrical cell",
  inputs: {
    diameter: { symbol: "d", unit: "cm", meaning: "outer diameter of the cell", atLeast: 0 },
    height: { symbol: "h", unit: "cm", meaning: "overall height of the cell", atLeast: 0 },
  },
  // A cubic centimetre is a millilitre, so no factor stands in the expression.
  result: { symbol: "V", unit: "mL" },
  expression: "π/4·d²·h",
  source: { document: "geometry of the cylinder", status: "definition" },
  evaluate: ({ diameter, height }) => (Math.PI / 4) * diameter ** 2 * height,
});
