import { InputError, readOptions } from "@tarewatt/units";
import type { LowLikelyHigh } from "../evidence/forms.js";
import { studentT90 } from "../mass/student.js";
import { recordNumbersOf, type VehicleRecord } from "./vehicle-record.js";

/** What {@link fitSizeEffect} needs. */
export interface FitSizeEffectOptions {
  /** At least four vehicles of which curb mass, pack mass, length and width are known; others are left out. */
  readonly records: readonly VehicleRecord[];
}

/**
 * How the base mass grows with length times width, fitted to the vehicles at hand: the slope of a straight line through the logarithms,
 * by least squares, with its standard error and Student's t (any textbook of statistics, from memory).
 *
 * @param options - the vehicles
 * @returns relative change of the base mass for each relative change of the area, as evidence for the rules of adjustments
 * @throws InputError `EMPTY` for fewer than four usable vehicles, `NOT_VALID_HERE` when they are all of one size
 * @example
 * const car = (name: string, length: number, mass: number) =>
 *   ({ name, curbMass: quantity(mass, "kg"), packMass: q("500 kg"), length: quantity(length, "m"), width: q("2 m") });
 * const records = [car("a", 4, 1900), car("b", 4.4, 2050), car("c", 4.7, 2110), car("d", 5, 2240)];
 * fitSizeEffect({ records }).likely; // 0.94
 */
export function fitSizeEffect(options: FitSizeEffectOptions): LowLikelyHigh<number> {
  readOptions("fitSizeEffect", options, {}, ["records"]);
  const given: unknown = options.records;
  if (!Array.isArray(given)) throw new InputError("WRONG_CHOICE", "records must be a list of vehicles", {});
  const points = Array.from(given as readonly VehicleRecord[], recordNumbersOf).flatMap(
    ({ curbMass, packMass, length, width }) =>
      packMass === undefined || length === undefined || width === undefined || packMass >= curbMass
        ? []
        : [{ x: Math.log(length * width), y: Math.log(curbMass - packMass) }],
  );
  const n = points.length;
  if (n < 4) {
    throw new InputError(
      "EMPTY",
      `fitSizeEffect needs four vehicles with curb mass, pack mass, length and width: got ${n}`,
      { usable: n },
    );
  }
  const mean = (of: "x" | "y"): number => points.reduce((sum, point) => sum + point[of], 0) / n;
  const [x0, y0] = [mean("x"), mean("y")];
  const sxx = points.reduce((sum, { x }) => sum + (x - x0) ** 2, 0);
  if (sxx < 1e-6) throw new InputError("NOT_VALID_HERE", "the vehicles are all of one size: it shows no effect", {});
  const slope = points.reduce((sum, { x, y }) => sum + (x - x0) * (y - y0), 0) / sxx;
  const squares = points.reduce((sum, { x, y }) => sum + (y - y0 - slope * (x - x0)) ** 2, 0);
  const halfWidth = studentT90(n - 2) * Math.sqrt(squares / (n - 2) / sxx);
  return Object.freeze({
    low: slope - halfWidth,
    likely: slope,
    high: slope + halfWidth,
    grade: "derived",
    source: `fitted to ${n} vehicles`,
  });
}
