import {
  describeGiven,
  type Energy,
  InputError,
  type Mass,
  type NumberRule,
  type Quantity,
  quantity,
  type Ratio,
  readNumber,
  readOptions,
  type Volume,
} from "@tarewatt/units";
import { arrangedWith } from "../arrangement/arranged.js";
import type { Cell } from "../cell/cell.js";
import { readCell } from "../cell/read-cell.js";
import { specificEnergy } from "../cell/specific-energy.js";
import { assertWhole } from "../check/assert-whole.js";
import { isArray } from "../check/is-array.js";
import { readText } from "../check/read-text.js";
import { voltageCautions } from "../safety/voltage-cautions.js";
import { assertPacking } from "./assert-packing.js";
import { cellMassFractionOf, cellVolumeFractionOf } from "./cell-fractions.js";
import { massOfCells } from "./masses.js";
import type { Pack } from "./pack.js";
import type { PackPart } from "./pack-part.js";
import { massOfParts, massWithParts } from "./part-masses.js";
import { readPart } from "./read-part.js";
import { statedFigures } from "./stated-figures.js";
import { unknownMaximum } from "./unknown-maximum.js";
import { usableEnergy } from "./usable-energy.js";
import { volumeOfCells } from "./volumes.js";

/** Options of {@link assemblePack}. */
export interface AssemblePackOptions {
  /** The cell. */
  readonly cell: Cell;
  /** Cells in series. A whole number of at least one. */
  readonly series: number;
  /** Cells in parallel. A whole number of at least one. */
  readonly parallel: number;
  /** Everything beside the cells. */
  readonly parts: readonly PackPart[];
  /** Usable energy over total energy: more than 0, at most 1. */
  readonly usableFraction?: number | Quantity<Ratio> | undefined;
  /** Volume over the outer sizes of the pack; not below that of what is in it. */
  readonly outerVolume?: Quantity<Volume> | undefined;
  /** Mass of the pack as stated elsewhere, a check only. */
  readonly statedMass?: Quantity<Mass> | undefined;
  /** Total energy as stated elsewhere, a check only. */
  readonly statedEnergy?: Quantity<Energy> | undefined;
  /** How the pack is built, in any words; it labels the result and changes no figure. */
  readonly construction?: string | undefined;
}

/** A part in a pack, with what it adds to the whole pack. */
export interface AssembledPart {
  /** The part. */
  readonly part: PackPart;
  /** Its mass in the whole pack. */
  readonly mass: Quantity<Mass>;
  /** The volume of its material in the whole pack, when known. */
  readonly volume?: Quantity<Volume>;
}

/** A pack put together from its parts: the same figures as of {@link composePack}, and the parts behind them. */
export interface AssembledPack extends Pack {
  /** Everything beside the cells. */
  readonly parts: readonly AssembledPart[];
  /** Mass of the cells over mass of the pack, which follows from the parts. */
  readonly cellMassFraction: number;
  /** Volume of the cells over outer volume of the pack, when that was given. */
  readonly cellVolumeFraction?: number;
}

const COUNT = { unit: "1", atLeast: 1, atMost: 1e6 } as const satisfies NumberRule;

const rules = {
  series: COUNT,
  parallel: COUNT,
  usableFraction: { unit: "1", above: 0, atMost: 1, optional: true },
  outerVolume: { unit: "L", above: 0, optional: true },
  statedMass: { unit: "kg", above: 0, optional: true },
  statedEnergy: { unit: "kWh", above: 0, optional: true },
} as const satisfies Readonly<Record<string, NumberRule>>;

/** More than a parts list that somebody wrote. */
const MOST_PARTS = 1000;

/**
 * Puts a pack together bottom up: cells, and every other part by its mass or its sizes.
 *
 * The mass is only as complete as the parts list: what is forgotten weighs nothing, and a cell mass fraction above the
 * published ones is a sign of that. A pack above 60 V carries a caution that belongs wherever it is printed.
 * {@link composePack}, given the cell mass fraction that comes out, gives the same pack top down.
 *
 * @param options - cell, arrangement, parts, and what was stated elsewhere
 * @returns the pack, which can show its working
 * @throws InputError `INCONSISTENT` when a stated mass lies below that of the cells, or the outer volume below that of what is
 *   in it, or so small that round cells would fill more than circles can; `OUT_OF_RANGE`, `NEGATIVE`, `NOT_A_FRACTION`, `WRONG_DIMENSION`, `WRONG_CHOICE`, `NOT_AN_OBJECT`,
 *   `MISSING_OPTION`, `UNKNOWN_OPTION`
 * @example
 * const cell = prismaticCell({
 *   ...{ thickness: q("52 mm"), width: q("148 mm"), height: q("102 mm"), mass: q("2.03 kg") },
 *   ...{ capacity: q("140 Ah"), nominalVoltage: q("3.65 V") },
 * });
 * const parts = [weighedPart({ name: "all else", group: "other", mass: q("137 kg") })];
 * assemblePack({ cell, series: 96, parallel: 2, parts }).mass.total; // 526.76 kg
 */
export function assemblePack(options: AssemblePackOptions): AssembledPack {
  const numbers = readOptions("assemblePack", options, rules, ["cell", "parts", "construction?"]);
  const { series, parallel, outerVolume } = numbers;
  for (const [name, value] of Object.entries({ series, parallel })) assertWhole(name, value);
  const cell = readCell(options.cell);
  const construction = readText("construction", options.construction);
  const arrangement = arrangedWith(cell, series)(parallel);
  const { cellCount, energy: total, nominalVoltage, maximumVoltage, capacity } = arrangement;
  const parts = readParts(options.parts).map((part) => inPack(part, cellCount));

  const cells = massOfCells({ cellCount, cellMass: cell.mass });
  const other = quantity(
    sum(parts, ({ mass }) => mass.in("kg")),
    "kg",
  );
  const forMass = { cellsMass: cells, otherMass: other };
  const mass = massWithParts(forMass);
  const forDensity = { energy: total, mass };
  const forFraction = { cellsMass: cells, packMass: mass };
  const cellsVolume = volumeOfCells({ cellCount, cellVolume: cell.volume });
  const material = cellsVolume.in("L") + sum(parts, ({ volume }) => volume?.in("L") ?? 0);
  assertRoom(outerVolume, material);
  if (outerVolume !== undefined) assertPacking(cell, cellsVolume.in("L") / outerVolume);
  const forVolume = options.outerVolume && { cellsVolume, packVolume: options.outerVolume };
  const forUsable = options.usableFraction !== undefined && {
    totalEnergy: total,
    usableFraction: options.usableFraction,
  };
  const cellMassFraction = cellMassFractionOf(forFraction);

  return Object.freeze({
    ...{ cell, arrangement, nominalVoltage, capacity },
    ...(construction !== undefined && { construction }),
    ...(maximumVoltage && { maximumVoltage }),
    energy: Object.freeze({ total, ...(forUsable && { usable: usableEnergy(forUsable) }) }),
    mass: Object.freeze({ total: mass, cells, other }),
    volume: Object.freeze({ cells: cellsVolume, ...(options.outerVolume && { total: options.outerVolume.to("L") }) }),
    specificEnergy: Object.freeze({ cell: cell.specificEnergy, pack: specificEnergy(forDensity) }),
    parts: Object.freeze(parts),
    cellMassFraction,
    ...(forVolume && { cellVolumeFraction: cellVolumeFractionOf(forVolume) }),
    cautions: voltageCautions(arrangement),
    warnings: Object.freeze([
      ...cell.warnings,
      ...unknownMaximum(arrangement),
      ...statedFigures({ cellMassFraction, cells, mass, total, stated: options }),
    ]),
    working: () => [
      ...cell.working(),
      ...arrangement.working(),
      ...parts.flatMap(({ part }) => [
        ...part.working(),
        ...(part.counted === "once" ? [] : [massOfParts.explain({ cellCount, massEach: part.mass })]),
      ]),
      massWithParts.explain(forMass),
      cellMassFractionOf.explain(forFraction),
      specificEnergy.explain(forDensity),
      volumeOfCells.explain({ cellCount, cellVolume: cell.volume }),
      ...(forUsable ? [usableEnergy.explain(forUsable)] : []),
      ...(forVolume ? [cellVolumeFractionOf.explain(forVolume)] : []),
    ],
  });
}

function inPack(part: PackPart, cellCount: number): AssembledPart {
  const times = part.counted === "once" ? 1 : cellCount;
  return Object.freeze({
    part,
    mass: part.mass.times(times).to("kg"),
    ...(part.volume && { volume: part.volume.times(times).to("L") }),
  });
}

function readParts(given: unknown): readonly PackPart[] {
  if (!isArray(given)) {
    throw new InputError("WRONG_CHOICE", `parts must be an array of parts: got ${describeGiven(given)}`, {});
  }
  readNumber("the number of parts", given.length, { unit: "1", atMost: MOST_PARTS });
  return Array.from(given, (part: unknown, i) => readPart(`parts[${i}]`, part));
}

function sum<T>(all: readonly T[], of: (each: T) => number): number {
  return all.reduce((total, each) => total + of(each), 0);
}

function assertRoom(outer: number | undefined, material: number): void {
  if (outer === undefined || outer >= material) return;
  throw new InputError(
    "INCONSISTENT",
    `outerVolume is less than what is in the pack: ${quantity(outer, "L")} for ${quantity(material, "L")} of cells and parts`,
    { outer, material },
  );
}
