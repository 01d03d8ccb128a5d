import { q, quantity } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  type Cell,
  cellFootprints,
  compareCells,
  cylindricalCell,
  energyPerArea,
  prismaticCell,
} from "../../src/index.js";
import { box, cells, cylinder, relativeDifference, thrown } from "../support/cells.js";

const share = (cell: Cell, reference: Cell, what: string): number =>
  compareCells({ cell, reference }).find((each) => each.what === what)?.share ?? Number.NaN;

describe("comparison of two cells", () => {
  it("is nothing for a cell and itself", () => {
    fc.assert(
      fc.property(cells, (cell) => {
        for (const each of compareCells({ cell, reference: cell })) {
          expect(Math.abs(each.share)).toBeLessThan(1e-12);
          expect(each.statement).toMatch(/^the same /);
        }
      }),
    );
  });

  it("turned round undoes itself, in space and in mass", () => {
    fc.assert(
      fc.property(cells, cells, (a, b) => {
        // A share near −1 keeps few digits of what is left: the product is as good as the smaller factor.
        const undone = (one: number, other: number): void => {
          const digits = 1e-14 / Math.min(1 + one, 1 + other, 1);
          expect(Math.abs((1 + one) * (1 + other) - 1)).toBeLessThan(digits);
        };
        for (const what of ["energy in equal space", "energy in equal mass"])
          undone(share(a, b, what), share(b, a, what));
        undone(share(a, b, "energy in equal mass"), share(a, b, "mass at equal energy"));
      }),
    );
  });

  // Worked by hand: 25 % more energy per mass saves a fifth of the cells' mass: 80 of 400 kg, 14.5 % of 550 kg, 4 % of 2 t.
  it("shrinks from the cell to the pack to the vehicle, and names each base", () => {
    const reference = prismaticCell(box);
    const cell = prismaticCell({ ...box, capacity: q("175 Ah") });
    const masses = { cellsMass: q("400 kg"), packMass: q("550 kg"), vehicleMass: q("2 t") };
    const found = compareCells({ cell, reference, ...masses }).filter(({ what }) => what === "mass at equal energy");
    expect(found.map(({ level }) => level)).toEqual(["cell", "pack", "vehicle"]);
    for (const [i, wanted] of [-0.2, -80 / 550, -0.04].entries()) expect(found[i]?.share).toBeCloseTo(wanted, 12);
    expect(found[1]?.statement).toBe("14.5 % less mass at equal energy, counted from the pack's mass");
  });

  it("refuses masses that do not hold each other", () => {
    const cell = prismaticCell(box);
    const both = { cell, reference: cell };
    const code = (masses: object) => thrown(() => compareCells({ ...both, ...masses })).code;
    expect(code({ packMass: q("500 kg") })).not.toBe("nothing thrown");
    expect(code({ cellsMass: q("400 kg"), packMass: q("300 kg") })).toBe("OUT_OF_RANGE");
    expect(code({ cellsMass: q("400 kg"), packMass: q("500 kg"), vehicleMass: q("450 kg") })).toBe("OUT_OF_RANGE");
  });
});

describe("footprints of a cell", () => {
  it("times their height make the volume, and their energies the cell's", () => {
    fc.assert(
      fc.property(cells, (cell) => {
        const found = cellFootprints(cell);
        expect(found).toHaveLength(cell.form === "cylindrical" ? 1 : 3);
        for (const { area, height, energyPerArea: perArea, energyPerStackLength } of found) {
          expect(relativeDifference(area.times(height).in("mL"), cell.volume.in("mL"))).toBeLessThan(1e-12);
          expect(relativeDifference(perArea.times(area).in("Wh"), cell.energy.in("Wh"))).toBeLessThan(1e-12);
          expect(
            relativeDifference(energyPerStackLength.in("Wh/mm") * height.in("mm"), cell.energy.in("Wh")),
          ).toBeLessThan(1e-12);
        }
      }),
    );
  });

  // Worked by hand: 511 Wh on 52 × 148 mm is 66.4 kWh/m²; 85.5625 Wh on a circle of 46 mm is 51.48 kWh/m².
  it("are those of a hand calculation", () => {
    expect(cellFootprints(prismaticCell(box))[0]?.energyPerArea.in("kWh/m²")).toBeCloseTo(66.398, 3);
    expect(cellFootprints(cylindricalCell(cylinder))[0]?.energyPerArea.in("kWh/m²")).toBeCloseTo(51.485, 3);
    expect(energyPerArea({ energy: quantity(10, "Wh"), area: q("4 m²") }).in("Wh/m²")).toBe(2.5);
  });

  it("refuse a cell whose sizes were changed by hand", () => {
    const cell = prismaticCell(box);
    expect(thrown(() => cellFootprints({ ...cell, dimensions: {} } as never)).code).toBe("NOT_A_QUANTITY");
    expect(thrown(() => cellFootprints({ ...cell, form: "ball" } as never)).code).toBe("NOT_AN_OBJECT");
  });
});
