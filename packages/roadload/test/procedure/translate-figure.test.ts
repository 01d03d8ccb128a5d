import { q, quantity } from "@tarewatt/units";
import fc from "fast-check";
import { beforeAll, describe, expect, it } from "vitest";
import { certificateRows } from "../../../../test/support/certificate-rows.js";
import { published } from "../../../../test/support/published.js";
import { type FigureProcedure, translateFigure, vehicleFamily } from "../../src/index.js";
import { between, close, codeOf } from "../support.js";

const names: readonly FigureProcedure[] = [
  ...(["US label", "US unadjusted", "UDDS", "HWFET", "US06", "WLTP", "WLTP city", "NEDC", "CLTC-P"] as const),
];
const procedures = fc.constantFrom(...names);
const certificates =
  "public US test car lists of battery-electric vehicles, model years 2011 to 2024, every sixth of the core rows";

/** City to highway and back, of the quoted certificates: certified figure per 10th, 50th and 90th percentile. */
let translations: ReturnType<typeof translateAll>;
beforeAll(() => {
  translations = translateAll();
}, 60_000);

function translateAll() {
  return certificateRows.flatMap(([code, testWeight, , , , city, highway]) => {
    const known = { curbMass: quantity(testWeight - 300, "lb") };
    const pairs = [
      ["UDDS", "HWFET", city, highway],
      ["HWFET", "UDDS", highway, city],
    ] as const;
    return pairs.map(([from, to, given, certified]) => {
      const consumption = quantity(given, "Wh/mi");
      const { figure } = translateFigure({ consumption, boundary: "wall", from, to, known });
      const [low, likely, high] = [figure.low, figure.likely, figure.high].map((x) => x.in("Wh/mi")) as [
        number,
        number,
        number,
      ];
      return { code, inside: certified >= low && certified <= high, error: Math.abs(likely / certified - 1) };
    });
  });
}

describe("a figure of one procedure under another", () => {
  published({
    quantity:
      "share of certified city and highway consumptions within the 10th to 90th percentile of the translation of the other",
    source: certificates,
    status: "seen",
    given: "equivalent test weight and one of both consumptions at the wall; 22 vehicles both ways",
    published: 0.8,
    computed: () => {
      return translations.filter(({ inside }) => inside).length / translations.length;
    },
    tolerance: 0.15,
    why: "44 trials of which 80 % should succeed scatter by 6 %, more as vehicles of one maker are alike; the family was set with such rows in sight",
  });
  it("has a median error below 6 % from city to highway consumption of certified vehicles, and back", () => {
    const errors = translations.map(({ error }) => error).sort((a, b) => a - b);
    expect(errors[errors.length >> 1]).toBeLessThan(0.06);
  });

  for (const [code, testWeight, uddsMpge, us06Mpge] of [
    ["V442", 6500, 119, 85.4],
    ["V446", 7000, 108, 76.2],
  ] as const) {
    published({
      quantity: `${code}: US06 consumption per that on UDDS`,
      source: "a row of public US test car lists, model years 2011 to 2024",
      status: "seen",
      given: `equivalent test weight ${testWeight} lb, UDDS ${uddsMpge} MPGe`,
      published: uddsMpge / us06Mpge,
      computed: () => {
        const known = { curbMass: quantity(testWeight - 300, "lb") };
        const consumption = quantity(uddsMpge, "MPGe").inverse();
        return translateFigure({ consumption, boundary: "wall", from: "UDDS", to: "US06", known }).ratio.likely;
      },
      tolerance: { relative: 0.12 },
      why: "the family's own spread at US06, 10th to 90th percentile; two older rows of the four that have US06 lie outside of it",
    });
  }

  it("does not reach two older rows that use hardly more on US06 than in the city", () => {
    // V328: UDDS 103.1, US06 94.8 MPGe, 5500 lb; V349: 91 and 87.5 MPGe, 6000 lb. Same source.
    const from = (mpge: number, testWeight: number) =>
      translateFigure({
        ...{ consumption: quantity(mpge, "MPGe").inverse(), boundary: "wall", from: "UDDS", to: "US06" },
        known: { curbMass: quantity(testWeight - 300, "lb") },
      });
    const { ratio, warnings } = from(103.1, 5500);
    expect(103.1 / 94.8).toBeLessThan(ratio.low);
    expect(warnings.join(" ")).toContain("it is unusual");
    expect(codeOf(() => from(91, 6000))).toBe("NOT_VALID_HERE");
  });

  it("of a procedure itself is the figure, without spread", () => {
    fc.assert(
      fc.property(procedures, between(200, 700), (procedure, km) => {
        const { figure, ratio } = translateFigure({ range: quantity(km, "km"), from: procedure, to: procedure });
        expect(ratio).toEqual({ low: 1, likely: 1, high: 1 });
        expect(figure.likely.in("km")).toBe(km);
      }),
      { numRuns: 10 },
    );
  });

  it("is in order, positive, proportional to a range that nothing anchors, and the same every time", () => {
    fc.assert(
      fc.property(procedures, procedures, between(100, 900), (from, to, km) => {
        const { figure, ratio, vehicles } = translateFigure({ range: quantity(km, "km"), from, to });
        expect(ratio.low).toBeGreaterThan(0);
        expect(ratio.likely).toBeGreaterThanOrEqual(ratio.low);
        expect(ratio.high).toBeGreaterThanOrEqual(ratio.likely);
        expect(close(figure.high.in("km"), km * ratio.high)).toBe(true);
        expect(vehicles.kept).toBe(vehicles.simulated);
        expect(translateFigure({ range: q("1 km"), from, to }).ratio).toEqual(ratio);
      }),
      { numRuns: 10 },
    );
  });

  it("back again the percentiles change places", () => {
    const there = translateFigure({ range: q("500 km"), from: "WLTP", to: "US label" }).ratio;
    const back = translateFigure({ range: q("500 km"), from: "US label", to: "WLTP" }).ratio;
    for (const [a, b] of [
      [there.low, back.high],
      [there.likely, back.likely],
      [there.high, back.low],
    ] as const) {
      expect(close(a * b, 1, 1, 0.003)).toBe(true);
    }
  });

  it("is shorter under the US label than under WLTP, and longer under NEDC and CLTC-P (common practice, no source)", () => {
    const to = (procedure: FigureProcedure) =>
      translateFigure({ range: q("500 km"), from: "WLTP", to: procedure }).ratio;
    expect(to("US label").high).toBeLessThan(1);
    expect(to("NEDC").low).toBeGreaterThan(1);
    expect(to("CLTC-P").low).toBeGreaterThan(1);
  });

  it("is narrower, the more is known", () => {
    const width = (known: Parameters<typeof translateFigure>[0]["known"], usableEnergy = q("77 kWh")) => {
      const { ratio } = translateFigure({ range: q("500 km"), from: "WLTP", to: "US label", usableEnergy, known });
      return ratio.high - ratio.low;
    };
    const all = { curbMass: q("2050 kg"), rollingResistanceCoefficient: 0.0085 };
    expect(width({ ...all, labelAdjustment: 0.7 })).toBeLessThan(width({}) * 0.95);
    expect(
      translateFigure({ range: q("500 km"), from: "WLTP", to: "UDDS", known: all }).varied.map(({ name }) => name),
    ).not.toContain("curbMass");
  });

  it("names what it varied and nothing that takes no part", () => {
    const names = translateFigure({ range: q("500 km"), from: "NEDC", to: "WLTP" }).varied.map(({ name }) => name);
    expect(names).toContain("nedcRoadLoad");
    expect(names).toContain("onWltc");
    expect(names).not.toContain("labelAdjustment");
    expect(names).not.toContain("chargingEfficiency");
    for (const { low, likely, high, source } of Object.values(vehicleFamily)) {
      expect(low).toBeLessThan(likely);
      expect(likely).toBeLessThanOrEqual(high);
      expect(source.document).not.toBe("");
    }
  });

  it("lists what each procedure is taken for, and shows how the figures follow from the ratios", () => {
    fc.assert(
      fc.property(procedures, procedures, between(100, 900), (from, to, km) => {
        const { rules, warnings, figure, working } = translateFigure({ range: quantity(km, "km"), from, to });
        expect(rules.filter(({ rule }) => rule.includes("test mass")).length).toBeGreaterThan(0);
        expect(rules.filter(({ rule }) => rule.includes("driven once as tabled")).length).toBeGreaterThan(0);
        expect(new Set(rules.map(({ rule }) => rule)).size).toBe(rules.length);
        const remembered = rules.some(({ source }) => source.status === "memory");
        expect(warnings.join(" ").includes("remembered")).toBe(remembered);
        const steps = working().map(({ result }) => result.value);
        [figure.low, figure.likely, figure.high].forEach((range, i) => {
          expect(close(steps[i] ?? 0, range.in("km"), undefined, 1e-9)).toBe(true);
        });
      }),
      { numRuns: 10 },
    );
    const consumption = { consumption: q("180 Wh/km"), boundary: "wall", from: "WLTP", to: "US label" } as const;
    expect(translateFigure(consumption).working()[1]?.result.unit).toBe("Wh/km");
  });

  it("refuses figures that no plausible vehicle has, and says what to check", () => {
    const wrong = { consumption: q("40 Wh/km"), boundary: "wall", from: "WLTP", to: "US label" } as const;
    expect(codeOf(() => translateFigure(wrong))).toBe("NOT_VALID_HERE");
    expect(() => translateFigure(wrong)).toThrow(/only 0 of 600 plausible vehicles.*check the figure/);
    const range = { range: q("1500 km"), usableEnergy: q("60 kWh"), from: "WLTP", to: "NEDC" } as const;
    expect(codeOf(() => translateFigure(range))).toBe("NOT_VALID_HERE");
  });

  it("refuses unknown procedures with the nearest one, and what makes no sense", () => {
    const given = { range: q("500 km"), from: "WLTP", to: "US label" } as const;
    expect(() => translateFigure({ ...given, to: "US labels" as never })).toThrow("did you mean 'US label'?");
    expect(codeOf(() => translateFigure({ ...given, range: q("0 km") }))).toBe("OUT_OF_RANGE");
    expect(codeOf(() => translateFigure({ ...given, range: q("5 kWh") as never }))).toBe("WRONG_DIMENSION");
    expect(codeOf(() => translateFigure({ ...given, known: { mass: q("2 t") } as never }))).toBe("UNKNOWN_OPTION");
    const consumption = { consumption: q("180 Wh/km"), from: "WLTP", to: "NEDC" } as never;
    expect(codeOf(() => translateFigure(consumption))).toBe("MISSING_OPTION");
  });
});
