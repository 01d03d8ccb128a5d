import { q, quantity, stepLine } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  assemblePack,
  composePack,
  fillPart,
  type PackPart,
  packBreakdown,
  packMaterials,
  prismaticCell,
  sheetPart,
  weighedPart,
} from "../../src/index.js";
import { box, cells, relativeDifference, thrown } from "../support/cells.js";

const cell = prismaticCell({ ...box, maximumVoltage: q("4.2 V"), minimumVoltage: q("2.8 V") });
const density = (material: keyof typeof packMaterials) => quantity(packMaterials[material].density, "kg/m³");

/** Invented, of the order of a pack of 98 kWh. */
const parts: readonly PackPart[] = [
  weighedPart({ name: "spacers", group: "holders", mass: q("25 g"), volume: q("20 mL"), counted: "with each cell" }),
  sheetPart({
    name: "cooling plate",
    group: "cooling",
    area: q("2 m²"),
    thickness: q("3 mm"),
    density: density("aluminium"),
  }),
  fillPart({ name: "coolant", group: "cooling", volume: q("5 L"), density: density("waterGlycol") }),
  weighedPart({ name: "busbars", group: "conductors", mass: q("8 kg") }),
  weighedPart({ name: "contactors, fuses, control", group: "electronics", mass: q("14 kg") }),
  sheetPart({ name: "tray", group: "housing", area: q("2.6 m²"), thickness: q("4 mm"), density: density("aluminium") }),
  sheetPart({ name: "lid", group: "housing", area: q("2.4 m²"), thickness: q("1.2 mm"), density: density("steel") }),
];
const good = { cell, series: 96, parallel: 2, parts };

const masses = fc.double({ min: 0, max: 200, noNaN: true });
const counts = fc.integer({ min: 1, max: 120 });
const anyParts = fc.array(
  fc.record({ mass: masses, each: fc.boolean() }).map(({ mass, each }) =>
    weighedPart({
      ...{ name: "part", group: "other" },
      ...(each ? { mass: quantity(mass, "g"), counted: "with each cell" } : { mass: quantity(mass, "kg") }),
    }),
  ),
  { maxLength: 8 },
);

describe("a pack put together from its parts", () => {
  // Worked by hand: 192·0.025 + 2·0.003·2700 + 5·1.07 + 8 + 14 + 2.6·0.004·2700 + 2.4·0.0012·7850 = 99.038 kg beside 389.76 kg.
  it("weighs what its parts weigh", () => {
    const { mass, cellMassFraction, energy, specificEnergy } = assemblePack(good);
    expect(mass.other.in("kg")).toBeCloseTo(99.038, 9);
    expect(mass.total.in("kg")).toBeCloseTo(488.798, 9);
    expect(cellMassFraction).toBeCloseTo(389.76 / 488.798, 12);
    expect(energy.total.in("kWh")).toBeCloseTo(98.112, 9);
    expect(specificEnergy.pack.in("Wh/kg")).toBeCloseTo(98112 / 488.798, 6);
  });

  it("is the pack of composePack, top down, when that is given its cell mass fraction", () => {
    fc.assert(
      fc.property(cells, counts, counts, anyParts, (one, series, parallel, some) => {
        const bottomUp = assemblePack({ cell: one, series, parallel, parts: some });
        const topDown = composePack({
          cell: one,
          energy: bottomUp.energy.total,
          nominalVoltage: bottomUp.nominalVoltage,
          cellMassFraction: Math.min(1, bottomUp.cellMassFraction),
        });
        expect(topDown.arrangement).toMatchObject({ series, parallel });
        const same = (a: number, b: number) => expect(relativeDifference(a, b)).toBeLessThan(1e-12);
        same(topDown.mass.total.in("kg"), bottomUp.mass.total.in("kg"));
        same(topDown.specificEnergy.pack.in("Wh/kg"), bottomUp.specificEnergy.pack.in("Wh/kg"));
        same(topDown.volume.cells.in("L"), bottomUp.volume.cells.in("L"));
        expect(topDown.capacity.in("Ah")).toBeCloseTo(bottomUp.capacity.in("Ah"), 9);
        expect(topDown.cautions).toEqual(bottomUp.cautions);
      }),
    );
  });

  it("is that of assemblePack, bottom up, when its other parts are one part of the mass found top down", () => {
    const fraction = fc.double({ min: 0.3, max: 1, noNaN: true });
    fc.assert(
      fc.property(cells, counts, counts, fraction, (one, series, parallel, cellMassFraction) => {
        const energy = one.energy.times(series * parallel);
        const nominalVoltage = one.nominalVoltage.times(series);
        const topDown = composePack({ cell: one, energy, nominalVoltage, cellMassFraction });
        const other = quantity(Math.max(0, topDown.mass.other.in("kg")), "kg");
        const all = [weighedPart({ name: "all else", group: "other", mass: other })];
        const bottomUp = assemblePack({ cell: one, series, parallel, parts: all });
        expect(relativeDifference(bottomUp.mass.total.in("kg"), topDown.mass.total.in("kg"))).toBeLessThan(1e-12);
        expect(relativeDifference(bottomUp.cellMassFraction, cellMassFraction)).toBeLessThan(1e-12);
      }),
    );
  });

  it("shows in its working how every part came about", () => {
    const lines = assemblePack({ ...good, usableFraction: 0.93, outerVolume: q("300 L") })
      .working()
      .map(stepLine);
    for (const line of [
      "m = A·t/1000·ρ = 2 m²·3 mm/1000·2700 kg/m³ = 16.2 kg",
      "m = N·m_1/1000 = 192·25 g/1000 = 4.8 kg",
      "m = V/1000·ρ = 5 L/1000·1070 kg/m³ = 5.35 kg",
      "m_pack = m_cells + m_other = 389.8 kg + 99.04 kg = 488.8 kg",
      "E_u = E·f_u = 98.11 kWh·0.93 = 91.24 kWh",
    ]) {
      expect(lines).toContain(line);
    }
  });

  it("carries the caution above 60 V only", () => {
    expect(assemblePack(good).cautions.map(({ code }) => code)).toEqual(["HIGH_VOLTAGE"]);
    expect(assemblePack({ ...good, series: 14 }).cautions).toEqual([]);
    expect(assemblePack({ ...good, series: 15 }).cautions).toHaveLength(1);
  });

  it("says that a pack may exceed 60 V when full, where only its nominal voltage is known", () => {
    const short = { ...good, cell: prismaticCell(box), series: 15 };
    expect(
      assemblePack(short)
        .cautions.map(({ text }) => text)
        .join(),
    ).toContain("the nominal one is 54.75 V: take it");
    expect(assemblePack(short).warnings.join()).toContain("54.75 V may exceed 60 V");
    expect(assemblePack({ ...short, series: 10 }).warnings).toEqual([]);
  });

  it("refuses a stated mass below that of its cells, and an outer volume below that of its contents, naming both", () => {
    const light = thrown(() => assemblePack({ ...good, statedMass: q("380 kg") }));
    expect(light.code).toBe("INCONSISTENT");
    expect(light.message).toContain("380 kg cannot hold cells of 389.76 kg");
    const small = thrown(() => assemblePack({ ...good, outerVolume: q("150 L") }));
    expect(small.code).toBe("INCONSISTENT");
    // Worked by hand: 192·0.784992 + 192·0.02 + 6 + 5 + 10.4 + 2.88 L.
    expect(small.message).toContain("150 L for 178.838 L");
  });

  it("warns of a stated mass and energy that are others, and asks whether the energy is the usable one", () => {
    expect(assemblePack({ ...good, statedMass: q("480 kg"), statedEnergy: q("98 kWh") }).warnings).toEqual([]);
    const [mass, energy] = assemblePack({ ...good, statedMass: q("560 kg"), statedEnergy: q("91 kWh") }).warnings;
    expect(mass).toBe("the stated mass, 560 kg, is 15 % above the 488.798 kg of cells and parts");
    expect(energy).toContain("91 kWh, is 7.2 % below the 98.112 kWh");
    expect(energy).toContain("usable");
    expect(assemblePack({ ...good, statedEnergy: q("120 kWh") }).warnings.join()).not.toContain("usable");
  });

  it("warns when hardly anything is beside the cells", () => {
    expect(assemblePack({ ...good, parts: [] }).warnings.join()).toContain("is something missing");
  });

  it.each([
    ["half a cell", { series: 9.5 }, "OUT_OF_RANGE"],
    ["no parts list", { parts: undefined }, "MISSING_OPTION"],
    ["a part made by hand", { parts: [{ name: "lid", mass: q("5 kg") }] }, "NOT_AN_OBJECT"],
    ["a part spoilt by hand", { parts: [{ ...parts[0], mass: q("-5 kg") }] }, "NEGATIVE"],
    ["parts that are no list", { parts: {} }, "WRONG_CHOICE"],
  ])("refuses %s", (_, change, code) => {
    expect(thrown(() => assemblePack({ ...good, ...change } as never)).code).toBe(code);
  });

  it.each([
    ["an unknown group", () => weighedPart({ name: "x", group: "cools" as never, mass: q("1 kg") }), "did you mean"],
    [
      "an unknown way to count",
      () => weighedPart({ name: "x", group: "other", mass: q("1 kg"), counted: "twice" as never }),
      "with each cell",
    ],
    [
      "a sheet without thickness",
      () => sheetPart({ name: "x", group: "other", area: q("1 m²"), thickness: q("0 mm"), density: q("1 kg/L") }),
      "thickness",
    ],
    [
      "a fill of no volume",
      () => fillPart({ name: "x", group: "other", volume: q("0 L"), density: q("1 kg/L") }),
      "volume",
    ],
    ["a part without a name", () => weighedPart({ name: " ", group: "other", mass: q("1 kg") }), "name"],
  ])("refuses %s", (_, call, text) => {
    expect(thrown(call).message).toContain(text);
  });
});

describe("the breakdown of a pack", () => {
  it("adds up to the pack, and its specific energy falls line by line from the cell's to the pack's", () => {
    fc.assert(
      fc.property(cells, counts, counts, anyParts, (one, series, parallel, some) => {
        const pack = assemblePack({ cell: one, series, parallel, parts: some, usableFraction: 0.9 });
        const { rows, specificEnergy } = packBreakdown(pack);
        const total = rows.reduce((sum, { mass }) => sum + mass.in("kg"), 0);
        expect(relativeDifference(total, pack.mass.total.in("kg"))).toBeLessThan(1e-12);
        expect(rows.reduce((sum, { massShare }) => sum + massShare, 0)).toBeCloseTo(1, 9);
        const falling = rows.map(({ specificEnergySoFar }) => specificEnergySoFar.in("Wh/kg"));
        for (const [i, value] of falling.entries())
          expect(value).toBeLessThanOrEqual((falling[i - 1] ?? Infinity) * (1 + 1e-12));
        expect(relativeDifference(falling[0] ?? 0, one.specificEnergy.in("Wh/kg"))).toBeLessThan(1e-12);
        expect(relativeDifference(falling.at(-1) ?? 0, pack.specificEnergy.pack.in("Wh/kg"))).toBeLessThan(1e-12);
        expect(
          (specificEnergy.packUsable?.in("Wh/kg") ?? 0) / (specificEnergy.packTotal?.in("Wh/kg") ?? 1),
        ).toBeCloseTo(0.9, 12);
      }),
    );
  });

  it("has the same form for a pack composed top down", () => {
    const wanted = {
      cell,
      energy: q("98 kWh"),
      nominalVoltage: q("350 V"),
      cellMassFraction: 0.74,
      usableFraction: 0.93,
    };
    const { rows, energyDensity, volumeLeft } = packBreakdown(composePack({ ...wanted, cellVolumeFraction: 0.5 }));
    expect(rows.map(({ name }) => name)).toEqual(["cells", "all other parts"]);
    expect(rows[0]?.massShare).toBeCloseTo(0.74, 12);
    expect(energyDensity.packTotal?.ratioTo(energyDensity.cell)).toBeCloseTo(0.5, 12);
    expect(volumeLeft?.in("L")).toBeCloseTo(192 * 0.784992, 6);
    expect(packBreakdown(composePack(wanted)).energyDensity.packTotal).toBeUndefined();
  });

  it("counts the volumes of parts that are known, and leaves the rest", () => {
    const { volumeLeft, rows } = packBreakdown(assemblePack({ ...good, outerVolume: q("300 L") }));
    const known = rows.reduce((sum, { volume }) => sum + (volume?.in("L") ?? 0), 0);
    expect(volumeLeft?.in("L")).toBeCloseTo(300 - known, 9);
    expect(rows.find(({ name }) => name === "spacers")?.volume?.in("L")).toBeCloseTo(3.84, 12);
  });

  it("refuses what is no pack", () => {
    expect(thrown(() => packBreakdown({} as never)).code).toBe("NOT_AN_OBJECT");
    const pack = assemblePack(good);
    expect(thrown(() => packBreakdown({ ...pack, mass: { ...pack.mass, total: q("0 kg") } })).code).toBe(
      "OUT_OF_RANGE",
    );
    expect(thrown(() => packBreakdown({ ...pack, parts: 5 } as never)).code).not.toBe("nothing thrown");
  });
});
