import {
  type Area,
  type Density,
  type Length,
  type Mass,
  type NumberRule,
  type Quantity,
  readOptions,
  type Step,
  type Volume,
} from "@tarewatt/units";
import { readText } from "../check/read-text.js";
import { massOfFill, massOfSheet } from "./part-masses.js";
import { readCounted, readGroup } from "./read-part.js";

/** What a part of a pack is for. */
export type PartGroup = "holders" | "cooling" | "conductors" | "electronics" | "fire barrier" | "housing" | "other";

/** A part of a pack that is not a cell. */
export interface PackPart {
  /** What it is called. */
  readonly name: string;
  /** What it is for. */
  readonly group: PartGroup;
  /** Whether mass and volume are those of the whole pack, or of what comes with each cell. */
  readonly counted: "once" | "with each cell";
  /** Mass, once or with each cell. */
  readonly mass: Quantity<Mass>;
  /** Volume of the material, once or with each cell; absent when not known. */
  readonly volume?: Quantity<Volume>;
  /** How the mass came about; empty when it was given. */
  working(): Step[];
}

/** What is asked about every part. */
export interface PartLabels {
  /** What it is called, in any words. */
  readonly name: string;
  /** What it is for. */
  readonly group: PartGroup;
}

/** Options of {@link sheetPart}. */
export interface SheetPartOptions extends PartLabels {
  /** Area of the sheet, all faces that are made of it together. Greater than zero. */
  readonly area: Quantity<Area>;
  /** Thickness of the sheet. Greater than zero. */
  readonly thickness: Quantity<Length>;
  /** Density of the material; see `packMaterials`. Greater than zero. */
  readonly density: Quantity<Density>;
}

const labels = ["name", "group"] as const;

/**
 * A part of a pack made of sheet: tray, lid, cooling plate, fire barrier.
 *
 * @param options - name, group, area, thickness and density
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`, `WRONG_DIMENSION`, `WRONG_CHOICE`, `MISSING_OPTION`, `UNKNOWN_OPTION`
 * @example
 * const sheet = { area: q("2.4 m²"), thickness: q("3 mm"), density: q("2700 kg/m³") };
 * sheetPart({ name: "tray", group: "housing", ...sheet }).mass; // 19.44 kg
 */
export function sheetPart(options: SheetPartOptions): PackPart {
  const sizes = { area: { unit: "m²", above: 0 }, thickness: { unit: "mm", above: 0 }, density: DENSITY };
  readOptions("sheetPart", options, sizes, labels);
  const { area, thickness, density } = options;
  const sheet = { area, thickness, density };
  const volume = area.times(thickness).to("L");
  return part(options, { mass: massOfSheet(sheet), volume, working: () => [massOfSheet.explain(sheet)] });
}

/** Options of {@link fillPart}. */
export interface FillPartOptions extends PartLabels {
  /** Volume that is filled. Greater than zero. */
  readonly volume: Quantity<Volume>;
  /** Density of what fills it; see `packMaterials`. Greater than zero. */
  readonly density: Quantity<Density>;
}

/**
 * A part of a pack that fills a volume: coolant, foam, resin.
 *
 * @param options - name, group, volume and density
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`, `WRONG_DIMENSION`, `WRONG_CHOICE`, `MISSING_OPTION`, `UNKNOWN_OPTION`
 * @example
 * fillPart({ name: "coolant", group: "cooling", volume: q("6 L"), density: q("1070 kg/m³") }).mass; // 6.42 kg
 */
export function fillPart(options: FillPartOptions): PackPart {
  readOptions("fillPart", options, { volume: { unit: "L", above: 0 }, density: DENSITY }, labels);
  const { volume, density } = options;
  const fill = { volume, density };
  return part(options, { mass: massOfFill(fill), volume, working: () => [massOfFill.explain(fill)] });
}

/** Options of {@link weighedPart}. */
export interface WeighedPartOptions extends PartLabels {
  /** Mass, of the whole pack or of what comes with each cell. Not negative. */
  readonly mass: Quantity<Mass>;
  /** Volume of the material, counted in the same way. Not negative. */
  readonly volume?: Quantity<Volume> | undefined;
  /** Whether the mass counts once or with each cell; once when left out. */
  readonly counted?: "once" | "with each cell" | undefined;
}

/**
 * A part of a pack whose mass is known or judged: busbars, harness, contactors, electronics; or what comes with each cell.
 *
 * @param options - name, group, mass, volume, and whether they count once or with each cell
 * @throws InputError `NEGATIVE`, `WRONG_DIMENSION`, `WRONG_CHOICE`, `MISSING_OPTION`, `UNKNOWN_OPTION`
 * @example
 * weighedPart({ name: "holder", group: "holders", mass: q("12 g"), counted: "with each cell" }).counted; // "with each cell"
 */
export function weighedPart(options: WeighedPartOptions): PackPart {
  readOptions("weighedPart", options, { mass: MASS, volume: VOLUME }, [...labels, "counted?"]);
  const { mass, volume, counted } = options;
  return part(options, { mass, ...(volume && { volume }), counted: readCounted(counted), working: () => [] });
}

const DENSITY = { unit: "kg/m³", above: 0 } as const satisfies NumberRule;
const MASS = { unit: "kg", atLeast: 0 } as const satisfies NumberRule;
const VOLUME = { unit: "L", atLeast: 0, optional: true } as const satisfies NumberRule;

type Figures = Pick<PackPart, "mass" | "working"> & Partial<Pick<PackPart, "volume" | "counted">>;

function part(given: PartLabels, { counted = "once", ...figures }: Figures): PackPart {
  return Object.freeze({
    ...{ name: readText("name", given.name) as string, group: readGroup(given.group) },
    ...{ counted, ...figures },
  });
}
