import type { ElectricCharge, Energy, Mass, Quantity, SpecificEnergy, Step, Voltage, Volume } from "@tarewatt/units";
import type { Arrangement } from "../arrangement/arrange-pack.js";
import type { Cell } from "../cell/cell.js";
import type { Caution } from "../safety/caution.js";

/** Energies of a pack, at the battery. */
export interface PackEnergy {
  /** All the energy of its cells. */
  readonly total: Quantity<Energy>;
  /** What a driver gets between full and empty; absent when no usable fraction was given. */
  readonly usable?: Quantity<Energy>;
}

/** Masses of a pack. */
export interface PackMass {
  /** The whole pack. */
  readonly total: Quantity<Mass>;
  /** Its cells. */
  readonly cells: Quantity<Mass>;
  /** Everything else: housing, cooling, cables, electronics. */
  readonly other: Quantity<Mass>;
}

/** Volumes of a pack. */
export interface PackVolume {
  /** Its cells, without any space between them. */
  readonly cells: Quantity<Volume>;
  /** The whole pack; absent when no cell volume fraction was given. */
  readonly total?: Quantity<Volume>;
}

/** Specific energies, both on the total energy. */
export interface PackSpecificEnergy {
  /** Of the cell. */
  readonly cell: Quantity<SpecificEnergy>;
  /** Of the pack. */
  readonly pack: Quantity<SpecificEnergy>;
}

/** A pack composed of equal cells. */
export interface Pack {
  /** The cell. */
  readonly cell: Cell;
  /** Cells in series and in parallel. */
  readonly arrangement: Arrangement;
  /** How the pack is built, in the words given. */
  readonly construction?: string;
  /** Nominal voltage reached. */
  readonly nominalVoltage: Quantity<Voltage>;
  /** Voltage at full charge, when that of the cell is known. */
  readonly maximumVoltage?: Quantity<Voltage>;
  /** Energy, total and usable. */
  readonly energy: PackEnergy;
  /** Mass, of the cells and of the rest. */
  readonly mass: PackMass;
  /** Volume of the cells, and of the pack when it can be known. */
  readonly volume: PackVolume;
  /** Energy per mass, of cell and pack. */
  readonly specificEnergy: PackSpecificEnergy;
  /** Capacity. */
  readonly capacity: Quantity<ElectricCharge>;
  /** Cautions about safety, to be printed wherever the pack is. */
  readonly cautions: readonly Caution[];
  /** What is doubtful about the figures, those of the cell included; empty when nothing is. */
  readonly warnings: readonly string[];
  /** How every figure came about, from the cell on. */
  working(): Step[];
}

/** A pack whose usable energy is known, because a usable fraction was given. */
export interface PackWithUsableEnergy extends Pack {
  /** Energy, total and usable. */
  readonly energy: Required<PackEnergy>;
}
