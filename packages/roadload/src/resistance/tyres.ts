import {
  describeGiven,
  type Force,
  InputError,
  type Quantity,
  readNumber,
  readOptions,
  type Source,
  sourceLine,
} from "@tarewatt/units";
import { readWords } from "../check/read-words.js";
import { fitTyres } from "./fit-tyres.js";

/** How well three coefficients follow a curve that is no parabola. */
export interface TyreFit {
  /** Largest difference in the rolling resistance coefficient, as a part of it. */
  readonly largestError: number;
  /** Speed where it is, in m/s. */
  readonly atSpeed: number;
  /** Speed up to which the fit was made, in m/s. */
  readonly upToSpeed: number;
}

/**
 * Tyres whose rolling resistance coefficient changes with speed: c_rr = c_0 + c_1·v + c_2·v², with v in m/s. Made by
 * {@link tyres}, {@link fitTyres} and the published forms.
 */
export interface Tyres {
  /** What they are, in words. */
  readonly name: string;
  /** Coefficients, per (m/s)⁰, per m/s and per (m/s)². */
  readonly coefficients: readonly [constant: number, linear: number, quadratic: number];
  /** Load on all of them together that they are known for, where it matters: at another one they resist otherwise. */
  readonly load?: Quantity<Force>;
  /** How well they follow the curve that was given; left out where they are the curve itself. */
  readonly fit?: TyreFit;
  /** Where they are from. */
  readonly source: Source;
  /** What a reader should doubt; empty when there is nothing. */
  readonly warnings: readonly string[];
}

/** Options of {@link tyres}. */
export interface TyresOptions {
  /** What they are, in words. */
  readonly name: string;
  /** Rolling resistance coefficient at standstill, and its change per m/s and per (m/s)². */
  readonly coefficients: readonly [constant: number, linear: number, quadratic: number];
  /** Where they are from. */
  readonly source: Source;
}

/** Speed up to which a coefficient must be sensible, in m/s. */
const FAST = 50;

/** @internal */
export const HIGHEST_COEFFICIENT = 0.5;

/**
 * Tyres from the three coefficients of a parabola: the form that a road load takes exactly.
 *
 * @param options - name, coefficients for speed in m/s, source
 * @returns tyres for `roadLoadOnTyres`
 * @throws InputError `OUT_OF_RANGE` when c_rr leaves 0 to 0.5 below 50 m/s, `NOT_A_NUMBER`, `WRONG_CHOICE`, and what `readOptions`
 *   throws
 * @example
 * const own = tyres({
 *   name: "of a test", coefficients: [0.008, 1e-5, 1e-6], source: { document: "own measurement", status: "seen" },
 * });
 * tyreCoefficientAt(own, q("100 km/h")); // 0.00905
 */
export function tyres(options: TyresOptions): Tyres {
  readOptions("tyres", options, {}, ["name", "coefficients", "source"]);
  const { coefficients, source } = options;
  sourceLine(source);
  return madeTyres(readWords("name", options.name), readThree(coefficients), source);
}

function readThree(given: unknown): readonly [number, number, number] {
  if (!Array.isArray(given) || given.length !== 3) {
    throw new InputError("WRONG_CHOICE", `coefficients must be three numbers: got ${describeGiven(given)}`, {
      name: "coefficients",
    });
  }
  for (const value of given as unknown[]) {
    if (typeof value === "number" && Number.isFinite(value)) continue;
    throw new InputError("NOT_A_NUMBER", `coefficients must be finite numbers: got ${describeGiven(value)}`, {
      name: "coefficients",
    });
  }
  return [given[0] as number, given[1] as number, given[2] as number];
}

/** @internal */
export function parabola([constant, linear, quadratic]: Tyres["coefficients"], speed: number): number {
  return constant + (linear + quadratic * speed) * speed;
}

/** Tyres from checked parts, when their coefficient is sensible at every road speed. @internal */
export function madeTyres(
  name: string,
  coefficients: Tyres["coefficients"],
  source: Source,
  warnings: readonly string[] = [],
): Tyres {
  const [, linear, quadratic] = coefficients;
  const turn = quadratic === 0 ? 0 : Math.min(Math.max(-linear / (2 * quadratic), 0), FAST);
  for (const speed of [0, turn, FAST]) {
    const value = parabola(coefficients, speed);
    if (value >= 0 && value <= HIGHEST_COEFFICIENT) continue;
    throw new InputError(
      "OUT_OF_RANGE",
      `the rolling resistance coefficient of '${name}' must stay within 0 and ${HIGHEST_COEFFICIENT} up to ${FAST} m/s: got ` +
        `${value} at ${speed} m/s; coefficients are for speed in m/s`,
      { speed, value },
    );
  }
  return Object.freeze({
    name,
    coefficients: Object.freeze([...coefficients] as const),
    source: Object.freeze({ ...source }),
    warnings: Object.freeze([...warnings]),
  });
}

/** Checks tyres by what they hold, never by their class: they may come from another copy of the package. @internal */
export function readTyres(given: unknown): Tyres {
  const { name, coefficients, source, warnings, load } = (given ?? {}) as Partial<Tyres>;
  if (typeof name !== "string" || !Array.isArray(warnings)) {
    throw new InputError(
      "WRONG_CHOICE",
      `tyres must be made by tyres, fitTyres or a published form: got ${describeGiven(given)}`,
      {
        name: "tyres",
      },
    );
  }
  sourceLine(source as Source);
  madeTyres(name, readThree(coefficients), source as Source);
  if (load !== undefined) readNumber("load of the tyres", load, { unit: "N", above: 0 });
  return given as Tyres;
}
