import { q, quantity } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { published } from "../../../../test/support/published.js";
import {
  hwfet,
  type NedcRangeOptions,
  nedc,
  nedcRange,
  simulateNedc,
  type UsSingleCycleOptions,
  udds,
  usLabel,
  usSingleCycle,
} from "../../src/index.js";
import { between, close, codeOf, plainDrivetrain, plainLoad } from "../support.js";

const us = (
  city: readonly [miles: number, kWh: number, wall?: number],
  highway: readonly [miles: number, kWh: number, wall?: number],
): UsSingleCycleOptions => {
  const test = ([miles, kWh, wall]: readonly [number, number, number?]) => ({
    distance: quantity(miles, "mi"),
    usableEnergy: quantity(kWh, "kWh"),
    ...(wall === undefined ? {} : { rechargeEnergy: quantity(wall, "kWh") }),
  });
  return { city: test(city), highway: test(highway) };
};

describe("US single-cycle tests", () => {
  published({
    quantity: "combined consumption of single-cycle tests of 265 Wh/mi in the city and 220 Wh/mi on the highway",
    source: "10 CFR 474, appendix A",
    status: "seen",
    published: q("244.75 Wh/mi"),
    computed: () => usSingleCycle(us([100, 26.5], [100, 22])).consumption.atBattery,
    tolerance: 1e-9,
    why: "exact but for binary rounding",
  });

  it("has the distances as ranges, weighted 55/45, and the recharge per distance as consumption at the wall", () => {
    const miles = between(20, 500);
    fc.assert(
      fc.property(miles, miles, between(10, 200), between(1, 1.9), between(1, 1.9), (c, h, kWh, one, two) => {
        const { range, parts, consumption, usableEnergy } = usSingleCycle(us([c, kWh, one * kWh], [h, kWh, two * kWh]));
        expect(close(range.in("mi"), 0.55 * c + 0.45 * h)).toBe(true);
        expect(parts.map((part) => part.range.in("mi"))).toEqual([c, h]);
        const wall = 0.55 * ((1000 * one * kWh) / c) + 0.45 * ((1000 * two * kWh) / h);
        expect(close(consumption.atWall?.in("Wh/mi") ?? 0, wall)).toBe(true);
        expect(usableEnergy.in("kWh")).toBe(kWh);
      }),
    );
  });

  it("makes a label, and explains itself to the last step", () => {
    const test = usSingleCycle(us([120, 24, 28], [100, 24, 28]));
    expect(usLabel({ test, adjustment: { method: "default" } }).range.in("mi")).toBeCloseTo(0.7 * 111, 9);
    expect(test.working().at(-1)?.result.value).toBeCloseTo(111, 9);
    expect(test.warnings.join()).toContain("remembered");
  });

  it("says what does not fit", () => {
    expect(usSingleCycle(us([120, 24], [100, 21])).warnings.join()).toContain("in the other");
    expect(usSingleCycle(us([120, 24, 40], [100, 24, 28])).warnings.join()).toContain("the recharge takes 1.67 times");
    const bad = (options: UsSingleCycleOptions) => codeOf(() => usSingleCycle(options));
    expect(bad(us([7, 24], [100, 24]))).toBe("INCONSISTENT");
    expect(bad(us([120, 24, 20], [100, 24, 28]))).toBe("INCONSISTENT");
    expect(bad(us([120, 24, 49], [100, 24, 28]))).toBe("INCONSISTENT");
    expect(bad(us([120, 24, 28], [100, 24]))).toBe("INCONSISTENT");
    expect(bad(us([-120, 24], [100, 24]))).toBe("NEGATIVE");
    expect(bad({} as never)).toBe("MISSING_OPTION");
  });

  it("knows the lengths of its cycles", () => {
    const least = (options: UsSingleCycleOptions) => {
      try {
        usSingleCycle(options);
      } catch (error) {
        return Number(/ of ([\d.]+) mi at least/.exec((error as Error).message)?.[1]);
      }
      return Number.NaN;
    };
    expect(least(us([1, 24], [100, 24]))).toBeCloseTo(udds.distance.in("mi"), 2);
    expect(least(us([100, 24], [1, 24]))).toBeCloseTo(hwfet.distance.in("mi"), 2);
  });
});

describe("the old European procedure from tests", () => {
  const options: NedcRangeOptions = {
    ...{ distance: q("190 km"), usableEnergy: q("21 kWh") },
    consumptionTest: { distance: q("22.05 km"), rechargeEnergy: q("2.9 kWh") },
  };

  it("has the distance as range, and the recharge after two cycles per their distance as consumption", () => {
    const { range, consumption, working } = nedcRange(options);
    expect(range.in("km")).toBe(190);
    expect(consumption.atWall?.in("Wh/km")).toBeCloseTo(2900 / 22.05, 9);
    expect(consumption.atBattery.in("Wh/km")).toBeCloseTo(21_000 / 190, 9);
    expect(working().map((step) => Number(step.result.value.toPrecision(4)))).toEqual([110.5, 131.5]);
    const { consumptionTest: _, ...others } = options;
    expect(nedcRange(others).consumption.atWall).toBeUndefined();
  });

  it("gives back a simulated vehicle that was measured, but for the cold start of the second test", () => {
    const vehicle = {
      load: plainLoad,
      drivetrain: plainDrivetrain,
      accessories: q("300 W"),
      usableEnergy: q("40 kWh"),
    };
    const simulated = simulateNedc({ ...vehicle, chargingEfficiency: 0.88 });
    const perKilometre = simulated.consumption.atWall?.in("kWh/km") as number;
    const two = nedc.distance.times(2);
    const measured = nedcRange({
      ...{ distance: simulated.range, usableEnergy: q("40 kWh") },
      consumptionTest: { distance: two, rechargeEnergy: quantity(perKilometre * two.in("km"), "kWh") },
    });
    expect(measured.range.in("km")).toBe(simulated.range.in("km"));
    expect(measured.consumption.atBattery.ratioTo(simulated.consumption.atBattery)).toBeCloseTo(1, 12);
    expect(measured.consumption.atWall?.in("kWh/km")).toBeCloseTo(perKilometre, 12);
  });

  it("says what does not fit", () => {
    const bad = (more: object) => codeOf(() => nedcRange({ ...options, ...more }));
    const test = options.consumptionTest;
    expect(bad({ distance: q("9 km") })).toBe("INCONSISTENT");
    expect(bad({ consumptionTest: { ...test, distance: q("11.03 km") } })).toBe("INCONSISTENT");
    expect(bad({ consumptionTest: { ...test, rechargeEnergy: q("2.2 kWh") } })).toBe("INCONSISTENT");
    expect(bad({ consumptionTest: { ...test, rechargeEnergy: q("5 kWh") } })).toBe("INCONSISTENT");
    expect(bad({ consumptionTest: { ...test, energy: q("2 kWh") } })).toBe("UNKNOWN_OPTION");
    expect(bad({ usableEnergy: q("-1 kWh") })).toBe("NEGATIVE");
    const much = { ...test, rechargeEnergy: q("3.5 kWh") };
    expect(nedcRange({ ...options, consumptionTest: much as never }).warnings.join()).toContain("the recharge takes");
  });
});
