import {
  type Length,
  type Power,
  type Quantity,
  q,
  type Ratio,
  type Speed,
  type Step,
  type Time,
} from "@tarewatt/units";
import { expectTypeOf, test } from "vitest";
import {
  type Drivetrain,
  gradeability,
  type RoadLoad,
  sprint,
  sprintPower,
  type ThrustLimit,
  topSpeed,
} from "../../src/index.js";

const load = {} as RoadLoad;
const drivetrain = {} as Drivetrain;

test("a sprint takes a power or a drivetrain, and gives time and distance", () => {
  const run = sprint({ load, power: q("200 kW"), to: q("60 mph"), rollout: q("1 ft") });
  expectTypeOf(run.time).toEqualTypeOf<Quantity<Time>>();
  expectTypeOf(run.distance).toEqualTypeOf<Quantity<Length>>();
  expectTypeOf(run.limits[0]?.by).toEqualTypeOf<ThrustLimit | "power after the peak" | undefined>();
  expectTypeOf(run.working).returns.toEqualTypeOf<Step[]>();
  sprint({ load, drivetrain, to: q("100 km/h"), traction: { axle: "all", friction: 0.9 } });
  // @ts-expect-error the speed at the end must be said
  sprint({ load, power: q("200 kW") });
  // @ts-expect-error one driven axle needs the place of the centre of gravity
  sprint({ load, power: q("200 kW"), to: q("100 km/h"), traction: { axle: "rear", friction: 0.9 } });
  // @ts-expect-error a speed is no length
  sprint({ load, power: q("200 kW"), to: q("100 km") });
});

test("a claimed sprint is asked for its power, so none is given", () => {
  expectTypeOf(sprintPower({ load, to: q("100 km/h"), time: q("5 s") }).power).toEqualTypeOf<Quantity<Power>>();
  // @ts-expect-error the power is what is looked for
  sprintPower({ load, to: q("100 km/h"), time: q("5 s"), power: q("100 kW") });
});

test("top speed and grade say what limits them", () => {
  const top = topSpeed({ load, drivetrain, limiter: q("180 km/h"), grade: undefined });
  expectTypeOf(top.speed).toEqualTypeOf<Quantity<Speed>>();
  expectTypeOf(top.limitedBy).toEqualTypeOf<ThrustLimit | "limiter" | "gearing">();
  const hill = gradeability({ load, drivetrain, speed: q("0 m/s"), towed: undefined });
  expectTypeOf(hill.percent).toEqualTypeOf<Quantity<Ratio>>();
  expectTypeOf(hill.grade).toEqualTypeOf<number>();
  // @ts-expect-error what is towed has tyres
  gradeability({ load, drivetrain, speed: q("0 m/s"), towed: { mass: q("1 t") } });
});
