import { q, quantity } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { published } from "../../../../test/support/published.js";
import {
  firstCycleWeight,
  hwfet,
  nedc,
  udds,
  weightedConsumption,
  wltc3b,
  wltc3bCity,
  wltpIndividual,
  wltpRange,
} from "../../src/index.js";
import { cycleLengths } from "../../src/procedure/cycle-lengths.js";
import { between, close, codeOf } from "../support.js";

const cycle = (energy: number, distance = 23.266) => ({
  energy: quantity(energy, "kWh"),
  distance: quantity(distance, "km"),
});
const example = { procedure: "shortened", cycles: [cycle(4.2), cycle(3.9)], usableEnergy: q("60 kWh") } as const;

describe("range of the world-wide procedure", () => {
  published({
    quantity:
      "weight of the first cycle, consumption in Wh/km and range in km of 60 kWh, 4.2 and 3.9 kWh over 23.266 km",
    source: "computed by hand from UN GTR No. 15, annex 8, from memory",
    status: "regression",
    published: [0.07, 168.53, 356.0],
    computed: () => {
      const { range, consumption } = wltpRange(example);
      const weight = firstCycleWeight({ energy: q("4.2 kWh"), usableEnergy: q("60 kWh") });
      return [weight, consumption.atBattery.in("Wh/km"), range.in("km")];
    },
    tolerance: 0.05,
    why: "last printed digit of the range",
  });
  published({
    quantity: "charging loss that 77 kWh usable, 517 km and 16.9 kWh/100 km at the wall imply: wall per battery",
    source: "the trade press on one car: 16.9 at the wall per 77/5.17 at the battery",
    status: "quoted",
    published: 1.135,
    computed: () => {
      const each = cycle((77 / 517) * 23.266);
      const { consumption } = wltpRange({
        ...{ procedure: "shortened", cycles: [each, each], usableEnergy: q("77 kWh"), rechargeEnergy: q("87.37 kWh") },
      });
      return (consumption.atWall?.in("kWh/100 km") ?? 0) / consumption.atBattery.in("kWh/100 km");
    },
    tolerance: 0.005,
    why: "the wall figure is rounded to 0.1 kWh/100 km",
  });

  it("shortened and consecutive agree where they drive the same, and more equal cycles change nothing", () => {
    fc.assert(
      fc.property(between(3, 6), between(3, 6), fc.integer({ min: 1, max: 6 }), (first, later, more) => {
        const usableEnergy = q("90 kWh");
        const short = wltpRange({ procedure: "shortened", cycles: [cycle(first), cycle(later)], usableEnergy });
        const cycles = [cycle(first), ...Array.from({ length: more }, () => cycle(later))];
        const long = wltpRange({ procedure: "consecutive", cycles, usableEnergy });
        expect(close(short.range.in("km"), long.range.in("km"), undefined, 1e-12)).toBe(true);
        const low = Math.min(first, later);
        expect(short.range.in("km")).toBeLessThanOrEqual((90 / low) * 23.266 * (1 + 1e-12));
      }),
    );
  });

  it("weighs low and medium phases as the city, high ones as the whole", () => {
    const parts = {
      city: [cycle(1.2, 7.85), cycle(1, 7.85), cycle(1, 7.85), cycle(1, 7.85)],
      low: [cycle(0.6, 3.09), cycle(0.4, 3.09), cycle(0.4, 3.09), cycle(0.4, 3.09)],
      high: [cycle(1.2, 7.16), cycle(1.1, 7.16)],
    };
    const result = wltpRange({ ...example, parts });
    expect(result.parts.map(({ name }) => name)).toEqual(["city", "low", "high"]);
    const [city, low, high] = result.parts.map(({ consumption }) => consumption.atBattery.in("Wh/km"));
    const expected = (weight: number, first: number, later: number, km: number) =>
      ((weight * first + (1 - weight) * later) / km) * 1000;
    expect(city).toBeCloseTo(expected(1.2 / 60, 1.2, 1, 7.85), 9);
    expect(low).toBeCloseTo(expected(1.2 / 60, 0.6, 0.4, 3.09), 9);
    expect(high).toBeCloseTo(expected(4.2 / 60, 1.2, 1.1, 7.16), 9);
    expect(codeOf(() => wltpRange({ ...example, parts: { low: parts.low } }))).toBe("MISSING_OPTION");
  });

  it("holds parts against the whole, and against each other", () => {
    const four = (energy: number, distance: number) => Array.from({ length: 4 }, () => cycle(energy, distance));
    const refused = (parts: object) => codeOf(() => wltpRange({ ...example, parts }));
    expect(refused({ city: four(9, 7.85) })).toBe("INCONSISTENT");
    const city = four(1.1, 7.85);
    expect(refused({ city, low: four(0.4, 3.095), medium: four(0.7, 4.756) })).toBe("nothing thrown");
    expect(refused({ city, low: four(0.6, 3.095), medium: four(0.7, 4.756) })).toBe("INCONSISTENT");
    const [high, extraHigh] = [
      [cycle(1.2, 7.16), cycle(1.2, 7.16)],
      (energy: number) => [cycle(energy, 8.25), cycle(1.7, 8.25)],
    ];
    expect(refused({ city, high, extraHigh: extraHigh(1.9) })).toBe("nothing thrown");
    expect(refused({ city, high, extraHigh: extraHigh(2.4) })).toBe("INCONSISTENT");
    expect(() => wltpRange({ ...example, parts: { city: four(1.1, 23.266) } })).toThrow("that is the length of WLTC");
    expect(wltpRange({ ...example, parts: { city: four(0.3, 7.85) } }).warnings.join(" ")).toContain(
      "parts.city takes 0.2",
    );
  });

  it("knows the lengths of the cycles as the tables have them", () => {
    const metres = [udds, hwfet, wltc3b, wltc3bCity].map(({ distance }) => distance.in("m"));
    const phases = wltc3b.phases.map(({ distance }) => distance.in("m"));
    const known = Object.values(cycleLengths);
    const european = nedc.distance.in("m");
    for (const [i, length] of [...metres, ...phases, european, 2 * european].entries()) {
      expect(Math.abs((known[i] ?? 0) - length)).toBeLessThan(2);
    }
  });

  it("says which rules are remembered, and refuses tests that cannot be", () => {
    expect(wltpRange(example).warnings.join(" ")).toMatch(/remembered.*2 of 5.*only as quoted.*1 of 5/s);
    for (const warning of wltpRange(example).warnings) expect(warning.length).toBeLessThan(120);
    expect(codeOf(() => wltpRange({ ...example, cycles: [cycle(4)] }))).toBe("INCONSISTENT");
    expect(codeOf(() => wltpRange({ ...example, cycles: [cycle(4), cycle(4), cycle(4)] }))).toBe("INCONSISTENT");
    expect(codeOf(() => wltpRange({ ...example, usableEnergy: q("8 kWh") }))).toBe("INCONSISTENT");
    expect(codeOf(() => wltpRange({ ...example, rechargeEnergy: q("50 kWh") }))).toBe("INCONSISTENT");
    expect(codeOf(() => wltpRange({ ...example, rechargeEnergy: q("600 kWh") }))).toBe("INCONSISTENT");
    expect(wltpRange({ ...example, rechargeEnergy: q("90 kWh") }).warnings.join(" ")).toContain("1.5 times");
    expect(codeOf(() => wltpRange({ ...example, cycles: [cycle(1, 5), cycle(1, 5)] }))).toBe("INCONSISTENT");
    expect(codeOf(() => wltpRange({ ...example, procedure: "short" as never }))).toBe("WRONG_CHOICE");
    expect(codeOf(() => wltpRange({ ...example, parts: { urban: [] } as never }))).toBe("UNKNOWN_OPTION");
  });

  it("weighs between its two consumptions", () => {
    fc.assert(
      fc.property(between(0, 1), between(50, 400), between(50, 400), (firstWeight, a, b) => {
        const given = { firstWeight, first: quantity(a, "Wh/km"), later: quantity(b, "Wh/km") };
        const value = weightedConsumption(given).in("Wh/km");
        expect(value).toBeGreaterThanOrEqual(Math.min(a, b) * (1 - 1e-12));
        expect(value).toBeLessThanOrEqual(Math.max(a, b) * (1 + 1e-12));
      }),
    );
  });
});

describe("an individual vehicle of a family", () => {
  const low = { cycleEnergy: q("11 MJ"), consumption: q("15.6 kWh/100 km"), range: q("540 km") };
  const high = { cycleEnergy: q("13 MJ"), consumption: q("18 kWh/100 km"), range: q("470 km") };

  it("is vehicle L or H at their cycle energy, and on the line between", () => {
    fc.assert(
      fc.property(between(11, 13), (energy) => {
        const found = wltpIndividual({ low, high, cycleEnergy: quantity(energy, "MJ") });
        const part = (energy - 11) / 2;
        expect(found.consumption.in("kWh/100 km")).toBeCloseTo(15.6 + part * 2.4, 9);
        expect(found.range.in("km")).toBeCloseTo(540 - part * 70, 9);
      }),
    );
  });

  it("shows how coefficient, consumption and range came about", () => {
    const found = wltpIndividual({ low, high, cycleEnergy: q("11.5 MJ") });
    const steps = found.working();
    expect(steps.map(({ result }) => result.value)).toEqual([
      found.coefficient,
      found.consumption.in("kWh/100 km"),
      found.range.in("km"),
    ]);
    expect(steps.map(({ result }) => result.unit)).toEqual(["1", "kWh/100 km", "km"]);
  });

  it("warns outside of the family, and refuses a family the wrong way round", () => {
    expect(wltpIndividual({ low, high, cycleEnergy: q("13.3 MJ") }).warnings.join(" ")).toContain(
      "outside of its family",
    );
    expect(codeOf(() => wltpIndividual({ low: high, high: low, cycleEnergy: q("12 MJ") }))).toBe("INCONSISTENT");
    const swapped = (name: "consumption" | "range") =>
      codeOf(() =>
        wltpIndividual({
          low: { ...low, [name]: high[name] },
          high: { ...high, [name]: low[name] },
          cycleEnergy: q("12 MJ"),
        }),
      );
    expect([swapped("consumption"), swapped("range")]).toEqual(["INCONSISTENT", "INCONSISTENT"]);
    expect(() => wltpIndividual({ low, high, cycleEnergy: q("15 MJ") })).toThrow("the coefficient is 2.00");
    for (const energy of ["9 MJ", "10.5 MJ", "13.5 MJ", "100 MJ"] as const) {
      expect(codeOf(() => wltpIndividual({ low, high, cycleEnergy: q(energy) }))).toBe("NOT_VALID_HERE");
    }
  });
});
