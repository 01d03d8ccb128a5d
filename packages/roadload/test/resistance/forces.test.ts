import { type Area, type Mass, type Quantity, q, quantity } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { published } from "../../../../test/support/published.js";
import {
  aerodynamicDrag,
  dragArea,
  effectiveMass,
  frontalAreaFill,
  frontalAreaFromSize,
  gradeResistance,
  inertiaForce,
  quadraticCoefficient,
  rollingResistance,
  totalResistance,
  wheelPower,
} from "../../src/index.js";
import { between, close, codeOf, densities, masses } from "../support.js";

const course = "public electric-vehicle course, week 2 assignment, solution 1";
const airDensity = q("1.2 kg/m³");
/** The course takes g = 9.81; the relations take standard gravity. A mass scaled by the ratio has the course's weight. */
const weighing = (kilograms: number) => quantity((kilograms * 9.81) / 9.80665, "kg");
const slope = Math.tan((8 * Math.PI) / 180);

describe("forces on a vehicle", () => {
  published({
    quantity: "aerodynamic drag of two vehicles at 30 and 80 km/h",
    source: course,
    status: "seen",
    given: "ρ 1.2 kg/m³; c_d 0.3, A 2.5 m²; c_d 0.45, A 1.6 m²",
    published: [31.25, 222.22, 30, 213.33].map((force) => quantity(force, "N")),
    computed: () =>
      [
        dragArea({ dragCoefficient: 0.3, frontalArea: q("2.5 m²") }),
        dragArea({ dragCoefficient: 0.45, frontalArea: q("1.6 m²") }),
      ].flatMap((area) =>
        [q("30 km/h"), q("80 km/h")].map((airSpeed) => aerodynamicDrag({ airDensity, dragArea: area, airSpeed })),
      ),
    tolerance: 0.005,
    why: "last printed digit",
  });
  published({
    quantity: "rolling resistance of two vehicles on a slope of 8°",
    source: course,
    status: "seen",
    given: "1500 kg and 600 kg, coefficient 0.015, g 9.81 m/s²",
    published: [218.57, 87.43].map((force) => quantity(force, "N")),
    computed: () =>
      [1500, 600].map((mass) =>
        rollingResistance({ mass: weighing(mass), rollingResistanceCoefficient: 0.015, grade: slope }),
      ),
    tolerance: 0.01,
    why: "the course cuts digits instead of rounding; the mass is scaled to its g",
  });
  published({
    quantity: "grade resistance of two vehicles on a slope of 8°",
    source: course,
    status: "seen",
    given: "1500 kg and 600 kg, g 9.81 m/s²",
    published: [2047.93, 819.17].map((force) => quantity(force, "N")),
    computed: () => [1500, 600].map((mass) => gradeResistance({ mass: weighing(mass), grade: slope })),
    tolerance: 0.006,
    why: "last printed digit; the mass is scaled to the course's g",
  });
  published({
    quantity: "sine of a 20 % grade",
    source: "trigonometry: 1/√26",
    status: "regression",
    published: 0.196116,
    computed: () => gradeResistance({ mass: q("1 kg"), grade: 0.2 }).in("N") / 9.80665,
    tolerance: 5e-7,
    why: "last printed digit",
  });
  published({
    quantity: "frontal area of a car over its overall width × height: a little over four fifths",
    source: "common practice, no source",
    status: "common practice",
    given: "2.0 m × 1.9 m; the middle of the ends that a textbook gives (from memory)",
    published: 0.8,
    computed: () => {
      const fill = (frontalAreaFill.low + frontalAreaFill.high) / 2;
      return frontalAreaFromSize({ width: q("2 m"), height: q("1.9 m"), fill }).in("m²") / (2 * 1.9);
    },
    tolerance: 0.02,
    why: "'a little over': up to 0.82",
  });

  // Common practice, no source: a little over four fifths. The ends are from memory of "Theory of Ground Vehicles".
  it("fills, of a car 2.0 m wide and 1.9 m high, a little over four fifths", () => {
    const area = (fill: number) => frontalAreaFromSize({ width: q("2 m"), height: q("1.9 m"), fill }).in("m²");
    const fourFifths = (4 / 5) * 2 * 1.9;
    expect(area(frontalAreaFill.likely)).toBeGreaterThan(fourFifths);
    expect(area(frontalAreaFill.likely)).toBeLessThan(1.025 * fourFifths);
    expect(area(frontalAreaFill.low)).toBeCloseTo(3.002, 9);
    expect(area(frontalAreaFill.high)).toBeCloseTo(3.192, 9);
    expect([frontalAreaFill.source.status, frontalAreaFill.endsSource.status]).toEqual(["common practice", "memory"]);
  });

  it("drag grows with the square of speed and keeps its sign", () => {
    fc.assert(
      fc.property(densities, between(0.1, 3), between(-60, 60), (density, area, v) => {
        const at = (speed: number) =>
          aerodynamicDrag({ airDensity: density, dragArea: quantity(area, "m²"), airSpeed: quantity(speed, "m/s") });
        expect(close(at(2 * v).in("N"), 4 * at(v).in("N"))).toBe(true);
        expect(at(-v).in("N") + at(v).in("N")).toBe(0);
      }),
    );
  });

  it("drag is the quadratic coefficient times speed squared", () => {
    fc.assert(
      fc.property(densities, between(0.1, 3), between(0, 60), (density, area, v) => {
        const inputs = { airDensity: density, dragArea: quantity(area, "m²") };
        const force = aerodynamicDrag({ ...inputs, airSpeed: quantity(v, "m/s") }).in("N");
        expect(close(force, quadraticCoefficient(inputs).in("N/(m/s)²") * v * v)).toBe(true);
      }),
    );
  });

  it("rolling and grade resistance have the weight as their resultant", () => {
    fc.assert(
      fc.property(masses, between(-1, 1), (mass, grade) => {
        const across = rollingResistance({ mass, rollingResistanceCoefficient: 0.5, grade }).in("N") / 0.5;
        const along = gradeResistance({ mass, grade }).in("N");
        expect(close(Math.hypot(across, along), mass.in("kg") * 9.80665)).toBe(true);
      }),
    );
  });

  it("grade resistance changes its sign with the grade; inertia with the acceleration", () => {
    fc.assert(
      fc.property(masses, between(-1, 1), (mass, x) => {
        const up = gradeResistance({ mass, grade: x }).in("N");
        expect(gradeResistance({ mass, grade: -x }).in("N") + up).toBe(0);
        const push = inertiaForce({ mass, acceleration: quantity(x, "m/s²") }).in("N");
        expect(inertiaForce({ mass, acceleration: quantity(-x, "m/s²") }).in("N") + push).toBe(0);
        expect(Math.sign(push)).toBe(Math.sign(x) * Math.sign(mass.in("kg")));
      }),
    );
  });

  it("the effective mass is the mass and its rotating parts", () => {
    fc.assert(
      fc.property(masses, between(0, 0.5), (mass, rotatingMassFraction) => {
        const more = effectiveMass({ mass, rotatingMassFraction }).in("kg") - mass.in("kg");
        expect(close(more, mass.in("kg") * rotatingMassFraction, mass.in("kg"))).toBe(true);
      }),
    );
    expect(codeOf(() => effectiveMass({ mass: q("2 t"), rotatingMassFraction: 3 }))).toBe("OUT_OF_RANGE");
  });

  it("power is force times speed, and the total is the sum", () => {
    const total = totalResistance({ rolling: q("180 N"), aerodynamic: q("400 N"), grade: q("-80 N") });
    expect(total.in("N")).toBe(500);
    expect(wheelPower({ force: total, speed: q("20 m/s") }).in("kW")).toBe(10);
  });

  it("refuses what makes no sense, and says which", () => {
    const airSpeed = q("10 m/s");
    expect(() => aerodynamicDrag({ airDensity, dragArea: q("-0.7 m²"), airSpeed })).toThrow(
      "dragArea must not be negative: got −0.7 m²",
    );
    const bare = 0.3 as unknown as Quantity<Area>;
    expect(codeOf(() => aerodynamicDrag({ airDensity, dragArea: bare, airSpeed }))).toBe("NOT_A_QUANTITY");
    const mass = q("2000 kg");
    const tyre = { mass, rollingResistanceCoefficient: 0.01 };
    expect(() => rollingResistance({ ...tyre, grade: 6 })).toThrow(/0\.06/);
    expect(codeOf(() => rollingResistance({ ...tyre, rollingResistanceCoefficient: 9.2, grade: 0 }))).toBe(
      "OUT_OF_RANGE",
    );
    expect(codeOf(() => gradeResistance({ mass: q("-1 kg"), grade: 0 }))).toBe("NEGATIVE");
    const weight = q("20 kN") as unknown as Quantity<Mass>;
    expect(codeOf(() => gradeResistance({ mass: weight, grade: 0 }))).toBe("WRONG_DIMENSION");
    expect(codeOf(() => inertiaForce({ mass: q("-1 kg"), acceleration: q("1 m/s²") }))).toBe("NEGATIVE");
    expect(codeOf(() => dragArea({ dragCoefficient: 29, frontalArea: q("3 m²") }))).toBe("OUT_OF_RANGE");
    expect(codeOf(() => dragArea({ dragCoefficient: 0.29, frontalArea: q("0 m²") }))).toBe("OUT_OF_RANGE");
    const size = { width: q("2 m"), height: q("1.9 m") };
    expect(codeOf(() => frontalAreaFromSize({ ...size, fill: 81 }))).toBe("NOT_A_FRACTION");
    expect(codeOf(() => wheelPower({ force: q("1 N"), speed: q("-1 m/s") }))).toBe("NEGATIVE");
  });
});
