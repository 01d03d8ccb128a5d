import { q, quantity } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { published } from "../../../../test/support/published.js";
import {
  cellMassFractionOf,
  cellMassFractionPrior,
  cellVolumeFractionOf,
  cellVolumeFractionPrior,
  checkPackClaim,
  chemistries,
  composePackSpread,
  impliedCellMassFraction,
  impliedCellSpecificEnergy,
  packMassOf,
  prismaticCell,
  publishedPacks,
  structuralCredit,
  structuralPackClaim,
} from "../../src/index.js";
import { box, energies, fractions, relativeDifference, thrown } from "../support/cells.js";

const claim = { packMass: q("400 kg"), energy: q("65 kWh"), construction: "moduleBased" } as const;

describe("what an announced pack implies", () => {
  published({
    quantity:
      "packs of 2020 whose cells, implied by mass and energy, are plausible for their chemistry; none would be for LFP above 147 Wh/kg",
    source: "trade article of April 2020 on packs of electric cars",
    status: "quoted",
    given: "19 packs with NMC or NCA, taken as module-based",
    published: [19, 0],
    computed: () => {
      const verdicts = (chemistry: "NMC" | "NCA" | "LFP", packs: typeof publishedPacks) =>
        packs.filter(({ total, mass }) => {
          const announced = { packMass: quantity(mass, "kg"), energy: quantity(total, "kWh") };
          return checkPackClaim({ ...announced, construction: "moduleBased", chemistry }).verdict === "plausible";
        }).length;
      const dense = publishedPacks.filter(({ total, mass }) => total / mass > 0.147);
      return [verdicts("NMC", publishedPacks), verdicts("LFP", dense)];
    },
    tolerance: 0,
    why: "a count",
  });

  it("is the inverse of the mass of a pack, both ways", () => {
    const densities = fc.double({ min: 50, max: 400, noNaN: true });
    fc.assert(
      fc.property(energies, densities, fractions, (kWh, density, cellMassFraction) => {
        const energy = quantity(kWh, "kWh");
        const cellSpecificEnergy = quantity(density, "Wh/kg");
        const packMass = packMassOf({ energy, cellSpecificEnergy, cellMassFraction });
        const back = impliedCellSpecificEnergy({ energy, packMass, cellMassFraction });
        expect(relativeDifference(back.in("Wh/kg"), density)).toBeLessThan(1e-12);
        const fraction = impliedCellMassFraction({ energy, packMass, cellSpecificEnergy });
        expect(relativeDifference(fraction, cellMassFraction)).toBeLessThan(1e-12);
      }),
    );
  });

  // Worked by hand: 65 kWh over 400 kg × 0.66 is 246.2 Wh/kg; NMC cells are published up to 280.
  it("is plausible for one chemistry and not for another, and names both figures", () => {
    const nickel = checkPackClaim({ ...claim, chemistry: "NMC" });
    expect(nickel.cellSpecificEnergy.likely.in("Wh/kg")).toBeCloseTo(65000 / (400 * 0.66), 9);
    expect(nickel.verdict).toBe("plausible");
    const iron = checkPackClaim({ ...claim, chemistry: "LFP" });
    expect(iron.verdict).toBe("beyond what is published");
    expect(iron.statement).toContain("211 Wh/kg to 280 Wh/kg");
    expect(iron.statement).toContain("90 to 190 Wh/kg");
    expect(checkPackClaim({ ...claim, energy: q("15 kWh"), chemistry: "NMC" }).verdict).toBe(
      "short of what is published",
    );
  });

  // 110 kWh in 100 kg: 1100 Wh/kg over 0.66 is 1667; the best published cells of any chemistry have 280.
  it("is compared with all chemistries when none is given, and doubted when it is beyond all of them", () => {
    const open = checkPackClaim(claim);
    expect(open.verdict).toBe("plausible");
    expect(open.statement).toContain("for NMC, NCA, LMFP; no chemistry is given");
    expect(open.warnings).toEqual([]);
    const impossible = checkPackClaim({ ...claim, packMass: q("100 kg"), energy: q("110 kWh") });
    expect(impossible.verdict).toBe("beyond what is published");
    expect(impossible.warnings.join()).toContain("1670 Wh/kg, is 6 times the 280 Wh/kg of the best published cells");
    const byCell = { ...claim, packMass: q("100 kg"), energy: q("110 kWh"), cellSpecificEnergy: q("1500 Wh/kg") };
    expect(checkPackClaim(byCell).warnings.join()).toContain("lie above the published ones of any chemistry");
  });

  // 110 kWh in 1500 kg: 73.3 Wh/kg over 0.66 is 111: cells of about 2015 (90 to 130), not of the 2020s (160 to 190).
  it("names the era that the likely need falls into, and doubts it when it is not today's", () => {
    const heavy = checkPackClaim({ ...claim, packMass: q("1500 kg"), energy: q("110 kWh"), chemistry: "LFP" });
    expect(heavy.verdict).toBe("plausible");
    expect(heavy.statement).toContain("plausible, as cells of about 2015 (90 to 130 Wh/kg)");
    expect(heavy.warnings.join()).toContain("low for prismatic automotive cells of the 2020s (160 to 190 Wh/kg)");
    const usual = checkPackClaim({ ...claim, energy: q("46 kWh"), chemistry: "LFP" });
    expect(usual.statement).toContain("plausible, as prismatic automotive cells of the 2020s");
    expect(usual.warnings).toEqual([]);
    const between = checkPackClaim({ ...claim, energy: q("37 kWh"), chemistry: "LFP" });
    expect(between.warnings.join()).toContain("lies between published eras, below prismatic");
    const bold = checkPackClaim({ ...claim, energy: q("56 kWh"), chemistry: "LFP" });
    expect(bold.verdict).toBe("plausible");
    expect(bold.warnings.join()).toContain("lies above the best published cells");
  });

  it("is doubted in words exactly when the verdict is not plausible or the likely need is not today's", () => {
    const densities = fc.double({ min: 20, max: 600, noNaN: true });
    const names = fc.constantFrom("LCO", "LMO", "NMC", "NCA", "LFP", "LMFP", "sodiumIon", undefined);
    fc.assert(
      fc.property(densities, names, (density, chemistry) => {
        const energy = quantity(0.4 * density * 0.66, "kWh");
        const { verdict, warnings } = checkPackClaim({ ...claim, energy, chemistry });
        const all = chemistry === undefined ? Object.values(chemistries) : [chemistries[chemistry]];
        const todays = all.some(({ specificEnergy }) => {
          const { low, high } = specificEnergy.at(-1) ?? { low: 0, high: 0 };
          return density >= low && density <= high;
        });
        if (verdict !== "plausible") expect(warnings).toHaveLength(1);
        else if (chemistry !== undefined) expect(warnings.length === 0).toBe(todays);
      }),
    );
  });

  it("is never stricter for a lighter pack with less energy, in proportion", () => {
    const ks = fc.double({ min: 0.1, max: 10, noNaN: true });
    fc.assert(
      fc.property(ks, energies, (k, kWh) => {
        const scaled = checkPackClaim({
          ...claim,
          energy: quantity(kWh, "kWh"),
          packMass: quantity(6 * kWh, "kg"),
          chemistry: "NMC",
        });
        const other = checkPackClaim({
          ...claim,
          energy: quantity(k * kWh, "kWh"),
          packMass: quantity(6 * k * kWh, "kg"),
          chemistry: "NMC",
        });
        expect(other.verdict).toBe(scaled.verdict);
      }),
    );
  });

  it("counts a usable energy up to the total", () => {
    const usable = checkPackClaim({ ...claim, energy: q("58.5 kWh"), usableFraction: 0.9 });
    expect(usable.packSpecificEnergy.in("Wh/kg")).toBeCloseTo(162.5, 9);
  });

  it("refuses a pack lighter than its cells and names both masses", () => {
    const error = thrown(() => checkPackClaim({ ...claim, packMass: q("300 kg"), cellSpecificEnergy: q("200 Wh/kg") }));
    expect(error.code).toBe("INCONSISTENT");
    expect(error.message).toContain("a pack of 300 kg is lighter than its cells: 65 kWh of 200 Wh/kg are 325 kg");
  });

  it("gives the cell mass fraction when the cell is known", () => {
    const known = checkPackClaim({ ...claim, cellSpecificEnergy: q("250 Wh/kg") });
    expect(known.cellMassFraction).toBeCloseTo(0.65, 12);
    expect(known.verdict).toBe("plausible");
    expect(checkPackClaim({ ...claim, cellSpecificEnergy: q("190 Wh/kg") }).verdict).toBe("beyond what is published");
    expect(checkPackClaim({ ...claim, cellSpecificEnergy: q("350 Wh/kg") }).verdict).toBe("short of what is published");
  });

  it("sets the energy beside capacity times voltage", () => {
    const charge = { capacity: q("200 Ah"), nominalVoltage: q("350 V") };
    const [warning] = checkPackClaim({ ...claim, ...charge }).warnings;
    expect(warning).toBe(
      "the total energy, 65 kWh, is 7.1 % below capacity × nominal voltage, 70 kWh; is the energy the usable one?",
    );
    expect(checkPackClaim({ ...claim, ...charge, energy: q("69 kWh") }).warnings).toEqual([]);
    expect(checkPackClaim({ ...claim, ...charge }).cautions.map(({ code }) => code)).toEqual(["HIGH_VOLTAGE"]);
  });

  it.each([
    ["an unknown chemistry", { chemistry: "NCM" }, "NMC"],
    ["an unknown construction", { construction: "cellToPak" }, "cellToPack"],
    ["a structural pack, for which no fractions are published", { construction: "structural" }, "structuralCredit"],
  ])("refuses %s", (_, change, text) => {
    expect(thrown(() => checkPackClaim({ ...claim, ...change } as never)).message).toContain(text);
  });
});

describe("the fractions that a verdict rests on", () => {
  it("are not called published where the low end is assumed", () => {
    const told = (change: object) => checkPackClaim({ ...claim, ...change }).statement;
    const assumed = "0.72 to 0.9, the low end an assumption (common practice, no source)";
    expect(told({ construction: "cellToPack" })).toContain(`fraction ${assumed}`);
    expect(told({ construction: "cellToPack", cellSpecificEnergy: q("200 Wh/kg") })).toContain(assumed);
    expect(told({})).toContain("fraction 0.58 to 0.77)");
  });
});

describe("a pack with the spread of its construction", () => {
  const wanted = { cell: prismaticCell(box), energy: q("98 kWh"), nominalVoltage: q("350 V") };

  it.each(["moduleBased", "cellToPack"] as const)("of %s has the published fractions", (construction) => {
    const { lightest, likely, heaviest, sources } = composePackSpread({ ...wanted, construction });
    for (const [pack, end] of [
      [lightest, "high"],
      [likely, "likely"],
      [heaviest, "low"],
    ] as const) {
      const { mass, volume } = pack;
      expect(cellMassFractionOf({ cellsMass: mass.cells, packMass: mass.total })).toBeCloseTo(
        cellMassFractionPrior[construction][end],
        12,
      );
      const packVolume = volume.total ?? q("0 L");
      expect(cellVolumeFractionOf({ cellsVolume: volume.cells, packVolume })).toBeCloseTo(
        cellVolumeFractionPrior[construction][end],
        12,
      );
      expect(pack.warnings).toEqual([]);
    }
    expect(sources.length).toBe(construction === "cellToPack" ? 6 : 4);
  });

  it("has volume fractions whose ends are those of the points, where they were not widened", () => {
    for (const { low, likely, high, points, lowSource } of Object.values(cellVolumeFractionPrior)) {
      const all = points.map(({ value }) => value);
      expect(high).toBe(Math.max(...all));
      if (lowSource === undefined) expect(low).toBe(Math.min(...all));
      expect(likely).toBeGreaterThan(low);
      expect(likely).toBeLessThan(high);
    }
  });
});

describe("what a structural pack takes off the body", () => {
  const replaced = [
    { name: "floor panel", mass: q("22 kg") },
    { name: "cross members", mass: q("18 kg") },
  ];

  it("is the mass of the parts it replaces, less what the pack is heavier by", () => {
    const { offBody, saved, warnings } = structuralCredit({ replaced, packHeavierBy: q("15 kg") });
    expect([offBody.in("kg"), saved.in("kg"), warnings]).toEqual([40, 25, []]);
    expect(structuralCredit({ replaced, packHeavierBy: q("50 kg") }).warnings.join()).toContain("heavier by more");
  });

  it("or a claim, which says that it is one", () => {
    const { savedShareOfVehicleMass: claimedShare } = structuralPackClaim;
    const { saved, basis, warnings } = structuralCredit({ claimedShare, claimedFor: q("1800 kg") });
    expect(saved.in("kg")).toBeCloseTo(180, 9);
    expect(basis).toContain("claim");
    expect(warnings.join()).toContain("need not scale");
  });

  it.each([
    ["parts and a claim", { replaced, claimedShare: 0.1, claimedFor: q("1800 kg") }, "COUNTED_TWICE"],
    ["a part that the base leaves out", { replaced, leftOutOfBase: ["floor panel"] }, "COUNTED_TWICE"],
    ["a part twice", { replaced: [...replaced, ...replaced] }, "COUNTED_TWICE"],
    ["nothing", {}, "MISSING_OPTION"],
    ["a claim for nothing", { claimedShare: 0.1 }, "MISSING_OPTION"],
    ["a claim of half the vehicle", { claimedShare: 0.5, claimedFor: q("2 t") }, "OUT_OF_RANGE"],
    ["a part without mass", { replaced: [{ name: "floor" }] }, "MISSING_OPTION"],
  ])("refuses %s", (_, options, code) => {
    expect(thrown(() => structuralCredit(options as never)).code).toBe(code);
  });
});

describe("the parts of a structural credit", () => {
  it("are the same part however it is capitalised and spaced, so that none is taken off twice", () => {
    const part = { name: "Floor  panel", mass: q("22 kg") };
    const again = { name: "floor panel", mass: q("22 kg") };
    expect(() => structuralCredit({ replaced: [part], leftOutOfBase: ["floor panel "] })).toThrow(/already/);
    expect(() => structuralCredit({ replaced: [part, again] })).toThrow(/twice/);
  });

  it("are refused when a name left out of the base nearly is one of them, and doubted when it is none", () => {
    const replaced = [{ name: "floor panel", mass: q("22 kg") }];
    const error = thrown(() => structuralCredit({ replaced, leftOutOfBase: ["Floor pannel"] }));
    expect(error.code).toBe("COUNTED_TWICE");
    expect(error.message).toContain("did you mean 'floor panel'?");
    const { saved, warnings } = structuralCredit({ replaced, leftOutOfBase: ["seats", "bumper"] });
    expect(saved.in("kg")).toBe(22);
    expect(warnings.join()).toContain("'seats', 'bumper', left out of the base mass, is none of the replaced parts");
    const claim = structuralCredit({ claimedShare: 0.1, claimedFor: q("1800 kg"), leftOutOfBase: ["seats"] });
    expect(claim.warnings.join()).toContain(
      "whether 'seats', left out of the base mass, is counted twice is not known",
    );
  });
});
