import { q, quantity } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { published } from "../../../../test/support/published.js";
import {
  type AgeingUse,
  fadeCurve,
  fadeOverYears,
  ironPhosphate2200CycleFade,
  ironPhosphate26650CalendarFade,
  ironPhosphate26650CalendarResistance,
  ironPhosphate26650CycleFade,
  nmc18650CalendarFade,
  nmc18650CalendarResistance,
  nmc18650CycleFade,
  nmc18650CycleResistance,
  publishedAgeingModels,
} from "../../src/index.js";
import { relativeDifference, thrown } from "../support/cells.js";

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const why = "last printed digit of a value that was worked beside the quoted coefficients";

describe("published models of ageing", () => {
  published({
    quantity: "capacity lost by cycling, LFP cell of 2.2 Ah: C/2 at 60 °C and 1000 Ah; C/2 and 2C at 25 °C and 2000 Ah",
    source: "J. Power Sources 196 (2011) 3942, coefficients as a thesis carries them",
    status: "regression",
    published: [0.1617, 0.06226, 0.05339],
    computed: () => [
      ironPhosphate2200CycleFade({ rate: 0.5, temperature: q("333.15 K"), throughput: q("1000 Ah") }),
      ironPhosphate2200CycleFade({ rate: 0.5, temperature: q("298.15 K"), throughput: q("2000 Ah") }),
      ironPhosphate2200CycleFade({ rate: 2, temperature: q("298.15 K"), throughput: q("2000 Ah") }),
    ],
    tolerance: 5e-5,
    why,
  });

  published({
    quantity: "factor of the same model at C/2, 2C, 6C and 10C",
    source: "J. Power Sources 196 (2011) 3942, the four factors as quoted",
    status: "quoted",
    published: [31_630, 21_681, 12_934, 15_512],
    // The exponential and the power divided out of the result.
    computed: () =>
      [0.5, 2, 6, 10].map((rate) => {
        const fade = ironPhosphate2200CycleFade({ rate, temperature: q("300 K"), throughput: q("1 Ah") });
        return (100 * fade) / Math.exp((-31_700 + 370.3 * rate) / (8.314 * 300));
      }),
    tolerance: 0.5,
    why: "last printed digit",
  });

  const nmcRest = { restVoltage: q("3.7 V"), temperature: q("298.15 K"), time: q("365 d") };
  const nmcCycled = { meanVoltage: q("3.7 V"), depth: 0.8, throughput: q("2000 Ah") };
  published({
    quantity: "NMC cell of 2.05 Ah: capacity left after a year at rest, lost by 2000 Ah; resistance gained by each",
    source: "J. Power Sources 257 (2014) 325, coefficients as open texts carry them, one of them from memory",
    status: "regression",
    given: "3.7 V, 25 °C; depth 0.8",
    published: [0.97605, 0.18035, 0.05065, 0.41753],
    computed: () => [
      1 - nmc18650CalendarFade(nmcRest),
      nmc18650CycleFade(nmcCycled),
      nmc18650CalendarResistance(nmcRest),
      nmc18650CycleResistance(nmcCycled),
    ],
    tolerance: 5e-6,
    why,
  });

  const resting = (state: number, celsius: number, years: number) => ({
    stateOfCharge: state,
    temperature: quantity(celsius, "°C"),
    time: quantity(years * 365, "d"),
  });
  published({
    quantity:
      "LFP cell of 3 Ah: capacity lost at rest in a year at 25 °C half and fully charged and at 40 °C half charged; in ten years",
    source: "J. Energy Storage 17 (2018) 153, coefficients as three open codes carry them",
    status: "regression",
    published: [0.04252, 0.06773, 0.05919, 0.1344],
    computed: () => [
      ironPhosphate26650CalendarFade(resting(0.5, 25, 1)),
      ironPhosphate26650CalendarFade(resting(1, 25, 1)),
      ironPhosphate26650CalendarFade(resting(0.5, 40, 1)),
      ironPhosphate26650CalendarFade(resting(0.5, 25, 10)),
    ],
    tolerance: 5e-5,
    why: "last printed digit; the years were taken of 365 or 365.25 days",
  });

  published({
    quantity:
      "the same cell: resistance gained at rest in a year at 25 °C and 40 °C; capacity lost by 1000 cycles of depth 0.8 and 1 at 1C",
    source: "J. Energy Storage 17 (2018) 153 and J. Power Sources (2020), coefficients as open codes carry them",
    status: "regression",
    published: [0.01682, 0.06741, 0.05693, 0.06834],
    computed: () => [
      ironPhosphate26650CalendarResistance(resting(0.5, 25, 1)),
      ironPhosphate26650CalendarResistance(resting(0.5, 40, 1)),
      ironPhosphate26650CycleFade({ rate: 1, depth: 0.8, equivalentCycles: 1000 }),
      ironPhosphate26650CycleFade({ rate: 1, depth: 1, equivalentCycles: 1000 }),
    ],
    tolerance: 5e-5,
    why: "last printed digit; the years were taken of 365 or 365.25 days",
  });

  const uses: fc.Arbitrary<AgeingUse> = fc.record({
    years: between(0, 20),
    equivalentCycles: between(0, 3000),
    temperature: between(-20, 50),
    stateOfCharge: between(0, 1),
    depth: between(0, 1),
    rate: between(0.05, 2),
  });

  describe.each(Object.entries(publishedAgeingModels))("%s", (_, model) => {
    const rises = (change: (use: AgeingUse, more: number) => Partial<AgeingUse>) =>
      fc.assert(
        fc.property(uses, between(0, 1), (use, more) => {
          const later = { ...use, ...change(use, more) };
          expect(model.fade(later)).toBeGreaterThanOrEqual(model.fade(use) - 1e-12);
          if (model.resistanceGrowth !== undefined) {
            expect(model.resistanceGrowth(later)).toBeGreaterThanOrEqual(model.resistanceGrowth(use) - 1e-12);
          }
        }),
      );

    it("loses no less with time, cycles, temperature and depth", () => {
      rises((use, more) => ({ years: use.years + 10 * more }));
      rises((use, more) => ({ equivalentCycles: use.equivalentCycles + 1000 * more }));
      rises((use, more) => ({ temperature: use.temperature + 20 * more }));
      rises((use, more) => ({ depth: use.depth + (1 - use.depth) * more }));
    });

    it("has lost nothing when new, and never gains", () => {
      fc.assert(
        fc.property(uses, (use) => {
          expect(model.fade({ ...use, years: 0, equivalentCycles: 0 })).toBe(0);
          expect(model.resistanceGrowth?.({ ...use, years: 0, equivalentCycles: 0 }) ?? 0).toBe(0);
          expect(model.fade(use)).toBeGreaterThanOrEqual(0);
          expect(model.resistanceGrowth?.(use) ?? 0).toBeGreaterThanOrEqual(0);
        }),
      );
    });

    it("names its cell, what it covers, and that it is no forecast", () => {
      expect(model.cell).toMatch(/\d Ah/);
      expect(model.notes.join()).toContain("no forecast");
      expect(model.source.status).toBe("quoted");
    });
  });
});

const vehicle = { usableEnergy: q("90 kWh"), consumption: q("20 kWh/100 km"), distancePerYear: q("18000 km") };
const sheet = { against: "equivalent cycles", at: [0, 1000], left: [1, 0.8], name: "invented sheet" } as const;
const options = { ...vehicle, temperature: q("20 °C"), years: 10 };

describe("fade over years", () => {
  it("counts full cycles, and shows each model and how far they are apart", () => {
    const fade = fadeOverYears(options);
    expect(fade.equivalentCyclesPerYear).toBeCloseTo(40, 9);
    expect(fade.tracks.map(({ points }) => points.length)).toEqual([10, 10, 10]);
    // The first model leaves out time: it is shown, and not in the spread.
    expect(fade.tracks.map(({ covers }) => covers)).toEqual(["cycling alone", "time and cycling", "time and cycling"]);
    for (const { year, left, range, by } of fade.spread) {
      const all = fade.tracks.slice(1).map(({ points }) => points[year - 1]?.left ?? Number.NaN);
      expect(fade.tracks[0]?.points[year - 1]?.left).toBeGreaterThan(left.most);
      expect(by).toEqual({ least: "NMC 18650 2.05 Ah, 2014", most: "LFP 26650 3 Ah, 2018 and 2020" });
      expect(left).toEqual({ least: Math.min(...all), most: Math.max(...all) });
      expect(range.least.in("km")).toBeCloseTo(450 * left.least, 9);
    }
    expect(fade.warnings.join()).toContain("no forecast");
  });

  it("is the model at the same use, by the year", () => {
    const { tracks } = fadeOverYears({
      ...options,
      depth: 0.5,
      stateOfCharge: 0.7,
      fastChargeShare: 0.25,
      fastRate: 1.2,
      slowRate: 0.2,
    });
    const use = { years: 6, equivalentCycles: 240, temperature: 20, depth: 0.5, stateOfCharge: 0.7, rate: 0.45 };
    for (const [i, model] of Object.values(publishedAgeingModels).entries()) {
      const point = tracks[i]?.points[5];
      expect(relativeDifference(1 - (point?.left ?? 0), model.fade(use))).toBeLessThan(1e-9);
      expect(point?.usableEnergy.in("kWh")).toBeCloseTo(90 * (point?.left ?? 0), 9);
    }
  });

  it("leaves less every year, and less to who drives more or parks warmer", () => {
    fc.assert(
      fc.property(between(0, 60_000), between(-10, 35), between(1, 1.5), (km, celsius, more) => {
        const at = (distance: number, temperature: number) =>
          fadeOverYears({
            ...options,
            distancePerYear: quantity(distance, "km"),
            temperature: quantity(temperature, "°C"),
          }).tracks;
        const base = at(km, celsius);
        const driven = at(km * more, celsius);
        const warmer = at(km, celsius + 5 * more);
        for (const [i, { points }] of base.entries()) {
          for (const [j, { left, resistance = 0 }] of points.entries()) {
            if (j > 0) expect(left).toBeLessThanOrEqual(points[j - 1]?.left ?? 0);
            expect(driven[i]?.points[j]?.left).toBeLessThanOrEqual(left);
            expect(warmer[i]?.points[j]?.left).toBeLessThanOrEqual(left);
            expect(warmer[i]?.points[j]?.resistance ?? 0).toBeGreaterThanOrEqual(resistance);
            expect(left).toBeGreaterThanOrEqual(0);
          }
        }
      }),
      { numRuns: 40 },
    );
  });

  it("says where a model is used outside its fit", () => {
    const { tracks } = fadeOverYears({ ...options, temperature: q("20 °C"), years: 20 });
    const [old, nmc, phosphate] = tracks.map(({ warnings }) => warnings.join("; "));
    expect(old).toContain("what time does is not in it");
    expect(old).toContain("C-rate of 0.15 lies outside");
    expect(nmc).toContain("20 °C lies outside its tests at 35 °C");
    for (const each of [old, nmc, phosphate]) expect(each).toContain("later years are extrapolated");
    const hard = fadeOverYears({
      ...options,
      temperature: q("45 °C"),
      distancePerYear: q("90000 km"),
      fastChargeShare: 0.8,
    });
    expect(hard.tracks[1]?.warnings.join()).toContain("more than 30 % is lost");
    expect(hard.warnings.join()).toContain("charged fast");
  });

  it("shows a curve of one's own as it stands, and does not continue it", () => {
    const curves = [
      fadeCurve({
        against: "years",
        at: [0, 2, 5],
        left: [1, 0.96, 0.9],
        name: "invented fleet",
        resistance: [1, 1.1, 1.3],
      }),
      fadeCurve(sheet),
    ];
    const { tracks, spread } = fadeOverYears({ ...options, models: [], curves });
    expect(tracks[0]?.points.map(({ left }) => left)).toEqual([
      0.98,
      0.96,
      expect.closeTo(0.94),
      expect.closeTo(0.92),
      0.9,
    ]);
    expect(tracks[0]?.points[1]?.resistance).toBeCloseTo(1.1, 12);
    expect(tracks[0]?.warnings.join()).toContain("ends at 5 years");
    // 40 cycles a year: 0.2 over 25 years.
    expect(tracks[1]?.points[9]?.left).toBeCloseTo(1 - 0.2 * 0.4, 12);
    // A curve over cycles leaves out time, so the spread ends where the fleet does.
    expect(tracks[1]?.warnings.join()).toContain("the spread leaves it out");
    expect(spread).toHaveLength(5);
    expect(spread[4]).toMatchObject({ left: { least: 0.9, most: 0.9 }, outside: false });
  });

  it("has no spread when only cycling is shown, and says so", () => {
    const cycling = fadeOverYears({ ...options, models: ["ironPhosphate2200"] });
    expect(cycling.spread).toEqual([]);
    expect(cycling.warnings.join()).toContain("there is no spread");
    expect(cycling.tracks[0]?.points).toHaveLength(10);
  });

  it("says in the point where it does not hold: in frost, in heat, late, and worn", () => {
    const frost = fadeOverYears({ ...options, temperature: q("-20 °C") });
    expect(frost.warnings.join()).toContain("plates lithium");
    for (const { points, warnings } of frost.tracks) {
      expect(points.every(({ outside }) => outside.join().includes("plates lithium"))).toBe(true);
      expect(warnings.join()).toContain("less is left than it shows");
    }
    // 45 years' worth of driving in ten at 60 °C: the NMC fit loses more than everything.
    const hot = fadeOverYears({ ...options, temperature: q("60 °C"), distancePerYear: q("80000 km") });
    const last = hot.tracks[1]?.points.at(-1);
    expect(last?.left).toBe(0);
    expect(last?.outside.join()).toContain("60 °C lies outside its tests at 35 °C to 50 °C");
    expect(last?.outside.join()).toContain("0 stands for no figure");
    expect(hot.spread.at(-1)?.outside).toBe(true);
    // Inside its tests: 25 °C, C/2, two years.
    const inside = fadeOverYears({
      ...options,
      temperature: q("25 °C"),
      slowRate: 0.5,
      models: ["ironPhosphate26650"],
    });
    expect(inside.tracks[0]?.points.map(({ outside }) => outside.length)).toEqual([0, 0, ...Array(8).fill(1)]);
    expect(inside.spread.slice(0, 3).map(({ outside }) => outside)).toEqual([false, false, true]);
  });

  it("shows the models that are named, and knows a misspelt name", () => {
    const { tracks } = fadeOverYears({ ...options, models: ["nmc18650"] });
    expect(tracks.map(({ name }) => name)).toEqual([publishedAgeingModels.nmc18650.name]);
    const error = thrown(() => fadeOverYears({ ...options, models: ["nmc18560"] as never }));
    expect(error.message).toContain("did you mean 'nmc18650'?");
  });

  it.each<[string, object, string]>([
    ["no years", { years: 0 }, "OUT_OF_RANGE"],
    ["half a year", { years: 2.5 }, "OUT_OF_RANGE"],
    ["nothing to show", { models: [] }, "EMPTY"],
    ["a model of another making", { models: [{ fade: () => 0 }] }, "WRONG_CHOICE"],
    ["a model that is not in an array", { models: "nmc18650" }, "WRONG_CHOICE"],
    ["a curve without an axis", { curves: [{ at: [0, 1], left: [1, 1] }] }, "MISSING_OPTION"],
    ["a curve that was spoilt by hand", { curves: [{ ...fadeCurve(sheet), left: [0.8, 1] }] }, "INCONSISTENT"],
    ["a depth in percent", { depth: 40 }, "NOT_A_FRACTION"],
    ["a misspelt option", { fastChargingShare: 0.2 }, "UNKNOWN_OPTION"],
  ])("is refused for %s", (_, change, code) => {
    expect(thrown(() => fadeOverYears({ ...options, ...change } as never)).code).toBe(code);
  });

  it.each<[string, object, string, string]>([
    ["capacity that comes back", { left: [1, 0.9, 0.95] }, "INCONSISTENT", "must not rise"],
    ["resistance that falls", { resistance: [1, 1.2, 1.1] }, "INCONSISTENT", "must not fall"],
    ["a beginning after new", { at: [1, 2, 3] }, "INCONSISTENT", "begin with 0"],
    ["another axis", { against: "year" }, "WRONG_CHOICE", 'did you mean "years"?'],
    ["percents", { left: [100, 90, 80] }, "NOT_A_FRACTION", "write 1"],
  ])("a curve is refused for %s", (_, change, code, text) => {
    const good = { against: "years", at: [0, 5, 10], left: [1, 0.95, 0.9] } as const;
    const error = thrown(() => fadeCurve({ ...good, ...change } as never));
    expect(error.code).toBe(code);
    expect(error.message).toContain(text);
  });
});

describe("the spread of an ageing", () => {
  it("never recovers when a curve ends: what it said last still bounds the least", () => {
    const { spread } = fadeOverYears({
      ...{ usableEnergy: q("90 kWh"), consumption: q("200 Wh/km"), distancePerYear: q("20000 km") },
      ...{ temperature: q("20 °C"), years: 8 },
      curves: [fadeCurve({ against: "years", at: [0, 3], left: [1, 0.6] })],
    });
    const least = spread.map(({ left }) => left.least);
    expect(least[2]).toBeCloseTo(0.6, 9);
    least.forEach((each, i) => {
      expect(each).toBeLessThanOrEqual(least[i - 1] ?? 1);
    });
    expect(spread.at(-1)?.outside).toBe(true);
  });
});

describe("fast charging", () => {
  const use = {
    ...{ usableEnergy: q("90 kWh"), consumption: q("200 Wh/km"), distancePerYear: q("30000 km") },
    ...{ temperature: q("20 °C"), years: 8 },
  } as const;
  const { ironPhosphate2200, nmc18650, ironPhosphate26650 } = publishedAgeingModels;

  it("is told not to be worse in the two models where it is not, by name", () => {
    const fade = fadeOverYears({ ...use, fastChargeShare: 0.4 });
    expect(fade.tracks.map(({ fastChargeCounts }) => fastChargeCounts)).toEqual([false, false, true]);
    const told = fade.warnings.join();
    expect(told).toContain(`more fast charging is not worse in ${ironPhosphate2200.name}; ${nmc18650.name}`);
    expect(told).not.toContain(ironPhosphate26650.name);
    expect(told).toContain("the spread does not cover what fast charging costs");
    const slow = fadeOverYears(use);
    expect(slow.warnings.join()).not.toContain("fast charging");
    expect(slow.tracks.every((track) => !("fastChargeCounts" in track))).toBe(true);
    const counting = fadeOverYears({ ...use, fastChargeShare: 0.4, models: ["ironPhosphate26650"] });
    expect(counting.warnings.join()).not.toContain("not worse");
  });

  it("is in the least of the spread by the penalty that is stated, and in no track", () => {
    const given = { ...use, fastChargeShare: 0.4 };
    const [plain, penalised] = [fadeOverYears(given), fadeOverYears({ ...given, fastChargePenalty: 0.5 })];
    expect(penalised.tracks.map(({ points }) => points.map(({ left }) => left))).toEqual(
      plain.tracks.map(({ points }) => points.map(({ left }) => left)),
    );
    expect(plain.spread.at(-1)?.by.least).toBe(nmc18650.name);
    for (const [i, each] of penalised.spread.entries()) {
      const before = plain.spread[i]?.left ?? { least: 0, most: 0 };
      // A fifth more of the loss: half of it for the share of 0.4.
      expect(each.left.least).toBeCloseTo(1 - (1 - before.least) * 1.2, 12);
      expect(each.range.least.in("km")).toBeCloseTo(each.left.least * 450, 9);
      expect(each.left.most).toBe(before.most);
    }
    expect(penalised.warnings.join()).toContain("the stated penalty of 0.5 on their loss (no source but yours)");
    expect(() => fadeOverYears({ ...given, fastChargePenalty: -1 })).toThrow("fastChargePenalty must not be negative");
  });

  it("moves the spread with the resistances of the models that have one", () => {
    const { tracks, spread } = fadeOverYears(use);
    for (const { year, resistance } of spread) {
      const all = tracks.flatMap(({ covers, points }) =>
        covers === "cycling alone" ? [] : [points[year - 1]?.resistance],
      );
      expect(resistance).toMatchObject({ least: Math.min(...(all as number[])), most: Math.max(...(all as number[])) });
      expect(resistance?.by).toEqual({ least: ironPhosphate26650.name, most: nmc18650.name });
    }
    const curve = fadeCurve({ against: "years", at: [0, 9], left: [1, 0.8], name: "without resistance" });
    expect(fadeOverYears({ ...use, models: [], curves: [curve] }).spread[0]).not.toHaveProperty("resistance");
  });
});
