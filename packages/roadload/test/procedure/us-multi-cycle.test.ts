import { type Energy, type Length, type Quantity, q, quantity } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { published } from "../../../../test/support/published.js";
import { usMultiCycle, usMultiCycleOrder } from "../../src/index.js";
import { between, close, codeOf } from "../support.js";

type Cycle = { readonly energy: Quantity<Energy>; readonly distance: Quantity<Length> };
const cycle = (energy: number, distance: number): Cycle => ({
  energy: quantity(energy, "kWh"),
  distance: quantity(distance, "mi"),
});
/** Energies of one kilometre-hungry car, invented: kWh. */
const tests = fc.record({
  city: fc.tuple(between(1, 3), between(1, 3), between(1, 3), between(1, 3)),
  highway: fc.tuple(between(1.5, 4), between(1.5, 4)),
  usable: between(30, 200),
  charging: between(0.8, 1),
});
const run = ({
  city,
  highway,
  usable,
  charging,
}: {
  city: number[];
  highway: number[];
  usable: number;
  charging: number;
}) =>
  usMultiCycle({
    city: city.map((energy) => cycle(energy, 7.45)),
    highway: highway.map((energy) => cycle(energy, 10.26)),
    usableEnergy: quantity(usable, "kWh"),
    rechargeEnergy: quantity(usable / charging, "kWh"),
  });

describe("the US multi-cycle test", () => {
  published({
    quantity: "combined consumption of 265 Wh/mi in the city and 220 Wh/mi on the highway",
    source: "10 CFR 474, appendix A",
    status: "seen",
    published: q("244.75 Wh/mi"),
    computed: () =>
      usMultiCycle({
        city: Array.from({ length: 4 }, () => cycle(0.265 * 7.45, 7.45)),
        highway: Array.from({ length: 2 }, () => cycle(0.22 * 10.26, 10.26)),
        usableEnergy: q("60 kWh"),
      }).consumption.atBattery,
    tolerance: 1e-9,
    why: "exact but for binary rounding",
  });
  published({
    quantity: "fuel economy of 244.75 Wh/mi at 28 997 Wh a gallon (the equivalent of model years from 2030 on)",
    source: "10 CFR 474, appendix A",
    status: "seen",
    published: 118.47,
    computed: () =>
      28_997 /
      usMultiCycle({
        city: Array.from({ length: 4 }, () => cycle(0.265 * 7.45, 7.45)),
        highway: Array.from({ length: 2 }, () => cycle(0.22 * 10.26, 10.26)),
        usableEnergy: q("60 kWh"),
      }).consumption.atBattery.in("Wh/mi"),
    tolerance: 0.01,
    why: "the source cuts 118.476 off after two digits where rounding gives 118.48",
  });

  it("drives the cycles that the regulation lists, in its order", () => {
    // 40 CFR 600.116-12(a)(2), seen
    const order = usMultiCycleOrder.map(({ drive }) => drive);
    expect(order).toEqual(["UDDS", "HWFET", "UDDS", "constant", "UDDS", "HWFET", "UDDS", "constant"]);
  });

  it("weighs the first cycle by what it takes, whatever the order of the others", () => {
    fc.assert(
      fc.property(tests, (given) => {
        const result = run(given);
        const [one, two, three, four] = given.city as [number, number, number, number];
        const weight = one / given.usable;
        // The formula as SAE J1634 writes it, from memory: K2 = K3 = K4 = (1 − K1)/3
        const rest = (1 - weight) / 3;
        const city = ((weight * one + rest * two + rest * three + rest * four) / 7.45) * 1000;
        expect(close(result.parts[0]?.consumption.atBattery.in("Wh/mi") ?? 0, city, undefined, 1e-9)).toBe(true);
        const swapped = run({ ...given, city: [one, four, two, three] });
        expect(close(swapped.range.in("mi"), result.range.in("mi"), undefined, 1e-9)).toBe(true);
      }),
    );
  });

  it("gives as range of each part usable energy per consumption, and the arithmetic mean combined", () => {
    fc.assert(
      fc.property(tests, (given) => {
        const { range, parts, consumption } = run(given);
        const [city, highway] = parts.map((part) => part.range.in("mi")) as [number, number];
        for (const part of parts) {
          const energy = (part.range.in("mi") * part.consumption.atBattery.in("Wh/mi")) / 1000;
          expect(close(energy, given.usable, undefined, 1e-9)).toBe(true);
          const wall = part.consumption.atWall?.in("Wh/mi") ?? 0;
          expect(close(wall * given.charging, part.consumption.atBattery.in("Wh/mi"), undefined, 1e-9)).toBe(true);
        }
        expect(close(range.in("mi"), 0.55 * city + 0.45 * highway, undefined, 1e-9)).toBe(true);
        // The range that the combined consumption gives is the harmonic mean: never more
        const harmonic = (1000 * given.usable) / consumption.atBattery.in("Wh/mi");
        expect(harmonic).toBeLessThanOrEqual(range.in("mi") * (1 + 1e-12));
      }),
    );
  });

  it("says what it rests on, and what range means", () => {
    const result = run({ city: [2, 2, 2, 2], highway: [3, 3], usable: 80, charging: 0.9 });
    expect(result.warnings).toEqual([
      "rests on rules that are remembered, not checked against the regulation: 3 of 6, see rules",
    ]);
    const remembered = result.rules.filter(({ source }) => source.status === "memory");
    expect(remembered.map(({ source }) => source.document)).toEqual(["SAE J1634", "SAE J1634", "SAE J1634"]);
    expect(result.rangeMeans).toContain("no adjustment");
    const names = result.working().map(({ name }) => name);
    expect(names).toEqual([
      "recharge allocation factor",
      "weight of the first cycle",
      "weighted consumption",
      "mean of both HWFET",
      ...["range", "consumption at the wall", "range", "consumption at the wall"],
      ...["combined consumption", "consumption at the wall"],
      "combined range",
    ]);
    const units = result.working().flatMap(({ operands, result: { unit } }) => [unit, ...operands.map((o) => o.unit)]);
    expect(units.filter((unit) => unit.includes("km"))).toEqual([]);
    expect(result.working().at(-1)?.result.value).toBeCloseTo(result.range.in("mi"), 9);
    expect(Object.isFrozen(result) && Object.isFrozen(result.parts)).toBe(true);
  });

  it("refuses tests that cannot be", () => {
    const good = {
      city: Array.from({ length: 4 }, () => cycle(2, 7.45)),
      highway: Array.from({ length: 2 }, () => cycle(3, 10.26)),
      usableEnergy: q("80 kWh"),
    };
    expect(codeOf(() => usMultiCycle(good))).toBe("nothing thrown");
    expect(codeOf(() => usMultiCycle({ ...good, city: good.city.slice(1) }))).toBe("INCONSISTENT");
    expect(codeOf(() => usMultiCycle({ ...good, usableEnergy: q("10 kWh") }))).toBe("INCONSISTENT");
    expect(codeOf(() => usMultiCycle({ ...good, rechargeEnergy: q("79 kWh") }))).toBe("INCONSISTENT");
    expect(codeOf(() => usMultiCycle({ ...good, rechargeEnergy: q("161 kWh") }))).toBe("INCONSISTENT");
    expect(usMultiCycle({ ...good, rechargeEnergy: q("120 kWh") }).warnings.join(" ")).toContain("1.5 times");
    expect(usMultiCycle({ ...good, rechargeEnergy: q("90 kWh") }).warnings.join(" ")).not.toContain("times what");
    expect(codeOf(() => usMultiCycle({ ...good, highway: [] }))).toBe("EMPTY");
    expect(codeOf(() => usMultiCycle({ ...good, highway: [cycle(3, 0), cycle(3, 1)] }))).toBe("OUT_OF_RANGE");
  });

  it("holds every cycle to its length, and says which one it may be", () => {
    const good = {
      city: Array.from({ length: 4 }, () => cycle(2, 7.45)),
      highway: Array.from({ length: 2 }, () => cycle(3, 10.26)),
      usableEnergy: q("80 kWh"),
    };
    const [first, ...others] = good.city as [Cycle, ...Cycle[]];
    expect(() => usMultiCycle({ ...good, city: good.highway.concat(good.highway), highway: [first, first] })).toThrow(
      /city\[0\] must be one UDDS of 7\.45 mi, within 2 %: got 10\.26 mi; that is the length of HWFET/,
    );
    const inKilometres = { ...first, distance: q("7.45 km") };
    expect(codeOf(() => usMultiCycle({ ...good, city: [inKilometres, ...others] }))).toBe("INCONSISTENT");
    fc.assert(
      fc.property(between(0.9, 1.1), (part) => {
        const driven = { ...first, distance: quantity(7.45 * part, "mi") };
        const refused = codeOf(() => usMultiCycle({ ...good, city: [...others, driven] })) === "INCONSISTENT";
        const off = Math.abs(part - 1);
        if (off < 0.019) expect(refused).toBe(false);
        if (off > 0.021) expect(refused).toBe(true);
      }),
    );
  });
});
