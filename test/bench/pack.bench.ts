/** Arrangements of a pack and layouts of its cells, against the time that somebody at a screen does not notice. */
import { cylindricalCell, fillSpace, findArrangements } from "@tarewatt/pack";
import { q, quantity } from "@tarewatt/units";
import { type BenchRow, race, type Timed } from "./race.js";

/** No program to race with: a limit, as a contestant that takes just as long. */
const limit = (milliseconds: number): Timed => ({
  name: `a limit of ${milliseconds} ms`,
  nanoseconds: () => milliseconds * 1e6,
});

/** Cells of 10 Wh. */
const cell = cylindricalCell({
  ...{ diameter: q("18 mm"), height: q("65 mm"), mass: q("45 g") },
  ...{ capacity: quantity(10 / 3.6, "Ah"), nominalVoltage: q("3.6 V") },
  ...{ maximumVoltage: q("4.2 V"), minimumVoltage: q("2.5 V") },
});

/** All arrangements of 120 kWh within 5 % in the 400 V class, each with its modules. */
function allArrangements(): BenchRow {
  const ours = {
    name: "tarewatt",
    work: (times: number): number => {
      let sum = 0;
      for (let i = 0; i < times; i++) {
        const energy = quantity(120 + (i % 7) / 100, "kWh");
        sum += findArrangements({ cell, energy, voltageClass: "400 V" }).found.length;
      }
      return sum;
    },
  };
  return race("all arrangements of 120 kWh of 10 Wh cells", 1, ours, [limit(5)]);
}

/** Every order of the same cells on a floor of 1.8 m × 1.3 m, about 7 000 of them, with the place of each. */
function filledFloor(): BenchRow {
  const ours = {
    name: "tarewatt",
    work: (times: number): number => {
      let sum = 0;
      for (let i = 0; i < times; i++) {
        const space = { length: quantity(1800 + (i % 7), "mm"), width: q("1.3 m"), height: q("80 mm") };
        sum += fillSpace({ cell, space, gap: q("1 mm") }).fillings[0]?.layout().length ?? Number.NaN;
      }
      return sum;
    },
  };
  return race("a floor filled with some 7 000 cells", 1, ours, [limit(5)]);
}

export function run(): readonly BenchRow[] {
  return [allArrangements(), filledFloor()];
}
