import type { Quantity, Voltage } from "@tarewatt/units";
import type { Caution } from "./caution.js";
import { highVoltageCaution, LIMIT, source } from "./high-voltage-caution.js";

/** @internal Voltages of a pack, as far as known. */
export interface VoltagesKnown {
  readonly nominalVoltage?: Quantity<Voltage> | undefined;
  readonly maximumVoltage?: Quantity<Voltage> | undefined;
}

/** @internal Full charge lies up to a third above the nominal voltage, over all chemistries in use (common practice, no source). */
export const FULL_OVER_NOMINAL = 1.33;

/**
 * @internal The caution of the voltage: at full charge where that is known, by the nominal one where it says enough, and otherwise as
 * if it were high, which the caution then says.
 */
export function voltageCautions({ nominalVoltage, maximumVoltage }: VoltagesKnown): readonly Caution[] {
  const known = maximumVoltage ?? nominalVoltage;
  const caution = known && highVoltageCaution(known);
  if (caution !== undefined) return Object.freeze([caution]);
  if (maximumVoltage !== undefined) return Object.freeze([]);
  if (nominalVoltage === undefined) return Object.freeze([assumed("The voltage of the pack is not known")]);
  if (highVoltageCaution(nominalVoltage.times(FULL_OVER_NOMINAL)) === undefined) return Object.freeze([]);
  return Object.freeze([
    assumed(`The voltage at full charge is not known, the nominal one is ${nominalVoltage.to("V")}`),
  ]);
}

function assumed(why: string): Caution {
  return Object.freeze({
    code: "HIGH_VOLTAGE",
    text:
      `${why}: take it as hazardous, above ${LIMIT} V DC, as that of nearly every traction battery is. Contact can kill, also when ` +
      "the vehicle is switched off. Only qualified people may open, build or work on such a pack; local codes and licensed " +
      "practice decide how. The figures here are estimates, not a basis for design or for work on a battery.",
    source,
  });
}
