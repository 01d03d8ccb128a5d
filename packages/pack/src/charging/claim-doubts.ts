import type { Power, Quantity } from "@tarewatt/units";
import { FASTEST_RATE } from "./fastest-rate.js";
import type { Standing } from "./percentile.js";
import type { RateRangeStanding } from "./rate-range.js";
import { directSupplyLimits } from "./standard-supplies.js";
import { COOL, publishedCold } from "./temperature-doubts.js";

/** @internal What a claim about a fast charge is doubted by. */
export interface ClaimFigures {
  readonly meanRate: number;
  readonly peakRate: number | undefined;
  readonly meanPower: Quantity<Power> | undefined;
  readonly peakPower: Quantity<Power> | undefined;
  /** Whether its window is that of the published curves. */
  readonly comparable: boolean;
  readonly speed: Standing;
  /** Rate that nine tenths of what is published stay below, in 1/h. */
  readonly fastest: number;
  readonly range: RateRangeStanding | undefined;
  readonly flatness: Standing | undefined;
  /** In °C. */
  readonly temperature: number | undefined;
}

/** @internal What does not fit together in a claim about a fast charge, or should be asked. */
export function claimDoubts(claim: ClaimFigures): string[] {
  const { comparable, speed, fastest, range, flatness, temperature } = claim;
  const found = [...rateDoubts(claim), ...powerDoubts(claim)];
  if (!comparable)
    found.push(
      "the window is not 10 to 80 %: it is compared with the quantiles of the published curves point by point, which are no vehicle's",
    );
  if (range !== undefined && range.place !== "within") found.push(range.inWords);
  if (speed.beyond === "above" && claim.meanRate <= FASTEST_RATE) {
    found.push(
      `a mean C-rate of ${short(claim.meanRate)} is ${percent(speed.beyondBy ?? 0)} above the 90th percentile of the published curves, ` +
        `${short(fastest)}: cars after 2021 may be faster, but ask for the station and the temperature it takes`,
    );
  }
  if (flatness?.beyond === "above") {
    found.push(
      "mean power is nearer to the peak than in nine of ten published curves: is the peak understated, or the version another?",
    );
  }
  if (flatness?.beyond === "below") {
    found.push("mean power is far below the peak: the peak lasts for moments, or the time is that of a weaker station");
  }
  if (temperature === undefined) {
    found.push(`no temperature is named, and cold batteries take less (${publishedCold.fleet})`);
  } else if (temperature < COOL) {
    found.push(
      `at ${short(temperature)} °C batteries take less unless they are heated before: ask whether this one was`,
    );
  }
  return found;
}

/** Rates that no pack on sale takes: an announced mean or peak beyond them is a slip, or a claim about another thing. */
function rateDoubts({ meanRate, peakRate }: ClaimFigures): string[] {
  const rates = [
    ["mean", meanRate],
    ["peak", peakRate ?? 0],
  ] as const;
  return rates
    .filter(([, rate]) => rate > FASTEST_RATE)
    .map(
      ([which, rate]) =>
        `a ${which} C-rate of ${short(rate)} is far above what packs on sale take, at most ${FASTEST_RATE} (common practice): ` +
        "check the time, the window and the energy",
    );
}

/** Powers that the connector of cars, or any connector, does not carry. */
function powerDoubts({ meanPower, peakPower }: ClaimFigures): string[] {
  const { combined, megawatt } = directSupplyLimits;
  const powers = [
    ["mean", meanPower],
    ["peak", peakPower],
  ] as const;
  return powers.flatMap(([which, power]) => {
    if (power === undefined || power.compareTo(combined.power) <= 0) return [];
    const beyond = power.compareTo(megawatt.power) > 0;
    const { name, power: most } = beyond ? megawatt : combined;
    return [
      `a ${which} power of ${power.format({ unit: "kW" })} is above ${most.format()}, the most of the ${name}: ` +
        (beyond
          ? "no public connector carries that"
          : "ask which connector carries it; heavy vehicles have one for more"),
    ];
  });
}

function percent(share: number): string {
  return `${Number((share * 100).toPrecision(2))} %`;
}

function short(value: number): number {
  return Number(value.toPrecision(3));
}
