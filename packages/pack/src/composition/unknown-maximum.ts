import type { Quantity, Voltage } from "@tarewatt/units";
import { highVoltageCaution } from "../safety/high-voltage-caution.js";
import { FULL_OVER_NOMINAL } from "../safety/voltage-cautions.js";

/** Voltages of a pack, as far as known. */
interface Voltages {
  readonly nominalVoltage: Quantity<Voltage>;
  readonly maximumVoltage?: Quantity<Voltage>;
}

/** @internal Doubt where the caution had to take the voltage at full charge for a high one. */
export function unknownMaximum({ nominalVoltage, maximumVoltage }: Voltages): string[] {
  if (maximumVoltage !== undefined || highVoltageCaution(nominalVoltage) !== undefined) return [];
  const full = nominalVoltage.times(FULL_OVER_NOMINAL);
  if (highVoltageCaution(full) === undefined) return [];
  return [`the maximum voltage of the cell is not given: at full charge a pack of ${nominalVoltage} may exceed 60 V`];
}
