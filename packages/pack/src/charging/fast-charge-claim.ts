import {
  type Energy,
  InputError,
  type NumberRule,
  type Power,
  type Quantity,
  quantity,
  type Ratio,
  readOptions,
  type Step,
  type Temperature,
  type Time,
} from "@tarewatt/units";
import { assertWindow, STATE } from "./charge-options.js";
import { claimDoubts } from "./claim-doubts.js";
import { meanRateAlong } from "./over-window.js";
import { percentileAmong, type RatesAlong, type Standing, standingAlong } from "./percentile.js";
import { publishedAcceptance } from "./published-acceptance.js";
import { againstRange, type RateRange, type RateRangeStanding } from "./rate-range.js";
import { chargeRate, meanChargingPower } from "./relations.js";

/** Options of {@link fastChargeClaim}. */
export interface FastChargeClaimOptions {
  /** State of charge that the claim begins at, 0 to 1. */
  readonly from: number | Quantity<Ratio>;
  /** State of charge that it ends at, above `from`. */
  readonly to: number | Quantity<Ratio>;
  /** Time that it names. Greater than zero. */
  readonly time: Quantity<Time>;
  /** Usable energy, when it is known: powers need it. Greater than zero. */
  readonly usableEnergy?: Quantity<Energy> | undefined;
  /** Peak power that was announced. Greater than zero. */
  readonly peakPower?: Quantity<Power> | undefined;
  /** Temperature of the battery that the claim names. */
  readonly temperature?: Quantity<Temperature> | undefined;
  /** Mean C-rates of its chemistry or class, with their source, to be set beside the claim: none by chemistry is published here. */
  readonly rateRange?: RateRange | undefined;
}

/** What an announced charging time means. */
export interface FastChargeClaim {
  /** Mean C-rate by power over usable energy, in 1/h. */
  readonly meanRate: number;
  /** Energy gained; absent when the usable energy is not known. */
  readonly energy?: Quantity<Energy>;
  /** Mean power at the battery; absent when the usable energy is not known. */
  readonly meanPower?: Quantity<Power>;
  /** Mean power over the announced peak; absent when one of them is not known. */
  readonly shareOfPeak?: number;
  /** Peak C-rate by power; absent when one of peak power and usable energy is not known. */
  readonly peakRate?: number;
  /**
   * Where the mean rate stands among the published curves: for about 10 to 80 % among their own mean rates; over another window among
   * those along their quantiles, which lie further apart, since no vehicle follows them.
   */
  readonly speed: Standing;
  /** Mean C-rates along the published curves over the same window, in 1/h. */
  readonly alongPublished: RatesAlong;
  /** Where mean over peak stands among them: high is flat. Absent for a window other than 10 to 80 %. */
  readonly flatness?: Standing;
  /** Where the mean rate lies against the range given; absent without one. */
  readonly againstRange?: RateRangeStanding;
  /** What does not fit together, or should be asked; empty when nothing. */
  readonly warnings: readonly string[];
  /** What to keep in mind about the curves it is compared with. */
  readonly traps: readonly string[];
  /** How the figures came about. */
  working(): Step[];
}

const rules = {
  from: STATE,
  to: STATE,
  time: { unit: "h", above: 0 },
  usableEnergy: { unit: "kWh", above: 0, optional: true },
  peakPower: { unit: "kW", above: 0, optional: true },
  temperature: { unit: "°C", optional: true },
} as const satisfies Readonly<Record<string, NumberRule>>;

/** How far the ends of a window may be from 10 and 80 % and still be compared with it. */
const NEAR = 0.025;

/**
 * Turns an announced "10 to 80 % in N minutes" round, or one of any other window: mean power, mean C-rate, share of the peak, and where they stand
 * among 74 published curves of cars of 2011 to 2021.
 *
 * A claim about an unnamed part of the charge, or at an unnamed temperature, is read as it stands. Windows within 2.5 % of charge
 * of 10 to 80 % are compared with the mean rates of the curves; others with the means along their quantiles, point by point. Powers above
 * what public charging connectors allow, and rates above what packs on sale take, are named in the warnings.
 *
 * @param options - window, time, and what else is known
 * @returns the figures, with warnings for what contradicts
 * @throws InputError `INCONSISTENT` when `to` is not above `from`, or when the mean power is above the announced peak;
 *   `NEGATIVE`, `OUT_OF_RANGE`, `NOT_A_FRACTION`, `WRONG_DIMENSION`, `UNKNOWN_OPTION`, `MISSING_OPTION`
 * @example
 * const announced = { from: 0.1, to: 0.8, time: q("27 min"), usableEnergy: q("90 kWh"), peakPower: q("200 kW") };
 * const claim = fastChargeClaim(announced);
 * claim.meanPower; // 140 kW
 * claim.meanRate.toFixed(2); // "1.56"
 * claim.speed?.inWords; // "faster than 72 % of 74 published curves"
 */
export function fastChargeClaim(options: FastChargeClaimOptions): FastChargeClaim {
  const { from, to, time, usableEnergy, peakPower, temperature } = readOptions("fastChargeClaim", options, rules, [
    "rateRange?",
  ]);
  assertWindow(from, to);
  const meanRate = (to - from) / time;
  const energy = usableEnergy === undefined ? undefined : quantity(usableEnergy * (to - from), "kWh");
  const forPower = energy && { energy, time: options.time };
  const meanPower = forPower && meanChargingPower(forPower);
  const shareOfPeak = meanPower && peakPower !== undefined ? meanPower.in("kW") / peakPower : undefined;
  if (shareOfPeak !== undefined && shareOfPeak > 1 + 1e-9) {
    throw new InputError(
      "INCONSISTENT",
      `the time asks for ${meanPower?.format()} in the mean, more than the announced peak of ${options.peakPower}: ` +
        "check the window, the usable energy, and whether both claims are about one version",
      { meanPower, peakPower: options.peakPower },
    );
  }
  const forPeak = options.usableEnergy &&
    options.peakPower && { power: options.peakPower, usableEnergy: options.usableEnergy };
  const peakRate = forPeak && chargeRate(forPeak).in("1/h");
  const { meanRate: rates, meanOverPeak } = publishedAcceptance.from10To80;
  const comparable = Math.abs(from - 0.1) <= NEAR && Math.abs(to - 0.8) <= NEAR;
  const alongPublished = Object.freeze({
    p10: meanRateAlong(publishedAcceptance.p10, from, to),
    median: meanRateAlong(publishedAcceptance.median, from, to),
    p90: meanRateAlong(publishedAcceptance.p90, from, to),
  });
  const speed = comparable
    ? percentileAmong(meanRate, rates, "faster", "slower")
    : standingAlong(meanRate, alongPublished);
  const range = options.rateRange === undefined ? undefined : againstRange(meanRate, options.rateRange);
  const flatness =
    comparable && shareOfPeak !== undefined
      ? percentileAmong(shareOfPeak, meanOverPeak, "flatter", "more peaked")
      : undefined;
  return Object.freeze({
    meanRate,
    ...(energy && { energy }),
    ...(meanPower && { meanPower }),
    ...(shareOfPeak !== undefined && { shareOfPeak }),
    ...(peakRate !== undefined && { peakRate }),
    speed,
    alongPublished,
    ...(flatness && { flatness }),
    ...(range && { againstRange: range }),
    warnings: Object.freeze(
      claimDoubts({
        meanRate,
        peakRate,
        meanPower,
        peakPower: options.peakPower,
        comparable,
        speed,
        flatness,
        temperature,
        range,
        fastest: comparable ? rates.p90 : alongPublished.p90,
      }),
    ),
    traps: publishedAcceptance.traps,
    working: () => [
      ...(forPower ? [meanChargingPower.explain(forPower)] : []),
      ...(meanPower && options.usableEnergy
        ? [chargeRate.explain({ power: meanPower, usableEnergy: options.usableEnergy })]
        : []),
      ...(forPeak ? [chargeRate.explain(forPeak)] : []),
    ],
  });
}
