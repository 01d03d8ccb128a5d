import { type Quantity, readNumber, type Source, type Voltage } from "@tarewatt/units";
import type { Caution } from "./caution.js";

/** @internal Direct voltage above which a source counts as high voltage, in volts: "above", so 60 V itself does not. */
export const LIMIT = 60;

/** @internal Where the limit is from. */
export const source: Source = /* @__PURE__ */ Object.freeze({
  document: "49 CFR 571.305",
  section: "S3",
  status: "seen",
});

/**
 * The caution that a direct voltage above 60 V carries.
 *
 * @param voltage - highest voltage of the pack, at full charge; the nominal voltage when that is not known. Not negative
 * @returns the caution, or `undefined` at 60 V and below
 * @throws InputError `NOT_A_QUANTITY`, `WRONG_DIMENSION`, `NEGATIVE`
 * @remarks The limit is the one of 49 CFR 571.305 S3 (working voltage above 60 V direct). It says when to print a caution,
 * not when work on a battery is safe.
 * @example
 * highVoltageCaution(q("403 V"))?.code; // "HIGH_VOLTAGE"
 */
export function highVoltageCaution(voltage: Quantity<Voltage>): Caution | undefined {
  if (readNumber("voltage", voltage, { unit: "V", atLeast: 0 }) <= LIMIT) return undefined;
  return Object.freeze({
    code: "HIGH_VOLTAGE",
    text:
      `Hazardous voltage: ${voltage.to("V")} DC, above ${LIMIT} V. Contact can kill, also when the vehicle is switched off. ` +
      "Only qualified people may open, build or work on such a pack; local codes and licensed practice decide how. " +
      "The figures here are estimates, not a basis for design or for work on a battery.",
    source,
  });
}
