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
import { leastSquares } from "./least-squares.js";

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
const HIGHEST_COEFFICIENT = 0.5;

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

/** Options of {@link fitTyres}. */
export interface FitTyresOptions {
  /** What they are, in words. */
  readonly name: string;
  /**
   * Rolling resistance coefficient at a speed.
   * @param speed - speed in m/s
   */
  readonly coefficientAt: (speed: number) => number;
  /** Speed up to which the fit shall hold, in m/s, 5 to 100; 40 when left out. */
  readonly upToSpeed?: number | undefined;
  /** Where they are from. */
  readonly source: Source;
}

/** Into how many equal parts the speeds of a fit are cut. */
const FIT_STEPS = 100;
/** A fit that is worse than this somewhere is said to be: common practice, no source. */
const POOR_FIT = 0.02;

/**
 * Tyres from any curve of c_rr over speed: the parabola nearest to it, with the largest error of the fit.
 *
 * @param options - name, curve, range of speeds, source
 * @returns tyres with `fit`; with a warning where the parabola is more than 2 % off
 * @throws InputError `NOT_A_NUMBER` when the curve gives no finite number, `OUT_OF_RANGE`, `WRONG_CHOICE`, and what `readOptions`
 *   throws
 * @example
 * const source = { document: "invented", status: "definition" } as const;
 * const own = fitTyres({ name: "steep", coefficientAt: (v) => 0.008 + 1e-7 * v ** 2.5, source });
 * own.fit?.largestError; // 0.003...
 */
export function fitTyres(options: FitTyresOptions): Tyres {
  const { upToSpeed = 40 } = readOptions(
    "fitTyres",
    options,
    { upToSpeed: { unit: "1", atLeast: 5, atMost: 100, optional: true } },
    ["name", "coefficientAt", "source"],
  );
  const { coefficientAt, source } = options;
  const name = readWords("name", options.name);
  sourceLine(source);
  if (typeof coefficientAt !== "function") {
    throw new InputError("WRONG_CHOICE", `coefficientAt must be a function: got ${describeGiven(coefficientAt)}`, {
      name: "coefficientAt",
    });
  }
  const speeds = Float64Array.from({ length: FIT_STEPS + 1 }, (_, i) => (upToSpeed * i) / FIT_STEPS);
  const wanted = speeds.map((speed) => asked(coefficientAt, speed));
  const columns = [0, 1, 2].map((power) => speeds.map((speed) => speed ** power));
  const [constant = 0, linear = 0, quadratic = 0] = leastSquares(columns, wanted)?.solution ?? [];
  const three = [constant, linear, quadratic] as const;
  const fit = Array.from(speeds, (atSpeed, i): TyreFit => {
    const truth = wanted[i] as number;
    return { largestError: Math.abs(parabola(three, atSpeed) / truth - 1), atSpeed, upToSpeed };
  }).reduce((a, b) => (b.largestError > a.largestError ? b : a));
  const poor = `the parabola for '${name}' is up to ${(100 * fit.largestError).toFixed(1)} % off below ${upToSpeed} m/s`;
  return Object.freeze({
    ...madeTyres(name, three, source),
    fit: Object.freeze(fit),
    warnings: Object.freeze(fit.largestError > POOR_FIT ? [poor] : []),
  });
}

function asked(coefficientAt: FitTyresOptions["coefficientAt"], speed: number): number {
  let given: unknown;
  try {
    given = coefficientAt(speed);
  } catch (reason) {
    const why = reason instanceof Error ? reason.message : describeGiven(reason);
    throw new InputError("WRONG_CHOICE", `coefficientAt failed at ${speed} m/s: ${why}`, { speed });
  }

  if (typeof given === "number" && given > 0 && given <= HIGHEST_COEFFICIENT) return given;
  throw new InputError(
    typeof given === "number" && Number.isFinite(given) ? "OUT_OF_RANGE" : "NOT_A_NUMBER",
    `coefficientAt must give a coefficient above 0 and at most ${HIGHEST_COEFFICIENT}: got ${describeGiven(given)} at ${speed} m/s`,
    { speed },
  );
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
