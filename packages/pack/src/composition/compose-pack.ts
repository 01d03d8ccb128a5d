import { type Energy, type NumberRule, type Quantity, type Ratio, readOptions, type Voltage } from "@tarewatt/units";
import { arrangePack, type Rounding } from "../arrangement/arrange-pack.js";
import type { Cell } from "../cell/cell.js";
import { readCell } from "../cell/read-cell.js";
import { specificEnergy } from "../cell/specific-energy.js";
import { readText } from "../check/read-text.js";
import { voltageCautions } from "../safety/voltage-cautions.js";
import { assertPacking } from "./assert-packing.js";
import { cellMassFractionPrior } from "./cell-mass-fraction-prior.js";
import { massBesideCells, massOfCells, massOfPack } from "./masses.js";
import type { Pack, PackWithUsableEnergy } from "./pack.js";
import { unknownMaximum } from "./unknown-maximum.js";
import { usableEnergy } from "./usable-energy.js";
import { volumeOfCells, volumeOfPack } from "./volumes.js";

/** Options of {@link composePack}. */
export interface PackOptions {
  /** The cell. */
  readonly cell: Cell;
  /** Total energy wanted, not the usable share of it. Greater than zero. */
  readonly energy: Quantity<Energy>;
  /** Nominal voltage wanted. Greater than zero. */
  readonly nominalVoltage: Quantity<Voltage>;
  /** Mass of the cells over mass of the pack: more than 0, at most 1. See {@link cellMassFractionPrior}. */
  readonly cellMassFraction: number | Quantity<Ratio>;
  /** Usable energy over total energy: more than 0, at most 1. See {@link usableFractionPrior}. */
  readonly usableFraction?: number | Quantity<Ratio> | undefined;
  /** Volume of the cells over volume of the pack: more than 0, at most 1; of round cells at most {@link hexagonalPackingFraction}. */
  readonly cellVolumeFraction?: number | Quantity<Ratio> | undefined;
  /** Which whole number of cells in parallel to take; `"nearest"` when left out. */
  readonly rounding?: Rounding | undefined;
  /** How the pack is built, in any words; it labels the result and changes no figure. */
  readonly construction?: string | undefined;
}

const FRACTION = { unit: "1", above: 0, atMost: 1 } as const satisfies NumberRule;
const FRACTION_IF_KNOWN = { unit: "1", above: 0, atMost: 1, optional: true } as const satisfies NumberRule;

const rules = {
  energy: { unit: "Wh", above: 0 },
  nominalVoltage: { unit: "V", above: 0 },
  cellMassFraction: FRACTION,
  usableFraction: FRACTION_IF_KNOWN,
  cellVolumeFraction: FRACTION_IF_KNOWN,
} as const satisfies Readonly<Record<string, NumberRule>>;

/**
 * Composes a pack of whole cells for a total energy and a nominal voltage, and gives its mass from the cell mass fraction.
 *
 * Energy and voltage are those that whole cells reach, so they differ a little from what was asked for; `arrangement` says by
 * how much. Usable energy and pack volume are there only when their fractions were given: they are not guessed.
 * A pack above 60 V carries a caution that belongs wherever it is printed. Source: definitions of the fractions.
 *
 * @param options - cell, total energy, nominal voltage, the fractions, and how to round
 * @returns the pack, which can show its working
 * @throws InputError `INCONSISTENT` for round cells that fill more than circles can; `NEGATIVE`, `OUT_OF_RANGE`,
 *   `NOT_A_FRACTION`, `WRONG_DIMENSION`, `WRONG_CHOICE`, `NOT_AN_OBJECT`, `UNKNOWN_OPTION`, `MISSING_OPTION`
 * @example
 * const cell = prismaticCell({
 *   ...{ thickness: q("52 mm"), width: q("148 mm"), height: q("102 mm"), mass: q("2.03 kg") },
 *   ...{ capacity: q("140 Ah"), nominalVoltage: q("3.65 V") },
 * });
 * const pack = composePack({ cell, energy: q("98 kWh"), nominalVoltage: q("350 V"), cellMassFraction: 0.74 });
 * pack.mass.total.format(); // "527 kg"
 */
export function composePack(
  options: PackOptions & { readonly usableFraction: number | Quantity<Ratio> },
): PackWithUsableEnergy;
export function composePack(options: PackOptions): Pack;
export function composePack(options: PackOptions): Pack {
  const { cellMassFraction, cellVolumeFraction } = readOptions("composePack", options, rules, [
    "cell",
    "rounding?",
    "construction?",
  ]);
  const { cell, energy: energyWanted, nominalVoltage: voltageWanted, rounding } = options;
  assertPacking(readCell(cell), cellVolumeFraction);
  const construction = readText("construction", options.construction);
  const arrangement = arrangePack({ cell, energy: energyWanted, nominalVoltage: voltageWanted, rounding });
  const { cellCount, energy: total, nominalVoltage, maximumVoltage, capacity } = arrangement;

  const forCells = { cellCount, cellMass: cell.mass };
  const cells = massOfCells(forCells);
  const forMass = { cellsMass: cells, cellMassFraction: options.cellMassFraction };
  const mass = massOfPack(forMass);
  const forOther = { packMass: mass, cellsMass: cells };
  const forDensity = { energy: total, mass };
  const forCellsVolume = { cellCount, cellVolume: cell.volume };
  const cellsVolume = volumeOfCells(forCellsVolume);
  const forUsable = options.usableFraction !== undefined && {
    totalEnergy: total,
    usableFraction: options.usableFraction,
  };
  const forVolume = options.cellVolumeFraction !== undefined && {
    cellsVolume,
    cellVolumeFraction: options.cellVolumeFraction,
  };

  return Object.freeze({
    cell,
    arrangement,
    ...(construction !== undefined && { construction }),
    nominalVoltage,
    ...(maximumVoltage && { maximumVoltage }),
    energy: Object.freeze({ total, ...(forUsable && { usable: usableEnergy(forUsable) }) }),
    mass: Object.freeze({ total: mass, cells, other: massBesideCells(forOther) }),
    volume: Object.freeze({ cells: cellsVolume, ...(forVolume && { total: volumeOfPack(forVolume) }) }),
    specificEnergy: Object.freeze({ cell: cell.specificEnergy, pack: specificEnergy(forDensity) }),
    capacity,
    cautions: voltageCautions(arrangement),
    warnings: Object.freeze([
      ...cell.warnings,
      ...arrangement.warnings,
      ...unusualFraction(cellMassFraction),
      ...unknownMaximum(arrangement),
    ]),
    working: () => [
      ...cell.working(),
      ...arrangement.working(),
      massOfCells.explain(forCells),
      massOfPack.explain(forMass),
      massBesideCells.explain(forOther),
      specificEnergy.explain(forDensity),
      volumeOfCells.explain(forCellsVolume),
      ...(forUsable ? [usableEnergy.explain(forUsable)] : []),
      ...(forVolume ? [volumeOfPack.explain(forVolume)] : []),
    ],
  });
}

function unusualFraction(cellMassFraction: number): string[] {
  const { low } = cellMassFractionPrior.moduleBased;
  const { high } = cellMassFractionPrior.cellToPack;
  if (cellMassFraction >= low && cellMassFraction <= high) return [];
  return [`a cell mass fraction of ${cellMassFraction} lies outside the published ones, ${low} to ${high}: say why`];
}
