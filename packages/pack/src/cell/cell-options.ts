import type { ElectricCharge, Energy, Length, Mass, NumberRule, Quantity, Source, Voltage } from "@tarewatt/units";

/** What is asked about every cell, whatever its form. */
export interface CellOptions {
  /** Charge that a full cell delivers. Greater than zero. */
  readonly capacity: Quantity<ElectricCharge>;
  /** Mean voltage over a slow discharge. Greater than zero. */
  readonly nominalVoltage: Quantity<Voltage>;
  /** Mass of one cell. Greater than zero. */
  readonly mass: Quantity<Mass>;
  /** Voltage at full charge; not below the nominal voltage. */
  readonly maximumVoltage?: Quantity<Voltage> | undefined;
  /** Voltage at which a discharge ends; not above the nominal voltage. */
  readonly minimumVoltage?: Quantity<Voltage> | undefined;
  /** Energy as stated by the source, a check only: it may not differ from capacity × nominal voltage by more than 3 %. */
  readonly energy?: Quantity<Energy> | undefined;
  /** Chemistry, in any words. */
  readonly chemistry?: string | undefined;
  /** Designation or trade name, in any words. */
  readonly designation?: string | undefined;
  /** Where the data are from. */
  readonly source?: Source | undefined;
}

/** Options of {@link cylindricalCell}. */
export interface CylindricalCellOptions extends CellOptions {
  /** Outer diameter. Greater than zero. */
  readonly diameter: Quantity<Length>;
  /** Overall height. Greater than zero. */
  readonly height: Quantity<Length>;
}

/** Options of {@link prismaticCell} and {@link pouchCell}. */
export interface BoxCellOptions extends CellOptions {
  /** Thickness, the shortest side as a rule. Greater than zero. */
  readonly thickness: Quantity<Length>;
  /** Width. Greater than zero. */
  readonly width: Quantity<Length>;
  /** Height; of a pouch, without its tabs. Greater than zero. */
  readonly height: Quantity<Length>;
}

/** @internal */
export const LENGTH = { unit: "mm", above: 0 } as const satisfies NumberRule;

/** @internal What is asked about every cell, as rules; each form adds its sizes. */
export const cellRules = {
  capacity: { unit: "Ah", above: 0 },
  nominalVoltage: { unit: "V", above: 0 },
  mass: { unit: "kg", above: 0 },
  maximumVoltage: { unit: "V", above: 0, optional: true },
  minimumVoltage: { unit: "V", atLeast: 0, optional: true },
  energy: { unit: "Wh", above: 0, optional: true },
} as const satisfies Readonly<Record<string, NumberRule>>;

/** @internal Options of a cell that are not numbers. */
export const cellTexts = ["chemistry?", "designation?", "source?"] as const;
