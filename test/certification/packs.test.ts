import { describe, expect, it } from "vitest";
import { openFile } from "./invented-rows.js";
import { doubtsOf } from "./pack-trust.js";
import { expectedFullCharge, expectedSpecificEnergy, type PackRow, readPackRows, scoreOfPacks } from "./packs.js";

/** An invented row that nothing speaks against. */
const row = (id: string, change: Partial<PackRow> = {}): PackRow => ({
  ...{ id, maker: "A", modelYear: 2020, voltage: 350, capacity: 200, match: "value" },
  ...{ specificEnergy: 165, fullCharge: 73 },
  ...change,
});

describe("what is expected of filed packs", () => {
  it("is published cells times the fraction of the construction, worked by hand at the ends of the years", () => {
    // About 2015: 174 to 205 Wh/kg; 2020s: 240 to 280 Wh/kg. Module-based fractions: 0.58 to 0.77.
    expect(expectedSpecificEnergy(2012, "moduleBased").ends).toEqual({ low: 174 * 0.58, high: 205 * 0.77 });
    expect(expectedSpecificEnergy(2026, "moduleBased").ends).toEqual({ low: 240 * 0.58, high: 280 * 0.77 });
    const { low, likely, high, ends } = expectedSpecificEnergy(2018, "moduleBased");
    expect(likely).toBeCloseTo(0.67 * (189.5 + 0.6 * 70.5), -0.5);
    expect(ends.low).toBeLessThan(low);
    expect(ends.high).toBeGreaterThan(high);
    expect(expectedSpecificEnergy(2018, "cellToPack").low).toBeGreaterThan(likely);
  });

  it("of a full charge is usable energy over the efficiency of charging", () => {
    // The least and the most: 0.805 and 0.968 usable, 0.94 and 0.84 efficient.
    const { low, likely, high } = expectedFullCharge();
    expect(low).toBeGreaterThan(0.805 / 0.94);
    expect(high).toBeLessThan(0.969 / 0.84);
    expect(likely).toBeCloseTo(0.93 / 0.89, 1);
  });
});

describe("rows of packs", () => {
  it("are doubted for what contradicts itself, not for what was predicted badly", () => {
    const rows = [
      row("good"),
      row("far off", { maker: "B", specificEnergy: 90, fullCharge: 140 }),
      row("group", { maker: "C", match: "testgroup" }),
      row("voltage", { maker: "D", voltage: 850 }),
      row("cells", { maker: "E", specificEnergy: 264 }),
      row("twin", { maker: "F", specificEnergy: 151 }),
      row("other twin", { maker: "F", specificEnergy: 133 }),
      row("charge", { maker: "G", fullCharge: 50 }),
      row("no label", { maker: "H", fullCharge: Number.NaN, specificEnergy: Number.NaN }),
    ];
    const doubted = doubtsOf(rows);
    expect([...doubted.keys()]).toEqual(["group", "voltage", "cells", "twin", "other twin", "charge"]);
    expect(doubted.get("voltage")?.join()).toContain("the highest voltage is filed");
    expect(doubted.get("cells")?.join()).toContain("a figure of the cells");
    const { scored, rows: all, notTrusted, fullCharge } = scoreOfPacks(rows, "core");
    expect([all, scored, fullCharge.scored, notTrusted.length]).toEqual([9, 2, 2, 6]);
    expect(scoreOfPacks(rows, "all").scored).toBe(8);
  });

  it("are scored once for each pack, however many vehicles have it", () => {
    const rows = [row("1"), row("2"), row("3", { fullCharge: 75 }), row("4", { maker: "B", specificEnergy: 175 })];
    const { scored, makers, fullCharge, interval90, balanced90 } = scoreOfPacks(rows, "core");
    expect([scored, makers, fullCharge.scored]).toEqual([2, 2, 3]);
    expect(interval90.moduleBased).toBe(1);
    expect(balanced90.cellToPack).toBe(0);
  });

  it.skipIf(openFile === undefined)(
    openFile === undefined
      ? "score the priors of packs (skipped: the file of certified vehicles is not beside the project)"
      : "score the priors of packs, which no row has changed",
    () => {
      const score = scoreOfPacks(readPackRows(openFile as string), "core");
      console.log(JSON.stringify(score));
      expect(score.rows).toBe(52);
      // The maker whose filed voltage is the highest one is out, with every row.
      expect(score.notTrusted.flatMap(({ reasons }) => reasons).filter((why) => why.startsWith("850 V"))).toHaveLength(
        12,
      );
      expect([score.scored, score.makers, score.fullCharge.scored]).toEqual([12, 6, 25]);
      // Measured: between both ends of cells and fractions 0.92 (makers alike 0.97, width 0.44), with the ends as limits of a triangle
      // 0.58, as the 19 published packs have it 0.75, cell-to-pack 0. The published ends hold about what a 90 % interval should.
      expect(score.interval90.moduleEnds).toBeGreaterThan(0.85);
      expect(score.width90.moduleEnds).toBeLessThan(0.46);
      expect(score.moduleBased.median).toBeLessThan(0.1);
      // Measured 0.60, 5.6 % low: V×Ah with the published usable fractions and charging efficiencies says too little, too narrowly.
      expect(score.fullCharge.fullCharge.median).toBeLessThan(0.06);
      expect(score.fullCharge.interval90.fullCharge).toBeGreaterThan(0.55);
    },
  );
});
