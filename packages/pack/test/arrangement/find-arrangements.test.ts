import { q, quantity } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { arrangePack, findArrangements, prismaticCell, voltageClasses } from "../../src/index.js";
import { box, relativeDifference, thrown } from "../support/cells.js";

const cell = prismaticCell({ ...box, maximumVoltage: q("4.2 V"), minimumVoltage: q("2.8 V") });
const wanted = { cell, energy: q("98 kWh"), voltageClass: "400 V" } as const;
const names = (found: readonly { series: number; parallel: number }[]) =>
  found.map(({ series, parallel }) => `${series}s${parallel}p`);

const small = fc.record({
  capacity: fc.double({ min: 1, max: 60, noNaN: true }),
  kWh: fc.double({ min: 0.2, max: 6, noNaN: true }),
  energyTolerance: fc.double({ min: 0, max: 0.3, noNaN: true }),
  lowest: fc.double({ min: 3, max: 60, noNaN: true }),
  width: fc.double({ min: 1, max: 60, noNaN: true }),
});

describe("all arrangements", () => {
  it("are those that two loops over every number find", () => {
    fc.assert(
      fc.property(small, ({ capacity, kWh, energyTolerance, lowest, width }) => {
        const one = prismaticCell({
          ...box,
          capacity: quantity(capacity, "Ah"),
          maximumVoltage: q("4.2 V"),
          minimumVoltage: q("2.8 V"),
        });
        const each = one.energy.in("kWh");
        const highest = lowest * 1.5 + width;
        const brute: string[] = [];
        for (let series = 1; series <= 80; series++) {
          for (let parallel = 1; parallel * series * each <= 12; parallel++) {
            const fits = Math.abs(series * parallel * each - kWh) <= energyTolerance * kWh;
            if (fits && series * 2.8 >= lowest && series * 4.2 <= highest) brute.push(`${series}s${parallel}p`);
          }
        }
        const limits = { chargedAtMost: quantity(highest, "V"), dischargedAtLeast: quantity(lowest, "V") };
        const { found, misses } = findArrangements({
          cell: one,
          energy: quantity(kWh, "kWh"),
          energyTolerance,
          ...limits,
        });
        expect(names(found).sort()).toEqual(brute.sort());
        expect(misses.length > 0).toBe(brute.length === 0);
        for (const { because } of misses) expect(because.length).toBeGreaterThan(0);
      }),
    );
  });

  it("come in the order that is stated", () => {
    const by = (rankBy: "nearest energy" | "fewest cells" | "highest voltage") =>
      findArrangements({ ...wanted, energyTolerance: 0.2, rankBy }).found;
    const over = by("nearest energy").map(({ energyOverTarget }) => Math.abs(energyOverTarget.in("kWh")));
    expect(over).toEqual([...over].sort((a, b) => a - b));
    const counts = by("fewest cells").map(({ cellCount }) => cellCount);
    expect(counts).toEqual([...counts].sort((a, b) => a - b));
    const series = by("highest voltage").map((each) => each.series);
    expect(series).toEqual([...series].sort((a, b) => b - a));
    expect(names(by("fewest cells")).sort()).toEqual(names(by("highest voltage")).sort());
  });

  it("holds what arrangePack takes for the voltage that it reaches", () => {
    for (const { energy, nominalVoltage, series, parallel } of findArrangements({ ...wanted, energyTolerance: 0.1 })
      .found) {
      expect(arrangePack({ cell, energy, nominalVoltage })).toMatchObject({ series, parallel });
    }
  });

  // Worked by hand: 96 cells of 2.8, 3.65 and 4.2 V; 192 of 511 Wh and of 2.03 kg; two strings of 140 Ah.
  it("says what each costs", () => {
    const [first] = findArrangements(wanted).found;
    expect(first?.energy.in("kWh")).toBeCloseTo(98.112, 9);
    expect(first?.energyOverTarget.in("kWh")).toBeCloseTo(0.112, 9);
    expect([first?.minimumVoltage, first?.nominalVoltage, first?.maximumVoltage].map((each) => each?.in("V"))).toEqual(
      [268.8, 350.4, 403.2].map((volts) => expect.closeTo(volts, 9)),
    );
    expect(first?.capacity.in("Ah")).toBe(280);
    expect(first?.cellsMass.in("kg")).toBeCloseTo(389.76, 9);
    expect(first?.modules.slice(0, 3)).toEqual([
      { modules: 2, seriesEach: 48 },
      { modules: 3, seriesEach: 32 },
      { modules: 4, seriesEach: 24 },
    ]);
    expect(first?.working().at(-1)?.result.printed).toBe("389.8");
  });

  it("has modules that divide evenly, all of them, none twice", () => {
    for (const { series, modules } of findArrangements({ ...wanted, energyTolerance: 0.5 }).found) {
      const brute = [];
      for (let n = 2; n <= series / 2; n++) if (series % n === 0) brute.push({ modules: n, seriesEach: series / n });
      expect(modules).toEqual(brute);
    }
  });

  it("carries the caution of its highest voltage, and none below 60 V", () => {
    expect(findArrangements(wanted).cautions.map(({ code }) => code)).toEqual(["HIGH_VOLTAGE"]);
    const low = { cell, energy: q("5 kWh"), chargedAtMost: q("55 V"), dischargedAtLeast: q("30 V") };
    const { found, cautions } = findArrangements({ ...low, energyTolerance: 0.3 });
    expect(found.length).toBeGreaterThan(0);
    expect(cautions).toEqual([]);
  });

  it("says why the nearest misses do not fit", () => {
    const energyMiss = findArrangements({
      ...wanted,
      energy: q("75 kWh"),
      chargedAtMost: q("420 V"),
      dischargedAtLeast: q("260 V"),
      voltageClass: undefined,
    });
    expect(energyMiss.found).toEqual([]);
    expect(energyMiss.misses[0]?.because.join()).toMatch(/kWh is 2\d % .* the 75 kWh asked for/);
    const noSeries = findArrangements({
      cell,
      energy: q("98 kWh"),
      chargedAtMost: q("403 V"),
      dischargedAtLeast: q("400 V"),
    });
    expect(noSeries.misses.flatMap(({ because }) => because).join()).toMatch(/when full is above 403 V/);
  });

  it("finds some hundred arrangements of small cells, and voltages within the class", () => {
    const ten = prismaticCell({
      ...box,
      capacity: q("2.78 Ah"),
      nominalVoltage: q("3.6 V"),
      mass: q("45 g"),
      maximumVoltage: q("4.2 V"),
      minimumVoltage: q("2.5 V"),
    });
    const { found } = findArrangements({ ...wanted, cell: ten, energy: q("120 kWh") });
    expect(found.length).toBeGreaterThan(200);
    const { chargedAtMost, dischargedAtLeast } = voltageClasses["400 V"];
    for (const { maximumVoltage, minimumVoltage, energy } of found) {
      expect(maximumVoltage?.in("V")).toBeLessThanOrEqual(chargedAtMost + 1e-6);
      expect(minimumVoltage?.in("V")).toBeGreaterThanOrEqual(dischargedAtLeast - 1e-6);
      expect(relativeDifference(energy.in("kWh"), 120)).toBeLessThan(0.0501);
    }
  });

  it.each([
    ["without a voltage", { voltageClass: undefined }, "MISSING_OPTION"],
    ["with one limit", { voltageClass: undefined, chargedAtMost: q("400 V") }, "MISSING_OPTION"],
    ["with class and limit", { chargedAtMost: q("400 V") }, "INCONSISTENT"],
    [
      "with limits in the wrong order",
      { voltageClass: undefined, chargedAtMost: q("300 V"), dischargedAtLeast: q("310 V") },
      "INCONSISTENT",
    ],
    ["with an unknown class", { voltageClass: "48 V" }, "WRONG_CHOICE"],
    ["with a cell whose window is not known", { cell: prismaticCell(box) }, "NOT_VALID_HERE"],
    ["with 5 for 5 %", { energyTolerance: 5 }, "OUT_OF_RANGE"],
    ["with an unknown order", { rankBy: "cost" }, "WRONG_CHOICE"],
    ["for an energy beyond counting", { energy: q("1e18 kWh") }, "OUT_OF_RANGE"],
  ])("are refused %s", (_, change, code) => {
    expect(thrown(() => findArrangements({ ...wanted, ...change } as never)).code).toBe(code);
  });
});
