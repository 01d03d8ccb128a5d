import { q, quantity, stepLine } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { published } from "../../../../test/support/published.js";
import { cylindricalCell, pouchCell, prismaticCell } from "../../src/index.js";
import { box, cells, cylinder, relativeDifference, thrown } from "../support/cells.js";

describe("cells from their data sheets", () => {
  const teardown = cylindricalCell({ ...cylinder, energy: q("85.56 Wh"), chemistry: "NMC811" });

  published({
    quantity: "specific energy of a 46 × 80 mm NMC811 cell, from its sizes and data",
    source: "teardown table, Cell Reports Physical Science 2025",
    status: "quoted",
    given: "23.125 Ah, 3.7 V, 355 g",
    published: q("241.0 Wh/kg"),
    computed: () => teardown.specificEnergy,
    tolerance: 0.05,
    why: "last printed digit",
  });

  published({
    quantity: "energy density of a 46 × 80 mm NMC811 cell, from its sizes and data",
    source: "teardown table, Cell Reports Physical Science 2025",
    status: "quoted",
    given: "46 mm × 80 mm, 23.125 Ah, 3.7 V",
    published: q("643.3 Wh/L"),
    computed: () => teardown.energyDensity,
    tolerance: { relative: 0.5 / 133 },
    why: "the source divides by a volume rounded to 133 mL",
  });

  published({
    quantity: "specific energy of a long LFP cell, from its data",
    source: "teardown table, Cell Reports Physical Science 2025",
    status: "quoted",
    given: "135 Ah, 3.2 V, 2.7 kg",
    published: q("160 Wh/kg"),
    computed: () => lfp.specificEnergy,
    tolerance: 0.5,
    why: "last printed digit",
  });

  published({
    quantity: "energy density of a long LFP cell, from its sizes and data",
    source: "teardown table, Cell Reports Physical Science 2025",
    status: "quoted",
    given: "965 mm × 90 mm × 14 mm, 135 Ah, 3.2 V",
    published: q("355.3 Wh/L"),
    computed: () => lfp.energyDensity,
    tolerance: 0.05,
    why: "last printed digit",
  });

  published({
    quantity: "energy density of a 94 Ah NMC111 cell, from its sizes",
    source: "slide of a cell maker in a trade article",
    status: "quoted",
    given: "173 mm × 125 mm × 45 mm, 94 Ah, 3.65 V; mass of 1.97 kg chosen, without influence",
    published: q("352 Wh/L"),
    computed: () =>
      prismaticCell({
        thickness: q("45 mm"),
        width: q("173 mm"),
        height: q("125 mm"),
        capacity: q("94 Ah"),
        nominalVoltage: q("3.65 V"),
        mass: q("1.97 kg"),
      }).energyDensity,
    tolerance: { relative: 0.05 / 3.65 },
    why: "the nominal voltage is not in the source; the chemistry has 3.6 V to 3.7 V",
  });

  it("warn of nothing when the figures are ordinary", () => {
    expect([...teardown.warnings, ...lfp.warnings]).toEqual([]);
  });
});

const lfp = prismaticCell({
  thickness: q("14 mm"),
  width: q("965 mm"),
  height: q("90 mm"),
  capacity: q("135 Ah"),
  nominalVoltage: q("3.2 V"),
  mass: q("2.7 kg"),
  energy: q("432 Wh"),
});

describe("a cell", () => {
  it("has an energy that is its specific energy times its mass and its energy density times its volume", () => {
    fc.assert(
      fc.property(cells, (cell) => {
        const energy = cell.energy.in("Wh");
        expect(relativeDifference(cell.capacity.times(cell.nominalVoltage).in("Wh"), energy)).toBeLessThan(1e-12);
        expect(relativeDifference(cell.specificEnergy.times(cell.mass).in("Wh"), energy)).toBeLessThan(1e-12);
        expect(relativeDifference(cell.energyDensity.times(cell.volume).in("Wh"), energy)).toBeLessThan(1e-12);
      }),
    );
  });

  it("does not care which units its data sheet uses", () => {
    const metric = cylindricalCell(cylinder);
    const other = cylindricalCell({
      diameter: cylinder.diameter.to("in"),
      height: cylinder.height.to("ft"),
      capacity: cylinder.capacity.to("C"),
      nominalVoltage: cylinder.nominalVoltage.to("mV"),
      mass: cylinder.mass.to("oz"),
    });
    expect(relativeDifference(metric.specificEnergy.in("J/kg"), other.specificEnergy.in("J/kg"))).toBeLessThan(1e-12);
    expect(relativeDifference(metric.energyDensity.in("J/m³"), other.energyDensity.in("J/m³"))).toBeLessThan(1e-12);
  });

  it("shows volume, energy and both densities in its working, with the values of the cell", () => {
    fc.assert(
      fc.property(cells, (cell) => {
        expect(cell.working().map(({ result }) => result.value)).toEqual([
          cell.volume.in("mL"),
          cell.energy.in("Wh"),
          cell.specificEnergy.in("Wh/kg"),
          cell.energyDensity.in("Wh/L"),
        ]);
      }),
      { numRuns: 30 },
    );
    expect(prismaticCell(box).working().map(stepLine)[1]).toBe("E = Q·U = 140 Ah·3.65 V = 511 Wh");
  });

  it("is called by its designation, or else by chemistry, form, sizes and capacity", () => {
    expect(prismaticCell({ ...box, designation: "sample A" }).label).toBe("sample A");
    expect(pouchCell({ ...box, chemistry: "NMC622" }).label).toBe("NMC622 pouch cell, 52 mm × 148 mm × 102 mm, 140 Ah");
    expect(cylindricalCell(cylinder).label).toBe("cylindrical cell, 46 mm × 80 mm, 23.125 Ah");
  });

  it("keeps what was given and leaves out what was not", () => {
    const source = { document: "data sheet", status: "seen" } as const;
    const cell = prismaticCell({ ...box, maximumVoltage: q("4.2 V"), minimumVoltage: q("2.8 V"), source });
    expect(cell).toMatchObject({ form: "prismatic", source });
    expect([cell.maximumVoltage, cell.minimumVoltage].map(String)).toEqual(["4.2 V", "2.8 V"]);
    expect(Object.keys(prismaticCell(box))).not.toContain("maximumVoltage");
  });

  it("cannot be changed", () => {
    const cell = prismaticCell(box);
    expect([cell, cell.dimensions, cell.warnings].every(Object.isFrozen)).toBe(true);
  });
});

describe("a cell with implausible figures is kept, with a warning", () => {
  it.each([
    ["too light", { mass: q("0.2 kg") }, "specific energy", "above 500 Wh/kg"],
    ["too heavy", { mass: q("200 kg") }, "specific energy", "below 20 Wh/kg"],
    ["too small", { width: q("14.8 mm") }, "energy density", "above 1200 Wh/L"],
    ["too large", { width: q("14800 mm") }, "energy density", "below 20 Wh/L"],
  ])("%s", (_title, change, what, limit) => {
    const { warnings } = prismaticCell({ ...box, ...change });
    expect(warnings).toHaveLength(1);
    expect(warnings[0]).toContain(what);
    expect(warnings[0]).toContain(limit);
  });
});

describe("a stated energy", () => {
  it("may differ from capacity × voltage by 3 %, not by more", () => {
    const offBy = (share: number) => () => prismaticCell({ ...box, energy: quantity(511 * (1 + share), "Wh") });
    expect(offBy(0.029)().energy.in("Wh")).toBeCloseTo(511, 9);
    expect(offBy(-0.029)().energy.in("Wh")).toBeCloseTo(511, 9);
    expect(thrown(offBy(0.031)).code).toBe("INCONSISTENT");
    expect(thrown(offBy(-0.031)).code).toBe("INCONSISTENT");
  });

  it("is refused with both figures, in the unit that was stated", () => {
    const { message } = thrown(() => prismaticCell({ ...box, energy: q("0.6 kWh") }));
    expect(message).toContain("stated 0.6 kWh, computed 0.511 kWh");
  });
});

describe("bad data of a cell are refused", () => {
  // The type system refuses most of these too; plain JavaScript meets the run time.
  it.each([
    ["negative mass", { mass: q("-2 kg") }, "NEGATIVE", "mass must be greater than zero: got −2 kg"],
    ["zero voltage", { nominalVoltage: q("0 V") }, "OUT_OF_RANGE", "nominalVoltage must be greater than zero"],
    ["zero thickness", { thickness: q("0 mm") }, "OUT_OF_RANGE", "thickness must be greater than zero"],
    ["energy for capacity", { capacity: q("511 Wh") }, "WRONG_DIMENSION", "capacity must be electric charge"],
    ["bare number", { mass: 2.03 }, "NOT_A_QUANTITY", 'write q("2.03 kg")'],
    ["missing option", { mass: undefined }, "MISSING_OPTION", "'mass'"],
    ["unknown option", { nominalVoltag: q("3 V") }, "UNKNOWN_OPTION", "did you mean 'nominalVoltage'?"],
    ["maximum below nominal", { maximumVoltage: q("3.6 V") }, "INCONSISTENT", "nominalVoltage must not be above"],
    ["minimum above nominal", { minimumVoltage: q("3.7 V") }, "INCONSISTENT", "minimumVoltage must not be above"],
    ["chemistry that is no text", { chemistry: 811 }, "WRONG_CHOICE", "chemistry must be a text"],
    ["empty designation", { designation: " " }, "EMPTY", "designation must not be empty"],
    ["endless designation", { designation: "x".repeat(201) }, "TOO_LONG", "at most 200 characters"],
    ["source that is no object", { source: "data sheet" }, "NOT_AN_OBJECT", "source must be an object"],
    [
      "source of unknown status",
      { source: { document: "a", status: "sean" } },
      "WRONG_CHOICE",
      "source.status must be one of seen, ",
    ],
  ])("%s", (_title, change, code, text) => {
    const error = thrown(() => prismaticCell({ ...box, ...change } as never));
    expect(error.code).toBe(code);
    expect(error.message).toContain(text);
  });

  it("options that are no object", () => {
    expect(thrown(() => cylindricalCell("46 mm" as never)).code).toBe("NOT_AN_OBJECT");
  });
});

describe("a cell and the voltage of its chemistry", () => {
  const told = (chemistry: string, volts: number) =>
    prismaticCell({ ...box, chemistry, nominalVoltage: quantity(volts, "V") }).warnings.join();

  // Nominal voltages of a public web table: LFP 3.2 V, NCA 3.6 V, seen; NMC 3.6 to 3.7 V from memory.
  it("are doubted together when the chemistry is known and has another, both named", () => {
    expect(told("LFP", 3.65)).toContain("3.65 V is not that of LFP, published with 3.2 V: one of the two is wrong");
    expect(told("NMC811", 3.2)).toContain("3.2 V is not that of NMC811, published with 3.6 to 3.7 V");
    for (const [chemistry, volts] of [
      ["LFP", 3.2],
      ["lfp", 3.3],
      ["NMC", 3.5],
      ["NMC 622", 3.8],
      ["NCM811", 3.65],
      ["sodium-ion", 3.05],
      ["LMFP", 3.75],
    ] as const) {
      expect(told(chemistry, volts)).toBe("");
    }
    expect(told("NMC", 3.81)).not.toBe("");
    expect(told("LFP", 3.09)).not.toBe("");
  });

  it("say nothing for blends and words that are not known", () => {
    for (const chemistry of ["NMC+LMO blend", "invented", "LFP/NMC"])
      expect(told(chemistry, 2)).not.toContain("published");
  });
});
