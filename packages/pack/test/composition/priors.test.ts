import { quantileSeq } from "mathjs";
import { describe, expect, it } from "vitest";
import { published } from "../../../../test/support/published.js";
import { cellMassFractionPrior, publishedPacks, structuralPackClaim, usableFractionPrior } from "../../src/index.js";

/** Quantiles of the R-7 method by a mathematics library, which shares no code with ours. */
const quantiles = (values: readonly number[]) => quantileSeq([...values], [0, 0.25, 0.5, 0.75, 1]) as number[];

describe("published packs", () => {
  published({
    quantity: "total specific energy of 19 packs: least, quartiles and median, greatest, in Wh/kg",
    source: "worked from the quoted list with a general statistics library, inclusive quartiles (R-7)",
    status: "regression",
    published: [102.58, 132.62, 144.59, 150.57, 168.41],
    computed: () => quantiles(publishedPacks.map(({ total, mass }) => (1000 * total) / mass)),
    tolerance: 0.005,
    why: "last printed digit",
  });

  published({
    quantity: "sums over the 19 packs: total kWh, usable kWh, kg",
    source: "summed by a separate script over the quoted list",
    status: "regression",
    published: [1143.19, 1059.3, 7955],
    computed: () =>
      (["total", "usable", "mass"] as const).map((key) => publishedPacks.reduce((all, pack) => all + pack[key], 0)),
    tolerance: 1e-9,
    why: "rounding of the sums: one digit of one pack shows",
  });

  it("hold less usable energy than total", () => {
    expect(publishedPacks).toHaveLength(19);
    for (const { total, usable } of publishedPacks) expect(usable).toBeLessThan(total);
  });
});

describe("usable fraction", () => {
  published({
    quantity: "usable over total energy of 19 packs: least, quartiles and median, greatest",
    source: "worked from the quoted list with a general statistics library, inclusive quartiles (R-7)",
    status: "regression",
    published: [0.8054, 0.9043, 0.9325, 0.9461, 0.9682],
    computed: () => quantiles(usableFractionPrior.points.map(({ value }) => value)),
    tolerance: 0.00005,
    why: "last printed digit",
  });

  it("has the quartiles of its own points", () => {
    const { low, likely, high, points } = usableFractionPrior;
    const all = points.map(({ value }) => value);
    const quartiles = quantiles(all)
      .slice(1, 4)
      .map((value) => Number(value.toFixed(2)));
    expect([low, likely, high]).toEqual(quartiles);
  });
});

describe("cell mass fraction", () => {
  // Every value beside the text of its source, so that a slip of a digit shows.
  it("has the published values, and no others", () => {
    const { moduleBased, cellToPack } = cellMassFractionPrior;
    // Trade article on six packs: air-cooled pouch 0.58, 0.61, 0.63, 0.64; 96 large prismatic, liquid-cooled 0.75, 0.77.
    expect(moduleBased.points.map(({ value }) => value)).toEqual([0.58, 0.61, 0.63, 0.64, 0.75, 0.77]);
    // Trade articles: a maker claims 0.845 for an LFP pack; class averages 0.85 to 0.90.
    expect(cellToPack.points.map(({ value }) => value)).toEqual([0.845, 0.85, 0.9]);
    // Common practice, no source: about a third of a module-based pack's mass is not cells.
    expect([moduleBased.low, moduleBased.likely, moduleBased.high]).toEqual([0.58, 0.66, 0.77]);
    expect(Math.abs(1 - moduleBased.likely - 1 / 3)).toBeLessThan(0.01);
    expect([cellToPack.low, cellToPack.likely, cellToPack.high]).toEqual([0.72, 0.81, 0.9]);
  });

  published({
    quantity: "part of a module-based pack's mass that is not cells: about a third",
    source: "common practice, no source",
    status: "common practice",
    given: "six packs whose cell mass fractions a trade article gives (quoted), their mean",
    published: 1 / 3,
    computed: () => {
      const { points } = cellMassFractionPrior.moduleBased;
      return 1 - points.reduce((sum, { value }) => sum + value, 0) / points.length;
    },
    tolerance: 0.02,
    why: "'about a third': 31 to 35 %",
  });

  it("says that the low end of a cell-to-pack one is computed and widened", () => {
    const { low, likely, high, points, lowSource, extent } = cellMassFractionPrior.cellToPack;
    // A quoted pack of 126 Wh/kg over quoted cells of 176 Wh/kg, to two decimals.
    expect(low).toBe(Number((126 / 176).toFixed(2)));
    expect(low).toBeLessThan(Math.min(...points.map(({ value }) => value)));
    expect(likely).toBeCloseTo((low + high) / 2, 12);
    expect([extent, lowSource?.status]).toEqual(["published ends, low end widened", "common practice"]);
    expect(lowSource?.document).toContain("computed");
    expect(cellMassFractionPrior.moduleBased.lowSource).toBeUndefined();
  });

  it.each(Object.entries(cellMassFractionPrior))(
    "%s has its ends at the ends of its points, where they were not widened",
    (_name, prior) => {
      const all = prior.points.map(({ value }) => value);
      expect(prior.high).toBe(Math.max(...all));
      if (prior.lowSource === undefined) expect(prior.low).toBe(Math.min(...all));
      expect(prior.likely).toBeGreaterThan(prior.low);
      expect(prior.likely).toBeLessThan(prior.high);
    },
  );

  // Quoted: disassembled packs of about 76 Wh/kg hold 60 to 65 % cells, so this prior must reach there.
  it("of a module-based pack reaches what disassembled packs held", () => {
    const { low, high } = cellMassFractionPrior.moduleBased;
    expect(low).toBeLessThan(0.6);
    expect(high).toBeGreaterThan(0.65);
  });

  it("says of every value how well it is known", () => {
    for (const { source, likelySource } of Object.values(cellMassFractionPrior)) {
      expect(source.status).toBe("quoted");
      expect(likelySource.status).toBe("common practice");
    }
  });
});

describe("claim for structural packs", () => {
  it("is marked as a claim without a source, for one size of car", () => {
    expect(structuralPackClaim.source.status).toBe("common practice");
    expect(structuralPackClaim.claimedFor).toContain("mid-size");
    expect(structuralPackClaim.note).toContain("need not scale");
  });

  it("is a tenth of the vehicle's mass, data and no estimate", () => {
    expect(structuralPackClaim.savedShareOfVehicleMass).toBe(0.1);
  });
});
