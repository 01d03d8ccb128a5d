import { q, quantity } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { published } from "../../../../test/support/published.js";
import {
  coastDownForce,
  inertiaForce,
  relativeAirSpeed,
  tyreForce,
  tyreForceAtTemperature,
  yawAngle,
} from "../../src/index.js";
import { between, close, codeOf } from "../support.js";

const source = "40 CFR 1037.528, worked example";
const wind = { windSpeed: q("7.1 mph"), vehicleSpeed: q("64.9 mph"), windAngle: q("47°") };
const speeds = [q("103.896 km/h"), q("21.024 km/h")];
const groups = {
  steer: {
    tyres: 2,
    pressure: q("758.4 kPa"),
    load: q("51421.2 N"),
    pressureExponent: -0.2435,
    loadExponent: 0.9576,
    constant: 0.0434,
    linear: 5.4e-5,
    quadratic: 5.53e-7,
  },
  drive: {
    tyres: 8,
    pressure: q("689.5 kPa"),
    load: q("55958.4 N"),
    pressureExponent: -0.3146,
    loadExponent: 0.9914,
    constant: 0.0504,
    linear: 1.11e-4,
    quadratic: 2.86e-7,
  },
  trailer: {
    tyres: 8,
    pressure: q("689.5 kPa"),
    load: q("45727.5 N"),
    pressureExponent: -0.3982,
    loadExponent: 0.9756,
    constant: 0.0656,
    linear: 1.51e-4,
    quadratic: 2.94e-7,
  },
};
const printed = { steer: [365.6, 297.8], drive: [431.4, 350.7], trailer: [231.7, 189.0] };

describe("coast-down", () => {
  published({
    quantity: "air speed past the vehicle",
    source,
    status: "seen",
    given: "wind 7.1 mph at 47.0°, vehicle 64.9 mph",
    published: q("69.93 mph"),
    computed: () => relativeAirSpeed(wind),
    tolerance: 0.01,
    why: "the example cuts 69.935 instead of rounding it",
  });
  published({
    quantity: "yaw angle of the air",
    source,
    status: "seen",
    given: "wind 7.1 mph at 47.0°, vehicle 64.9 mph",
    published: q("4.26°"),
    computed: () => yawAngle(wind),
    tolerance: 0.005,
    why: "last printed digit",
  });
  published({
    quantity: "mean road-load force over an interval",
    source,
    status: "seen",
    given: "M_e 17 129 kg, 31.28 → 26.77 m/s in 16.06 s; M 16 108 kg, rise 0.503 m over 482.4 m, g 9.8061 m/s²",
    published: q("4645.5 N"),
    computed: () =>
      coastDownForce({
        effectiveMass: q("17129 kg"),
        mass: q("16108 kg"),
        startSpeed: q("31.28 m/s"),
        endSpeed: q("26.77 m/s"),
        duration: quantity(19.11 - 3.05, "s"),
        rise: quantity(0.547 - 0.044, "m"),
        distance: quantity(697.8 - 215.4, "m"),
        gravity: q("9.8061 m/s²"),
      }),
    tolerance: 0.05,
    why: "last printed digit",
  });
  for (const name of ["steer", "drive", "trailer"] as const) {
    published({
      quantity: `rolling resistance of the ${name} tyres at 103.896 and 21.024 km/h`,
      source,
      status: "seen",
      published: printed[name].map((force) => quantity(force, "N")),
      computed: () => speeds.map((speed) => tyreForce({ ...groups[name], speed })),
      tolerance: 0.1,
      why: "one unit of the last printed digit: the example rounds its inputs",
    });
  }
  published({
    quantity: "tyre force at the temperature of the road",
    source,
    status: "seen",
    given: "1028.7 N at 25.5 °C; 837.5 N at 25.1 °C",
    published: [q("1019.4 N"), q("832.0 N")],
    computed: () => [
      tyreForceAtTemperature({ force: q("1028.7 N"), temperature: q("25.5 °C") }),
      tyreForceAtTemperature({ force: q("837.5 N"), temperature: q("25.1 °C") }),
    ],
    tolerance: 0.05,
    why: "last printed digit",
  });

  it("on a level road, the force is the inertia force of the deceleration", () => {
    fc.assert(
      fc.property(between(1000, 3000), between(10, 40), between(0.1, 5), between(1, 60), (kg, v, drop, t) => {
        const mass = quantity(kg, "kg");
        const force = coastDownForce({
          effectiveMass: mass,
          mass: q("1000 kg"),
          startSpeed: quantity(v, "m/s"),
          endSpeed: quantity(v - drop, "m/s"),
          duration: quantity(t, "s"),
          rise: q("0 m"),
          distance: q("100 m"),
          gravity: q("9.81 m/s²"),
        });
        const push = inertiaForce({ mass, acceleration: quantity(-(v - (v - drop)) / t, "m/s²") });
        expect(close(force.in("N"), -push.in("N"))).toBe(true);
      }),
    );
  });

  it("yaw and air speed give back the components of the wind", () => {
    fc.assert(
      fc.property(between(0, 30), between(1, 60), between(-3.1, 3.1), (w, v, angle) => {
        const inputs = {
          windSpeed: quantity(w, "m/s"),
          vehicleSpeed: quantity(v, "m/s"),
          windAngle: quantity(angle, "rad"),
        };
        fc.pre(relativeAirSpeed(inputs).in("m/s") > 1e-3);
        const air = relativeAirSpeed(inputs).in("m/s");
        const yaw = yawAngle(inputs).in("rad");
        expect(air * Math.cos(yaw)).toBeCloseTo(v + w * Math.cos(angle), 6);
        expect(air * Math.sin(yaw)).toBeCloseTo(w * Math.sin(angle), 6);
      }),
    );
  });

  it("a head wind adds, a tail wind subtracts, and one that overtakes turns the air round", () => {
    const vehicleSpeed = q("10 m/s");
    expect(relativeAirSpeed({ windSpeed: q("5 m/s"), vehicleSpeed, windAngle: q("0°") }).in("m/s")).toBeCloseTo(15, 12);
    expect(relativeAirSpeed({ windSpeed: q("5 m/s"), vehicleSpeed, windAngle: q("180°") }).in("m/s")).toBeCloseTo(
      5,
      12,
    );
    const overtaken = yawAngle({ windSpeed: q("20 m/s"), vehicleSpeed, windAngle: q("150°") });
    expect(overtaken.in("°")).toBeGreaterThan(90);
    expect(codeOf(() => yawAngle({ windSpeed: q("0 m/s"), vehicleSpeed: q("0 m/s"), windAngle: q("0°") }))).toBe(
      "NOT_VALID_HERE",
    );
  });

  it("refuses what makes no sense", () => {
    expect(codeOf(() => relativeAirSpeed({ ...wind, windSpeed: q("-1 mph") }))).toBe("NEGATIVE");
    expect(codeOf(() => yawAngle({ ...wind, windAngle: q("270°") }))).toBe("OUT_OF_RANGE");
    expect(codeOf(() => tyreForce({ ...groups.steer, speed: q("80 km/h"), tyres: 0 }))).toBe("OUT_OF_RANGE");
    expect(codeOf(() => tyreForce({ ...groups.steer, speed: q("80 km/h"), pressure: q("2.5 kPa") }))).toBe(
      "OUT_OF_RANGE",
    );
    expect(codeOf(() => tyreForceAtTemperature({ force: q("100 N"), temperature: q("68 °C") }))).toBe("OUT_OF_RANGE");
    const interval = {
      effectiveMass: q("2060 kg"),
      mass: q("2000 kg"),
      startSpeed: q("30 m/s"),
      endSpeed: q("27 m/s"),
      duration: q("0 s"),
      rise: q("0 m"),
      distance: q("285 m"),
      gravity: q("9.81 m/s²"),
    };
    expect(codeOf(() => coastDownForce(interval))).toBe("OUT_OF_RANGE");
  });
});
