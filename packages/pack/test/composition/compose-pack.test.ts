import { q, quantity } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { published } from "../../../../test/support/published.js";
import { assemblePack, composePack, cylindricalCell, packMassOf, prismaticCell } from "../../src/index.js";
import { box, cells, cylinder, energies, fractions, relativeDifference, thrown, voltages } from "../support/cells.js";

const ROUNDING = 1e-11;
/** Fractions that round cells reach, too. */
const volumeFractions = fractions.map((fraction) => fraction * 0.9);

describe("a pack", () => {
  published({
    quantity: "specific energy of a pack of 250 Wh/kg cells that make up 0.65 of its mass",
    source: "worked by hand: pack = cell × cell mass fraction, not the other way round",
    status: "regression",
    published: q("162.5 Wh/kg"),
    computed: () => {
      const cell = prismaticCell({ ...box, capacity: q("100 Ah"), nominalVoltage: q("3.5 V"), mass: q("1.4 kg") });
      const energy = q("67.2 kWh");
      return composePack({ cell, energy, nominalVoltage: q("336 V"), cellMassFraction: 0.65 }).specificEnergy.pack;
    },
    tolerance: 1e-9,
    why: "exact but for rounding",
  });

  it("weighs as much as its cells and the rest, and its cells make up the fraction", () => {
    fc.assert(
      fc.property(cells, energies, voltages, fractions, (cell, kWh, volts, cellMassFraction) => {
        const energy = quantity(kWh, "kWh");
        const nominalVoltage = quantity(volts, "V");
        const { mass, arrangement } = composePack({ cell, energy, nominalVoltage, cellMassFraction });
        const total = mass.total.in("kg");
        const slack = total * ROUNDING;
        expect(Math.abs(mass.cells.in("kg") + mass.other.in("kg") - total)).toBeLessThan(slack);
        expect(Math.abs(mass.cells.in("kg") - total * cellMassFraction)).toBeLessThan(slack);
        expect(Math.abs(arrangement.cellCount * cell.mass.in("kg") - mass.cells.in("kg"))).toBeLessThan(slack);
        expect(mass.other.in("kg")).toBeGreaterThanOrEqual(0);
      }),
    );
  });

  it("keeps of its cells' specific energy the mass fraction, whatever the energy", () => {
    fc.assert(
      fc.property(cells, energies, voltages, fractions, (cell, kWh, volts, cellMassFraction) => {
        const energy = quantity(kWh, "kWh");
        const pack = composePack({ cell, energy, nominalVoltage: quantity(volts, "V"), cellMassFraction });
        const expected = cell.specificEnergy.in("Wh/kg") * cellMassFraction;
        expect(relativeDifference(pack.specificEnergy.pack.in("Wh/kg"), expected)).toBeLessThan(ROUNDING);
        expect(pack.specificEnergy.cell).toBe(cell.specificEnergy);
      }),
    );
  });

  it("weighs what the top-down relation says for the energy that whole cells reach", () => {
    fc.assert(
      fc.property(cells, energies, voltages, fractions, (cell, kWh, volts, cellMassFraction) => {
        const wanted = quantity(kWh, "kWh");
        const pack = composePack({ cell, energy: wanted, nominalVoltage: quantity(volts, "V"), cellMassFraction });
        const { specificEnergy: cellSpecificEnergy } = cell;
        const topDown = packMassOf({ energy: pack.energy.total, cellSpecificEnergy, cellMassFraction });
        expect(relativeDifference(topDown.in("kg"), pack.mass.total.in("kg"))).toBeLessThan(ROUNDING);
      }),
    );
  });

  it("doubles in energy, mass, volume and capacity, not in voltage, when it holds twice the strings", () => {
    const whole = fc.integer({ min: 1, max: 200 });
    fc.assert(
      fc.property(cells, whole, whole, volumeFractions, (cell, series, parallel, fraction) => {
        const of = (strings: number) =>
          composePack({
            cell,
            energy: cell.energy.times(series * strings),
            nominalVoltage: cell.nominalVoltage.times(series),
            cellMassFraction: fraction,
            cellVolumeFraction: fraction,
            usableFraction: fraction,
          });
        const [once, twice] = [of(parallel), of(2 * parallel)];
        const figures = ({ energy, mass, volume, capacity }: typeof once) => [
          energy.total.in("kWh"),
          energy.usable.in("kWh"),
          mass.total.in("kg"),
          mass.cells.in("kg"),
          volume.cells.in("L"),
          volume.total?.in("L") ?? Number.NaN,
          capacity.in("Ah"),
        ];
        const doubled = figures(twice);
        figures(once).forEach((figure, index) => {
          expect(relativeDifference(2 * figure, doubled[index] as number)).toBeLessThan(ROUNDING);
        });
        expect(twice.nominalVoltage.in("V")).toBeCloseTo(once.nominalVoltage.in("V"), 9);
      }),
    );
  });

  it("has a usable energy only when a usable fraction was given, and then that share of the total", () => {
    const without = composePack(packOptions);
    expect(without.energy.usable).toBeUndefined();
    expect(Object.keys(without.energy)).toEqual(["total"]);
    const share = composePack({ ...packOptions, usableFraction: q("93 %") }).energy;
    expect(share.usable.ratioTo(share.total)).toBeCloseTo(0.93, 12);
  });

  it("has a volume only when a volume fraction was given, and then larger than its cells", () => {
    expect(Object.keys(composePack(packOptions).volume)).toEqual(["cells"]);
    const { volume } = composePack({ ...packOptions, cellVolumeFraction: 0.4 });
    expect(volume.cells.in("L")).toBeCloseTo(192 * 0.784992, 9);
    expect(volume.total?.in("L")).toBeCloseTo((192 * 0.784992) / 0.4, 9);
  });

  it("passes the rounding on", () => {
    const energy = q("99 kWh");
    expect(composePack({ ...packOptions, energy }).arrangement.parallel).toBe(2);
    expect(composePack({ ...packOptions, energy, rounding: "at least" }).arrangement.parallel).toBe(3);
  });

  it("keeps how it is built, in the words given", () => {
    expect(composePack({ ...packOptions, construction: "cells in modules" }).construction).toBe("cells in modules");
    expect(Object.keys(composePack(packOptions))).not.toContain("construction");
  });

  it("hands on the warnings of its cell and its arrangement, and adds its own", () => {
    expect(composePack(packOptions).warnings).toEqual([]);
    const cell = prismaticCell({ ...box, mass: q("0.2 kg") });
    const { warnings } = composePack({ ...packOptions, cell, energy: q("70 kWh"), cellMassFraction: 0.95 });
    expect(warnings).toHaveLength(3);
    expect(warnings[0]).toContain("specific energy of the cell");
    expect(warnings[1]).toContain("energy of whole cells");
    expect(warnings[2]).toContain("cell mass fraction of 0.95");
    expect(composePack({ ...packOptions, cellMassFraction: 0.5 }).warnings.join()).toContain(
      "cell mass fraction of 0.5",
    );
  });

  // 60 V: UN R100, lower limit (seen in 49 CFR 571.305); a full charge a third above nominal: common practice, no source.
  it("says that an unknown maximum voltage may exceed 60 V from 45.2 V nominal on, a third below", () => {
    const at = (volts: number) => {
      const cell = prismaticCell({ ...box, nominalVoltage: quantity(volts / 12, "V") });
      const nominalVoltage = quantity(volts, "V");
      return composePack({ cell, energy: q("7 kWh"), nominalVoltage, cellMassFraction: 0.7 }).warnings.join();
    };
    expect(at(45.2)).toContain("may exceed 60 V");
    expect(at(45)).not.toContain("may exceed 60 V");
  });

  it("warns outside the published cell mass fractions, and not at their ends", () => {
    const of = (cellMassFraction: number) => composePack({ ...packOptions, cellMassFraction }).warnings.join();
    expect([of(0.58), of(0.9)]).toEqual(["", ""]);
    expect(of(0.579)).toContain("outside the published ones, 0.58 to 0.9");
    expect(of(0.901)).toContain("outside the published ones");
  });

  it("shows every figure in its working, from the cell on", () => {
    const pack = composePack({ ...packOptions, usableFraction: 0.93, cellVolumeFraction: 0.5 });
    const resultOf = (name: string) => pack.working().find((step) => step.name === name)?.result.value;
    expect(resultOf("energy of a cell")).toBe(pack.cell.energy.in("Wh"));
    expect(resultOf("number of cells")).toBe(pack.arrangement.cellCount);
    expect(resultOf("mass of the cells")).toBe(pack.mass.cells.in("kg"));
    expect(resultOf("mass of the pack")).toBe(pack.mass.total.in("kg"));
    expect(resultOf("mass of the pack beside its cells")).toBe(pack.mass.other.in("kg"));
    expect(resultOf("volume of the cells")).toBe(pack.volume.cells.in("L"));
    expect(resultOf("volume of the pack")).toBe(pack.volume.total?.in("L"));
    expect(resultOf("usable energy of the pack")).toBe(pack.energy.usable.in("kWh"));
    const densities = pack.working().filter((step) => step.name === "specific energy");
    expect(densities.map(({ result }) => result.value)).toEqual([
      pack.specificEnergy.cell.in("Wh/kg"),
      pack.specificEnergy.pack.in("Wh/kg"),
    ]);
  });

  it("has no step for what it does not have", () => {
    const names = composePack(packOptions)
      .working()
      .map(({ name }) => name);
    expect(names).not.toContain("usable energy of the pack");
    expect(names).not.toContain("volume of the pack");
  });

  it("cannot be changed", () => {
    const { energy, mass, volume, specificEnergy, cautions, warnings, ...pack } = composePack(packOptions);
    const parts = [
      energy,
      mass,
      volume,
      specificEnergy,
      cautions,
      warnings,
      pack.arrangement,
      composePack(packOptions),
    ];
    expect(parts.every(Object.isFrozen)).toBe(true);
  });
});

const packOptions = {
  cell: prismaticCell(box),
  energy: q("98 kWh"),
  nominalVoltage: q("350 V"),
  cellMassFraction: 0.74,
};

describe("a pack is refused", () => {
  it.each([
    ["for 74 as a fraction", { cellMassFraction: 74 }, "NOT_A_FRACTION", 'for 74 % write 0.74 or q("74 %")'],
    ["for a fraction of zero", { cellMassFraction: 0 }, "OUT_OF_RANGE", "cellMassFraction must be greater than zero"],
    ["for a negative fraction", { usableFraction: -0.9 }, "NEGATIVE", "usableFraction must be greater than zero"],
    ["for more usable than total", { usableFraction: 1.02 }, "NOT_A_FRACTION", "usableFraction"],
    ["for more cells than room", { cellVolumeFraction: 1.2 }, "NOT_A_FRACTION", "cellVolumeFraction"],
    ["for a fraction that is no number", { cellMassFraction: Number.NaN }, "NOT_A_NUMBER", "cellMassFraction"],
    ["for a mass as a fraction", { cellMassFraction: q("74 kg") }, "WRONG_DIMENSION", "cellMassFraction must be ratio"],
    ["for an unknown option", { cellMassFraktion: 0.74 }, "UNKNOWN_OPTION", "did you mean 'cellMassFraction'?"],
    ["for a missing option", { cellMassFraction: undefined }, "MISSING_OPTION", "'cellMassFraction'"],
    ["for a voltage as energy", { energy: q("98 V") }, "WRONG_DIMENSION", "energy must be energy"],
    ["for zero voltage", { nominalVoltage: q("0 V") }, "OUT_OF_RANGE", "nominalVoltage"],
    ["for an unknown rounding", { rounding: "up" }, "WRONG_CHOICE", "rounding"],
    ["for a construction that is no text", { construction: true }, "WRONG_CHOICE", "construction must be a text"],
    ["for a cell that is none", { cell: q("511 Wh") }, "NOT_AN_OBJECT", "cell must be made with"],
  ])("%s", (_title, change, code, text) => {
    const error = thrown(() => composePack({ ...packOptions, ...change } as never));
    expect(error.code).toBe(code);
    expect(error.message).toContain(text);
  });
});

describe("a pack of round cells", () => {
  const wanted = { energy: q("98 kWh"), nominalVoltage: q("350 V"), cellMassFraction: 0.7 };

  // The densest packing of circles, π/(2√3) = 0.9069: geometry.
  it("is refused when its cells would fill more than circles can, bottom up and top down", () => {
    const cell = cylindricalCell(cylinder);
    const error = thrown(() => composePack({ ...wanted, cell, cellVolumeFraction: 0.95 }));
    expect(error.code).toBe("INCONSISTENT");
    expect(error.message).toContain("at most π/(2√3) = 0.9069 of any space");
    expect(composePack({ ...wanted, cell, cellVolumeFraction: 0.906 }).volume.total).toBeDefined();
    expect(composePack({ ...wanted, cell: prismaticCell(box), cellVolumeFraction: 0.95 }).volume.total).toBeDefined();
    const outer = (share: number) => cell.volume.times(96).per(share);
    const assembled = (share: number) =>
      assemblePack({ cell, series: 96, parallel: 1, parts: [], outerVolume: outer(share) });
    expect(thrown(() => assembled(0.93)).code).toBe("INCONSISTENT");
    expect(assembled(0.9).cellVolumeFraction).toBeCloseTo(0.9, 12);
  });
});
