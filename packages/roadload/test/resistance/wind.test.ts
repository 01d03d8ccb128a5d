import { q, quantity } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { published } from "../../../../test/support/published.js";
import {
  type CertifiedRoadLoad,
  crossWind,
  headWind,
  moveRoadLoad,
  relativeAirSpeed,
  roadLoad,
  roadLoadInWind,
  toCertified,
  toPhysical,
  windAveragedDragArea,
  windAverageFactor,
  withAddOns,
  type YawedDragArea,
} from "../../src/index.js";
import { between, close, codeOf, loads, physicalLoads } from "../support.js";

const curve: readonly YawedDragArea[] = [
  { yaw: q("0°"), dragArea: q("0.60 m²") },
  { yaw: q("5°"), dragArea: q("0.63 m²") },
  { yaw: q("15°"), dragArea: q("0.72 m²") },
];
const place = { windSpeed: q("3 m/s"), vehicleSpeed: q("100 km/h") };

describe("wind from all directions", () => {
  published({
    quantity: "mean drag per drag in still air, same drag area at every angle, 7 mph of wind at 55 mph",
    source: "worked by hand: the mean of 1 + (w/v)² + 2·(w/v)·cos φ is 1 + (w/v)²",
    status: "regression",
    published: 1 + (7 / 55) ** 2,
    computed: () =>
      windAveragedDragArea({ dragArea: q("0.6 m²"), windSpeed: q("7 mph"), vehicleSpeed: q("55 mph") }).ratio,
    tolerance: 1e-12,
    why: "rounding of the sum",
  });

  it("is the closed form for a constant, and follows a curve that can be integrated by hand", () => {
    fc.assert(
      fc.property(between(0, 20), between(21, 50), (w, v) => {
        const wind = { windSpeed: quantity(w, "m/s"), vehicleSpeed: quantity(v, "m/s") };
        const { ratio } = windAveragedDragArea({ dragArea: q("0.7 m²"), ...wind });
        expect(close(ratio, windAverageFactor(wind), undefined, 1e-10)).toBe(true);
      }),
    );
    // For C_dA = c·(1 + k·ψ²) and a small r = w/v: ψ ≈ r·sin φ, so that the mean of it all is c·(1 + r² + k·r²/2) + O(r⁴).
    const fine = Array.from({ length: 60 }, (_, i) => {
      const yaw = (i * Math.PI) / 2880;
      return { yaw: quantity(yaw, "rad"), dragArea: quantity(0.6 * (1 + 4 * yaw ** 2), "m²") };
    });
    const r = 0.05;
    const { ratio } = windAveragedDragArea({
      dragArea: fine,
      windSpeed: quantity(30 * r, "m/s"),
      vehicleSpeed: q("30 m/s"),
    });
    expect(ratio).toBeCloseTo(1 + r ** 2 + 2 * r ** 2, 4);
  });

  it("takes one side for both, and each side for itself", () => {
    const one = windAveragedDragArea({ dragArea: curve, ...place });
    const left = curve.slice(1).map(({ yaw, dragArea }) => ({ yaw: yaw.times(-1), dragArea }));
    const both = windAveragedDragArea({ dragArea: [...left.reverse(), ...curve], ...place });
    expect(close(one.ratio, both.ratio, undefined, 1e-12)).toBe(true);
    const lopsided = windAveragedDragArea({
      dragArea: [{ yaw: q("-15°"), dragArea: q("0.6 m²") }, ...curve],
      ...place,
    });
    expect(lopsided.ratio).toBeLessThan(one.ratio);
    expect(lopsided.ratio).toBeGreaterThan(windAverageFactor(place));
    expect(one.directions).toHaveLength(36);
    // asin(w/v) is the largest yaw there is.
    expect(one.largestYaw.in("rad")).toBeCloseTo(Math.asin(3 / (100 / 3.6)), 4);
    expect(one.warnings).toEqual([]);
  });

  it("says when the air comes at more yaw than the curve has", () => {
    const short = windAveragedDragArea({ dragArea: curve.slice(0, 2), ...place });
    expect(short.warnings.join()).toMatch(/for \d+ % of the directions/);
  });

  it("is refused when the wind overtakes, and when the curve is none", () => {
    const code = (more: object) => codeOf(() => windAveragedDragArea({ dragArea: curve, ...place, ...more }));
    expect(code({ windSpeed: q("30 m/s") })).toBe("NOT_VALID_HERE");
    expect(code({ dragArea: curve.slice(0, 1) })).toBe("EMPTY");
    expect(code({ dragArea: [...curve].reverse() })).toBe("INCONSISTENT");
    expect(code({ dragArea: curve.slice(1) })).toBe("INCONSISTENT");
    expect(code({ dragArea: [{ ...curve[0], cd: 1 }, curve[1]] })).toBe("UNKNOWN_OPTION");
  });
});

describe("steady wind", () => {
  it("has components that make it up, and make up the speed of the air", () => {
    fc.assert(
      fc.property(between(0, 30), between(-3.14, 3.14), between(1, 50), (w, angle, v) => {
        const wind = { windSpeed: quantity(w, "m/s"), windAngle: quantity(angle, "rad") };
        const [along, across] = [headWind(wind).in("m/s"), crossWind(wind).in("m/s")];
        expect(Math.hypot(along, across)).toBeCloseTo(w, 9);
        const air = relativeAirSpeed({ ...wind, vehicleSpeed: quantity(v, "m/s") }).in("m/s");
        expect(Math.hypot(v + along, across)).toBeCloseTo(air, 9);
      }),
    );
  });

  it("along the road moves the speed that the air term sees, and nothing else", () => {
    fc.assert(
      fc.property(loads, between(-15, 15), between(15, 50), (load, w, v) => {
        const still = load.coefficients;
        const expected =
          still.constant.in("N") + still.linear.in("N/(m/s)") * v + still.quadratic.in("N/(m/s)²") * (v + w) ** 2;
        const windy = roadLoadInWind(load, { headWind: quantity(w, "m/s") });
        const size = still.constant.in("N") + still.linear.in("N/(m/s)") * v + still.quadratic.in("N/(m/s)²") * 4e3 + 1;
        expect(close(windy.at(quantity(v, "m/s")).total.in("N"), expected, size)).toBe(true);
        expect(windy.warnings.length - load.warnings.length).toBe(w < 0 ? 1 : 0);
      }),
    );
  });

  it("meets what is changed or added after it as what was there before", () => {
    const box = { name: "roof box", dragArea: q("0.15 m²"), mass: q("60 kg"), source: "invented" };
    fc.assert(
      fc.property(physicalLoads, between(-15, 15), between(0.7, 1.5), between(15, 50), (load, w, rho, v) => {
        const wind = { headWind: quantity(w, "m/s") };
        const wanted = { mass: q("2.3 t"), airDensity: quantity(rho, "kg/m³") };
        const windy = roadLoadInWind(load, wind);
        const speed = quantity(v, "m/s");
        const size = windy.at(speed).total.in("N") + load.at(quantity(v + 15, "m/s")).total.in("N") + 1000;
        const same = (a: CertifiedRoadLoad, b: CertifiedRoadLoad) => {
          expect(close(a.at(speed).total.in("N"), b.at(speed).total.in("N"), size, 1e-11)).toBe(true);
          expect(a.headWind?.in("m/s")).toBe(w);
          expect([...a.warnings].sort()).toEqual([...b.warnings].sort());
        };
        const moved = moveRoadLoad(windy, wanted);
        same(moved.load, roadLoadInWind(moveRoadLoad(toCertified(load), wanted).load, wind));
        same(withAddOns(windy, [box]).load, roadLoadInWind(withAddOns(toCertified(load), [box]).load, wind));
        const sum = moved.changesAt(speed).reduce((total, { force }) => total.plus(force), windy.at(speed).total);
        expect(close(sum.in("N"), moved.load.at(speed).total.in("N"), size, 1e-11)).toBe(true);
      }),
    );
  });

  it("scales with the air alone: by hand at 2000 kg, 0.7 m², 0.009, with 400 kg more against 15 m/s", () => {
    // Worked by hand: 0.009·9.80665·2400 + 0.5·1.189·0.7·(25 + 15)².
    const by = 0.009 * 9.80665 * 2400 + 0.5 * 1.189 * 0.7 * 40 ** 2;
    const load = roadLoad({
      ...{ mass: q("2 t"), dragArea: q("0.7 m²"), rollingResistanceCoefficient: 0.009, airDensity: q("1.189 kg/m³") },
    });
    const windy = roadLoadInWind(load, { headWind: q("15 m/s") });
    expect(
      moveRoadLoad(windy, { mass: q("2.4 t") })
        .load.at(q("25 m/s"))
        .total.in("N"),
    ).toBeCloseTo(by, 9);
  });

  it("is given once, and stands in no physical load", () => {
    const [load] = fc.sample(physicalLoads, 1);
    const windy = roadLoadInWind(load as never, { headWind: q("1 m/s") });
    expect(codeOf(() => roadLoadInWind(windy, { headWind: q("1 m/s") }))).toBe("INCONSISTENT");
    expect(codeOf(() => toPhysical(windy))).toBe("NOT_VALID_HERE");
    expect(codeOf(() => moveRoadLoad({ ...windy, headWind: q("99 m/s") }, {}))).toBe("OUT_OF_RANGE");
  });
});
