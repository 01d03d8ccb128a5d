import type { Quantity, Voltage } from "@tarewatt/units";
import { highVoltageCaution } from "../safety/high-voltage-caution.js";

/** Voltages of a pack, as far as known. */
interface Voltages {
  readonly nominalVoltage: Quantity<Voltage>;
  readonly maximumVoltage?: Quantity<Voltage>;
}

/** Full charge lies up to a third above the nominal voltage, over all chemistries in use (common practice, no source). */
const FULL_OVER_NOMINAL = 1.33;

/** @internal The caution looks at the nominal voltage when nothing else is known, and could stay silent when it should not. */
export function unknownMaximum({ nominalVoltage, maximumVoltage }: Voltages): string[] {
  if (maximumVoltage !== undefined || highVoltageCaution(nominalVoltage) !== undefined) return [];
  const full = nominalVoltage.times(FULL_OVER_NOMINAL);
  if (highVoltageCaution(full) === undefined) return [];
  return [`the maximum voltage of the cell is not given: at full charge a pack of ${nominalVoltage} may exceed 60 V`];
}
