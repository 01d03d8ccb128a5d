import { q, quantity } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type ChemistryName, chemistries, compareWithChemistry, prismaticCell } from "../../src/index.js";
import { box, cells, thrown } from "../support/cells.js";

/** A cell of the given figures: 1 L, 3.2 or 3.7 V. */
function cellOf(whPerKg: number, whPerL: number, volts: number) {
  const size = { thickness: q("100 mm"), width: q("100 mm"), height: q("100 mm") };
  const energy = { capacity: quantity(whPerL / volts, "Ah"), nominalVoltage: quantity(volts, "V") };
  return prismaticCell({ ...size, ...energy, mass: quantity(whPerL / whPerKg, "kg") });
}
const places = (whPerKg: number, whPerL: number, volts: number, chemistry: ChemistryName) =>
  compareWithChemistry({ cell: cellOf(whPerKg, whPerL, volts), chemistry }).map(({ place }) => place);

describe("a cell beside its chemistry", () => {
  // Quoted: an LFP cell of 160 Wh/kg and 355 Wh/L, an NMC811 cell of 241 Wh/kg and 643 Wh/L (teardown tables, 2025).
  it("lies within where published cells lie", () => {
    expect(places(160, 355.3, 3.2, "LFP")).toEqual(["within", "within", "within"]);
    expect(places(241, 643.3, 3.7, "NMC")).toEqual(["within", "within", "within"]);
  });

  it("lies above, below or between where they do not", () => {
    expect(places(300, 355, 3.7, "LFP")).toEqual(["above", "above", "within"]);
    expect(places(80, 300, 3.22, "LFP")).toEqual(["within", "below", "below"]);
    expect(places(145, 340, 3.2, "LFP")).toEqual(["within", "between", "between"]);
    expect(places(200, 500, 3.8, "LMFP")).toEqual(["within", "within", "nothing published"]);
  });

  it("names both figures", () => {
    const [, energy] = compareWithChemistry({ cell: prismaticCell(box), chemistry: "LFP" });
    expect(energy?.statement).toBe(
      "the specific energy of the cell, 252 Wh/kg, lies above the 90 to 190 Wh/kg published for lithium iron phosphate (all eras)",
    );
  });

  it("has three findings, each consistent with the ranges, for any cell", () => {
    const names = Object.keys(chemistries) as ChemistryName[];
    fc.assert(
      fc.property(cells, fc.constantFrom(...names), (cell, chemistry) => {
        const found = compareWithChemistry({ cell, chemistry });
        expect(found.map(({ figure }) => figure)).toEqual(["nominal voltage", "specific energy", "energy density"]);
        const value = cell.specificEnergy.in("Wh/kg");
        const inRange = chemistries[chemistry].specificEnergy.some(({ low, high }) => value >= low && value <= high);
        expect(found[1]?.place === "within").toBe(inRange);
      }),
    );
  });

  it("refuses a chemistry that is not known", () => {
    expect(
      thrown(() => compareWithChemistry({ cell: prismaticCell(box), chemistry: "LPF" as never })).message,
    ).toContain("LFP");
  });
});
