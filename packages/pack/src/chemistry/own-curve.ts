import { readOptions, type Source } from "@tarewatt/units";
import { readSource } from "../check/read-source.js";
import { readText } from "../check/read-text.js";
import type { OpenCircuitCurve, ResistanceAgainstTemperature, ResistanceCurve } from "./curve.js";
import { chargeFactors, openCircuitPoints, temperatureFactors } from "./curve-points.js";

/**
 * Your own open-circuit voltage curve of a cell, checked: it may be used wherever a published one may.
 *
 * States of charge are numbers from 0 to 1 that rise; they must reach from 0.05 or less to 0.95 or more. Voltages are numbers
 * in V, one for each, and never fall: a curve measured with noise has to be smoothed first.
 *
 * @param options - name, source, states of charge and voltages
 * @returns the curve, frozen, with its own copy of the numbers
 * @throws InputError `INCONSISTENT` when the numbers do not rise or do not pair, `OUT_OF_RANGE`, `NOT_A_FRACTION`,
 *   `NOT_A_NUMBER`, `NEGATIVE`, `EMPTY`, `TOO_LONG`, `NOT_VALID_HERE` when the curve does not reach from empty to full, `WRONG_CHOICE`, `MISSING_OPTION`, `UNKNOWN_OPTION`
 * @example
 * const curve = openCircuitCurve({
 *   ...{ name: "own cell, C/25", source: { document: "own measurement", status: "seen" } },
 *   ...{ stateOfCharge: [0, 0.5, 1], voltage: [3, 3.7, 4.2] },
 * });
 * meanOpenCircuitVoltage(curve); // 3.65 V
 */
export function openCircuitCurve(options: OpenCircuitCurve): OpenCircuitCurve {
  const labels = readLabels("openCircuitCurve", options, ["stateOfCharge", "voltage"]);
  return Object.freeze({ ...labels, ...openCircuitPoints("", options) });
}

/**
 * Your own curve of resistance against state of charge, checked. Factors refer to half charge, so that they are 1 there.
 *
 * @param options - name, source, states of charge (0 to 1, rising), and factors (above 0), one for each
 * @returns the curve, frozen, with its own copy of the numbers
 * @throws InputError as {@link openCircuitCurve}; `NOT_VALID_HERE` when the factor at half charge is not 1 within 2 %
 * @example
 * resistanceCurve({
 *   ...{ name: "own cell", source: { document: "own measurement", status: "seen" } },
 *   ...{ stateOfCharge: [0, 0.5, 1], factor: [2.5, 1, 1.1] },
 * }).factor[0]; // 2.5
 */
export function resistanceCurve(options: ResistanceCurve): ResistanceCurve {
  const labels = readLabels("resistanceCurve", options, ["stateOfCharge", "factor"]);
  return Object.freeze({ ...labels, ...chargeFactors("", options) });
}

/**
 * Your own table of resistance against temperature, checked. Factors refer to 25 °C, so that they are 1 there.
 *
 * @param options - name, source, temperatures in °C (rising), and factors (above 0), one for each
 * @returns the table, frozen, with its own copy of the numbers
 * @throws InputError as {@link openCircuitCurve}; `NOT_VALID_HERE` when the factor at 25 °C is not 1 within 2 %
 * @example
 * resistanceTable({
 *   ...{ name: "own cell", source: { document: "own measurement", status: "seen" } },
 *   ...{ temperature: [-10, 25, 45], factor: [4, 1, 0.7] },
 * }).factor.at(-1); // 0.7
 */
export function resistanceTable(options: ResistanceAgainstTemperature): ResistanceAgainstTemperature {
  const labels = readLabels("resistanceTable", options, ["temperature", "factor"]);
  return Object.freeze({ ...labels, ...temperatureFactors("", options) });
}

function readLabels(where: string, options: object, lists: readonly string[]): { name: string; source: Source } {
  readOptions(where, options, {}, ["name", "source", ...lists]);
  const { name, source } = options as { readonly name: string; readonly source: Source };
  return { name: readText("name", name) as string, source: readSource(source) as Source };
}
