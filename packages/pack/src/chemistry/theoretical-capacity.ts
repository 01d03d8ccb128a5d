import {
  type ElectricCharge,
  type Mass,
  type Quantity,
  type Quotient,
  type Relation,
  relation,
  type Source,
} from "@tarewatt/units";
import { frozen } from "../check/frozen.js";

/** Inputs of {@link theoreticalCapacity}. */
export interface TheoreticalCapacityInputs {
  /** Charges that one formula unit takes up, in elementary charges. Greater than zero. */
  readonly charges: number;
  /** Mass of one mole of formula units. Greater than zero. */
  readonly massOfMole: Quantity<Mass>;
}

/** Faraday constant in C/mol. */
const FARADAY = 96485.33212;

/**
 * Charge that an electrode material holds in theory, per mass of the material: Faraday's law.
 *
 * Returns mAh/g of the active material alone. Cells reach less of it, and carry
 * another electrode, foils, electrolyte and a case. Source: Faraday's law, with the constant of the SI of 2019.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`, `WRONG_DIMENSION`, `UNKNOWN_OPTION`, `NOT_VALID_HERE`
 * @example
 * theoreticalCapacity({ charges: 1, massOfMole: q("157.757 g") }).format(); // "170 mAh/g"
 */
export const theoreticalCapacity: Relation<
  TheoreticalCapacityInputs,
  Quantity<Quotient<ElectricCharge, Mass>>
> = /* @__PURE__ */ relation({
  name: "theoretical capacity of an electrode material",
  inputs: {
    charges: { symbol: "z", unit: "1", meaning: "charges that one formula unit takes up", above: 0 },
    massOfMole: { symbol: "M", unit: "g", meaning: "mass of one mole of formula units", above: 0 },
  },
  result: { symbol: "q", unit: "mAh/g" },
  expression: "96485.33212·z/(3.6·M)",
  source: { document: "Faraday's law, constant of the SI of 2019", status: "definition" },
  validity: "for the active material alone",
  evaluate: ({ charges, massOfMole }) => (FARADAY * charges) / (3.6 * massOfMole),
});

/** An electrode material. */
export interface ElectrodeMaterial {
  /** Formula. */
  readonly formula: string;
  /** Which electrode of a cell it makes. */
  readonly electrode: "negative" | "positive";
  /** Mass of one mole of formula units in g. */
  readonly massOfMole: number;
  /** Charges that one formula unit takes up. */
  readonly charges: number;
  /** Theoretical capacity as published, in mAh/g; absent where only an attainable one was. */
  readonly published?: number;
  /** Capacity that cells reach as published, in mAh/g. */
  readonly attainable?: number;
  /** Where the published capacities are from. */
  readonly source: Source;
}

const table: Source = { document: "review articles and public tables of electrode materials", status: "seen" };
const remembered: Source = { document: "public tables of electrode materials", status: "memory" };

/**
 * Electrode materials of lithium-ion cells, with the theoretical capacity as published; {@link theoreticalCapacity} computes it.
 *
 * Dimensions: g for a mole, mAh/g for capacities.
 *
 * @example
 * electrodeMaterials.ironPhosphate.published; // 170
 */
// biome-ignore format: one material a line
export const electrodeMaterials: {
  /** Lithium iron phosphate. */
  readonly ironPhosphate: ElectrodeMaterial;
  /** Lithium cobalt oxide. */
  readonly cobaltOxide: ElectrodeMaterial;
  /** Nickel, manganese and cobalt in equal parts. */
  readonly nmc111: ElectrodeMaterial;
  /** Eight parts of nickel to one of manganese and one of cobalt. */
  readonly nmc811: ElectrodeMaterial;
  /** Lithium manganese oxide, a spinel. */
  readonly manganeseOxide: ElectrodeMaterial;
  /** Graphite. */
  readonly graphite: ElectrodeMaterial;
  /** Silicon. */
  readonly silicon: ElectrodeMaterial;
  /** Lithium titanate. */
  readonly titanate: ElectrodeMaterial;
} = /* @__PURE__ */ frozen({
  ironPhosphate: { formula: "LiFePO4", electrode: "positive", massOfMole: 157.757, charges: 1, published: 170, attainable: 160, source: table },
  cobaltOxide: { formula: "LiCoO2", electrode: "positive", massOfMole: 97.873, charges: 1, published: 274, attainable: 145, source: table },
  nmc111: { formula: "LiNi1/3Mn1/3Co1/3O2", electrode: "positive", massOfMole: 96.46, charges: 1, published: 278, attainable: 150, source: table },
  nmc811: { formula: "LiNi0.8Mn0.1Co0.1O2", electrode: "positive", massOfMole: 97.28, charges: 1, attainable: 200, source: table },
  manganeseOxide: { formula: "LiMn2O4", electrode: "positive", massOfMole: 180.81, charges: 1, published: 148, source: remembered },
  graphite: { formula: "C6", electrode: "negative", massOfMole: 72.066, charges: 1, published: 372, attainable: 350, source: table },
  silicon: { formula: "Si (to Li15Si4)", electrode: "negative", massOfMole: 28.085, charges: 3.75, published: 3579, source: table },
  titanate: { formula: "Li4Ti5O12", electrode: "negative", massOfMole: 459.09, charges: 3, published: 175, attainable: 170, source: table },
});
