import {
  type Area,
  type Density,
  type Length,
  type Mass,
  type Quantity,
  type Relation,
  relation,
  type Volume,
} from "@tarewatt/units";

/** Inputs of {@link massOfSheet}. */
export interface MassOfSheetInputs {
  /** Area of the sheet, all faces that are made of it together. Not negative. */
  readonly area: Quantity<Area>;
  /** Thickness of the sheet, without hollows. Not negative. */
  readonly thickness: Quantity<Length>;
  /** Density of the material. Not negative. */
  readonly density: Quantity<Density>;
}

/**
 * Mass of a sheet: tray, lid, cooling plate, fire barrier.
 *
 * Returns kilograms. For a hollow plate take the thickness of its walls together. Source: definition of density.
 *
 * @throws InputError `NEGATIVE`, `WRONG_DIMENSION`, `UNKNOWN_OPTION`
 * @example
 * massOfSheet({ area: q("2.4 m²"), thickness: q("3 mm"), density: q("2700 kg/m³") }); // 19.44 kg
 */
export const massOfSheet: Relation<MassOfSheetInputs, Quantity<Mass>> = /* @__PURE__ */ relation({
  name: "mass of a sheet",
  inputs: {
    area: { symbol: "A", unit: "m²", meaning: "area of the sheet", atLeast: 0 },
    thickness: { symbol: "t", unit: "mm", meaning: "thickness of the sheet", atLeast: 0 },
    density: { symbol: "ρ", unit: "kg/m³", meaning: "density of the material", atLeast: 0 },
  },
  result: { symbol: "m", unit: "kg" },
  expression: "A·t/1000·ρ",
  source: { document: "definition of density", status: "definition" },
  evaluate: ({ area, thickness, density }) => ((area * thickness) / 1000) * density,
});

/** Inputs of {@link massOfFill}. */
export interface MassOfFillInputs {
  /** Volume that is filled. Not negative. */
  readonly volume: Quantity<Volume>;
  /** Density of what fills it. Not negative. */
  readonly density: Quantity<Density>;
}

/**
 * Mass of what fills a volume: coolant, foam, resin between cells.
 *
 * Returns kilograms. Source: definition of density.
 *
 * @throws InputError `NEGATIVE`, `WRONG_DIMENSION`, `UNKNOWN_OPTION`
 * @example
 * massOfFill({ volume: q("6 L"), density: q("1070 kg/m³") }); // 6.42 kg
 */
export const massOfFill: Relation<MassOfFillInputs, Quantity<Mass>> = /* @__PURE__ */ relation({
  name: "mass of a fluid or filling",
  inputs: {
    volume: { symbol: "V", unit: "L", meaning: "volume that is filled", atLeast: 0 },
    density: { symbol: "ρ", unit: "kg/m³", meaning: "density of what fills it", atLeast: 0 },
  },
  result: { symbol: "m", unit: "kg" },
  expression: "V/1000·ρ",
  source: { document: "definition of density", status: "definition" },
  evaluate: ({ volume, density }) => (volume / 1000) * density,
});

/** Inputs of {@link massOfParts}. */
export interface MassOfPartsInputs {
  /** Number of cells. At least one. */
  readonly cellCount: number;
  /** Mass of what belongs to each cell. Not negative. */
  readonly massEach: Quantity<Mass>;
}

/**
 * Mass of what each cell brings with it: a holder, a tab, a pad.
 *
 * Returns kilograms. Source: masses add.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`, `WRONG_DIMENSION`, `UNKNOWN_OPTION`
 * @example
 * massOfParts({ cellCount: 960, massEach: q("12 g") }); // 11.52 kg
 */
export const massOfParts: Relation<MassOfPartsInputs, Quantity<Mass>> = /* @__PURE__ */ relation({
  name: "mass of the parts that come with each cell",
  inputs: {
    cellCount: { symbol: "N", unit: "1", meaning: "number of cells", atLeast: 1 },
    massEach: { symbol: "m_1", unit: "g", meaning: "mass of what belongs to each cell", atLeast: 0 },
  },
  result: { symbol: "m", unit: "kg" },
  expression: "N·m_1/1000",
  source: { document: "masses add", status: "definition" },
  evaluate: ({ cellCount, massEach }) => (cellCount * massEach) / 1000,
});

/** Inputs of {@link massWithParts}. */
export interface MassWithPartsInputs {
  /** Mass of all cells. Not negative. */
  readonly cellsMass: Quantity<Mass>;
  /** Mass of all other parts. Not negative. */
  readonly otherMass: Quantity<Mass>;
}

/**
 * Mass of a pack, bottom up: its cells and everything else.
 *
 * Returns kilograms. Source: masses add.
 *
 * @throws InputError `NEGATIVE`, `WRONG_DIMENSION`, `UNKNOWN_OPTION`
 * @example
 * massWithParts({ cellsMass: q("390 kg"), otherMass: q("130 kg") }); // 520 kg
 */
export const massWithParts: Relation<MassWithPartsInputs, Quantity<Mass>> = /* @__PURE__ */ relation({
  name: "mass of the pack, bottom up",
  inputs: {
    cellsMass: { symbol: "m_cells", unit: "kg", meaning: "mass of the cells", atLeast: 0 },
    otherMass: { symbol: "m_other", unit: "kg", meaning: "mass of all other parts", atLeast: 0 },
  },
  result: { symbol: "m_pack", unit: "kg" },
  expression: "m_cells + m_other",
  source: { document: "masses add", status: "definition" },
  evaluate: ({ cellsMass, otherMass }) => cellsMass + otherMass,
});
