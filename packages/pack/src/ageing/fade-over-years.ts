import {
  type Energy,
  type EnergyPerDistance,
  InputError,
  type Length,
  type NumberRule,
  type Quantity,
  type Ratio,
  readOptions,
  type Temperature,
} from "@tarewatt/units";
import { rangeAdded } from "../charging/relations.js";
import { equivalentCycles } from "./equivalent-cycles.js";
import { type FadeCurve, readFadeCurves } from "./fade-curve.js";
import type { FadeOverYears } from "./fade-result.js";
import { fastChargingDoubts, penalisedBy } from "./fast-charging.js";
import { type AgeingModelName, readModels } from "./published-ageing-models.js";
import { spreadOf } from "./spread.js";
import { tracksOf } from "./tracks.js";

/** Options of {@link fadeOverYears}. */
export interface FadeOverYearsOptions {
  /** Usable energy of the new battery. Greater than zero. */
  readonly usableEnergy: Quantity<Energy>;
  /** Consumption at the battery. Greater than zero. */
  readonly consumption: Quantity<EnergyPerDistance>;
  /** Distance driven in a year. Not negative. */
  readonly distancePerYear: Quantity<Length>;
  /** Mean temperature of the cells over the year, parked time included. Heat ages more than cold saves: take a warm mean. */
  readonly temperature: Quantity<Temperature>;
  /** Whole years to look ahead, 1 to 30. */
  readonly years: number;
  /** Mean state of charge, 0 to 1; 0.6 when left out (common practice, no source). */
  readonly stateOfCharge?: number | Quantity<Ratio> | undefined;
  /** Mean depth of a cycle, 0 to 1; 0.4 when left out (common practice, no source). */
  readonly depth?: number | Quantity<Ratio> | undefined;
  /** Share of the energy that is charged fast, 0 to 1; none when left out. */
  readonly fastChargeShare?: number | Quantity<Ratio> | undefined;
  /** Mean C-rate of fast charging in 1/h; 1.27 when left out, the median of the published curves. Greater than zero. */
  readonly fastRate?: number | Quantity<Ratio> | undefined;
  /**
   * Share by which a battery that is only charged fast loses more: raises the loss of the published models in which fast charging is not
   * worse, in proportion to `fastChargeShare`, for the least of the spread alone. Your own: none is published here. Not negative.
   */
  readonly fastChargePenalty?: number | Quantity<Ratio> | undefined;
  /** Mean C-rate of slow charging in 1/h; 0.15 when left out (common practice, no source). Greater than zero. */
  readonly slowRate?: number | Quantity<Ratio> | undefined;
  /** Names of the published models to show; all of {@link publishedAgeingModels} when left out. */
  readonly models?: readonly AgeingModelName[] | undefined;
  /** Curves of your own to show beside them. See {@link fadeCurve}. */
  readonly curves?: readonly FadeCurve[] | undefined;
}

const FRACTION = { unit: "1", atLeast: 0, atMost: 1, optional: true } as const satisfies NumberRule;
const RATE = { unit: "1", above: 0, atMost: 10, optional: true } as const satisfies NumberRule;
const rules = {
  usableEnergy: { unit: "kWh", above: 0 },
  consumption: { unit: "kWh/km", above: 0 },
  distancePerYear: { unit: "km", atLeast: 0 },
  temperature: { unit: "°C", atLeast: -40, atMost: 80 },
  years: { unit: "1", atLeast: 1, atMost: 30 },
  stateOfCharge: FRACTION,
  depth: FRACTION,
  fastChargeShare: FRACTION,
  fastChargePenalty: { unit: "1", atLeast: 0, atMost: 10, optional: true },
  fastRate: RATE,
  slowRate: RATE,
} as const satisfies Readonly<Record<string, NumberRule>>;

/**
 * Energy, resistance and range left year by year, by each published model and each curve of your own: to see how far they
 * differ.
 *
 * Models are not averaged, because they are of different cells; the spread shows the least and the most of those that hold
 * both time and cycling, the others stand as tracks only. None is a forecast: all published ones were fitted to small cells
 * of years ago, and each track, and each of its points, says where it is used outside its fit. Consumption is held constant.
 *
 * @param options - battery, use, years, and which models and curves to show
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`, `NOT_A_FRACTION`, `WRONG_DIMENSION`, `WRONG_CHOICE`, `EMPTY`,
 *   `UNKNOWN_OPTION`, `MISSING_OPTION`
 * @example
 * const vehicle = { usableEnergy: q("90 kWh"), consumption: q("200 Wh/km"), distancePerYear: q("20000 km") };
 * const fade = fadeOverYears({ ...vehicle, temperature: q("20 °C"), years: 8, fastChargeShare: 0.2 });
 * fade.equivalentCyclesPerYear.toFixed(1); // "44.4"
 * fade.spread.at(-1)?.left.least.toFixed(2); // "0.80"
 */
export function fadeOverYears(options: FadeOverYearsOptions): FadeOverYears {
  const read = readOptions("fadeOverYears", options, rules, ["models?", "curves?"]);
  const { temperature, stateOfCharge = 0.6, depth = 0.4, fastChargeShare = 0, fastRate = 1.27, slowRate = 0.15 } = read;
  const { years, fastChargePenalty } = read;
  if (!Number.isInteger(years)) throw new InputError("OUT_OF_RANGE", `years must be whole: got ${years}`, { years });
  const models = readModels(options.models);
  const curves = readFadeCurves(options.curves);
  if (models.length + curves.length === 0) {
    throw new InputError(
      "EMPTY",
      "fadeOverYears needs a model or a curve: leave models out to see all published ones",
      {},
    );
  }
  const { usableEnergy, consumption, distancePerYear } = options;
  const forCycles = { distance: distancePerYear, consumption, usableEnergy };
  const perYear = equivalentCycles(forCycles);
  const forRange = { energy: usableEnergy, consumption };
  const newRange = rangeAdded(forRange).in("km");
  const rate = fastChargeShare * fastRate + (1 - fastChargeShare) * slowRate;
  const use = { temperature, stateOfCharge, depth, rate };
  const fast = fastChargeShare > 0 && rate > slowRate;
  const given = { models, curves, use, slowRate, fast, perYear, years };
  const tracks = tracksOf({ ...given, usableEnergy: read.usableEnergy, newRange });
  return Object.freeze({
    equivalentCyclesPerYear: perYear,
    meanRate: rate,
    tracks,
    spread: spreadOf(tracks, years, penalisedBy(fastChargePenalty ?? 0, fastChargeShare)),
    warnings: Object.freeze([
      "no forecast: published models were fitted to small cells of years ago, and they disagree",
      ...fastChargingDoubts(tracks, fastChargePenalty),
      ...(fastChargeShare > 0.5
        ? ["most of the energy is charged fast: what that does to large cells at their temperature no model here knows"]
        : []),
      ...(temperature < 0
        ? [
            "the mean of the cells lies below 0 °C: charging then plates lithium, which no model here knows; less is left",
          ]
        : []),
      ...(tracks.some(({ covers }) => covers === "time and cycling")
        ? []
        : ["no model or curve of time and cycling is shown: there is no spread"]),
    ]),
    working: () => [equivalentCycles.explain(forCycles), rangeAdded.explain(forRange)],
  });
}
