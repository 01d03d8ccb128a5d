import { type Length, type Quantity, type Relation, relation } from "@tarewatt/units";

/**
 * Share of a plane that equal circles cover in hexagonal order, π/(2√3): the most that any order covers.
 *
 * Bounds the cell volume fraction of a pack of cylinders. Dimension: ratio. Source: geometry (the densest packing of circles).
 *
 * @example
 * hexagonalPackingFraction.toFixed(4); // "0.9069"
 */
// Written out, so that a bundler can drop it: a call of Math.sqrt counts as a side effect.
export const hexagonalPackingFraction = 0.9068996821171089;

/**
 * Share of a plane that equal circles cover in square order, π/4.
 *
 * Dimension: ratio. Source: geometry.
 *
 * @example
 * squarePackingFraction.toFixed(4); // "0.7854"
 */
export const squarePackingFraction = 0.7853981633974483;

/** Inputs of {@link cylinderPackingFraction}. */
export interface CylinderPackingFractionInputs {
  /** Outer diameter of the cells. Greater than zero. */
  readonly diameter: Quantity<Length>;
  /** Clear gap between neighbouring cells, for cooling and tolerance. Not negative; zero when they touch. */
  readonly gap: Quantity<Length>;
}

/**
 * Share of the plane that upright cylindrical cells cover in hexagonal order with a gap between neighbours.
 *
 * Returns a fraction. Holds inside a large field of cells: edges, cooling plates and the height above and below the cells
 * lower the share of a real pack. Source: geometry.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`, `WRONG_DIMENSION`, `UNKNOWN_OPTION`
 * @example
 * cylinderPackingFraction({ diameter: q("21 mm"), gap: q("1 mm") }); // 0.82633...
 */
export const cylinderPackingFraction: Relation<CylinderPackingFractionInputs, number> = /* @__PURE__ */ relation({
  name: "packing fraction of cylinders in hexagonal order",
  inputs: {
    diameter: { symbol: "d", unit: "mm", meaning: "outer diameter of the cells", above: 0 },
    gap: { symbol: "s", unit: "mm", meaning: "clear gap between neighbouring cells", atLeast: 0 },
  },
  result: { symbol: "φ", unit: "1" },
  expression: "π/(2·sqrt(3))·(d/(d + s))²",
  source: { document: "geometry: densest packing of circles, each with half the gap around it", status: "definition" },
  validity: "inside a large field of cells, edges not counted",
  evaluate: ({ diameter, gap }) => hexagonalPackingFraction * (diameter / (diameter + gap)) ** 2,
});
