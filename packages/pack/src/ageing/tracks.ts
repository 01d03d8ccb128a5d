import { quantity } from "@tarewatt/units";
import { interpolate } from "../check/interpolate.js";
import type { AgeingModel, AgeingUse } from "./ageing-model.js";
import type { FadeCurve } from "./fade-curve.js";
import type { FadePoint, FadeTrack } from "./fade-result.js";
import { losesMoreFast } from "./fast-charging.js";

/** @internal What the tracks are made of. */
export interface TracksOptions {
  readonly models: readonly AgeingModel[];
  readonly curves: readonly FadeCurve[];
  readonly use: Omit<AgeingUse, "years" | "equivalentCycles">;
  /** C-rate of slow charging, and whether any is fast. */
  readonly slowRate: number;
  readonly fast: boolean;
  /** Full equivalent cycles a year. */
  readonly perYear: number;
  readonly years: number;
  /** In kWh, and km, when new. */
  readonly usableEnergy: number;
  readonly newRange: number;
}

/** Loss beyond which fits of early ageing no longer hold: cells may fall off a knee there (common practice, no source). */
const KNEE = 0.3;

/** @internal One track for each model and each curve. */
export function tracksOf(options: TracksOptions): readonly FadeTrack[] {
  const { models, curves } = options;
  return Object.freeze([
    ...models.map((model) => modelTrack(model, options)),
    ...curves.map((curve) => curveTrack(curve, options)),
  ]);
}

function modelTrack(model: AgeingModel, options: TracksOptions): FadeTrack {
  const { use, perYear, years, usableEnergy, newRange, slowRate, fast } = options;
  const always = outsideOf(model, use);
  const points = Array.from({ length: years }, (_, i) => {
    const year = i + 1;
    const now = { ...use, years: year, equivalentCycles: perYear * year };
    const growth = model.resistanceGrowth?.(now);
    const left = 1 - model.fade(now);
    const outside = [...always, ...outsideInYear(model, year, left)];
    const resistance = growth === undefined ? undefined : 1 + growth;
    return pointOf({ year, left: Math.max(0, left), resistance, outside }, usableEnergy, newRange);
  });
  const { name, cell, source, covers, notes, fitted } = model;
  const end = { ...use, years, equivalentCycles: perYear * years };
  const worn = points.find(({ left }) => left < 1 - KNEE);
  return Object.freeze({
    name,
    cell,
    covers,
    points: Object.freeze(points),
    ...(fast && { fastChargeCounts: losesMoreFast(model, end, slowRate) }),
    source,
    warnings: Object.freeze([
      ...notes,
      ...(covers === "cycling alone" ? [NO_TIME] : []),
      ...always,
      ...(years > fitted.years ? [tooLong(fitted.years, "later years are extrapolated")] : []),
      ...(worn === undefined ? [] : [`from year ${worn.year} on ${wornOut()}`]),
    ]),
  });
}

function curveTrack(curve: FadeCurve, { perYear, years, usableEnergy, newRange }: TracksOptions): FadeTrack {
  const last = curve.at.at(-1) as number;
  const points = Array.from({ length: years }, (_, i) => i + 1).flatMap((year) => {
    const at = curve.against === "years" ? year : year * perYear;
    if (at > last) return [];
    const left = interpolate(curve.at, curve.left, at);
    const resistance = curve.resistance && interpolate(curve.at, curve.resistance, at);
    return [pointOf({ year, left, resistance, outside: [] }, usableEnergy, newRange)];
  });
  const { name, source, against } = curve;
  return Object.freeze({
    name,
    covers: against === "years" ? "time and cycling" : "cycling alone",
    points: Object.freeze(points),
    ...(source && { source }),
    warnings: Object.freeze([
      ...(against === "years" ? [] : [NO_TIME]),
      ...(points.length < years ? [`the curve ends at ${last} ${against}: it is not continued`] : []),
    ]),
  });
}

function pointOf(
  {
    year,
    left,
    resistance,
    outside,
  }: Pick<FadePoint, "year" | "left" | "outside"> & { readonly resistance: number | undefined },
  usableEnergy: number,
  newRange: number,
): FadePoint {
  return Object.freeze({
    year,
    left,
    usableEnergy: quantity(usableEnergy * left, "kWh"),
    range: quantity(newRange * left, "km"),
    ...(resistance !== undefined && { resistance }),
    outside: Object.freeze(outside),
  });
}

const NO_TIME = "what time does is not in it: it shows too little, and the spread leaves it out";
const wornOut = (): string => `more than ${KNEE * 100} % is lost, beyond what such fits hold for`;

function tooLong(years: number, so: string): string {
  return `its tests took about ${years} years (from memory): ${so}`;
}

/** Where a use lies outside the tests of a model in every year. */
function outsideOf({ fitted }: AgeingModel, { temperature, rate }: TracksOptions["use"]): string[] {
  const [coldest, warmest] = fitted.temperature;
  const found: string[] = [];
  if (temperature < coldest || temperature > warmest) {
    found.push(
      `${Number(temperature.toPrecision(3))} °C lies outside its tests at ${coldest} °C to ${warmest} °C (from memory)`,
    );
  }
  if (temperature < 0) found.push("below 0 °C charging plates lithium, which is not in it: less is left than it shows");
  if (fitted.rate !== undefined && (rate < fitted.rate[0] || rate > fitted.rate[1])) {
    found.push(
      `a C-rate of ${Number(rate.toPrecision(2))} lies outside its tests at ${fitted.rate[0]} to ${fitted.rate[1]} (from memory)`,
    );
  }
  return found;
}

/** Where a year lies beyond the tests of a model, and where so much is lost that the fit does not hold. */
function outsideInYear({ fitted }: AgeingModel, year: number, left: number): string[] {
  return [
    ...(year > fitted.years ? [tooLong(fitted.years, "this year is extrapolated")] : []),
    ...(left < 1 - KNEE ? [wornOut()] : []),
    ...(left <= 0 ? ["the fit leaves nothing at all: 0 stands for no figure, the battery was worn out before"] : []),
  ];
}
