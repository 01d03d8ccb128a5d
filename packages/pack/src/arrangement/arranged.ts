import { type Energy, type Mass, type Quantity, quantity, type Voltage } from "@tarewatt/units";
import type { Cell } from "../cell/cell.js";
import { massOfCells } from "../composition/masses.js";
import type { Arrangement } from "./arrange-pack.js";
import { capacityInParallel } from "./capacity-in-parallel.js";
import { cellCount } from "./cell-count.js";
import { energyOfCells } from "./energy-of-cells.js";
import { type EqualModules, equalModules } from "./modules.js";
import { voltageInSeries } from "./voltage-in-series.js";

/** A whole arrangement of cells, with its voltage window and how it may be divided. */
export interface WholeArrangement extends Arrangement {
  /** Voltage when a discharge ends, when that of the cell is known. */
  readonly minimumVoltage?: Quantity<Voltage>;
  /** Mass of the cells. */
  readonly cellsMass: Quantity<Mass>;
  /** All ways to divide the cells in series into equal modules; empty when there is none. */
  readonly modules: readonly EqualModules[];
}

/** @internal Arranges so many cells; a loop over cells in parallel hands in one of these. */
export function arrangedWith(cell: Cell, series: number) {
  const { capacity, nominalVoltage, maximumVoltage, minimumVoltage } = cell;
  const modules = equalModules(series);
  const energyEach = cell.energy.in("kWh");
  const massEach = cell.mass.in("kg");
  const capacityEach = capacity.in("Ah");
  const atNominal = voltageInSeries({ series, cellVoltage: nominalVoltage });
  const atMost = maximumVoltage && voltageInSeries({ series, cellVoltage: maximumVoltage });
  const atLeast = minimumVoltage && voltageInSeries({ series, cellVoltage: minimumVoltage });

  return (parallel: number, energyWanted?: Quantity<Energy>): WholeArrangement => {
    const count = series * parallel;
    const energy = quantity(count * energyEach, "kWh");
    return Object.freeze({
      series,
      parallel,
      cellCount: count,
      nominalVoltage: atNominal,
      ...(atMost && { maximumVoltage: atMost }),
      ...(atLeast && { minimumVoltage: atLeast }),
      energy,
      capacity: quantity(parallel * capacityEach, "Ah"),
      energyOverTarget: energyWanted === undefined ? quantity(0, "kWh") : energy.minus(energyWanted),
      cellsMass: quantity(count * massEach, "kg"),
      modules,
      warnings: none,
      working: () => [
        cellCount.explain({ series, parallel }),
        voltageInSeries.explain({ series, cellVoltage: nominalVoltage }),
        ...(maximumVoltage ? [voltageInSeries.explain({ series, cellVoltage: maximumVoltage })] : []),
        ...(minimumVoltage ? [voltageInSeries.explain({ series, cellVoltage: minimumVoltage })] : []),
        capacityInParallel.explain({ parallel, cellCapacity: capacity }),
        energyOfCells.explain({ cellCount: count, cellEnergy: cell.energy }),
        massOfCells.explain({ cellCount: count, cellMass: cell.mass }),
      ],
    });
  };
}

const none: readonly string[] = /* @__PURE__ */ Object.freeze([]);
