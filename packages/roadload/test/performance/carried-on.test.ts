import { type Mass, type Quantity, q, quantity } from "@tarewatt/units";
import { describe, expect, it } from "vitest";
import {
  type Drivetrain,
  efficiencyDrivetrain,
  gradeability,
  inductionMotor100kW,
  lossDrivetrain,
  type RoadLoad,
  roadLoad,
  scaleMotor,
  sprint,
  sprintMeanPower,
  sprintPower,
  topSpeed,
} from "../../src/index.js";
import { plainDrivetrain, plainLoad } from "../support.js";

const all = { axle: "all", friction: 0.8 } as const;

/** What towing adds to a load. */
const towing = (load: RoadLoad, towedMass: Quantity<Mass>): RoadLoad & { readonly towedMass: Quantity<Mass> } => ({
  ...load,
  ...{ towedMass, cautions: ["an invented danger"] },
});

describe("a vehicle that tows", () => {
  const train = roadLoad({
    ...{ mass: q("4000 kg"), dragArea: q("1.5 m²"), rollingResistanceCoefficient: 0 },
    airDensity: q("1.2 kg/m³"),
  });

  it("pulls with the tyres of its own axles, and accelerates all of its mass", () => {
    const load = towing(train, q("2000 kg"));
    const limits = { load, power: q("1 MW"), traction: { axle: "all", friction: 0.4 } as const };
    // tan α = μ·m_own/m: half the weight pulls.
    expect(gradeability({ ...limits, speed: q("0 m/s") }).grade).toBeCloseTo(0.2, 9);
    expect(gradeability({ ...limits, load: train, speed: q("0 m/s") }).grade).toBeCloseTo(0.4, 9);
    // From rest to a speed at which drag is little: a = μ·g·m_own/m*.
    const { time } = sprint({ ...limits, to: q("10 km/h") });
    const acceleration = (0.4 * 9.80665 * 2000) / load.inertiaMass.in("kg");
    expect(time.in("s")).toBeCloseTo(10 / 3.6 / acceleration, 2);
  });

  it("is cautioned in every result", () => {
    const load = towing(train, q("2000 kg"));
    const power = q("200 kW");
    const results = [
      ...[sprint({ load, power, to: q("80 km/h") }), topSpeed({ load, power })],
      ...[sprintPower({ load, to: q("80 km/h"), time: q("15 s") }), gradeability({ load, power, speed: q("50 km/h") })],
    ];
    for (const { cautions } of results) expect(cautions).toEqual(["an invented danger"]);
    expect(sprint({ load: plainLoad, power, to: q("80 km/h") }).cautions).toEqual([]);
  });
});

describe("the steepest start of one driven axle", () => {
  const load = roadLoad({
    ...{ mass: q("2000 kg"), dragArea: q("0.7 m²"), rollingResistanceCoefficient: 0, airDensity: q("1.2 kg/m³") },
  });
  // Half the weight on each axle, h/L 0.19.
  const car = {
    friction: 0.8,
    frontShare: 0.5,
    centreOfGravityHeight: q("0.55 m"),
    wheelbase: quantity(0.55 / 0.19, "m"),
  };
  const start = (axle: "front" | "rear") =>
    gradeability({ load, force: q("1000 kN"), power: q("10 MW"), traction: { ...car, axle }, speed: q("0 m/s") }).grade;

  // Balance of moments on a hill: tan α = μ·s/(1 ± μ·h/L) with the driven axle's share s of the weight.
  it("has the load in it that a grade shifts to the rear: without it both would be 0.4", () => {
    expect(start("front")).toBeCloseTo((0.8 * 0.5) / (1 + 0.8 * 0.19), 9);
    expect(start("rear")).toBeCloseTo((0.8 * 0.5) / (1 - 0.8 * 0.19), 9);
  });
});

describe("doubts of a drivetrain", () => {
  const drivetrain: Drivetrain = { ...plainDrivetrain, maximumWheelPower: () => 150_000, warnings: ["my guess"] };

  it("are carried on by what it drives", () => {
    const given = { load: plainLoad, drivetrain, traction: all };
    expect(sprint({ ...given, to: q("80 km/h") }).warnings).toContain("my guess");
    expect(topSpeed(given).warnings).toContain("my guess");
    expect(gradeability({ ...given, speed: q("50 km/h") }).warnings).toContain("my guess");
    const quiet = efficiencyDrivetrain({ efficiency: 0.9, regeneration: { share: 1 }, contains: ["gears"] });
    expect(topSpeed({ ...given, drivetrain: { ...quiet, maximumWheelPower: () => 150_000 } }).warnings).toEqual([]);
  });

  it("name a motor that was scaled far, and which way that leads", () => {
    const of = (kilowatts: number, wheelRadius = q("0.33 m"), gearRatio = 9) => {
      const motor = scaleMotor({ motor: inductionMotor100kW, peakPower: quantity(kilowatts, "kW") });
      return lossDrivetrain({ motor, gearRatio, wheelRadius, spin: "here" }).warnings?.join();
    };
    expect(of(300)).toMatch(/scaled to 3 times its size.*consumption comes out too high/);
    expect(of(40)).toMatch(/scaled to 0\.4 times its size.*consumption comes out too low/);
    expect(of(150)).not.toContain("scaled");
    expect(of(67)).not.toContain("scaled");
    expect(
      scaleMotor({ motor: { copper: 1, iron: 0, windage: 0, constant: 0, peakPower: 50_000 }, peakPower: q("200 kW") })
        .note,
    ).toMatch(/^a machine of 50\.0 kW; scaled to 4 times/);
    // 130 km/h on 0.33 m are 1045 rpm of the wheel.
    expect(of(100, q("0.33 m"), 95)).toContain("99300 rpm");
    expect(of(100, q("0.33 m"), 23.5)).not.toContain("rpm");
    expect(of(100, q("0.33 m"), 24.2)).toContain("rpm");
    const given = { motor: inductionMotor100kW, gearRatio: 95, wheelRadius: q("0.33 m"), spin: "here" } as const;
    const slow = lossDrivetrain({ ...given, maximumAngularVelocity: q("1600 rad/s") });
    expect(slow.warnings?.join()).not.toContain("rpm");
  });
});

describe("a claimed sprint", () => {
  it("that no road tyre holds is doubted", () => {
    const claim = (seconds: number) =>
      sprintPower({ load: plainLoad, to: q("100 km/h"), time: quantity(seconds, "s") }).warnings.join();
    expect(claim(1.5)).toContain("1.9 g is beyond road tyres");
    expect(claim(3)).not.toContain("beyond road tyres");
  });
});

describe("the distance of a sprint", () => {
  const drag = (area: number) =>
    roadLoad({
      ...{ mass: q("1000 kg"), dragArea: quantity(area, "m²"), rollingResistanceCoefficient: 0 },
      ...{ airDensity: q("1.2 kg/m³"), rotatingMassFraction: 0 },
    });

  it("is v²/2a at a constant force, to rounding of the last step", () => {
    // 5 kN on 1000 kg: 5 m/s².
    const run = sprint({ load: drag(1e-9), force: q("5 kN"), power: q("10 MW"), to: q("30 m/s") });
    expect(run.distance.in("m")).toBeCloseTo(90, 6);
    const short = sprint({ load: drag(1e-9), force: q("5 kN"), power: q("10 MW"), to: q("0.024 m/s") });
    // All of it within the last step.
    expect(short.distance.in("m")).toBeCloseTo(0.024 ** 2 / 10, 9);
  });

  it("is that of the closed form at constant power, and of the closed form against drag", () => {
    // x = √(8·P·t³/9m), v = √(2·P·t/m).
    const run = sprint({ load: drag(1e-9), power: q("100 kW"), to: q("30 m/s") });
    expect(run.distance.in("m")).toBeCloseTo((1000 * 30 ** 3) / (3 * 100_000), 1);
    // m·v·dv/dx = F − c·v²: x = (m/2c)·ln(F/(F − c·v²)).
    const [force, c] = [3000, 0.6];
    const against = sprint({ load: drag(1), force: quantity(force, "N"), power: q("10 MW"), to: q("40 m/s") });
    const expected = (1000 / (2 * c)) * Math.log(force / (force - c * 40 ** 2));
    expect(against.distance.in("m")).toBeCloseTo(expected, 4);
    const mean = sprintMeanPower({ mass: q("1000 kg"), speed: q("40 m/s"), time: against.time });
    expect(mean.in("W")).toBeLessThan(force * 40);
  });
});
