import { type Energy, InputError, type Quantity } from "@tarewatt/units";
import type { Cell } from "../cell/cell.js";
import { arrangedWith, type WholeArrangement } from "./arranged.js";

/** An arrangement that comes near and does not fit. */
export interface ArrangementMiss {
  /** The arrangement. */
  readonly arrangement: WholeArrangement;
  /** What keeps it from fitting, in words. */
  readonly because: readonly string[];
}

/** @internal What is compared with a bound may be off by a few units of the last binary digit. */
export const TRIFLE = 1e-9;

const MISSES_SHOWN = 5;

/** @internal Numbers of cells in series that fit, and the voltages that limit them, in V. */
export interface SeriesWindow {
  readonly fewestInSeries: number;
  readonly mostInSeries: number;
  readonly lowest: number;
  readonly highest: number;
}

/** @internal Whole cells that miss by the energy alone, or, where no number in series fits the window, those on its either side. */
export function nearMisses(
  cell: Cell,
  energy: Quantity<Energy>,
  tolerance: number,
  window: SeriesWindow,
): ArrangementMiss[] {
  const { fewestInSeries, mostInSeries, lowest, highest } = window;
  const fits = fewestInSeries <= mostInSeries;
  const inSeries = fits
    ? Array.from({ length: mostInSeries - fewestInSeries + 1 }, (_, i) => fewestInSeries + i)
    : [...new Set([Math.max(1, mostInSeries), fewestInSeries])];
  const wanted = energy.in("kWh") / cell.energy.in("kWh");
  const candidates = inSeries.flatMap((series) => {
    const parallel = Math.max(1, Math.floor(wanted / series));
    return [parallel, parallel + 1].map((each) => ({ series, parallel: each, off: Math.abs(series * each - wanted) }));
  });
  if (candidates.some(({ series, parallel }) => !Number.isSafeInteger(series * parallel))) tooMany();
  candidates.sort((a, b) => a.off - b.off || b.series - a.series);
  return candidates.slice(0, MISSES_SHOWN).map(({ series, parallel }) => {
    const arrangement = arrangedWith(cell, series)(parallel, energy);
    const { maximumVoltage, minimumVoltage } = arrangement;
    const share = arrangement.energy.ratioTo(energy) - 1;
    const percent = Number((Math.abs(share) * 100).toPrecision(2));
    const because = [
      ...(Math.abs(share) > tolerance * (1 + TRIFLE)
        ? [`${arrangement.energy} is ${percent} % ${share > 0 ? "above" : "below"} the ${energy} asked for`]
        : []),
      ...(maximumVoltage && maximumVoltage.in("V") > highest * (1 + TRIFLE)
        ? [`${maximumVoltage} when full is above ${highest} V`]
        : []),
      ...(minimumVoltage && minimumVoltage.in("V") < lowest * (1 - TRIFLE)
        ? [`${minimumVoltage} when empty is below ${lowest} V`]
        : []),
    ];
    return Object.freeze({ arrangement, because: Object.freeze(because) });
  });
}

/** @internal Refuses a search without end. */
export function tooMany(): never {
  throw new InputError(
    "OUT_OF_RANGE",
    "more arrangements than can be looked through: check the units of energy, voltages and cell, or take a smaller tolerance",
    {},
  );
}
