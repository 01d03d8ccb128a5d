import { q, quantity } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { published } from "../../../../test/support/published.js";
import {
  airDensity,
  certifiedRoadLoad,
  moveRoadLoad,
  referenceAir,
  roadLoad,
  roadLoadBridge,
  toCertified,
} from "../../src/index.js";
import { between, certifiedLoads, close, codeOf, physicalLoads } from "../support.js";

/** Invented. */
const certified = certifiedRoadLoad({
  ...{ constant: q("150 N"), linear: q("0.5 N/(m/s)"), quadratic: q("0.42 N/(m/s)²") },
  conditions: { testMass: q("2000 kg"), airDensity: referenceAir.wltp.density, temperature: q("20 °C") },
});
const speeds = between(0, 60);

describe("a road load at other conditions", () => {
  published({
    quantity: "drag at −7 °C and at 1500 m of standard atmosphere, against the reference of UN GTR No. 15",
    source: "dry ideal gas and ISO 2533, worked apart from this code",
    status: "regression",
    published: [1.1155, 0.8899],
    computed: () => {
      const cold = airDensity({ temperature: q("-7 °C"), pressure: q("101325 Pa") });
      const high = airDensity({ temperature: q("278.4 K"), altitude: q("1500 m") });
      return [cold, high].map((density) =>
        moveRoadLoad(certified, { airDensity: density }).load.coefficients.quadratic.ratioTo(
          certified.coefficients.quadratic,
        ),
      );
    },
    tolerance: 0.0001,
    why: "last digit computed",
  });
  published({
    quantity:
      "constant and quadratic coefficient of 150 N and 0.42 N/(m/s)² at −7 °C, 1.326 kg/m³, with 300 kg of load",
    source: "worked by hand from UN GTR No. 15, annex 4, 4.5.5 (K0 8.6e-3 per K, from memory)",
    status: "memory",
    published: [150 * 1.15 * (1 / (1 - 0.0086 * 27)), (0.42 * 1.326) / 1.189],
    computed: () => {
      const wanted = { mass: q("2300 kg"), temperature: q("-7 °C"), airDensity: q("1.326 kg/m³") };
      const { constant, quadratic } = moveRoadLoad(certified, wanted).load.coefficients;
      return [constant.in("N"), quadratic.in("N/(m/s)²")];
    },
    tolerance: 1e-9,
    why: "the same arithmetic",
  });

  it("is that of the same vehicle built anew, for mass and air", () => {
    fc.assert(
      fc.property(physicalLoads, between(500, 4000), between(0.7, 1.5), speeds, (load, kg, rho, v) => {
        const [mass, density] = [quantity(kg, "kg"), quantity(rho, "kg/m³")];
        const { dragArea, rollingResistanceCoefficient } = load;
        const anew = roadLoad({ mass, dragArea, rollingResistanceCoefficient, airDensity: density });
        const moved = moveRoadLoad(load, { mass, airDensity: density }).load;
        const speed = quantity(v, "m/s");
        expect(close(moved.at(speed).total.in("N"), anew.at(speed).total.in("N"), undefined, 1e-11)).toBe(true);
      }),
    );
  });

  it("comes back when it is moved back, and its changes add up", () => {
    fc.assert(
      fc.property(
        certifiedLoads,
        between(500, 4000),
        between(-40, 50),
        between(0.7, 1.5),
        speeds,
        (load, kg, t, rho, v) => {
          const start = { fromAirDensity: q("1.189 kg/m³"), fromTemperature: q("20 °C") };
          const moved = moveRoadLoad(load, {
            ...start,
            ...{ mass: quantity(kg, "kg"), airDensity: quantity(rho, "kg/m³"), temperature: quantity(t, "°C") },
          });
          const speed = quantity(v, "m/s");
          const [before, after] = [load.at(speed).total.in("N"), moved.load.at(speed).total.in("N")];
          const sum = moved.changesAt(speed).reduce((total, { force }) => total + force.in("N"), before);
          expect(close(sum, after, before + after + 1)).toBe(true);
          const back = moveRoadLoad(moved.load, {
            ...{ mass: load.mass, airDensity: q("1.189 kg/m³"), temperature: q("20 °C") },
          });
          expect(close(back.load.at(speed).total.in("N"), before, before + 1, 1e-10)).toBe(true);
        },
      ),
    );
  });

  it("stays physical when it was, so that air and tyres can still be told apart", () => {
    const load = roadLoad({
      ...{ mass: q("2 t"), massBasis: "curb + driver", dragCoefficient: 0.28, frontalArea: q("2.5 m²") },
      ...{ rollingResistanceCoefficient: 0.009, airDensity: q("1.189 kg/m³") },
    });
    const place = { fromTemperature: q("20 °C"), temperature: q("5 °C"), airDensity: q("1.27 kg/m³") };
    const cold = moveRoadLoad(load, place).load;
    expect(cold.form).toBe("physical");
    // By hand, UN GTR No. 15, annex 4, 4.5.5 (memory): one over 1 − 0.0086·15.
    expect(cold.rollingResistanceCoefficient).toBeCloseTo(0.009 / (1 - 0.0086 * 15), 12);
    expect(cold.at(q("90 km/h")).aerodynamic.in("N")).toBeCloseTo(0.5 * 1.27 * 0.7 * 25 ** 2, 9);
    expect([cold.dragCoefficient, cold.massBasis]).toEqual([0.28, "curb + driver"]);
    expect(cold.conditions.temperature?.in("°C")).toBe(5);
    expect(moveRoadLoad(load, { mass: q("2.3 t") }).load.massBasis).toBeUndefined();
    // The doubt about a figure goes with the figure.
    const odd = roadLoad({
      ...{ mass: q("20 t"), dragArea: q("0.7 m²"), rollingResistanceCoefficient: 0.009, airDensity: q("1.2 kg/m³") },
    });
    expect(odd.warnings).toHaveLength(1);
    expect(moveRoadLoad(odd, { mass: q("2 t") }).warnings).toEqual([]);
  });

  it("agrees in both forms, whatever is changed", () => {
    fc.assert(
      fc.property(physicalLoads, between(500, 4000), between(-40, 50), between(0.2, 5), speeds, (load, kg, t, f, v) => {
        const wanted = {
          ...{ mass: quantity(kg, "kg"), temperature: quantity(t, "°C"), fromTemperature: q("20 °C") },
          ...{ airDensity: q("1.3 kg/m³"), rollingFactor: { factor: f, source: "invented" } },
        };
        const speed = quantity(v, "m/s");
        const force = (of: typeof load | ReturnType<typeof toCertified>) => {
          const moved = moveRoadLoad(of, wanted);
          const sum = moved.changesAt(speed).reduce((total, each) => total.plus(each.force), of.at(speed).total);
          expect(close(sum.in("N"), moved.load.at(speed).total.in("N"), undefined, 1e-10)).toBe(true);
          return sum.in("N");
        };
        expect(close(force(load), force(toCertified(load)), undefined, 1e-10)).toBe(true);
      }),
    );
  });

  it("takes the user's own factor for a wet road, and says whose it is", () => {
    const rollingFactor = { factor: 1.2, source: "wet road, invented" };
    const wet = moveRoadLoad(certified, { rollingFactor });
    expect(wet.load.coefficients.constant.in("N")).toBeCloseTo(180, 9);
    expect(wet.load.coefficients.linear.in("N/(m/s)")).toBeCloseTo(0.6, 9);
    expect(wet.load.coefficients.quadratic.in("N/(m/s)²")).toBeCloseTo(0.42, 12);
    expect(wet.load.warnings).toEqual(["rolling resistance is taken 1.2 times, your own figure: wet road, invented"]);
    const at = wet.changesAt(q("20 m/s")).find(({ cause }) => cause === "road surface or tyres");
    expect(at?.force.in("N")).toBeCloseTo(0.2 * (150 + 0.5 * 20), 9);
    expect(wet.working().map(({ result }) => result.symbol)).toContain("A_r");
    const code = (given: unknown) => codeOf(() => moveRoadLoad(certified, { rollingFactor: given as never }));
    expect(code({ factor: 1.2 })).toBe("MISSING_OPTION");
    expect(code({ factor: 12, source: "x" })).toBe("OUT_OF_RANGE");
    expect(code({ factor: 1.2, source: " " })).toBe("EMPTY");
    expect(code(1.2)).toBe("NOT_AN_OBJECT");
  });

  it("leaves alone what is not said, and keeps what the load holds", () => {
    const same = moveRoadLoad(certified, {}).load;
    expect(same.at(q("100 km/h")).total.in("N")).toBeCloseTo(certified.at(q("100 km/h")).total.in("N"), 10);
    expect(same.holds).toEqual(certified.holds);
    expect(same.conditions.testMass.in("kg")).toBe(2000);
    const colder = moveRoadLoad(certified, { temperature: q("10 °C") });
    expect(colder.load.coefficients.quadratic.in("N/(m/s)²")).toBeCloseTo(0.42, 12);
    expect(colder.warnings.join()).toContain("the density of the air was left as it is");
    expect(colder.load.conditions.temperature?.in("°C")).toBe(10);
  });

  it("warns where the rule was not made for, and only there", () => {
    const airDensity = q("1.3 kg/m³");
    expect(moveRoadLoad(certified, { airDensity, temperature: q("10 °C") }).warnings).toEqual([]);
    expect(moveRoadLoad(certified, { airDensity, temperature: q("-7 °C") }).warnings.join()).toContain(
      "is extrapolated",
    );
    const iso = moveRoadLoad(certified, { airDensity, temperature: q("15 °C"), temperatureRule: "c1" });
    expect(iso.warnings.join()).toContain("20 to 30 °C");
  });

  it("shows its steps, each with its source", () => {
    const steps = moveRoadLoad(certified, {
      mass: q("2300 kg"),
      temperature: q("0 °C"),
      airDensity: q("1.29 kg/m³"),
    }).working();
    expect(steps.map(({ result }) => result.symbol)).toEqual(["A_m", "f_T", "A_T", "C_ρ"]);
    expect(steps[0]?.source.status).toBe("memory");
  });

  it("refuses to guess what a load refers to", () => {
    const bare = certifiedRoadLoad({ ...certified.coefficients, conditions: { testMass: q("2 t") } });
    expect(codeOf(() => moveRoadLoad(bare, { temperature: q("0 °C") }))).toBe("MISSING_OPTION");
    expect(codeOf(() => moveRoadLoad(bare, { airDensity: q("1.3 kg/m³") }))).toBe("MISSING_OPTION");
    expect(codeOf(() => moveRoadLoad(bare, { mass: q("2.1 t") }))).toBe("nothing thrown");
    expect(codeOf(() => moveRoadLoad(certified, { fromTemperature: q("25 °C") }))).toBe("INCONSISTENT");
    expect(codeOf(() => moveRoadLoad(certified, { temperature: q("-60 °C") }))).toBe("OUT_OF_RANGE");
    expect(codeOf(() => moveRoadLoad(certified, { masss: q("2 t") } as never))).toBe("UNKNOWN_OPTION");
  });
});

describe("a bridge between two road loads", () => {
  it("closes, whatever the two are", () => {
    const either = fc.oneof(physicalLoads, certifiedLoads);
    fc.assert(
      fc.property(either, either, speeds, (from, to, v) => {
        const bridge = roadLoadBridge({ from, to, speed: quantity(v, "m/s") });
        const [start, end] = [bridge.from.in("N"), bridge.to.in("N")];
        const sum = bridge.steps.reduce((total, { force }) => total + force.in("N"), start);
        expect(close(sum, end, start + end + 1)).toBe(true);
      }),
    );
  });

  it("names what differs, and only that", () => {
    const given = {
      mass: q("2 t"),
      dragArea: q("0.7 m²"),
      rollingResistanceCoefficient: 0.009,
      airDensity: q("1.2 kg/m³"),
    };
    const from = roadLoad(given);
    const causes = (more: Partial<typeof given>) =>
      roadLoadBridge({ from, to: roadLoad({ ...given, ...more }), speed: q("90 km/h") }).steps.map(
        ({ cause }) => cause,
      );
    expect(causes({})).toEqual([]);
    expect(causes({ dragArea: q("0.8 m²") })).toEqual(["drag area"]);
    expect(causes({ mass: q("2.1 t") })).toEqual(["mass"]);
    expect(causes({ rollingResistanceCoefficient: 0.01 })).toEqual(["rolling resistance coefficient"]);
    const [step] = roadLoadBridge({ from, to: roadLoad({ ...given, mass: q("2.2 t") }), speed: q("90 km/h") }).steps;
    expect(step?.force.in("N")).toBeCloseTo(0.009 * 200 * 9.80665, 8);
  });
});
