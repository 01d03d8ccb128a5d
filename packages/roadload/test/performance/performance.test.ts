import { q, quantity } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { published } from "../../../../test/support/published.js";
import {
  efficiencyDrivetrain,
  gradeability,
  lossDrivetrain,
  roadLoad,
  type SprintOptions,
  smallBrushedMotor,
  sprint,
  sprintMeanPower,
  sprintPower,
  topSpeed,
  tractionLimitFront,
  tractionLimitRear,
} from "../../src/index.js";
import { between, close, codeOf, plainDrivetrain, plainLoad } from "../support.js";

/** A load without rolling resistance and rotating parts, of a drag C·v². */
const dragOnly = (kg: number, c: number) =>
  roadLoad({
    mass: quantity(kg, "kg"),
    dragArea: quantity((2 * c) / 1.2, "m²"),
    ...{ airDensity: q("1.2 kg/m³"), rollingResistanceCoefficient: 0, rotatingMassFraction: 0 },
  });
const all = { axle: "all", friction: 0.9 } as const;
const car = { frontShare: 0.5, centreOfGravityHeight: q("0.55 m"), wheelbase: q("2.9 m") };
const good: SprintOptions = { load: plainLoad, power: q("200 kW"), traction: all, to: q("100 km/h") };

// A worked example: dv/dt = a0·(1 − (v/v_f)²) with v_f 55 mph and the printed time constant v_f/a0 of 19.968 s, for 1000 kg.
const vf = 55 * 0.44704;
const a0 = vf / 19.968;
const worked = { load: dragOnly(1000, (1000 * a0) / vf ** 2), force: quantity(1000 * a0, "N"), power: q("1 MW") };

// A two-seat electric car of the 1990s: 1540 kg, 1560 kg with rotating parts.
const twoSeat = {
  load: roadLoad({
    ...{ mass: q("1540 kg"), dragCoefficient: 0.19, frontalArea: q("1.8 m²"), rollingResistanceCoefficient: 0.0048 },
    ...{ airDensity: q("1.25 kg/m³"), rotatingMassFraction: 20 / 1540 },
  }),
  force: quantity(0.95 * 37 * 140, "N"),
  power: quantity(0.95 * 102, "kW"),
};

describe("sprint", () => {
  published({
    quantity: "time from rest to 30 mph and to 50 mph against a drag that grows with the square of speed",
    source: "public web page on the conversion of a car to electric drive, worked example",
    status: "seen",
    given: "dv/dt = a0·(1 − (v/v_f)²), v_f 55 mph, v_f/a0 19.968 s",
    published: [q("12.218 s"), q("30.397 s")],
    computed: () => [q("30 mph"), q("50 mph")].map((to) => sprint({ ...worked, to }).time),
    tolerance: 0.0015,
    why: "the source rounds its time constant to 19.968 s and v_f to 80.67 ft/s on the way",
  });
  published({
    quantity: "time from rest to 60 mph of a two-seat electric car of the 1990s",
    source: "Electric Vehicle Technology Explained (Wiley), chapter on modelling",
    status: "memory",
    given:
      "1540 kg (1560 kg effective), c_d 0.19, 1.8 m², c_rr 0.0048, 1.25 kg/m³; 4921 N up to 19.8 m/s, then 96.9 kW",
    published: q("9 s"),
    computed: () => sprint({ ...twoSeat, to: q("60 mph") }).time,
    tolerance: 0.5,
    why: "the book says about 9 s",
  });
  published({
    quantity: "the same car to 48.3, 96.6 and 100 km/h",
    source: "integration of dv/dt = 3.11 − 0.000137·v², then 62.1/v − 0.046 − 0.000137·v², in steps of 1 ms",
    status: "regression",
    published: [q("4.32 s"), q("9.17 s"), q("9.62 s")],
    computed: () => [q("48.3 km/h"), q("96.6 km/h"), q("100 km/h")].map((to) => sprint({ ...twoSeat, to }).time),
    tolerance: 0.03,
    why: "the printed equations round the coefficients to three digits",
  });

  it("with a constant force is v_T·tanh: time c·atanh(v/v_T) with c = m·v_T/F", () => {
    fc.assert(
      fc.property(
        between(800, 4000),
        between(1000, 9000),
        between(0.2, 1.5),
        between(0.1, 0.95),
        (kg, force, c, part) => {
          const terminal = Math.sqrt(force / c);
          const to = Math.min(140, terminal * part);
          const run = sprint({
            load: dragOnly(kg, c),
            ...{ force: quantity(force, "N"), power: q("100 MW"), to: quantity(to, "m/s") },
          });
          const constant = (kg * terminal) / force;
          expect(close(run.time.in("s"), constant * Math.atanh(to / terminal), undefined, 1e-5)).toBe(true);
          const distance = constant * terminal * Math.log(Math.cosh(Math.atanh(to / terminal)));
          expect(close(run.distance.in("m"), distance, undefined, 1e-4)).toBe(true);
        },
      ),
      { numRuns: 40 },
    );
  });

  it("without resistance takes m·(v_f² + v_b²)/(2·P), from a force F up to the base speed v_b = P/F", () => {
    fc.assert(
      fc.property(
        between(800, 4000),
        between(50_000, 500_000),
        between(5, 20),
        between(21, 60),
        (kg, power, base, to) => {
          const run = sprint({
            load: dragOnly(kg, 0),
            ...{ force: quantity(power / base, "N"), power: quantity(power, "W"), to: quantity(to, "m/s") },
          });
          expect(close(run.time.in("s"), (kg * (to * to + base * base)) / (2 * power), undefined, 1e-5)).toBe(true);
          expect(run.limits.map(({ by }) => by)).toEqual(["force", "power"]);
          expect(run.limits[1]?.from.in("m/s")).toBeCloseTo(base, 0);
        },
      ),
      { numRuns: 40 },
    );
  });

  it("without resistance at constant power from rest takes twice the mean power", () => {
    const to = q("100 km/h");
    const run = sprint({ load: dragOnly(2000, 0), power: q("100 kW"), to });
    const mean = sprintMeanPower({ mass: q("2000 kg"), speed: to, time: run.time });
    expect(mean.in("kW")).toBeCloseTo(100, 2);
  });

  it("is shorter with more power, more grip or a rollout, longer with mass, uphill and from a shorter peak", () => {
    const time = (more: object) => sprint({ ...good, ...more }).time.in("s");
    const once = time({});
    expect(time({ power: q("250 kW") })).toBeLessThan(once);
    expect(time({ traction: { axle: "all", friction: 0.6 } })).toBeGreaterThan(once);
    expect(time({ grade: 0.05 })).toBeGreaterThan(once);
    expect(time({ peak: { duration: q("2 s"), thereafter: q("120 kW") } })).toBeGreaterThan(once);
    expect(time({ peak: { duration: q("60 s"), thereafter: q("120 kW") } })).toBe(once);
    expect(time({ from: q("50 km/h") })).toBeLessThan(once);
    const rolled = sprint({ ...good, rollout: q("1 ft") });
    expect(rolled.timeFromStart.in("s")).toBe(once);
    // At μ·g of 8.8 m/s², less rolling resistance and with 3 % of rotating parts, a foot takes √(2·0.3048/a).
    const a = (0.9 * 9.80665 - 0.009 * 9.80665) / (plainLoad.inertiaMass.in("kg") / 2000);
    expect(once - rolled.time.in("s")).toBeCloseTo(Math.sqrt((2 * 0.3048) / a), 3);
  });

  it("says what holds it back", () => {
    const peak = { duration: q("3 s"), thereafter: q("120 kW") };
    const { limits, procedure, warnings } = sprint({ ...good, force: q("12 kN"), peak });
    expect(limits.map(({ by }) => by)).toEqual(["force", "power", "power after the peak"]);
    expect(procedure).toBe("from rest to 100 km/h, the clock starts with the vehicle");
    expect(warnings).toEqual([]);
    expect(sprint({ ...good, traction: undefined }).warnings.join()).toContain("no traction was given");
    const rear = sprint({ ...good, traction: { ...car, axle: "rear", friction: 0.8 } });
    const front = sprint({ ...good, traction: { ...car, axle: "front", friction: 0.8 } });
    expect(front.time.in("s")).toBeGreaterThan(rear.time.in("s"));
  });

  it("takes a drivetrain that knows its limits, and refuses one that does not", () => {
    const drivetrain = lossDrivetrain({
      ...{ motor: smallBrushedMotor, gearRatio: 10, wheelRadius: q("0.3 m"), spin: "here" },
      ...{ maximumPower: q("200 kW"), maximumTorque: q("300 N·m") },
    });
    const { time } = sprint({ load: plainLoad, drivetrain, to: q("100 km/h") });
    const same = sprint({ load: plainLoad, power: q("200 kW"), force: q("10 kN"), to: q("100 km/h") });
    expect(time.in("s")).toBeCloseTo(same.time.in("s"), 6);
    const free = efficiencyDrivetrain({ efficiency: 0.9, regeneration: { share: 1 }, contains: ["gears"] });
    expect(codeOf(() => sprint({ load: plainLoad, drivetrain: free, to: q("60 mph") }))).toBe("NOT_VALID_HERE");
    expect(codeOf(() => sprint({ ...good, drivetrain }))).toBe("INCONSISTENT");
  });

  it("refuses what cannot be", () => {
    const bad = (more: object) => codeOf(() => sprint({ ...good, ...more } as SprintOptions));
    expect(bad({ power: q("5 kW"), to: q("200 km/h") })).toBe("NOT_VALID_HERE");
    expect(bad({ power: undefined })).toBe("MISSING_OPTION");
    expect(bad({ from: q("120 km/h") })).toBe("INCONSISTENT");
    expect(bad({ from: q("20 km/h"), rollout: q("1 ft") })).toBe("INCONSISTENT");
    expect(bad({ to: q("1 km/h"), rollout: q("1 ft") })).toBe("INCONSISTENT");
    expect(bad({ traction: { axle: "front", friction: 0.8 } })).toBe("MISSING_OPTION");
    expect(bad({ traction: { axle: "middle", friction: 0.8, ...car } })).toBe("WRONG_CHOICE");
    expect(bad({ grade: 0.99 })).toBe("NOT_VALID_HERE");
    expect(bad({ peak: { duration: q("3 s") } })).toBe("MISSING_OPTION");
  });
});

describe("power of a claimed sprint", () => {
  it("is the power that gives the time back", () => {
    fc.assert(
      fc.property(between(80, 600), fc.constantFrom(undefined, q("1 ft")), (kW, rollout) => {
        const options = { load: plainLoad, traction: all, to: q("60 mph"), rollout };
        const { time } = sprint({ ...options, power: quantity(kW, "kW") });
        const found = sprintPower({ ...options, time });
        // Where grip rules throughout, more power changes nothing: then any power from there on is right.
        expect(sprint({ ...options, power: found.power }).time.in("s")).toBeCloseTo(time.in("s"), 3);
        expect(found.power.in("kW")).toBeLessThanOrEqual(kW * (1 + 1e-6));
      }),
      { numRuns: 25 },
    );
  });

  it("refuses a time that grip forbids, and says the shortest", () => {
    const options = { load: plainLoad, traction: all, to: q("100 km/h") };
    expect(() => sprintPower({ ...options, time: q("2 s") })).toThrow(/no power gives 2 s.*shortest time is 3\.\d+ s/);
    expect(codeOf(() => sprintPower({ ...options, time: q("5 s"), power: q("1 kW") } as never))).toBe("INCONSISTENT");
    expect(sprintPower({ ...options, time: q("5 s") }).warnings.join()).toContain("rollout");
  });

  it("tells the power at the battery as well: of a constant efficiency by hand, of a loss model at its worst speed", () => {
    const options = { load: plainLoad, to: q("100 km/h"), time: q("6 s") };
    const { power, atBattery: none } = sprintPower(options);
    expect(none).toBeUndefined();
    const plain = sprintPower({ ...options, drivetrain: plainDrivetrain, accessories: q("500 W") });
    expect(plain.power.in("W")).toBe(power.in("W"));
    expect(plain.atBattery?.power.in("W")).toBeCloseTo(power.in("W") / plainDrivetrain.efficiency + 500, 4);
    expect(plain.working().at(-1)?.result.value).toBeCloseTo(plain.atBattery?.power.in("W") as number, 4);
    expect(plain.atBattery?.boundary).toBe("terminals");
    // What a model that loses 500 N·v takes is most at the end.
    const drag = {
      ...plainDrivetrain,
      form: undefined,
      name: "own",
      batteryPower: (p: number, v: number) => p + 500 * v,
    };
    const lossy = sprintPower({ ...options, drivetrain: drag as never });
    expect(lossy.atBattery?.speed.in("km/h")).toBeCloseTo(100, 9);
    expect(lossy.atBattery?.power.in("W")).toBeCloseTo(power.in("W") + 500 / 0.036, 4);
    const weak = { ...plainDrivetrain, maximumWheelPower: () => 50_000 };
    expect(sprintPower({ ...options, drivetrain: weak }).warnings.join()).toContain(
      "less at the wheels than this sprint takes",
    );
    const bad = (more: object) => codeOf(() => sprintPower({ ...options, ...more }));
    expect(bad({ accessories: q("500 W") })).toBe("INCONSISTENT");
    expect(bad({ drivetrain: { ...plainDrivetrain, contains: ["charging"] } })).toBe("NOT_VALID_HERE");
    expect(bad({ drivetrain: {} })).toBe("WRONG_CHOICE");
  });
});

describe("top speed", () => {
  published({
    quantity: "speed at which power and resistance balance, two-seat electric car of the 1990s",
    source: "power balance with the inputs of Electric Vehicle Technology Explained (Wiley), from memory",
    status: "regression",
    published: q("75.36 m/s"),
    computed: () => topSpeed({ load: twoSeat.load, power: twoSeat.power }).speed,
    tolerance: 0.02,
    why: "the power and the inputs are rounded, and the book takes 9.8 m/s²",
  });

  it("is where the power holds the resistance", () => {
    fc.assert(
      fc.property(between(20, 300), (kW) => {
        const { speed, limitedBy } = topSpeed({ load: plainLoad, power: quantity(kW, "kW") });
        expect(plainLoad.at(speed).power.in("kW")).toBeCloseTo(kW, 6);
        expect(limitedBy).toBe("power");
      }),
    );
  });

  it("is that of the gearing or the limiter, where these come first", () => {
    const drivetrain = lossDrivetrain({
      ...{ motor: smallBrushedMotor, gearRatio: 10, wheelRadius: q("0.3 m"), spin: "here" },
      ...{ maximumPower: q("200 kW"), maximumAngularVelocity: q("1200 rad/s") },
    });
    const geared = topSpeed({ load: plainLoad, drivetrain });
    expect([geared.speed.in("m/s").toFixed(6), geared.limitedBy]).toEqual(["36.000000", "gearing"]);
    const limited = topSpeed({ load: plainLoad, power: q("200 kW"), limiter: q("180 km/h") });
    expect([limited.speed.in("km/h"), limited.limitedBy]).toEqual([180, "limiter"]);
    expect(codeOf(() => topSpeed({ load: plainLoad, power: q("1000 MW") }))).toBe("NOT_VALID_HERE");
    expect(codeOf(() => topSpeed({ load: plainLoad, power: q("10 kW"), force: q("10 N") }))).toBe("NOT_VALID_HERE");
  });
});

describe("gradeability", () => {
  it("is sin α = F/(m·g) without resistance, and solves the force balance with it", () => {
    const steep = gradeability({ load: dragOnly(2000, 0), power: q("1 MW"), force: q("6 kN"), speed: q("0 m/s") });
    expect(Math.sin(Math.atan(steep.grade))).toBeCloseTo(6000 / (2000 * 9.80665), 9);
    fc.assert(
      fc.property(between(3000, 12_000), between(0, 20), (force, v) => {
        const { grade } = gradeability({
          load: plainLoad,
          ...{ power: q("1 MW"), force: quantity(force, "N"), speed: quantity(v, "m/s") },
        });
        if (v > 0) expect(plainLoad.at(quantity(v, "m/s"), { grade }).total.in("N")).toBeCloseTo(force, 4);
      }),
    );
  });

  it("with something towed is that of the greater weight, and comes with a caution", () => {
    const options = { load: plainLoad, power: q("150 kW"), force: q("7 kN"), speed: q("50 km/h") };
    const towed = { mass: q("1500 kg"), rollingResistanceCoefficient: 0.012, addedDragArea: q("1.5 m²") };
    const alone = gradeability(options);
    const pulling = gradeability({ ...options, towed });
    expect(pulling.grade).toBeLessThan(alone.grade);
    const angle = Math.atan(pulling.grade);
    const v = 50 / 3.6;
    const needed =
      3500 * 9.80665 * Math.sin(angle) +
      (2000 * 0.009 + 1500 * 0.012) * 9.80665 * Math.cos(angle) +
      0.6 * (0.7 + 1.5) * v * v;
    expect(needed).toBeCloseTo(7000, 4);
    expect(alone.cautions).toEqual([]);
    expect(pulling.cautions.join()).toContain("no permission to tow");
  });

  it("by grip falls with the cosine, and is not asked of a power at rest", () => {
    const { grade, limitedBy } = gradeability({
      load: dragOnly(2000, 0),
      ...{ power: q("1 MW"), traction: { axle: "all", friction: 0.5 }, speed: q("1 m/s") },
    });
    // μ·cos α = sin α.
    expect([grade.toFixed(9), limitedBy]).toEqual(["0.500000000", "traction"]);
    expect(codeOf(() => gradeability({ load: plainLoad, power: q("1 kW"), speed: q("0 m/s") }))).toBe("NOT_VALID_HERE");
    expect(codeOf(() => gradeability({ load: plainLoad, power: q("1 kW"), speed: q("30 m/s") }))).toBe(
      "NOT_VALID_HERE",
    );
  });
});

describe("largest force of an axle", () => {
  it("is what the load at that acceleration holds", () => {
    fc.assert(
      fc.property(between(0.1, 1.2), between(0.3, 0.7), (friction, frontShare) => {
        const vehicle = { mass: 2000, friction, frontShare, centreOfGravityHeight: 0.55, wheelbase: 2.9 };
        const front = tractionLimitFront.of(vehicle);
        const rear = tractionLimitRear.of(vehicle);
        const shift = (force: number) => (force * 0.55) / 2.9;
        const weight = 2000 * 9.80665;
        expect(close(front, friction * (weight * frontShare - shift(front)))).toBe(true);
        expect(close(rear, friction * (weight * (1 - frontShare) + shift(rear)))).toBe(true);
      }),
    );
    const tall = { mass: 1000, friction: 1.5, frontShare: 0.3, centreOfGravityHeight: 1.5, wheelbase: 2 };
    expect(tractionLimitRear.of(tall)).toBeCloseTo(1.5 * 1000 * 9.80665, 9);
  });
});
