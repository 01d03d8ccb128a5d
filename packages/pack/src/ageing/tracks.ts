import { quantity } from "@tarewatt/units";
import { interpolate } from "../check/interpolate.js";
import type { AgeingModel, AgeingUse } from "./ageing-model.js";
import type { FadeCurve } from "./fade-curve.js";
import type { FadePoint, FadeTrack } from "./fade-over-years.js";

/** @internal What the tracks are made of. */
export interface TracksOptions {
  readonly models: readonly AgeingModel[];
  readonly curves: readonly FadeCurve[];
  readonly use: Omit<AgeingUse, "years" | "equivalentCycles">;
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

function modelTrack(model: AgeingModel, { use, perYear, years, usableEnergy, newRange }: TracksOptions): FadeTrack {
  const points = Array.from({ length: years }, (_, i) => {
    const now = { ...use, years: i + 1, equivalentCycles: perYear * (i + 1) };
    const growth = model.resistanceGrowth?.(now);
    const left = Math.max(0, 1 - model.fade(now));
    return pointOf(i + 1, left, growth === undefined ? undefined : 1 + growth, usableEnergy, newRange);
  });
  const { name, cell, source } = model;
  return Object.freeze({
    name,
    cell,
    points: Object.freeze(points),
    source,
    warnings: Object.freeze([...model.notes, ...outside(model, use, years, points)]),
  });
}

function curveTrack(curve: FadeCurve, { perYear, years, usableEnergy, newRange }: TracksOptions): FadeTrack {
  const last = curve.at.at(-1) as number;
  const points = Array.from({ length: years }, (_, i) => i + 1).flatMap((year) => {
    const at = curve.against === "years" ? year : year * perYear;
    if (at > last) return [];
    const resistance = curve.resistance && interpolate(curve.at, curve.resistance, at);
    return [pointOf(year, interpolate(curve.at, curve.left, at), resistance, usableEnergy, newRange)];
  });
  const { name, source, against } = curve;
  return Object.freeze({
    name,
    points: Object.freeze(points),
    ...(source && { source }),
    warnings: Object.freeze(points.length < years ? [`the curve ends at ${last} ${against}: it is not continued`] : []),
  });
}

function pointOf(
  year: number,
  left: number,
  resistance: number | undefined,
  usableEnergy: number,
  newRange: number,
): FadePoint {
  return Object.freeze({
    year,
    left,
    usableEnergy: quantity(usableEnergy * left, "kWh"),
    range: quantity(newRange * left, "km"),
    ...(resistance !== undefined && { resistance }),
  });
}

function outside(
  { covers, fitted }: AgeingModel,
  { temperature, rate }: TracksOptions["use"],
  years: number,
  points: readonly FadePoint[],
): string[] {
  const [coldest, warmest] = fitted.temperature;
  const found: string[] = [];
  if (covers === "cycling alone") found.push("what time does is not in it: it shows too little");
  if (temperature < coldest || temperature > warmest) {
    found.push(
      `${Number(temperature.toPrecision(3))} °C lies outside its tests at ${coldest} °C to ${warmest} °C (from memory)`,
    );
  }
  if (fitted.rate !== undefined && (rate < fitted.rate[0] || rate > fitted.rate[1])) {
    found.push(
      `a C-rate of ${Number(rate.toPrecision(2))} lies outside its tests at ${fitted.rate[0]} to ${fitted.rate[1]} (from memory)`,
    );
  }
  if (years > fitted.years)
    found.push(`its tests took about ${fitted.years} years (from memory): later years are extrapolated`);
  const worn = points.find(({ left }) => left < 1 - KNEE);
  if (worn !== undefined) {
    found.push(`from year ${worn.year} on more than ${KNEE * 100} % is lost, beyond what such fits hold for`);
  }
  return found;
}
