import { q, quantity } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { published } from "../../../../test/support/published.js";
import { curbMassOfTestWeight, equivalentTestWeight, wltpLoadShare, wltpTestMass } from "../../src/index.js";
import { between, close, codeOf } from "../support.js";

const classOf = (loaded: number) => equivalentTestWeight({ curbMass: quantity(loaded - 300, "lb") });

describe("equivalent test weight", () => {
  published({
    quantity:
      "equivalent test weight of a test weight basis of 1062, 1063, 2062, 2063, 3437, 3438, 3937, 3938, 4125, 4126, 4625 lb",
    source: "40 CFR 1066.805, table 1",
    status: "seen",
    published: [1000, 1125, 2000, 2125, 3375, 3500, 3875, 4000, 4000, 4250, 4500],
    computed: () =>
      [1062, 1063, 2062, 2063, 3437, 3438, 3937, 3938, 4125, 4126, 4625].map((x) =>
        classOf(x).equivalentTestWeight.in("lb"),
      ),
    tolerance: 0,
    why: "a table in whole pounds",
  });
  published({
    quantity:
      "equivalent test weight of a test weight basis of 4626, 5375, 5376, 5750, 5751, 6250, 6251, 6750, 6751 lb",
    source: "40 CFR 1066.805, table 1",
    status: "memory",
    published: [4750, 5250, 5500, 5500, 6000, 6000, 6500, 6500, 7000],
    computed: () =>
      [4626, 5375, 5376, 5750, 5751, 6250, 6251, 6750, 6751].map((x) => classOf(x).equivalentTestWeight.in("lb")),
    tolerance: 0,
    why: "a table in whole pounds",
  });

  it("says whether its class was seen or is remembered", () => {
    expect([classOf(4600), classOf(4700)].map(({ source }) => source.status)).toEqual(["seen", "memory"]);
    expect(classOf(4700).warnings.join(" ")).toContain("class of 4750 lb");
  });

  it("puts every curb mass into one class that holds it, and never into a lighter one than a lighter vehicle", () => {
    fc.assert(
      fc.property(between(50, 13_900), between(0, 500), (curb, more) => {
        const found = equivalentTestWeight({ curbMass: quantity(curb, "lb") });
        const { low, high } = found.curbMass;
        expect(Math.round(curb)).toBeGreaterThanOrEqual(low.in("lb"));
        expect(Math.round(curb)).toBeLessThanOrEqual(high.in("lb"));
        const heavier = equivalentTestWeight({ curbMass: quantity(Math.min(13_950, curb + more), "lb") });
        expect(heavier.equivalentTestWeight.in("lb")).toBeGreaterThanOrEqual(found.equivalentTestWeight.in("lb"));
        const back = curbMassOfTestWeight({ equivalentTestWeight: found.equivalentTestWeight });
        expect(back.curbMass).toEqual(found.curbMass);
      }),
    );
  });

  it("refuses a weight that the table does not have, and names its neighbours", () => {
    expect(() => curbMassOfTestWeight({ equivalentTestWeight: q("4,100 lb") })).toThrow("4000 and 4250 lb");
    expect(codeOf(() => curbMassOfTestWeight({ equivalentTestWeight: q("6,200 lb") }))).toBe("WRONG_CHOICE");
    expect(codeOf(() => equivalentTestWeight({ curbMass: q("20,000 lb") }))).toBe("OUT_OF_RANGE");
  });
});

describe("test mass of the world-wide procedure", () => {
  published({
    quantity: "test mass of 2100 kg in running order, 60 kg of options, 400 kg of vehicle load, category 1",
    source: "UN GTR No. 15, annex 4, 4.2.1.3.1, as quoted: 2100 + 60 + 25 + 0.15·400",
    status: "quoted",
    published: q("2245 kg"),
    computed: () =>
      wltpTestMass({
        ...{ massInRunningOrder: q("2100 kg"), optionalEquipment: q("60 kg"), vehicleLoad: q("400 kg") },
        loadShare: wltpLoadShare.persons,
      }),
    tolerance: 1e-9,
    why: "exact but for binary rounding",
  });

  it("is at least the mass in running order and 25 kg", () => {
    fc.assert(
      fc.property(between(800, 4000), between(0, 900), between(0, 1), (mass, load, loadShare) => {
        const given = { massInRunningOrder: quantity(mass, "kg"), vehicleLoad: quantity(load, "kg"), loadShare };
        const test = wltpTestMass({ ...given, optionalEquipment: q("0 kg") }).in("kg");
        expect(close(test - mass - 25, loadShare * load, 1000)).toBe(true);
      }),
    );
  });
});
