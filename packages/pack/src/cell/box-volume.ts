import { type Length, type Quantity, type Relation, relation, type Volume } from "@tarewatt/units";

/** Inputs of {@link boxVolume}. */
export interface BoxVolumeInputs {
  /** Thickness of the cell, the shortest side as a rule. Not negative. */
  readonly thickness: Quantity<Length>;
  /** Width of the cell. Not negative. */
  readonly width: Quantity<Length>;
  /** Height of the cell; of a pouch, without its tabs. Not negative. */
  readonly height: Quantity<Length>;
}

/**
 * Volume of a prismatic or pouch cell, taken as a plain box over its outer sizes.
 *
 * Returns millilitres. Terminals that stand above the body, and the tabs and the sealed rim of a pouch, count only as far as
 * the sizes given include them. Source: geometry.
 *
 * @throws InputError `NEGATIVE`, `WRONG_DIMENSION`, `UNKNOWN_OPTION`
 * @example
 * boxVolume({ thickness: q("26.5 mm"), width: q("148 mm"), height: q("91 mm") }); // 356.902 mL
 */
export const boxVolume: Relation<BoxVolumeInputs, Quantity<Volume>> = /* @__PURE__ */ relation({
  name: "volume of a box-shaped cell",
  inputs: {
    thickness: { symbol: "t", unit: "cm", meaning: "thickness of the cell", atLeast: 0 },
    width: { symbol: "b", unit: "cm", meaning: "width of the cell", atLeast: 0 },
    height: { symbol: "h", unit: "cm", meaning: "height of the cell", atLeast: 0 },
  },
  result: { symbol: "V", unit: "mL" },
  expression: "t·b·h",
  source: { document: "geometry of the box", status: "definition" },
  evaluate: ({ thickness, width, height }) => thickness * width * height,
});
