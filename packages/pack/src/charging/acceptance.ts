import {
  type Energy,
  InputError,
  type NumberRule,
  type Power,
  type Quantity,
  readNumber,
  readOptions,
  type Source,
} from "@tarewatt/units";
import { isArray } from "../check/is-array.js";
import { readPart } from "../check/read-part.js";
import { readPoints, readStates, sameLength } from "../check/read-points.js";
import { readSource } from "../check/read-source.js";
import { readText } from "../check/read-text.js";
import { FASTEST_RATE } from "./fastest-rate.js";

/** The most that a battery takes against its state of charge. */
export interface AcceptanceCurve {
  /** What it is of, in words. */
  readonly name: string;
  /** States of charge, 0 to 1, strictly rising. */
  readonly stateOfCharge: readonly number[];
  /** C-rate by power: the most it takes at the battery, over its usable energy, in 1/h. */
  readonly rate: readonly number[];
  /** Where it is from. */
  readonly source?: Source;
  /** What is doubtful about it; empty when nothing is. */
  readonly warnings: readonly string[];
}

/** Options of {@link acceptanceCurve}: `rate`, or `power` with `usableEnergy`. */
export interface AcceptanceCurveOptions {
  /** States of charge, 0 to 1, strictly rising, from 0 to 1. */
  readonly stateOfCharge: readonly number[];
  /** C-rate at each, power over usable energy, in 1/h. Not negative. */
  readonly rate?: readonly number[] | undefined;
  /** Power at each, at the battery. Not negative. */
  readonly power?: readonly Quantity<Power>[] | undefined;
  /** Usable energy that the powers belong to. Greater than zero. */
  readonly usableEnergy?: Quantity<Energy> | undefined;
  /** What it is of, in words. */
  readonly name?: string | undefined;
  /** Where it is from. */
  readonly source?: Source | undefined;
}

const RATE = { unit: "1", atLeast: 0, atMost: 100 } as const satisfies NumberRule;
/** By how much a curve may rise above the least after its peak before it is doubted: readings scatter. */
const SCATTER = 1.1;

/**
 * A charging curve of your own: how much a battery takes at each state of charge.
 *
 * Between the points it is a straight line. A curve that rises again after it has fallen, or that is far above what packs
 * take, is doubted in its `warnings`: readings of a cold battery or of a shared station look like that.
 *
 * @param options - states of charge, and rates or powers
 * @returns the curve, frozen
 * @throws InputError `INCONSISTENT` when states do not rise from 0 to 1, when points do not pair, or for both rate and
 *   power or neither;
 *   `NEGATIVE`, `NOT_A_FRACTION`, `OUT_OF_RANGE`, `WRONG_CHOICE`, `EMPTY`, `TOO_LONG`, `UNKNOWN_OPTION`, `MISSING_OPTION`
 * @example
 * const curve = acceptanceCurve({ stateOfCharge: [0, 0.5, 0.8, 1], rate: [1.8, 1.6, 0.9, 0.1] });
 * curve.warnings.length; // 0
 */
export function acceptanceCurve(options: AcceptanceCurveOptions): AcceptanceCurve {
  const rules = { usableEnergy: { unit: "kWh", above: 0, optional: true } } as const satisfies Readonly<
    Record<string, NumberRule>
  >;
  const { usableEnergy } = readOptions("acceptanceCurve", options, rules, [
    ...["stateOfCharge", "rate?", "power?", "name?", "source?"],
  ]);
  const stateOfCharge = readStates("stateOfCharge", options.stateOfCharge);
  const rate = readRates(options, usableEnergy);
  sameLength(options.rate === undefined ? "power" : "rate", rate, "stateOfCharge", stateOfCharge);
  const source = readSource(options.source);
  return Object.freeze({
    name: readText("name", options.name) ?? "own charging curve",
    stateOfCharge,
    rate,
    ...(source && { source }),
    warnings: Object.freeze(doubts(stateOfCharge, rate)),
  });
}

function readRates({ rate, power }: AcceptanceCurveOptions, usableEnergy: number | undefined): readonly number[] {
  if ((rate === undefined) === (power === undefined)) {
    throw new InputError("INCONSISTENT", "acceptanceCurve takes either rate or power: give one of them", {});
  }
  if (rate !== undefined) {
    if (usableEnergy !== undefined) {
      throw new InputError("INCONSISTENT", "usableEnergy belongs to power: with rate leave it out", {});
    }
    return readPoints("rate", rate, RATE);
  }
  if (usableEnergy === undefined) {
    throw new InputError("MISSING_OPTION", "acceptanceCurve needs the option 'usableEnergy' with power", {
      option: "usableEnergy",
    });
  }
  const rates = readPoints("power", power, { unit: "kW", atLeast: 0 }).map((kilowatts) => kilowatts / usableEnergy);
  return Object.freeze(rates.map((each) => readNumber("power over usableEnergy", each, RATE)));
}

function doubts(states: readonly number[], rates: readonly number[]): string[] {
  const peak = Math.max(...rates);
  const found: string[] = [];
  let least = peak;
  for (let i = rates.indexOf(peak) + 1; i < rates.length; i++) {
    const rate = rates[i] as number;
    if (rate > least * SCATTER && rate > least + 0.02 * peak) {
      found.push(
        `the power rises again at a state of charge of ${states[i]} after it has fallen: a battery tapers, so check the ` +
          "reading, the temperature, and whether the station was shared",
      );
      break;
    }
    least = Math.min(least, rate);
  }
  if (peak > FASTEST_RATE) {
    found.push(
      `a C-rate of ${Number(peak.toPrecision(3))} is above what packs on sale take (common practice): check power and energy`,
    );
  }
  if ((rates.at(-1) as number) > 0.9 * peak)
    found.push("the power does not taper towards full: a battery must, above its last tenth");
  return found;
}

/** @internal A curve, read again: it may be a copy, or have been changed by hand. What it was doubted for stays. */
export function readAcceptance(given: AcceptanceCurve): AcceptanceCurve {
  const { stateOfCharge, rate, name, source, warnings } = readPart("acceptance", given) as Partial<AcceptanceCurve>;
  const curve = acceptanceCurve({ stateOfCharge, rate, name, source } as AcceptanceCurveOptions);
  const before = isArray(warnings) ? warnings.filter((each) => typeof each === "string") : [];
  return Object.freeze({ ...curve, warnings: Object.freeze([...new Set([...before, ...curve.warnings])]) });
}
