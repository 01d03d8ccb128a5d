import { q, quantity } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { published } from "../../../../../test/support/published.js";
import {
  coastDownDragArea,
  correctedConstant,
  correctedLinear,
  correctedQuadratic,
  spinForce,
  tyreTemperatureFactor,
  tyreTemperatureRules,
} from "../../../src/index.js";
import { between, close, codeOf } from "../../support.js";

const source = "40 CFR 1037.528, worked example";
const axle = { revolutionsPerMetre: 0.315657, constant: -206.841, linear: 239.8279, quadratic: 21.27505 };
const example = {
  ...{ fastForce: q("4645.5 N"), slowForce: q("1005 N"), spinDifference: q("77 N"), tyreDifference: q("187.4 N") },
  ...{ fastAirSpeedSquared: q("933.4 m²/s²"), slowAirSpeedSquared: q("43.12 m²/s²") },
  ...{ temperature: q("285.97 K"), pressure: q("101727 Pa") },
};

describe("steps of coast-down regulations", () => {
  published({
    quantity: "axle spin at 28.86 and 5.84 m/s",
    source,
    status: "seen",
    published: [q("129.7 N"), q("52.7 N")],
    computed: () => [q("28.86 m/s"), q("5.84 m/s")].map((speed) => spinForce({ ...axle, speed })),
    tolerance: 0.05,
    why: "last printed digit",
  });
  published({
    quantity: "drag area from the fast and the slow part",
    source: "computed from the seen inputs of 40 CFR 1037.528; its equation and result are images that were not seen",
    status: "regression",
    published: q("6.1203 m²"),
    computed: () => coastDownDragArea(example),
    tolerance: 0.00005,
    why: "last digit computed",
  });
  published({
    quantity: "slope of tyre temperature of UN GTR No. 15 against SAE J1263, 4.8e-3 per °F",
    source: "SAE J1263",
    status: "memory",
    published: 4.8e-3 * 1.8,
    computed: () => tyreTemperatureRules.gtr15.slope,
    tolerance: { relative: 0.005 },
    why: "both are rounded to two digits",
  });
  published({
    quantity: "ISO 28580 slopes of C1, of C2, and of C3 above load index 121",
    source: "UN R117 annex 6 as proposed in 2012",
    status: "seen",
    published: [0.008, 0.01, 0.006],
    computed: () => {
      const { c1, c2c3, c3Heavy } = tyreTemperatureRules;
      return [c1.slope, c2c3.slope, c3Heavy.slope];
    },
    tolerance: 0,
    why: "the same figures",
  });

  it("a coast-down at the reference is left as it is", () => {
    const constant = q("150 N");
    const same = { windSpeed: q("0 m/s"), testMass: q("2 t"), massAsTested: q("2000 kg"), temperature: q("20 °C") };
    expect(correctedConstant({ constant, quadratic: q("0.4 N/(m/s)²"), ...same }).in("N")).toBeCloseTo(150, 10);
    expect(correctedLinear({ linear: q("1 N/(m/s)"), temperature: q("20 °C") }).in("N/(m/s)")).toBeCloseTo(1, 12);
    const at = { temperature: q("293 K"), pressure: q("1 bar") };
    expect(correctedQuadratic({ quadratic: q("0.4 N/(m/s)²"), ...at }).in("N/(m/s)²")).toBeCloseTo(0.4, 12);
  });

  it("tyres there and back are the same tyres, and cold ones resist more", () => {
    const rule = { slope: quantity(0.0086, "1/K"), reference: q("20 °C") };
    fc.assert(
      fc.property(between(-40, 50), between(-40, 50), between(-40, 50), (a, b, c) => {
        const factor = (from: number, to: number) =>
          tyreTemperatureFactor({ ...rule, from: quantity(from, "°C"), to: quantity(to, "°C") });
        expect(close(factor(a, b) * factor(b, c), factor(a, c))).toBe(true);
        if (a - b > 0.1) expect(factor(a, b)).toBeGreaterThan(1);
      }),
    );
  });

  it("refuses what makes no sense", () => {
    expect(codeOf(() => coastDownDragArea({ ...example, slowAirSpeedSquared: q("933.4 m²/s²") }))).toBe(
      "NOT_VALID_HERE",
    );
    expect(codeOf(() => spinForce({ ...axle, speed: q("0 m/s") }))).toBe("OUT_OF_RANGE");
    const from = q("20 °C");
    const slope = quantity(0.0086, "1/K");
    expect(codeOf(() => tyreTemperatureFactor({ slope, reference: from, from, to: q("-60 °C") }))).toBe("OUT_OF_RANGE");
  });
});
