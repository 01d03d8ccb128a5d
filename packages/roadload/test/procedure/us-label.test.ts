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

  it("multiplies ranges and economies by one factor, whatever the method", () => {
    const methods = fc.oneof(
      fc.constant<LabelAdjustmentMethod>({ method: "default" }),
      between(0.5, 1).map((factor): LabelAdjustmentMethod => ({ method: "factor", factor })),
      fc.constantFrom("2006", "2015").map((set): LabelAdjustmentMethod => ({ method: "derived 5-cycle", set })),
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
    const low = { method: "vehicle-specific 5-cycle", city: q("200 Wh/mi"), highway: q("200 Wh/mi") } as const;
    expect(warned(low)).toContain("below the unadjusted");
  });

  it("needs the wall for five cycles, and a method", () => {
    const cycle = { energy: q("2 kWh"), distance: q("7.45 mi") };
    const atBattery = usMultiCycle({
      ...{ city: [cycle, cycle, cycle, cycle], highway: [cycle, cycle], usableEnergy: q("80 kWh") },
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

  it("rounds as labels print", () => {
    const figures = roundForUsLabel({ label: label(283.2, 303.1, { method: "factor", factor: 0.744 }) });
    // V158, above: the label prints 86 MPGe and 39 kWh/100 mi
    expect([figures.economy?.in("MPGe"), figures.consumption?.in("kWh/100 mi")]).toEqual([86, 39]);
    expect(Number.isInteger(figures.range.in("mi"))).toBe(true);
    expect(figures.rule.source.status).toBe("memory");
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
