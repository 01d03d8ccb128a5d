import { q, quantity } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { published } from "../../../../test/support/published.js";
import {
  addOnDragAreas,
  fitTyres,
  moveRoadLoad,
  type RoadLoad,
  radialTyres,
  roadLoad,
  roadLoadInWind,
  roadLoadOnTyres,
  roadSurfaces,
  type TyreCategory,
  type TyreLabelRegulation,
  toCertified,
  tyreClass,
  tyreCoefficientAt,
  tyreForce,
  tyres,
  tyresAtPressure,
  tyresOfReport,
  tyresOnConcrete,
  withAddOns,
} from "../../src/index.js";
import { between, certifiedLoads, close, codeOf, physicalLoads } from "../support.js";

const source = { document: "invented", status: "definition" } as const;
const body = { mass: q("2000 kg"), dragArea: q("0.7 m²"), airDensity: q("1.2 kg/m³") };
const report = {
  ...{ name: "steer", count: 2, pressure: q("758.4 kPa"), load: q("51421.2 N"), pressureExponent: -0.2435 },
  ...{ loadExponent: 0.9576, constant: 0.0434, linear: 5.4e-5, quadratic: 5.53e-7 },
};

describe("tyres that change with speed", () => {
  published({
    quantity: "c_rr at 2.4 bar, 100 km/h, by pressure and speed",
    source: "engineering tables, c = 0.005 + (1/p)(0.01 + 0.0095(v/100)²), worked by hand",
    status: "seen",
    published: 0.013125,
    computed: () => tyreCoefficientAt(tyresAtPressure({ pressure: q("2.4 bar") }), q("100 km/h")),
    tolerance: 1e-12,
    why: "the same arithmetic",
  });
  published({
    quantity: "force of the steer tyres of 40 CFR 1037.528 at 103.896 and 21.024 km/h, by coefficients",
    source: "40 CFR 1037.528, worked example",
    status: "seen",
    published: [q("365.6 N"), q("297.8 N")],
    computed: () =>
      [q("103.896 km/h"), q("21.024 km/h")].map((speed) =>
        quantity(tyreCoefficientAt(tyresOfReport(report), speed) * report.load.in("N"), "N"),
      ),
    tolerance: 0.1,
    why: "one unit of the last printed digit: the example rounds its inputs",
  });
  published({
    quantity: "c_rr of radial passenger tyres at 100 km/h, and of tyres on concrete at 80 km/h",
    source: "textbooks: 0.0136 + 0.40e-7·V² and 0.01·(1 + V/160), worked by hand",
    status: "memory",
    published: [0.014, 0.015],
    computed: () => [
      tyreCoefficientAt(radialTyres(), q("100 km/h")),
      tyreCoefficientAt(tyresOnConcrete(), q("80 km/h")),
    ],
    tolerance: 1e-12,
    why: "the same arithmetic",
  });

  it("those of a report give the force of the report at every speed", () => {
    fc.assert(
      fc.property(
        between(0, 60),
        between(0.001, 0.2),
        between(0, 1e-3),
        between(0, 1e-6),
        (v, constant, linear, quadratic) => {
          const { name: _, count, ...rest } = { ...report, constant, linear, quadratic };
          const speed = quantity(v, "m/s");
          const force = tyreForce({ ...rest, tyres: count, speed }).in("N");
          const mine = tyreCoefficientAt(tyresOfReport({ ...rest, name: "x", count }), speed) * rest.load.in("N");
          expect(close(force, mine, undefined, 1e-11)).toBe(true);
        },
      ),
    );
  });

  it("take part in a road load exactly", () => {
    const three = fc.tuple(between(0.004, 0.02), between(0, 1e-4), between(0, 5e-6));
    fc.assert(
      fc.property(three, between(0, 50), (coefficients, v) => {
        const own = tyres({ name: "own", coefficients, source });
        const { load, splitAt } = roadLoadOnTyres({ ...body, tyres: own });
        const speed = quantity(v, "m/s");
        const { aerodynamic, rolling } = splitAt(speed);
        expect(close(load.at(speed).total.in("N"), aerodynamic.plus(rolling).in("N"))).toBe(true);
        expect(close(rolling.in("N"), tyreCoefficientAt(own, speed) * 2000 * 9.80665)).toBe(true);
      }),
    );
  });

  it("of a report carry their load, and are doubted or refused at another", () => {
    const weight = 2000 * 9.80665;
    const made = (load: number) => tyresOfReport({ ...report, load: quantity(load, "N") });
    expect(made(weight).load?.in("N")).toBe(weight);
    expect(made(weight).source.status).toBe("definition");
    expect(tyresOfReport({ ...report, source }).source.document).toBe("invented");
    const warned = (load: number) => roadLoadOnTyres({ ...body, tyres: made(load) }).load.warnings.join();
    expect(warned(weight * 1.04)).not.toContain("are known for a load");
    expect(warned(weight * 1.1)).toContain("are known for a load");
    expect(() => roadLoadOnTyres({ ...body, tyres: made(weight / 4) })).toThrow(/was the load of one tyre given/);
    expect(codeOf(() => tyreCoefficientAt({ ...made(weight), load: q("0 N") }, q("1 m/s")))).toBe("OUT_OF_RANGE");
  });

  it("of constant resistance give the road load of that resistance", () => {
    const own = tyres({ name: "own", coefficients: [0.009, 0, 0], source });
    const plain = toCertified(roadLoad({ ...body, rollingResistanceCoefficient: 0.009 }));
    const { load } = roadLoadOnTyres({ ...body, tyres: own });
    for (const v of [0, 10, 40]) {
      expect(load.at(quantity(v, "m/s")).total.in("N")).toBeCloseTo(plain.at(quantity(v, "m/s")).total.in("N"), 9);
    }
    expect(load.holds).toEqual(["air", "tyres"]);
  });

  it("of another curve are fitted, and say how badly: nowhere worse than they say", () => {
    fc.assert(
      fc.property(between(0.005, 0.015), between(0, 3e-7), between(2, 3), (c0, c1, power) => {
        const curve = (v: number) => c0 + c1 * v ** power;
        const fitted = fitTyres({ name: "own", coefficientAt: curve, source, upToSpeed: 40 });
        const largest = fitted.fit?.largestError ?? Number.NaN;
        for (const v of [0, 0.4, 7.2, 20, 33.2, 40]) {
          const off = Math.abs(tyreCoefficientAt(fitted, quantity(v, "m/s")) / curve(v) - 1);
          expect(off).toBeLessThanOrEqual(largest + 1e-12);
        }
      }),
    );
    const same = fitTyres({ name: "parabola", coefficientAt: (v) => 0.008 + 1e-5 * v + 2e-6 * v * v, source });
    expect(same.fit?.largestError).toBeLessThan(1e-12);
    expect(same.warnings).toEqual([]);
    const kink = fitTyres({ name: "kink", coefficientAt: (v) => (v < 25 ? 0.008 : 0.012), source });
    expect(kink.warnings.join()).toMatch(/up to \d+\.\d % off/);
    expect(roadLoadOnTyres({ ...body, tyres: kink }).load.warnings).toEqual(kink.warnings);
  });

  it("refuse what makes no sense", () => {
    const of = (coefficients: unknown) => codeOf(() => tyres({ name: "x", coefficients, source } as never));
    expect(of([0.01, 0])).toBe("WRONG_CHOICE");
    expect(of([0.01, 0, Number.NaN])).toBe("NOT_A_NUMBER");
    expect(of([0.01, -0.001, 0])).toBe("OUT_OF_RANGE");
    expect(of([0.01, 0, 0.4e-3])).toBe("OUT_OF_RANGE");
    expect(codeOf(() => fitTyres({ name: "x", coefficientAt: () => Number.NaN, source }))).toBe("NOT_A_NUMBER");
    expect(codeOf(() => fitTyres({ name: "x", coefficientAt: () => 0, source }))).toBe("OUT_OF_RANGE");
    expect(codeOf(() => tyresAtPressure({ pressure: q("2.4 kPa") }))).toBe("OUT_OF_RANGE");
    expect(codeOf(() => roadLoadOnTyres({ ...body, tyres: {} as never }))).toBe("WRONG_CHOICE");
  });
});

describe("classes of the tyre label", () => {
  const ends = (letter: string, category: TyreCategory, regulation: TyreLabelRegulation) => {
    const { low, high } = tyreClass({ letter, category, regulation });
    return [low * 1000, high * 1000];
  };
  published({
    quantity: "ends of the passenger classes B, C, E, F in kg/t",
    source: "Regulation (EC) No 1222/2009, annex I, part A",
    status: "seen",
    published: [6.6, 7.7, 7.8, 9.0, 9.1, 10.5, 10.6, 12.0],
    computed: () => ["B", "C", "E", "F"].flatMap((letter) => ends(letter, "C1", "EC 1222/2009")),
    tolerance: 1e-9,
    why: "the same figures",
  });
  published({
    quantity: "ends of the van classes B, C, E, F in kg/t",
    source: "Regulation (EC) No 1222/2009, annex I, part A",
    status: "seen",
    published: [5.6, 6.7, 6.8, 8.0, 8.1, 9.2, 9.3, 10.5],
    computed: () => ["B", "C", "E", "F"].flatMap((letter) => ends(letter, "C2", "EC 1222/2009")),
    tolerance: 1e-9,
    why: "the same figures",
  });
  published({
    quantity: "ends of the passenger classes B, C, D in kg/t since 2021",
    source: "Regulation (EU) 2020/740 as quoted in an open file",
    status: "quoted",
    published: [6.6, 7.7, 7.8, 9.0, 9.1, 10.5],
    computed: () => ["B", "C", "D"].flatMap((letter) => ends(letter, "C1", "EU 2020/740")),
    tolerance: 1e-9,
    why: "the same figures",
  });
  published({
    quantity: "values that stand for the passenger classes A, B, C, E, F, G in kg/t",
    source: "UN GTR No. 15, annex 4, table A4/2",
    status: "memory",
    published: [5.9, 7.1, 8.4, 9.8, 11.3, 12.9],
    computed: () =>
      ["A", "B", "C", "E", "F", "G"].map(
        (letter) => 1000 * tyreClass({ letter, category: "C1", regulation: "EC 1222/2009" }).likely,
      ),
    tolerance: 1e-9,
    why: "the same figures",
  });

  it("have their value inside, rise with the letter, and say which end is open", () => {
    for (const [category, letters] of [
      ["C1", "ABCEFG"],
      ["C2", "ABCEFG"],
      ["C3", "ABCDEF"],
    ] as const) {
      let before = 0;
      for (const [i, letter] of [...letters].entries()) {
        const each = tyreClass({ letter, category, regulation: "EC 1222/2009" });
        expect(each.low).toBeLessThan(each.likely);
        expect(each.likely).toBeLessThan(each.high);
        expect(each.low).toBeGreaterThan(before);
        before = each.low;
        expect(each.open).toBe(i === 0 ? "low" : i === letters.length - 1 ? "high" : undefined);
      }
    }
  });

  it("are refused when they are none, or were not seen", () => {
    const code = (letter: unknown, category: unknown, regulation: unknown) =>
      codeOf(() => tyreClass({ letter, category, regulation } as never));
    expect(code("D", "C1", "EC 1222/2009")).toBe("WRONG_CHOICE");
    expect(code("B", "C2", "EU 2020/740")).toBe("WRONG_CHOICE");
    expect(code("toString", "C1", "EU 2020/740")).toBe("WRONG_CHOICE");
    expect(code("B", "C4", "EU 2020/740")).toBe("WRONG_CHOICE");
  });
});

describe("surfaces of roads", () => {
  published({
    quantity: "c_rr on new asphalt, rolled gravel, cobbles, loose gravel and loose sand, least and most",
    source: "engineering tables on rolling resistance",
    status: "seen",
    published: [0.01, 0.015, 0.02, 0.02, 0.03, 0.03, 0.04, 0.08, 0.2, 0.4],
    computed: () => {
      const { newAsphalt, rolledGravel, cobbles, looseGravel, looseSand } = roadSurfaces;
      return [newAsphalt, rolledGravel, cobbles, looseGravel, looseSand].flatMap(({ low, high }) => [low, high]);
    },
    tolerance: 0,
    why: "the same figures",
  });
  published({
    quantity: "c_rr on hard road, packed and wet loose gravel; on worn asphalt and soil",
    source: "Marks' Standard Handbook; Mechanical Engineer's Data Handbook",
    status: "quoted",
    published: [0.008, 0.012, 0.06, 0.02, 0.08],
    computed: () => {
      const { hardRoad, packedGravel, wetLooseGravel, wornAsphalt, soil } = roadSurfaces;
      return [hardRoad, packedGravel, wetLooseGravel, wornAsphalt, soil].map(({ low }) => low);
    },
    tolerance: 0,
    why: "the same figures",
  });
});

describe("things added to a vehicle", () => {
  const box = { name: "roof box", dragArea: q("0.15 m²"), mass: q("60 kg"), source: "invented" };
  const trailer = {
    name: "trailer",
    dragArea: q("1.5 m²"),
    mass: q("1000 kg"),
    rollingResistanceCoefficient: 0.012,
    source: "invented",
  };

  it("add the forces that each has alone, on either form", () => {
    fc.assert(
      fc.property(physicalLoads, between(0, 50), (load, v) => {
        const speed = quantity(v, "m/s");
        const rho = load.conditions.airDensity.in("kg/m³");
        const c = load.rollingResistanceCoefficient;
        const more = 0.5 * rho * 1.65 * v * v + 9.80665 * (c * 60 + 0.012 * 1000);
        const alone = load.at(speed).total.in("N");
        const both = withAddOns(load, [box, trailer]).load.at(speed).total.in("N");
        expect(close(both - alone, more, both, 1e-11)).toBe(true);
        const certified = withAddOns(toCertified(load), [box, trailer]).load.at(speed).total.in("N");
        expect(close(certified, both, undefined, 1e-11)).toBe(true);
      }),
    );
  });

  it("say what each adds, in the wind of the load: the parts are the whole", () => {
    fc.assert(
      fc.property(physicalLoads, between(0, 15), between(0, 50), (load, w, v) => {
        const speed = quantity(v, "m/s");
        for (const start of [load, toCertified(load), roadLoadInWind(load, { headWind: quantity(w, "m/s") })]) {
          const { parts, load: both } = withAddOns(start as RoadLoad, [box, trailer]);
          const sum = parts.reduce((total, { forcesAt }) => {
            const { aerodynamic, rolling } = forcesAt(speed);
            return total + aerodynamic.in("N") + rolling.in("N");
          }, start.at(speed).total.in("N"));
          expect(close(sum, both.at(speed).total.in("N"), undefined, 1e-10)).toBe(true);
        }
      }),
    );
  });

  it("caution when something is towed, and only then", () => {
    const load = roadLoad({ ...body, rollingResistanceCoefficient: 0.009 });
    expect(withAddOns(load, [box]).cautions).toEqual([]);
    const towing = withAddOns(load, [box, trailer]);
    expect(towing.cautions.join()).toContain("local law");
    expect(towing.load.massBasis).toBe("vehicle + roof box + trailer");
    expect(towing.parts.map(({ name }) => name)).toEqual(["roof box", "trailer"]);
  });

  it("keep what is towed apart, through every change, on either form", () => {
    const load = roadLoad({ ...body, rollingResistanceCoefficient: 0.009 });
    for (const start of [load, toCertified(load)]) {
      expect(withAddOns(start, [box]).load.towedMass).toBeUndefined();
      expect(withAddOns(start, [box]).load.cautions).toBeUndefined();
      const towing = withAddOns(start, [box, trailer]);
      const moved = moveRoadLoad(towing.load, { airDensity: q("1.1 kg/m³") }).load;
      for (const each of [towing.load, moved, roadLoadInWind(towing.load, { headWind: q("3 m/s") })]) {
        expect(each.mass.in("kg")).toBeCloseTo(3060, 9);
        expect(each.towedMass?.in("kg")).toBeCloseTo(1000, 9);
        expect(each.cautions).toEqual(towing.cautions);
      }
      const two = withAddOns(towing.load, [{ ...trailer, name: "second trailer" }]);
      expect(two.load.towedMass?.in("kg")).toBeCloseTo(2000, 9);
      expect(two.cautions).toHaveLength(1);
      expect(codeOf(() => withAddOns(towing.load, [box]))).toBe("NOT_VALID_HERE");
      expect(codeOf(() => moveRoadLoad(towing.load, { mass: q("3 t") }))).toBe("NOT_VALID_HERE");
      expect(codeOf(() => moveRoadLoad({ ...towing.load, towedMass: q("4 t") }, {}))).toBe("OUT_OF_RANGE");
      expect(codeOf(() => moveRoadLoad({ ...towing.load, cautions: "towing" } as never, {}))).toBe("WRONG_CHOICE");
    }
  });

  it("have priors in order, which say that they have no source", () => {
    for (const { low, likely, high, source: from } of Object.values(addOnDragAreas)) {
      expect(low).toBeLessThan(likely);
      expect(likely).toBeLessThan(high);
      expect(from.status).toBe("common practice");
    }
  });

  it("are refused when they make no sense", () => {
    const load = roadLoad({ ...body, rollingResistanceCoefficient: 0.009 });
    expect(codeOf(() => withAddOns(load, []))).toBe("EMPTY");
    expect(codeOf(() => withAddOns(load, [{ ...trailer, mass: undefined }]))).toBe("MISSING_OPTION");
    expect(codeOf(() => withAddOns(load, [{ ...box, colour: "red" } as never]))).toBe("UNKNOWN_OPTION");
    const [bare] = fc.sample(certifiedLoads, 1);
    expect(codeOf(() => withAddOns(bare as never, [box]))).toBe("MISSING_OPTION");
  });
});
