import { q, quantity } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  capacityInParallel,
  cellCount,
  cellsInParallel,
  cellsInParallelAtLeast,
  cellsInSeries,
  energyOfCells,
  voltageInSeries,
} from "../../src/index.js";
import { thrown } from "../support/cells.js";

const whole = fc.integer({ min: 1, max: 400 });

describe("numbers of cells", () => {
  it("undo voltage in series and energy of cells", () => {
    fc.assert(
      fc.property(whole, whole, fc.double({ min: 1, max: 5, noNaN: true }), (series, parallel, volts) => {
        const cellVoltage = quantity(volts, "V");
        const packVoltage = voltageInSeries({ series, cellVoltage });
        expect(cellsInSeries({ packVoltage, cellVoltage })).toBe(series);
        const cellEnergy = quantity(volts * 50, "Wh");
        const packEnergy = energyOfCells({ cellCount: cellCount({ series, parallel }), cellEnergy });
        expect(cellsInParallel({ packEnergy, series, cellEnergy })).toBe(parallel);
        expect(cellsInParallelAtLeast({ packEnergy, series, cellEnergy })).toBe(parallel);
      }),
    );
  });

  it("are at least one", () => {
    expect(cellsInSeries({ packVoltage: q("0 V"), cellVoltage: q("3.7 V") })).toBe(1);
    const little = { packEnergy: q("0 Wh"), series: 96, cellEnergy: q("511 Wh") };
    expect([cellsInParallel(little), cellsInParallelAtLeast(little)]).toEqual([1, 1]);
  });

  it("take one string more only when the energy is really above the last", () => {
    const just = { packEnergy: q("2000.001 Wh"), series: 10, cellEnergy: q("100 Wh") };
    expect(cellsInParallelAtLeast(just)).toBe(3);
    expect(cellsInParallelAtLeast({ ...just, packEnergy: q("2000 Wh") })).toBe(2);
    expect(cellsInParallel(just)).toBe(2);
  });
});

describe("cells in parallel", () => {
  // Worked by hand: two cells of 140 Ah side by side deliver 280 Ah.
  it("add their capacities", () => {
    expect(capacityInParallel({ parallel: 2, cellCapacity: q("140 Ah") }).in("Ah")).toBe(280);
  });

  it("are never fewer than one", () => {
    expect(thrown(() => capacityInParallel({ parallel: 0, cellCapacity: q("140 Ah") })).code).toBe("OUT_OF_RANGE");
  });
});
