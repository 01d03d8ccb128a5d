import { InputError, type NumberRule, quantity, readNumber } from "@tarewatt/units";
import { readCell } from "../cell/read-cell.js";
import { readPart } from "../check/read-part.js";
import type { OpenCircuitCurve } from "../chemistry/curve.js";
import { meanOpenCircuitVoltage } from "../chemistry/mean-open-circuit-voltage.js";
import type { PackBatteryOptions } from "./pack-battery-options.js";
import { readUsableFraction } from "./usable-window.js";

/** @internal The cells of a battery as plain numbers, whether a pack or figures were given. */
export interface CellsRead {
  readonly series: number;
  readonly parallel: number;
  /** Capacity of one cell in Ah. */
  readonly capacity: number;
  /** Voltage limits of one cell in V, where the pack knows them. */
  readonly minimumVoltage?: number | undefined;
  readonly maximumVoltage?: number | undefined;
  readonly usableFraction?: number | undefined;
  readonly warnings: readonly string[];
}

/** More cells than any vehicle has; beyond it sits a slip of a digit. */
const COUNT = { unit: "1", atLeast: 1, atMost: 1e6 } as const satisfies NumberRule;
const VOLTS = { unit: "V", above: 0 } as const satisfies NumberRule;

/** @internal Reads the cells from `pack`, or from `arrangement` and `cellCapacity`. */
export function cellsOf(options: PackBatteryOptions, cellCapacity: number | undefined): CellsRead {
  const { pack, arrangement, usableFraction } = options;
  if (pack === undefined) {
    if (arrangement === undefined || cellCapacity === undefined) {
      const option = arrangement === undefined ? "arrangement" : "cellCapacity";
      throw new InputError(
        "MISSING_OPTION",
        `packBattery needs the option '${option}', or a pack, which holds its arrangement and its cell`,
        { option },
      );
    }
    const counts = readCounts("arrangement", arrangement);
    return { ...counts, capacity: cellCapacity, usableFraction: readUsableFraction(usableFraction), warnings: [] };
  }
  for (const name of ["arrangement", "cellCapacity", "usableFraction"] as const) {
    if (options[name] === undefined) continue;
    throw new InputError("INCONSISTENT", `a pack has its own ${name}: with pack leave ${name} out`, { option: name });
  }
  return ofPack(pack, options.openCircuit);
}

function ofPack(given: unknown, openCircuit: OpenCircuitCurve): CellsRead {
  const pack = readPart("pack", given);
  const cell = readCell(pack.cell);
  const energy = readPart("pack.energy", pack.energy);
  const total = readNumber("pack.energy.total", energy.total, { unit: "Wh", above: 0 });
  const usable =
    energy.usable === undefined ? undefined : readNumber("pack.energy.usable", energy.usable, { unit: "Wh", above: 0 });
  const volts = (name: string, each: unknown) => (each === undefined ? undefined : readNumber(name, each, VOLTS));
  return {
    ...readCounts("pack.arrangement", pack.arrangement),
    capacity: cell.capacity.in("Ah"),
    minimumVoltage: volts("pack.cell.minimumVoltage", cell.minimumVoltage),
    maximumVoltage: volts("pack.cell.maximumVoltage", cell.maximumVoltage),
    usableFraction:
      usable === undefined
        ? undefined
        : readNumber("pack.energy.usable over total", usable / total, { unit: "1", atMost: 1 + 1e-9 }),
    warnings: [...cell.warnings, ...otherCell(cell.nominalVoltage.in("V"), openCircuit)],
  };
}

/** A nominal voltage lies within a few percent of the curve's mean; further off the curve is of another chemistry. */
const NEAR = 0.05;

function otherCell(nominal: number, openCircuit: OpenCircuitCurve): string[] {
  const mean = meanOpenCircuitVoltage(openCircuit).in("V");
  if (Math.abs(mean / nominal - 1) <= NEAR) return [];
  return [
    `the cell's nominal voltage is ${quantity(nominal, "V").format()}, the mean of the open-circuit curve ` +
      `${quantity(mean, "V").format()}: the curve is of another chemistry, and the battery's energy is not that of the pack`,
  ];
}

function readCounts(name: string, given: unknown): { series: number; parallel: number } {
  const { series, parallel } = (given ?? {}) as { readonly series?: unknown; readonly parallel?: unknown };
  return {
    series: readNumber(`${name}.series`, series, COUNT),
    parallel: readNumber(`${name}.parallel`, parallel, COUNT),
  };
}
