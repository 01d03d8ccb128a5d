import { InputError, readOptions, type Source } from "@tarewatt/units";
import { assertPairs, assertRising, readNumbers } from "../check/read-numbers.js";
import { readSource } from "../check/read-source.js";
import { readText } from "../check/read-text.js";
import type { OpenCircuitCurve, ResistanceAgainstTemperature, ResistanceCurve } from "./curve.js";

/** A cell of any chemistry in use stays below this, in V: more is a slip of unit. */
const HIGHEST_VOLTAGE = 6;

/** A curve that spans less of the charge cannot stand for a cell from empty to full. */
const FROM_EMPTY_TO_FULL = { empty: 0.05, full: 0.95 } as const;

/** No published cell has changed its resistance by more than this, in either direction. */
const FACTORS = { atLeast: 0.001, atMost: 1000 } as const;

/** States of charge, whole range. */
const CHARGE = { atLeast: 0, atMost: 1, rising: true } as const;

/** Temperatures that a cell can meet, in °C. */
const TEMPERATURES = { atLeast: -60, atMost: 120, unit: "°C", rising: true } as const;

/**
 * Your own open-circuit voltage curve of a cell, checked: it may be used wherever a published one may.
 *
 * States of charge are numbers from 0 to 1 that rise; they must reach from 0.05 or less to 0.95 or more. Voltages are numbers
 * in V, one for each, and never fall: a curve measured with noise has to be smoothed first.
 *
 * @param options - name, source, states of charge and voltages
 * @returns the curve, frozen, with its own copy of the numbers
 * @throws InputError `INCONSISTENT` when the numbers do not rise or do not pair, `OUT_OF_RANGE`, `NOT_A_NUMBER`,
 *   `NOT_VALID_HERE` when the curve does not reach from empty to full, `WRONG_CHOICE`, `MISSING_OPTION`, `UNKNOWN_OPTION`
 * @example
 * const curve = openCircuitCurve({
 *   ...{ name: "own cell, C/25", source: { document: "own measurement", status: "seen" } },
 *   ...{ stateOfCharge: [0, 0.5, 1], voltage: [3, 3.7, 4.2] },
 * });
 * meanOpenCircuitVoltage(curve); // 3.65 V
 */
export function openCircuitCurve(options: OpenCircuitCurve): OpenCircuitCurve {
  const labels = readLabels("openCircuitCurve", options, ["stateOfCharge", "voltage"]);
  const stateOfCharge = readNumbers("stateOfCharge", options.stateOfCharge, CHARGE);
  const voltage = readNumbers("voltage", options.voltage, { atLeast: 0, atMost: HIGHEST_VOLTAGE, unit: "V" });
  assertPairs("stateOfCharge", stateOfCharge, "voltage", voltage);
  assertRising("voltage", voltage, true);
  const [first = 1] = stateOfCharge;
  const last = stateOfCharge.at(-1) ?? 0;
  if (first > FROM_EMPTY_TO_FULL.empty || last < FROM_EMPTY_TO_FULL.full) {
    throw new InputError(
      "NOT_VALID_HERE",
      `stateOfCharge must reach from empty to full, 0.05 or less to 0.95 or more: got ${first} to ${last}`,
      { first, last },
    );
  }
  return Object.freeze({ ...labels, stateOfCharge, voltage });
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
  const stateOfCharge = readNumbers("stateOfCharge", options.stateOfCharge, CHARGE);
  const factor = readNumbers("factor", options.factor, FACTORS);
  assertPairs("stateOfCharge", stateOfCharge, "factor", factor);
  assertOneAt(0.5, "a state of charge of 0.5", stateOfCharge, factor);
  return Object.freeze({ ...labels, stateOfCharge, factor });
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
  const temperature = readNumbers("temperature", options.temperature, TEMPERATURES);
  const factor = readNumbers("factor", options.factor, FACTORS);
  assertPairs("temperature", temperature, "factor", factor);
  assertOneAt(25, "25 °C", temperature, factor);
  return Object.freeze({ ...labels, temperature, factor });
}

function readLabels(where: string, options: object, lists: readonly string[]): { name: string; source: Source } {
  readOptions(where, options, {}, ["name", "source", ...lists]);
  const { name, source } = options as { readonly name: string; readonly source: Source };
  return { name: readText("name", name) as string, source: readSource(source) as Source };
}

/** Factors that refer to another point than they should would scale every result. */
function assertOneAt(x: number, place: string, xs: readonly number[], factors: readonly number[]): void {
  const value = interpolated(xs, factors, x);
  if (value !== undefined && Math.abs(value - 1) <= 0.02) return;
  const got = value === undefined ? "the table does not reach there" : `it is ${Number(value.toPrecision(3))}`;
  throw new InputError("NOT_VALID_HERE", `factor must be 1 at ${place}, what it refers to: ${got}`, { place });
}

function interpolated(xs: readonly number[], ys: readonly number[], x: number): number | undefined {
  const above = xs.findIndex((each) => each >= x);
  const [x1, y1] = [xs[above], ys[above]];
  if (x1 === undefined || y1 === undefined) return undefined;
  if (x1 === x) return y1;
  const [x0, y0] = [xs[above - 1], ys[above - 1]];
  return x0 === undefined || y0 === undefined ? undefined : y0 + ((y1 - y0) * (x - x0)) / (x1 - x0);
}
