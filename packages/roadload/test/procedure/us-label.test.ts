import { type Length, type Quantity, q, quantity } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { published } from "../../../../test/support/published.js";
import {
  derivedFiveCycle,
  derivedFiveCycleSets,
  fiveCycleCity,
  fiveCycleHighway,
  type LabelAdjustmentMethod,
  labelAdjustment,
  roundForUsLabel,
  usLabel,
  usLabelScope,
  usMultiCycle,
} from "../../src/index.js";
import { between, close, codeOf } from "../support.js";

/** A test with these consumptions at the wall, in Wh/mi, and this much usable energy; charging takes 12 % more. */
function testOf(city: number, highway: number, usable = 80) {
  const cycle = (wall: number, distance: Quantity<Length>) => ({
    energy: quantity((wall * distance.in("mi")) / 1.12 / 1000, "kWh"),
    distance,
  });
  return usMultiCycle({
    city: Array.from({ length: 4 }, () => cycle(city, q("7.45 mi"))),
    highway: Array.from({ length: 2 }, () => cycle(highway, q("10.26 mi"))),
    usableEnergy: quantity(usable, "kWh"),
    rechargeEnergy: quantity(usable * 1.12, "kWh"),
  });
}

const label = (city: number, highway: number, adjustment: LabelAdjustmentMethod, usable?: number) =>
  usLabel({ test: testOf(city, highway, usable), adjustment });

/**
 * Single rows of public US label tables, with neutral codes: unadjusted wall consumption in Wh/mi, city and highway label
 * range in mi, label fuel economies, method.
 */
const rows = [
  {
    code: "V158",
    city: 283.2,
    highway: 303.1,
    factor: 0.744,
    cityRange: 309.3,
    highwayRange: 289,
    range: 300,
    mpge: 85.804,
    kwh: 39.282,
  },
  {
    code: "V150",
    city: 176.7,
    highway: 208.1,
    factor: 0.733,
    cityRange: 261.5,
    highwayRange: 222.1,
    range: 244,
    mpge: 129.497,
    kwh: 26.028,
  },
] as const;

describe("the US label", () => {
  for (const row of rows) {
    published({
      quantity: `${row.code}: combined consumption of the label, in kWh/100 mi, and fuel economy, in MPGe`,
      source: "public US test car lists and label tables, model years 2011 to 2024",
      status: "seen",
      given: `UDDS ${row.city} and HWFET ${row.highway} Wh/mi at the wall, 5-cycle factor ${row.factor}`,
      published: [row.kwh, row.mpge],
      computed: () => {
        const { consumption, economy } = label(row.city, row.highway, { method: "factor", factor: row.factor });
        return [consumption.atWall?.in("kWh/100 mi") ?? 0, economy?.combined.in("MPGe") ?? 0];
      },
      tolerance: { relative: 0.002 },
      why: "the factor is known to three digits",
    });
    published({
      quantity: `${row.code}: combined range of the label`,
      source: "public US test car lists and label tables, model years 2011 to 2024",
      status: "seen",
      given: `label ranges of ${row.cityRange} mi in the city and ${row.highwayRange} mi on the highway`,
      published: quantity(row.range, "mi"),
      computed: () => {
        // The usable energy that gives the city range: the arithmetic mean is independent of it.
        const usable = 80;
        const { parts } = label(100, (100 * row.cityRange) / row.highwayRange, { method: "default" }, usable);
        const scale = row.cityRange / (parts[0]?.range.in("mi") ?? 1);
        const scaled = label(100, (100 * row.cityRange) / row.highwayRange, { method: "default" }, usable * scale);
        return scaled.range;
      },
      tolerance: 0.5,
      why: "the label prints whole miles",
    });
  }

  const unadjusted = [265, 220] as const;
  published({
    quantity: "combined fuel economy of 27.7 and 36.9 MPGe, unadjusted",
    source: "40 CFR part 600, appendix II (there of gasoline)",
    status: "seen",
    published: 31.2,
    computed: () =>
      label(33_705 / 27.7, 33_705 / 36.9, { method: "factor", factor: 1 }, 800).economy?.combined.in("MPGe") ?? 0,
    tolerance: 0.05,
    why: "last printed digit",
  });
  published({
    quantity: "derived 5-cycle fuel economies of 150 MPGe: 2006 set, city and highway; 2015 set, city and highway",
    source: "computed by hand from the coefficients as quoted",
    status: "regression",
    published: [89.86, 96.59, 84.57, 84.6],
    computed: () =>
      (["2006", "2015"] as const).flatMap((set) =>
        (["city", "highway"] as const).map((part) =>
          derivedFiveCycle({ economy: q("150 MPGe"), ...derivedFiveCycleSets[set][part] }).in("MPGe"),
        ),
      ),
    tolerance: 0.005,
    why: "last printed digit",
  });

  it("multiplies ranges and economies by one factor, unless each has a curve of its own", () => {
    const methods = fc.oneof(
      fc.constant<LabelAdjustmentMethod>({ method: "default" }),
      between(0.5, 1).map((factor): LabelAdjustmentMethod => ({ method: "factor", factor })),
      fc.tuple(between(200, 500), between(200, 500)).map(
        ([c, h]): LabelAdjustmentMethod => ({
          method: "vehicle-specific 5-cycle",
          city: quantity(c, "Wh/mi"),
          highway: quantity(h, "Wh/mi"),
        }),
      ),
    );
    fc.assert(
      fc.property(between(150, 500), between(150, 500), methods, (city, highway, adjustment) => {
        const test = testOf(city, highway);
        if (codeOf(() => usLabel({ test, adjustment })) === "INCONSISTENT") return;
        const result = usLabel({ test, adjustment });
        const { factor } = result.adjustment;
        test.parts.forEach((part, i) => {
          const adjusted = result.parts[i];
          expect(close(adjusted?.range.in("mi") ?? 0, factor * part.range.in("mi"), undefined, 1e-9)).toBe(true);
          const wall = [adjusted, part].map((each) => each?.consumption.atWall?.in("Wh/mi") ?? 0) as [number, number];
          expect(close(wall[0] * factor, wall[1], undefined, 1e-9)).toBe(true);
        });
        expect(close(result.range.in("mi"), factor * test.range.in("mi"), undefined, 1e-9)).toBe(true);
      }),
    );
  });

  it("gives with vehicle-specific five cycles the combined fuel economy that they have", () => {
    const [city, highway] = [q("340 Wh/mi"), q("360 Wh/mi")];
    const { economy } = label(...unadjusted, { method: "vehicle-specific 5-cycle", city, highway });
    const five = 33.705e3 / (0.55 * 340 + 0.45 * 360);
    expect(economy?.combined.in("MPGe")).toBeCloseTo(five, 8);
  });

  it("warns of a factor that labels do not show, and of curves made for other vehicles", () => {
    const warned = (adjustment: LabelAdjustmentMethod) => label(...unadjusted, adjustment).warnings.join(" ");
    expect(warned({ method: "factor", factor: 0.9 })).toContain("lies outside");
    expect(warned({ method: "factor", factor: labelAdjustment.observed.fiveCycle.likely })).not.toContain(
      "lies outside",
    );
    expect(warned({ method: "derived 5-cycle", set: "2015" })).toMatch(/fitted to vehicles.*|2015/);
    expect(warned({ method: "default" })).toMatch(/only as quoted.*0\.7/);
    const five = (wall: number) => {
      const value = quantity(wall, "Wh/mi");
      return { method: "vehicle-specific 5-cycle", city: value, highway: value } as const;
    };
    expect(warned(five(280))).toContain("lies outside what is usual");
    expect(warned(five(330))).not.toContain("lies outside");
    for (const impossible of [20, 200, 2000]) {
      expect(codeOf(() => label(...unadjusted, five(impossible)))).toBe("INCONSISTENT");
    }
  });

  it("needs the wall for five cycles, and a method", () => {
    const cycle = { energy: q("2 kWh"), distance: q("7.45 mi") };
    const highway = { ...cycle, distance: q("10.26 mi") };
    const atBattery = usMultiCycle({
      ...{ city: [cycle, cycle, cycle, cycle], highway: [highway, highway], usableEnergy: q("80 kWh") },
    });
    const set = { method: "derived 5-cycle", set: "2006" } as const;
    expect(codeOf(() => usLabel({ test: atBattery, adjustment: set }))).toBe("NOT_VALID_HERE");
    expect(usLabel({ test: atBattery, adjustment: { method: "default" } }).economy).toBeUndefined();
    const test = testOf(...unadjusted);
    expect(codeOf(() => usLabel({ test } as never))).toBe("MISSING_OPTION");
    expect(codeOf(() => usLabel({ test, adjustment: { method: "0.7" } as never }))).toBe("WRONG_CHOICE");
    expect(codeOf(() => usLabel({ test: {} as never, adjustment: { method: "default" } }))).toBe("WRONG_CHOICE");
    expect(codeOf(() => usLabel({ test, adjustment: { ...set, set: "2010" as never } }))).toBe("WRONG_CHOICE");
  });

  published({
    quantity: "label of 142.1 MPGe in the city and 135.1 MPGe on the highway by the derived 5-cycle method, 2015 set",
    source:
      "computed by hand from the coefficients as quoted: 1/(0.004091 + 1.1601/142.1), 1/(0.003191 + 1.2945/135.1)",
    status: "regression",
    published: [81.6, 78.3],
    computed: () => {
      const { economy } = label(33_705 / 142.1, 33_705 / 135.1, { method: "derived 5-cycle", set: "2015" });
      return [economy?.city.in("MPGe") ?? 0, economy?.highway.in("MPGe") ?? 0];
    },
    tolerance: 0.05,
    why: "last printed digit",
  });

  it("combines what the two derived curves give, and takes the ranges along", () => {
    fc.assert(
      fc.property(between(150, 500), between(150, 500), fc.constantFrom("2006", "2015"), (city, highway, set) => {
        const test = testOf(city, highway);
        const { parts, range, economy, consumption, adjustment } = usLabel({
          test,
          adjustment: { method: "derived 5-cycle", set },
        });
        const curve = derivedFiveCycleSets[set];
        const five = [curve.city, curve.highway].map(({ intercept, slope }, i) => {
          const unadjusted5 = 33_705 / ([city, highway][i] as number);
          return 1 / (intercept + slope / unadjusted5);
        }) as [number, number];
        expect(close(economy?.city.in("MPGe") ?? 0, five[0], undefined, 1e-9)).toBe(true);
        expect(close(economy?.highway.in("MPGe") ?? 0, five[1], undefined, 1e-9)).toBe(true);
        expect(close(economy?.combined.in("MPGe") ?? 0, 1 / (0.55 / five[0] + 0.45 / five[1]), undefined, 1e-9)).toBe(
          true,
        );
        const [c, h] = parts.map((part) => part.range.in("mi")) as [number, number];
        expect(close(c, adjustment.city * (test.parts[0]?.range.in("mi") ?? 0), undefined, 1e-9)).toBe(true);
        expect(close(range.in("mi"), 0.55 * c + 0.45 * h, undefined, 1e-9)).toBe(true);
        expect(
          close(consumption.atWall?.inverse().in("MPGe") ?? 0, economy?.combined.in("MPGe") ?? 1, undefined, 1e-9),
        ).toBe(true);
        expect(adjustment.factor).toBeGreaterThanOrEqual(Math.min(adjustment.city, adjustment.highway));
        expect(adjustment.factor).toBeLessThanOrEqual(Math.max(adjustment.city, adjustment.highway));
      }),
    );
  });

  it("is never made of a label", () => {
    const adjustment = { method: "default" } as const;
    const once = label(...unadjusted, adjustment);
    expect(() => usLabel({ test: once as never, adjustment })).toThrow("adjusted already");
    expect(codeOf(() => usLabel({ test: { ...once } as never, adjustment }))).toBe("WRONG_CHOICE");
  });

  it("shows its working down to the range of the label, in US units", () => {
    const result = label(...unadjusted, { method: "default" });
    const steps = result.working();
    expect(steps.at(-1)?.result.unit).toBe("mi");
    expect(steps.at(-1)?.result.value).toBe(result.range.in("mi"));
    const names = steps.map(({ name }) => name);
    expect(names.filter((name) => name === "range of the label")).toHaveLength(2);
    const units = steps.flatMap(({ operands, result: { unit } }) => [unit, ...operands.map((o) => o.unit)]);
    expect(units.filter((unit) => unit.includes("km"))).toEqual([]);
  });

  it("rounds as labels print", () => {
    const figures = roundForUsLabel({ label: label(283.2, 303.1, { method: "factor", factor: 0.744 }) });
    // V158, above: the label prints 86 MPGe and 39 kWh/100 mi
    expect([figures.economy?.in("MPGe"), figures.consumption?.in("kWh/100 mi")]).toEqual([86, 39]);
    expect(Number.isInteger(figures.range.in("mi"))).toBe(true);
    expect(figures.rules.at(-1)?.source.status).toBe("memory");
    expect(figures.warnings.join(" ")).toContain("remembered");
    // What looks like a label in everything but its adjustment is none.
    expect(codeOf(() => roundForUsLabel({ label: testOf(...unadjusted) as never }))).toBe("WRONG_CHOICE");
  });
});

describe("vehicle-specific five cycles", () => {
  const same = (value: number, names: readonly string[]) =>
    Object.fromEntries(names.map((name) => [name, quantity(value, "Wh/mi")])) as never;
  const bags = ["bag1", "bag2", "bag3", "bag1Cold", "bag2Cold", "bag3Cold", "sc03"];

  it("of a vehicle that always uses the same give that, but for the 0.905 and the 1.007 of the rule", () => {
    fc.assert(
      fc.property(between(100, 600), (value) => {
        expect(
          close(fiveCycleCity(same(value, [...bags, "us06City"])).in("Wh/mi"), value / 0.905, undefined, 1e-9),
        ).toBe(true);
        const highway = [...bags.filter((name) => name !== "bag2Cold"), "us06Highway", "hwfet"];
        expect(
          close(fiveCycleHighway(same(value, highway)).in("Wh/mi"), (1.007 * value) / 0.905, undefined, 1e-9),
        ).toBe(true);
      }),
    );
  });
});

describe("five cycles that no vehicle has", () => {
  it("are refused: a start does not gain energy", () => {
    const given = {
      ...{ bag1: q("100 Wh/mi"), bag2: q("230 Wh/mi"), bag3: q("900 Wh/mi") },
      ...{ bag1Cold: q("480 Wh/mi"), bag3Cold: q("380 Wh/mi"), sc03: q("310 Wh/mi") },
    };
    const city = { ...given, bag2Cold: q("350 Wh/mi"), us06City: q("420 Wh/mi") };
    const highway = { ...given, us06Highway: q("330 Wh/mi"), hwfet: q("250 Wh/mi") };
    expect(() => fiveCycleCity(city)).toThrow("cold bag 1 takes more than its hot bag 3");
    expect(codeOf(() => fiveCycleHighway(highway))).toBe("NOT_VALID_HERE");
    expect(codeOf(() => fiveCycleCity({ ...city, bag1: q("901 Wh/mi") }))).toBe("nothing thrown");
  });
});

describe("which vehicles have a US label", () => {
  it.each([
    ["8,499 lb", false, true],
    ["8,500 lb", false, false],
    ["9,500 lb", true, true],
    ["10,001 lb", true, false],
  ] as const)("%s, made for persons: %s", (weight, carriesPersons, labelled) => {
    const scope = usLabelScope({ grossWeight: q(weight), carriesPersons });
    expect(scope.labelled).toBe(labelled);
    // The limit of 8500 lb was seen; that of vehicles for persons is remembered, and says so.
    expect(scope.warnings.length > 0).toBe(weight !== "8,499 lb");
  });

  it("asks what the vehicle is made for", () => {
    expect(codeOf(() => usLabelScope({ grossWeight: q("9,000 lb") } as never))).toBe("MISSING_OPTION");
    expect(codeOf(() => usLabelScope({ grossWeight: q("9,000 lb"), carriesPersons: "yes" as never }))).toBe(
      "WRONG_CHOICE",
    );
  });
});
