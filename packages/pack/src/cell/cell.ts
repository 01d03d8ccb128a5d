import type {
  ElectricCharge,
  Energy,
  EnergyDensity,
  Length,
  Mass,
  Quantity,
  Source,
  SpecificEnergy,
  Step,
  Voltage,
  Volume,
} from "@tarewatt/units";

/** Outer sizes of a cylindrical cell. */
export interface CylinderDimensions {
  /** Outer diameter. */
  readonly diameter: Quantity<Length>;
  /** Overall height. */
  readonly height: Quantity<Length>;
}

/** Outer sizes of a box-shaped cell. */
export interface BoxDimensions {
  /** Thickness, the shortest side as a rule. */
  readonly thickness: Quantity<Length>;
  /** Width. */
  readonly width: Quantity<Length>;
  /** Height; of a pouch, without its tabs. */
  readonly height: Quantity<Length>;
}

/** What every cell has, whatever its form. */
export interface CellProperties {
  /** Charge that a full cell delivers. */
  readonly capacity: Quantity<ElectricCharge>;
  /** Mean voltage over a slow discharge. */
  readonly nominalVoltage: Quantity<Voltage>;
  /** Voltage at full charge, when it was stated. */
  readonly maximumVoltage?: Quantity<Voltage>;
  /** Voltage at which a discharge ends, when it was stated. */
  readonly minimumVoltage?: Quantity<Voltage>;
  /** Mass of the cell. */
  readonly mass: Quantity<Mass>;
  /** Volume of the plain body over the outer sizes. */
  readonly volume: Quantity<Volume>;
  /** Energy that a full cell delivers: capacity times nominal voltage. */
  readonly energy: Quantity<Energy>;
  /** Energy per mass of the cell. */
  readonly specificEnergy: Quantity<SpecificEnergy>;
  /** Energy per volume of the cell. */
  readonly energyDensity: Quantity<EnergyDensity>;
  /** Chemistry in the words given, such as `"NMC811"`. */
  readonly chemistry?: string;
  /** Designation or trade name in the words given. */
  readonly designation?: string;
  /** Where the data of the cell are from. */
  readonly source?: Source;
  /** The cell in a few words, for a table or a heading. */
  readonly label: string;
  /** What is doubtful about the figures; empty when nothing is. */
  readonly warnings: readonly string[];
  /** How volume, energy, specific energy and energy density came about. */
  working(): Step[];
}

/** A cylindrical cell. */
export interface CylindricalCell extends CellProperties {
  /** Tells the forms of {@link Cell} apart. */
  readonly form: "cylindrical";
  /** Outer sizes. */
  readonly dimensions: CylinderDimensions;
}

/** A cell in a hard box-shaped case. */
export interface PrismaticCell extends CellProperties {
  /** Tells the forms of {@link Cell} apart. */
  readonly form: "prismatic";
  /** Outer sizes. */
  readonly dimensions: BoxDimensions;
}

/** A cell in a soft laminate. */
export interface PouchCell extends CellProperties {
  /** Tells the forms of {@link Cell} apart. */
  readonly form: "pouch";
  /** Sizes of the body, without tabs. */
  readonly dimensions: BoxDimensions;
}

/** A cell of any form; `form` says which, and with it which sizes it has. */
export type Cell = CylindricalCell | PrismaticCell | PouchCell;
