import { type Mass, type Quantity, readNumber, readOptions } from "@tarewatt/units";
import type { Cell } from "./cell.js";
import { readCell } from "./read-cell.js";

/** What a share of difference is counted against: without it "20 % more" says nothing. */
export type ComparisonLevel = "cell" | "pack" | "vehicle";

/** One difference between two cells, with what it is a share of. */
export interface CellDifference {
  /** What differs, and what is held equal. */
  readonly what: "energy in equal space" | "energy in equal mass" | "mass at equal energy" | "space at equal energy";
  /** Whether the share is one of the cells, the pack or the vehicle. */
  readonly level: ComparisonLevel;
  /** The difference over the base: 0.2 for 20 % more, −0.1 for 10 % less. */
  readonly share: number;
  /** What the share is counted from, in words. */
  readonly base: string;
  /** The same as a sentence. */
  readonly statement: string;
}

/** Options of {@link compareCells}. */
export interface CompareCellsOptions {
  /** The cell in question. */
  readonly cell: Cell;
  /** The cell that it is compared with. */
  readonly reference: Cell;
  /** Mass of all cells of a pack of the reference cell, for differences at the levels above the cell. Greater than zero. */
  readonly cellsMass?: Quantity<Mass> | undefined;
  /** Mass of that pack; not below that of its cells. */
  readonly packMass?: Quantity<Mass> | undefined;
  /** Mass of a vehicle with that pack; not below that of the pack. */
  readonly vehicleMass?: Quantity<Mass> | undefined;
}

const MASS = { unit: "kg", above: 0, optional: true } as const;

/**
 * How two cells differ: energy in the same space and the same mass, mass and space for the same energy; and what becomes
 * of the saving of mass at the levels of the pack and the vehicle, when their masses are given.
 *
 * Every share names its base, since 20 % more energy per kilogram of cell is far less per kilogram of vehicle. At pack level the
 * parts beside the cells are held as they are; energies are total ones. Source: definitions of specific energy and energy density.
 *
 * @param options - the two cells, and the masses of a pack and a vehicle with the reference cell
 * @returns the differences, cell level first
 * @throws InputError `OUT_OF_RANGE` when a mass lies below that of its part, `MISSING_OPTION` when the mass of the cells is
 *   needed, `NEGATIVE`, `WRONG_DIMENSION`, `NOT_AN_OBJECT`, `UNKNOWN_OPTION`
 * @example
 * const sizes = { thickness: q("52 mm"), width: q("148 mm"), height: q("102 mm"), mass: q("2.03 kg") };
 * const reference = prismaticCell({ ...sizes, capacity: q("140 Ah"), nominalVoltage: q("3.65 V") });
 * const cell = prismaticCell({ ...sizes, capacity: q("161 Ah"), nominalVoltage: q("3.65 V") });
 * compareCells({ cell, reference })[0]?.statement; // "15 % more energy in equal space, counted from the reference cell's energy"
 */
export function compareCells(options: CompareCellsOptions): readonly CellDifference[] {
  const numbers = readOptions("compareCells", options, { cellsMass: MASS, packMass: MASS, vehicleMass: MASS }, [
    "cell",
    "reference",
  ]);
  const cell = readCell(options.cell);
  const reference = readCell(options.reference);
  const perMass = cell.specificEnergy.ratioTo(reference.specificEnergy);
  const energyDensity = (each: Cell): number => each.energy.in("Wh") / each.volume.in("L");
  const perSpace = energyDensity(cell) / energyDensity(reference);
  const lighter = 1 / perMass - 1;
  const found = [
    difference("energy in equal space", "cell", perSpace - 1, "the reference cell's energy"),
    difference("energy in equal mass", "cell", perMass - 1, "the reference cell's energy"),
    difference("mass at equal energy", "cell", lighter, "the reference cell's mass"),
    difference("space at equal energy", "cell", 1 / perSpace - 1, "the reference cell's volume"),
  ];
  const { packMass, vehicleMass } = numbers;
  if (packMass !== undefined || vehicleMass !== undefined) {
    const cellsMass = readNumber("cellsMass", options.cellsMass, { unit: "kg", above: 0 });
    const least = { unit: "kg", atLeast: cellsMass, optional: true };
    if (packMass !== undefined) {
      readNumber("packMass", options.packMass, least);
      found.push(difference("mass at equal energy", "pack", (lighter * cellsMass) / packMass, "the pack's mass"));
    }
    if (vehicleMass !== undefined) {
      readNumber("vehicleMass", options.vehicleMass, { unit: "kg", atLeast: packMass ?? cellsMass });
      found.push(
        difference("mass at equal energy", "vehicle", (lighter * cellsMass) / vehicleMass, "the vehicle's mass"),
      );
    }
  }
  return Object.freeze(found);
}

function difference(what: CellDifference["what"], level: ComparisonLevel, share: number, base: string): CellDifference {
  const percent = Number((Math.abs(share) * 100).toPrecision(3));
  const size = percent === 0 ? "the same" : `${percent} % ${share > 0 ? "more" : "less"}`;
  const [noun, ...rest] = what.split(" ");
  return Object.freeze({
    what,
    level,
    share,
    base,
    statement: `${size} ${noun} ${rest.join(" ")}, counted from ${base}`,
  });
}
