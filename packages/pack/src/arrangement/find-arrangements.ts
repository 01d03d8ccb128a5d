import {
  describeGiven,
  type Energy,
  InputError,
  type NumberRule,
  nearest,
  type Quantity,
  type Ratio,
  readNumber,
  readOptions,
  type Voltage,
} from "@tarewatt/units";
import type { Cell } from "../cell/cell.js";
import { readCell } from "../cell/read-cell.js";
import type { Caution } from "../safety/caution.js";
import { highVoltageCaution } from "../safety/high-voltage-caution.js";
import { arrangedWith, type WholeArrangement } from "./arranged.js";
import { type ArrangementMiss, nearMisses, TRIFLE, tooMany } from "./near-misses.js";
import { readVoltageClass, type VoltageClassName } from "./voltage-class.js";

/** By what {@link findArrangements} puts arrangements in order. */
export type ArrangementRank = "nearest energy" | "fewest cells" | "highest voltage";

/** Options of {@link findArrangements}. */
export interface FindArrangementsOptions {
  /** The cell; its maximum and minimum voltage must be known. */
  readonly cell: Cell;
  /** Total energy wanted, not the usable share of it. Greater than zero. */
  readonly energy: Quantity<Energy>;
  /** Largest difference from that energy, either way, as a fraction of it: 0 to 0.5; 0.05 when left out. */
  readonly energyTolerance?: number | Quantity<Ratio> | undefined;
  /** A class of voltage; or give both limits yourself. */
  readonly voltageClass?: VoltageClassName | undefined;
  /** Greatest voltage of the full pack. Greater than zero. */
  readonly chargedAtMost?: Quantity<Voltage> | undefined;
  /** Least voltage of the empty pack. Not negative. */
  readonly dischargedAtLeast?: Quantity<Voltage> | undefined;
  /** What comes first; `"nearest energy"` when left out. */
  readonly rankBy?: ArrangementRank | undefined;
}

/** What {@link findArrangements} found. */
export interface ArrangementsFound {
  /** All arrangements that fit, in the order of `rule`. */
  readonly found: readonly WholeArrangement[];
  /** The nearest misses, when nothing fits; at most five. */
  readonly misses: readonly ArrangementMiss[];
  /** By what they are in order, in words. */
  readonly rule: string;
  /** Cautions about safety, to be printed wherever the result is. */
  readonly cautions: readonly Caution[];
  /** What is doubtful; empty when nothing is. */
  readonly warnings: readonly string[];
}

const VOLTAGE = { unit: "V", above: 0, optional: true } as const satisfies NumberRule;

const rules = {
  energy: { unit: "kWh", above: 0 },
  energyTolerance: { unit: "1", atLeast: 0, atMost: 0.5, optional: true },
  chargedAtMost: VOLTAGE,
  dischargedAtLeast: { unit: "V", atLeast: 0, optional: true },
} as const satisfies Readonly<Record<string, NumberRule>>;

/** More than anybody reads: the energy or the voltages are a slip of unit. */
const MOST = 50_000;

/**
 * All arrangements of whole cells in series and parallel that reach an energy within a tolerance and stay within a voltage
 * window, in a stated order.
 *
 * The full pack may not exceed the upper limit, the empty one may not fall below the lower. When nothing fits, the
 * nearest misses are given, with what keeps each from fitting. Energies are total ones, at the nominal voltage.
 *
 * @param options - cell, energy, tolerance, voltage window, and what comes first
 * @returns what fits, or the nearest misses
 * @throws InputError `NOT_VALID_HERE` for a cell whose voltage window is not known, `INCONSISTENT` for limits in the wrong
 *   order or given twice, `MISSING_OPTION`, `OUT_OF_RANGE` (also for more arrangements than anybody reads), `NEGATIVE`,
 *   `NOT_A_FRACTION`, `WRONG_DIMENSION`, `WRONG_CHOICE`, `NOT_AN_OBJECT`, `UNKNOWN_OPTION`
 * @example
 * const cell = prismaticCell({
 *   ...{ thickness: q("52 mm"), width: q("148 mm"), height: q("102 mm"), mass: q("2.03 kg"), capacity: q("140 Ah") },
 *   ...{ nominalVoltage: q("3.65 V"), maximumVoltage: q("4.2 V"), minimumVoltage: q("2.8 V") },
 * });
 * const { found } = findArrangements({ cell, energy: q("98 kWh"), voltageClass: "400 V", energyTolerance: 0.02 });
 * found.map(({ series, parallel }) => `${series}s${parallel}p`); // ["96s2p", "95s2p", "97s2p", "94s2p"]
 */
export function findArrangements(options: FindArrangementsOptions): ArrangementsFound {
  const { energy, energyTolerance = 0.05 } = readOptions("findArrangements", options, rules, [
    ...["cell", "voltageClass?", "rankBy?"],
  ]);
  const cell = readCell(options.cell);
  const rank = readRank(options.rankBy);
  const { lowest, highest } = readWindow(options);
  const { least, most } = cellWindow(cell);
  const each = cell.energy.in("kWh");

  const fewestInSeries = Math.max(1, Math.ceil((lowest / least) * (1 - TRIFLE)));
  const mostInSeries = Math.floor((highest / most) * (1 + TRIFLE));
  const from = energy * (1 - energyTolerance) * (1 - TRIFLE);
  const to = energy * (1 + energyTolerance) * (1 + TRIFLE);
  if (mostInSeries - fewestInSeries > MOST) tooMany();

  const found: WholeArrangement[] = [];
  for (let series = fewestInSeries; series <= mostInSeries; series++) {
    const firstParallel = Math.max(1, Math.ceil(from / (series * each)));
    const lastParallel = Math.floor(to / (series * each));
    if (lastParallel < firstParallel) continue;
    const countable = Number.isSafeInteger(series * lastParallel);
    if (!countable || found.length + lastParallel - firstParallel > MOST) tooMany();
    const arrange = arrangedWith(cell, series);
    for (let parallel = firstParallel; parallel <= lastParallel; parallel++) {
      found.push(arrange(parallel, options.energy));
    }
  }
  found.sort(ranks[rank].order);

  const misses =
    found.length > 0
      ? []
      : nearMisses(cell, options.energy, energyTolerance, { fewestInSeries, mostInSeries, lowest, highest });
  const shown = found.length > 0 ? found : misses.map(({ arrangement }) => arrangement);
  const voltages = shown.flatMap(({ maximumVoltage }) => maximumVoltage ?? []);
  const top = voltages.reduce<Quantity<Voltage> | undefined>(
    (high, one) => (high === undefined || one.compareTo(high) > 0 ? one : high),
    undefined,
  );
  const caution = top && highVoltageCaution(top);
  return Object.freeze({
    found: Object.freeze(found),
    misses: Object.freeze(misses),
    rule: ranks[rank].rule,
    cautions: Object.freeze(caution === undefined ? [] : [caution]),
    warnings: cell.warnings,
  });
}

type Order = (a: WholeArrangement, b: WholeArrangement) => number;

const over = ({ energyOverTarget }: WholeArrangement): number => Math.abs(energyOverTarget.value);
const nearestEnergy: Order = (a, b) => over(a) - over(b) || a.cellCount - b.cellCount || b.series - a.series;

/** Energies over the target share one unit, that of the energy, so that their numbers compare. */
const ranks: Readonly<Record<ArrangementRank, { readonly rule: string; readonly order: Order }>> = {
  "nearest energy": {
    rule: "nearest to the energy first; then fewer cells, then more of them in series",
    order: nearestEnergy,
  },
  "fewest cells": {
    rule: "fewest cells first; then more of them in series",
    order: (a, b) => a.cellCount - b.cellCount || b.series - a.series,
  },
  "highest voltage": {
    rule: "most cells in series first; then nearest to the energy",
    order: (a, b) => b.series - a.series || nearestEnergy(a, b),
  },
};

function cellWindow({ maximumVoltage, minimumVoltage }: Cell): { least: number; most: number } {
  if (maximumVoltage === undefined || minimumVoltage === undefined) {
    const missing = maximumVoltage === undefined ? "maximumVoltage" : "minimumVoltage";
    throw new InputError(
      "NOT_VALID_HERE",
      `the voltage window of a pack needs the ${missing} of its cell: give it when making the cell`,
      { missing },
    );
  }
  return {
    least: readNumber("cell.minimumVoltage", minimumVoltage, { unit: "V", above: 0 }),
    most: readNumber("cell.maximumVoltage", maximumVoltage, { unit: "V", above: 0 }),
  };
}

function readWindow(options: FindArrangementsOptions): { lowest: number; highest: number } {
  const { voltageClass, chargedAtMost, dischargedAtLeast } = options;
  if (voltageClass !== undefined) {
    const { chargedAtMost: highest, dischargedAtLeast: lowest } = readVoltageClass(voltageClass);
    if (chargedAtMost === undefined && dischargedAtLeast === undefined) return { lowest, highest };
    const both = "voltageClass stands for chargedAtMost and dischargedAtLeast: give the class, or both limits";
    throw new InputError("INCONSISTENT", both, {});
  }
  if (chargedAtMost === undefined || dischargedAtLeast === undefined) {
    const message = "findArrangements needs voltageClass, or both chargedAtMost and dischargedAtLeast";
    throw new InputError("MISSING_OPTION", message, {});
  }
  const [lowest, highest] = [dischargedAtLeast.in("V"), chargedAtMost.in("V")];
  if (lowest < highest) return { lowest, highest };
  throw new InputError(
    "INCONSISTENT",
    `dischargedAtLeast must be below chargedAtMost: got ${dischargedAtLeast} and ${chargedAtMost}`,
    { dischargedAtLeast, chargedAtMost },
  );
}

function readRank(rank: unknown = "nearest energy"): ArrangementRank {
  if (typeof rank === "string" && Object.hasOwn(ranks, rank)) return rank as ArrangementRank;
  const known = Object.keys(ranks);
  const [near = known.join(", ")] = typeof rank === "string" ? nearest(rank, known) : [];
  throw new InputError("WRONG_CHOICE", `rankBy cannot be ${describeGiven(rank)}: did you mean ${near}?`, { known });
}
