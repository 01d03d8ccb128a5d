import { q, quantity } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { published } from "../../../../test/support/published.js";
import {
  dynamometerTable,
  heavyEffectiveMass,
  individualConstantTerm,
  individualQuadraticTerm,
  matrixConstantTerm,
  matrixQuadraticTerm,
  rotatingFractionByRatio,
  rotatingMass,
  rotatingMassRules,
  tableRoadLoad,
} from "../../src/index.js";
import { between, close, codeOf } from "../support.js";

describe("rotating parts", () => {
  published({
    quantity: "effective mass of the worked example, 16 108 kg on 18 tyres",
    source: "40 CFR 1037.528, worked example and (h)(1)",
    status: "seen",
    published: q("17129 kg"),
    computed: () => heavyEffectiveMass({ mass: q("16108 kg"), tyres: 18 }),
    tolerance: 0.5,
    why: "last printed digit",
  });
  published({
    quantity: "rules for an unknown vehicle: coast-down, cycle, textbook",
    source: "EU 2017/1151, sub-annex 4, 2.5.1 (seen); UN GTR No. 15, annex 7 (memory); a textbook (quoted)",
    status: "memory",
    published: [0.03, 0.03, 0.05],
    computed: () => Object.values(rotatingMassRules).map(({ value }) => value),
    tolerance: 0,
    why: "the same figures",
  });

  it("turn with the square of the gear ratio, and weigh as m·k²/r²", () => {
    fc.assert(
      fc.property(between(5, 30), between(0.3, 1), between(0.25, 0.5), between(1, 15), (kg, share, r, gearRatio) => {
        // A wheel of mass m and radius of gyration k = share·r: its equivalent mass is m·share².
        const wheel = { wheels: 4, wheelInertia: quantity(kg * (share * r) ** 2, "kg·m²"), radius: quantity(r, "m") };
        const alone = rotatingMass({ ...wheel, motorInertia: q("0 kg·m²"), gearRatio }).in("kg");
        expect(close(alone, 4 * kg * share ** 2, undefined, 1e-10)).toBe(true);
        const motor = (ratio: number) =>
          rotatingMass({ ...wheel, motorInertia: q("0.05 kg·m²"), gearRatio: ratio }).in("kg") - alone;
        expect(close(motor(2 * gearRatio), 4 * motor(gearRatio), undefined, 1e-7)).toBe(true);
      }),
    );
    expect(rotatingFractionByRatio({ overallRatio: 0 })).toBe(0.04);
  });
});

describe("families of UN GTR No. 15", () => {
  const same = {
    representativeMass: q("2500 kg"),
    representativeRolling: 0.0084,
    testMass: q("2500 kg"),
    rolling: 0.0084,
  };

  it("the representative vehicle is a member of its matrix family", () => {
    expect(matrixConstantTerm({ constant: q("300 N"), ...same }).in("N")).toBeCloseTo(300, 10);
    const areas = { representativeArea: q("4 m²"), frontalArea: q("4 m²") };
    expect(matrixQuadraticTerm({ quadratic: q("0.05 N/(km/h)²"), ...areas }).in("N/(km/h)²")).toBeCloseTo(0.05, 12);
  });

  it("what is worse counts by 95 %, what is better by 80 %", () => {
    fc.assert(
      fc.property(between(1500, 3500), between(0.005, 0.012), (kg, rolling) => {
        const scaled = (300 * kg) / 2500 + (rolling - 0.0084) * 9.81 * kg;
        const found = matrixConstantTerm({ constant: q("300 N"), ...same, testMass: quantity(kg, "kg"), rolling }).in(
          "N",
        );
        expect(found - 300).toBeCloseTo((scaled > 300 ? 0.95 : 0.8) * (scaled - 300), 8);
      }),
    );
  });

  it("vehicles L and H are ends of their interpolation, and between them it is straight", () => {
    const family = {
      ...{ highConstant: q("200 N"), highMass: q("2400 kg"), highRolling: 0.0098 },
      ...{ lowConstant: q("150 N"), lowMass: q("2200 kg"), lowRolling: 0.0071 },
    };
    const at = (testMass: number, rolling: number) =>
      individualConstantTerm({ ...family, testMass: quantity(testMass, "kg"), rolling }).in("N");
    expect(at(2400, 0.0098)).toBeCloseTo(200, 9);
    expect(at(2200, 0.0071)).toBeCloseTo(150, 9);
    const middle = (2400 * 0.0098 + 2200 * 0.0071) / 2;
    expect(at(2300, middle / 2300)).toBeCloseTo(175, 9);
    const drag = {
      highQuadratic: q("0.034 N/(km/h)²"),
      lowQuadratic: q("0.030 N/(km/h)²"),
      dragAreaRange: q("0.09 m²"),
    };
    const by = (metres: number) =>
      individualQuadraticTerm({ ...drag, dragAreaAboveLow: quantity(metres, "m²") }).in("N/(km/h)²");
    expect([by(0), by(0.045), by(0.09)].map((each) => Number(each.toFixed(6)))).toEqual([0.03, 0.032, 0.034]);
    const equal = { ...family, lowMass: q("2400 kg"), lowRolling: 0.0098, testMass: q("2400 kg"), rolling: 0.0098 };
    expect(codeOf(() => individualConstantTerm(equal))).toBe("NOT_VALID_HERE");
    const swapped = {
      ...{ highConstant: q("150 N"), highMass: q("2200 kg"), highRolling: 0.0071, testMass: q("2300 kg") },
      ...{ lowConstant: q("200 N"), lowMass: q("2400 kg"), lowRolling: 0.0098, rolling: 0.0084 },
    };
    expect(codeOf(() => individualConstantTerm(swapped))).toBe("NOT_VALID_HERE");
    // 3 t on the tyres of H lies 0.75 of the distance beyond it, 2.6 t a quarter.
    expect(codeOf(() => at(3000, 0.0098))).toBe("NOT_VALID_HERE");
    expect(codeOf(() => at(2600, 0.0098))).toBe("nothing thrown");
    expect([-0.04, 0.13].map((each) => codeOf(() => by(each)))).toEqual(["nothing thrown", "nothing thrown"]);
    expect([-0.05, 0.14].map((each) => codeOf(() => by(each)))).toEqual(["NOT_VALID_HERE", "NOT_VALID_HERE"]);
  });
});

describe("dynamometer loads of UN Regulation No. 83", () => {
  published({
    quantity: "force at 80 km/h of the rows from 1130 to 2270 kg",
    source: "UN Regulation No. 83 as printed on public slides on UN GTR No. 15",
    status: "seen",
    published: [284, 302, 315, 329, 338, 351, 365, 378, 387, 396, 405].map((force) => quantity(force, "N")),
    computed: () =>
      [1100, 1200, 1400, 1500, 1600, 1700, 1800, 1900, 2000, 2200, 2300].map(
        (kg) => tableRoadLoad({ referenceMass: quantity(kg, "kg") }).at(q("80 km/h")).total,
      ),
    tolerance: 1,
    why: "a and b are rounded in the table",
  });
  published({
    quantity: "power at 80 km/h of the same rows",
    source: "UN Regulation No. 83 as printed on public slides on UN GTR No. 15",
    status: "seen",
    published: [6.3, 6.7, 7.0, 7.3, 7.5, 7.8, 8.1, 8.4, 8.6, 8.8, 9.0].map((power) => quantity(power, "kW")),
    computed: () =>
      [1100, 1200, 1400, 1500, 1600, 1700, 1800, 1900, 2000, 2200, 2300].map(
        (kg) => tableRoadLoad({ referenceMass: quantity(kg, "kg") }).at(q("80 km/h")).power,
      ),
    tolerance: 0.051,
    why: "last printed digit",
  });

  it("its rows join, and rise", () => {
    const { rows } = dynamometerTable;
    for (const [i, [above, upTo, a, b, power]] of rows.entries()) {
      expect(upTo).toBeGreaterThan(above);
      const next = rows[i + 1];
      if (next === undefined) continue;
      expect(next[0]).toBe(upTo);
      expect([next[2] > a, next[3] > b, next[4] > power]).toEqual([true, true, true]);
    }
    // A row holds up to and with its upper end.
    expect(tableRoadLoad({ referenceMass: q("1190 kg") }).coefficients.constant.in("N")).toBe(6.4);
  });

  it("says that it is no load of a road, and refuses masses without a row", () => {
    expect(tableRoadLoad({ referenceMass: q("1.5 t") }).warnings.join()).toContain("too low for a road");
    expect(tableRoadLoad({ referenceMass: q("2.5 t") }).warnings.join()).toContain("not the inertia that the table");
    expect(codeOf(() => tableRoadLoad({ referenceMass: q("900 kg") }))).toBe("OUT_OF_RANGE");
  });
});
