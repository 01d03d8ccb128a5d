import {
  describeGiven,
  type ElectricCharge,
  type Energy,
  InputError,
  type NumberRule,
  nearest,
  type Quantity,
  readOptions,
  type Step,
  type Voltage,
} from "@tarewatt/units";
import type { Cell } from "../cell/cell.js";
import { readCell } from "../cell/read-cell.js";
import { offTarget } from "../check/off-target.js";
import { capacityInParallel } from "./capacity-in-parallel.js";
import { cellCount } from "./cell-count.js";
import { cellsInParallel, cellsInParallelAtLeast } from "./cells-in-parallel.js";
import { cellsInSeries } from "./cells-in-series.js";
import { energyOfCells } from "./energy-of-cells.js";
import { voltageInSeries } from "./voltage-in-series.js";

/** How {@link arrangePack} makes a whole number of cells in parallel: the nearest energy, or never less than asked for. */
export type Rounding = "nearest" | "at least";

/** Options of {@link arrangePack}. */
export interface ArrangementOptions {
  /** The cell. */
  readonly cell: Cell;
  /** Total energy wanted, not the usable share of it. Greater than zero. */
  readonly energy: Quantity<Energy>;
  /** Nominal voltage wanted. Greater than zero. */
  readonly nominalVoltage: Quantity<Voltage>;
  /** Which whole number of cells in parallel to take; `"nearest"` when left out. */
  readonly rounding?: Rounding | undefined;
}

/** Cells in series and in parallel, and what they add up to. Whole cells seldom hit a target exactly. */
export interface Arrangement {
  /** Cells in series. */
  readonly series: number;
  /** Cells in parallel. */
  readonly parallel: number;
  /** Number of cells, series × parallel. */
  readonly cellCount: number;
  /** Nominal voltage reached. */
  readonly nominalVoltage: Quantity<Voltage>;
  /** Voltage at full charge, when that of the cell is known. */
  readonly maximumVoltage?: Quantity<Voltage>;
  /** Total energy reached. */
  readonly energy: Quantity<Energy>;
  /** Capacity reached. */
  readonly capacity: Quantity<ElectricCharge>;
  /** Energy reached minus energy wanted: negative when the pack falls short. */
  readonly energyOverTarget: Quantity<Energy>;
  /** What is doubtful, such as a whole number of cells far off the target; empty when nothing is. */
  readonly warnings: readonly string[];
  /** How the numbers of cells and the sums came about. */
  working(): Step[];
}

const rules = {
  energy: { unit: "Wh", above: 0 },
  nominalVoltage: { unit: "V", above: 0 },
} as const satisfies Readonly<Record<string, NumberRule>>;

/**
 * Arranges equal cells in series and parallel for a nominal voltage and a total energy.
 *
 * Cells in series are the nearest whole number to voltage over cell voltage, cells in parallel a whole number that comes
 * nearest to the energy or reaches it; both are at least one. The voltage is settled first, so with large cells the energy
 * can end far from the target: that is a warning, not an error. Returned are the voltage and energy reached.
 *
 * @param options - cell, total energy, nominal voltage, and how to round
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE` (also for more cells than can be counted exactly), `WRONG_DIMENSION`,
 *   `WRONG_CHOICE`, `NOT_AN_OBJECT`, `UNKNOWN_OPTION`, `MISSING_OPTION`
 * @example
 * const cell = prismaticCell({
 *   ...{ thickness: q("52 mm"), width: q("148 mm"), height: q("102 mm"), mass: q("2.03 kg") },
 *   ...{ capacity: q("140 Ah"), nominalVoltage: q("3.65 V") },
 * });
 * const arrangement = arrangePack({ cell, energy: q("98 kWh"), nominalVoltage: q("350 V") });
 * `${arrangement.series}s${arrangement.parallel}p`; // "96s2p"
 * arrangement.energyOverTarget; // 0.112 kWh
 */
export function arrangePack(options: ArrangementOptions): Arrangement {
  readOptions("arrangePack", options, rules, ["cell", "rounding?"]);
  const cell = readCell(options.cell);
  const inParallel = readRounding(options.rounding) === "nearest" ? cellsInParallel : cellsInParallelAtLeast;

  const forSeries = { packVoltage: options.nominalVoltage, cellVoltage: cell.nominalVoltage };
  const series = cellsInSeries(forSeries);
  const forParallel = { packEnergy: options.energy, series, cellEnergy: cell.energy };
  const parallel = inParallel(forParallel);
  const forCount = { series, parallel };
  const count = cellCount(forCount);
  if (!Number.isSafeInteger(count)) {
    throw new InputError(
      "OUT_OF_RANGE",
      `${options.energy} of cells of ${cell.energy} are too many to count: check the units of energy and of the cell`,
      { energy: options.energy, cellEnergy: cell.energy },
    );
  }

  const forVoltage = { series, cellVoltage: cell.nominalVoltage };
  const forMaximum = cell.maximumVoltage && { series, cellVoltage: cell.maximumVoltage };
  const forCapacity = { parallel, cellCapacity: cell.capacity };
  const forEnergy = { cellCount: count, cellEnergy: cell.energy };
  const nominalVoltage = voltageInSeries(forVoltage);
  const energy = energyOfCells(forEnergy).to("kWh");

  return Object.freeze({
    series,
    parallel,
    cellCount: count,
    nominalVoltage,
    ...(forMaximum && { maximumVoltage: voltageInSeries(forMaximum) }),
    energy,
    capacity: capacityInParallel(forCapacity),
    energyOverTarget: energy.minus(options.energy),
    warnings: Object.freeze(missedTargets(options, nominalVoltage, energy, parallel)),
    working: () => [
      cellsInSeries.explain(forSeries),
      inParallel.explain(forParallel),
      cellCount.explain(forCount),
      voltageInSeries.explain(forVoltage),
      ...(forMaximum ? [voltageInSeries.explain(forMaximum)] : []),
      capacityInParallel.explain(forCapacity),
      energyOfCells.explain(forEnergy),
    ],
  });
}

function missedTargets(
  { nominalVoltage: voltageWanted, energy: energyWanted }: ArrangementOptions,
  voltage: Quantity<Voltage>,
  energy: Quantity<Energy>,
  parallel: number,
): string[] {
  const string = energy.per(parallel);
  const otherCell = `a string in parallel holds ${string}; another voltage or a smaller cell comes nearer`;
  return [
    offTarget("the nominal voltage of whole cells", voltage, voltage.ratioTo(voltageWanted), voltageWanted, "check it"),
    offTarget("the energy of whole cells", energy, energy.ratioTo(energyWanted), energyWanted, otherCell),
  ].filter((warning) => warning !== undefined);
}

const roundings: readonly Rounding[] = ["nearest", "at least"];

function readRounding(rounding: unknown = "nearest"): Rounding {
  const known = roundings.find((each) => each === rounding);
  if (known !== undefined) return known;
  const [near] = typeof rounding === "string" ? nearest(rounding, roundings) : [];
  const hint = near === undefined ? 'it is "nearest" or "at least"' : `did you mean "${near}"?`;
  throw new InputError("WRONG_CHOICE", `rounding cannot be ${describeGiven(rounding)}: ${hint}`, { known: roundings });
}
