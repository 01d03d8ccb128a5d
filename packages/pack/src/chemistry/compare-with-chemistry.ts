import { readOptions } from "@tarewatt/units";
import type { Cell } from "../cell/cell.js";
import { readCell } from "../cell/read-cell.js";
import type { ChemistryName } from "./chemistries.js";
import { type PublishedRange, VOLTAGE_SLACK } from "./nominal-voltages.js";
import { placeAmong } from "./place-among.js";
import { readChemistry } from "./read-chemistry.js";

/** Options of {@link compareWithChemistry}. */
export interface CompareWithChemistryOptions {
  /** The cell. */
  readonly cell: Cell;
  /** The chemistry that it is said to have. */
  readonly chemistry: ChemistryName;
}

/** One figure of a cell beside the published ones of its chemistry. */
export interface ChemistryFinding {
  /** Which figure. */
  readonly figure: "nominal voltage" | "specific energy" | "energy density";
  /** Where it lies: within the range of an era, between those of two, or outside all of them. */
  readonly place: "within" | "between" | "above" | "below" | "nothing published";
  /** The same as a sentence that names both figures. */
  readonly statement: string;
}

/**
 * Sets a cell beside the published cells of its chemistry: nominal voltage, specific energy, energy density.
 *
 * Outside does not mean impossible: published ranges are few, and the newest are remembered. A voltage outside them does mean
 * another chemistry, or a slip.
 *
 * @param options - the cell, and its chemistry
 * @returns one finding for each figure
 * @throws InputError `WRONG_CHOICE`, `NOT_AN_OBJECT`, `MISSING_OPTION`, `UNKNOWN_OPTION`
 * @example
 * const cell = prismaticCell({
 *   ...{ thickness: q("52 mm"), width: q("148 mm"), height: q("102 mm"), mass: q("2.03 kg") },
 *   ...{ capacity: q("140 Ah"), nominalVoltage: q("3.65 V") },
 * });
 * compareWithChemistry({ cell, chemistry: "LFP" }).map(({ place }) => place); // ["above", "above", "above"]
 */
export function compareWithChemistry(options: CompareWithChemistryOptions): readonly ChemistryFinding[] {
  readOptions("compareWithChemistry", options, {}, ["cell", "chemistry"]);
  const cell = readCell(options.cell);
  const { name, nominalVoltage, specificEnergy, energyDensity } = readChemistry(options.chemistry);
  const { low, high } = nominalVoltage;
  const voltage = { ...nominalVoltage, low: low - VOLTAGE_SLACK, high: high + VOLTAGE_SLACK };
  return Object.freeze([
    finding("nominal voltage", cell.nominalVoltage.in("V"), "V", [voltage], name),
    finding("specific energy", cell.specificEnergy.in("Wh/kg"), "Wh/kg", specificEnergy, name),
    finding("energy density", cell.energy.in("Wh") / cell.volume.in("L"), "Wh/L", energyDensity, name),
  ]);
}

function finding(
  figure: ChemistryFinding["figure"],
  value: number,
  unit: string,
  ranges: readonly PublishedRange[],
  chemistry: string,
): ChemistryFinding {
  const shown = `the ${figure} of the cell, ${short(value)} ${unit}`;
  if (ranges.length === 0) {
    const statement = `${shown}: nothing is published for ${chemistry}`;
    return Object.freeze({ figure, place: "nothing published", statement });
  }
  const { place, era, least, most } = placeAmong(value, ranges);
  const published = era === undefined ? `${short(least)} to ${short(most)}` : `${short(era.low)} to ${short(era.high)}`;
  const where = place === "between" ? "lies between eras, in" : `lies ${place}`;
  const of = era === undefined ? "all eras" : era.era;
  return Object.freeze({
    figure,
    place,
    statement: `${shown}, ${where} the ${published} ${unit} published for ${chemistry} (${of})`,
  });
}

function short(value: number): number {
  return Number(value.toPrecision(3));
}
