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
  published({
    quantity: "share of a module-based pack's mass that is not cells",
    source: "common practice, no source",
    status: "common practice",
    published: 1 / 3,
    computed: () => 1 - cellMassFractionPrior.moduleBased.likely,
    tolerance: 0.02,
    why: "'about a third'",
  });

  it.each(Object.entries(cellMassFractionPrior))("%s has its ends at the ends of its points", (_name, prior) => {
    const all = prior.points.map(({ value }) => value);
    expect([prior.low, prior.high]).toEqual([Math.min(...all), Math.max(...all)]);
    expect(prior.likely).toBeGreaterThan(prior.low);
    expect(prior.likely).toBeLessThan(prior.high);
  });

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

  published({
    quantity: "share of a mid-size car's mass that a structural pack is claimed to save",
    source: "common practice, no source",
    status: "common practice",
    published: 0.1,
    computed: () => structuralPackClaim.savedShareOfVehicleMass,
    tolerance: 0,
    why: "'about a tenth' is carried as data, unchanged",
  });
});
