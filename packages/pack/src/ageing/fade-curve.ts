import { describeGiven, InputError, nearest, readOptions, type Source } from "@tarewatt/units";
import { isArray } from "../check/is-array.js";
import { readPart } from "../check/read-part.js";
import { neverTurns, readPoints, readRising, sameLength } from "../check/read-points.js";
import { readSource } from "../check/read-source.js";
import { readText } from "../check/read-text.js";

/** What a fade curve is drawn against. */
export type FadeAxis = "years" | "equivalent cycles";

/** Capacity left against years or cycles, as somebody knows it: from a warranty, a data sheet, a fleet. */
export interface FadeCurve {
  /** What it is of, in words. */
  readonly name: string;
  /** What `at` counts. */
  readonly against: FadeAxis;
  /** Years or full equivalent cycles, strictly rising from 0. */
  readonly at: readonly number[];
  /** Capacity left over that when new, 0 to 1; it never rises. */
  readonly left: readonly number[];
  /** Resistance over that when new, one for each; absent when it is not known. It never falls. */
  readonly resistance?: readonly number[];
  /** Where it is from. */
  readonly source?: Source;
}

/** Options of {@link fadeCurve}. */
export interface FadeCurveOptions {
  /** What `at` counts. */
  readonly against: FadeAxis;
  /** Years or full equivalent cycles, strictly rising from 0. */
  readonly at: readonly number[];
  /** Capacity left over that when new, more than 0, at most 1; it never rises. */
  readonly left: readonly number[];
  /** Resistance over that when new, at least 1; it never falls. */
  readonly resistance?: readonly number[] | undefined;
  /** What it is of, in words. */
  readonly name?: string | undefined;
  /** Where it is from. */
  readonly source?: Source | undefined;
}

const axes: readonly FadeAxis[] = ["years", "equivalent cycles"];

/**
 * A fade curve of your own, which {@link fadeOverYears} shows beside the published models. It is not continued beyond its
 * last point.
 *
 * @param options - capacity left, and resistance if known, against years or full equivalent cycles
 * @returns the curve, frozen
 * @throws InputError `INCONSISTENT` when it does not begin at 0, when capacity rises or resistance falls; `NOT_A_FRACTION`,
 *   `NEGATIVE`,
 *   `OUT_OF_RANGE`, `WRONG_CHOICE`, `EMPTY`, `TOO_LONG`, `UNKNOWN_OPTION`, `MISSING_OPTION`
 * @example
 * const fleet = fadeCurve({ against: "years", at: [0, 2, 8], left: [1, 0.95, 0.86], name: "an invented fleet" });
 * fleet.left.at(-1); // 0.86
 */
export function fadeCurve(options: FadeCurveOptions): FadeCurve {
  readOptions("fadeCurve", options, {}, ["against", "at", "left", "resistance?", "name?", "source?"]);
  const against = readAxis(options.against);
  const at = readRising("at", options.at, { unit: "1", atLeast: 0 });
  if (at[0] !== 0)
    throw new InputError("INCONSISTENT", `at must begin with 0, when the battery was new: got ${at[0]}`, {});
  const left = readPoints("left", options.left, { unit: "1", above: 0, atMost: 1 });
  sameLength("left", left, "at", at);
  neverTurns("left", left, "must not rise with age", (before, after) => after > before);
  const resistance =
    options.resistance === undefined
      ? undefined
      : readPoints("resistance", options.resistance, { unit: "1", atLeast: 1 });
  if (resistance !== undefined) {
    sameLength("resistance", resistance, "at", at);
    neverTurns("resistance", resistance, "must not fall with age", (before, after) => after < before);
  }
  const source = readSource(options.source);
  return Object.freeze({
    name: readText("name", options.name) ?? "own fade curve",
    against,
    at,
    left,
    ...(resistance && { resistance }),
    ...(source && { source }),
  });
}

function readAxis(against: unknown): FadeAxis {
  const known = axes.find((axis) => axis === against);
  if (known !== undefined) return known;
  const [near] = typeof against === "string" ? nearest(against, axes) : [];
  const hint = near === undefined ? 'it is "years" or "equivalent cycles"' : `did you mean "${near}"?`;
  throw new InputError("WRONG_CHOICE", `against cannot be ${describeGiven(against)}: ${hint}`, { known: axes });
}

/** @internal Curves, read again: they may be copies, or have been changed by hand. */
export function readFadeCurves(given: unknown): readonly FadeCurve[] {
  if (given === undefined) return [];
  if (isArray(given)) return given.map((each, i) => fadeCurve(readPart(`curves[${i}]`, each) as unknown as FadeCurve));
  throw new InputError("WRONG_CHOICE", `curves must be an array: got ${describeGiven(given)}`, { name: "curves" });
}
