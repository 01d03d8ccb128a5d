import { type Power, type Quantity, q } from "@tarewatt/units";
import { expectTypeOf, test } from "vitest";
import {
  type ChainDrivetrain,
  chainDrivetrain,
  type Drivetrain,
  driveCycle,
  type EfficiencyDrivetrain,
  inductionMotor100kW,
  lossDrivetrain,
  type MotorLossCoefficients,
  motorLoss,
  type RoadLoad,
  scaleMotor,
  udds,
} from "../../src/index.js";

const motor = { motor: inductionMotor100kW, gearRatio: 9.5, wheelRadius: q("0.33 m") } as const;

test("a chain is a drivetrain of one efficiency", () => {
  const parts = [{ name: "motor", efficiency: 0.9, contains: ["motor"] }] as const;
  const chain = chainDrivetrain({ parts, regeneration: { share: 0.9 } });
  expectTypeOf(chain).toEqualTypeOf<ChainDrivetrain>();
  expectTypeOf(chain).toExtend<EfficiencyDrivetrain>();
  // @ts-expect-error a loss that nobody knows
  chainDrivetrain({ parts: [{ name: "motor", efficiency: 0.9, contains: ["magic"] }], regeneration: { share: 0.9 } });
});

test("a loss model says where its spin is counted", () => {
  expectTypeOf(lossDrivetrain({ ...motor, spin: "here" })).toEqualTypeOf<Drivetrain>();
  // @ts-expect-error the spin must be said
  lossDrivetrain(motor);
  // @ts-expect-error neither here nor in the road load
  lossDrivetrain({ ...motor, spin: "there" });
  // @ts-expect-error a torque is no power
  lossDrivetrain({ ...motor, spin: "here", maximumTorque: q("100 kW") });
  // @ts-expect-error a torque is no energy, although both are N·m
  lossDrivetrain({ ...motor, spin: "here", maximumTorque: q("100 J") });
});

test("a motor is scaled to a power", () => {
  expectTypeOf(
    scaleMotor({ motor: inductionMotor100kW, peakPower: q("200 kW") }),
  ).toEqualTypeOf<MotorLossCoefficients>();
  const { copper, iron, windage, constant } = inductionMotor100kW;
  const point = { torque: q("100 N·m"), angularVelocity: q("500 rad/s"), copper, iron, windage, constant };
  expectTypeOf(motorLoss(point)).toEqualTypeOf<Quantity<Power>>();
  // @ts-expect-error an angular velocity, not a speed
  motorLoss({ ...point, angularVelocity: q("10 m/s") });
});

test("a model of one's own is driven like any other", () => {
  const own: Drivetrain = { name: "own", contains: ["motor"], batteryPower: (p) => p, frictionBrakePower: () => 0 };
  driveCycle({ cycle: udds, load: {} as RoadLoad, drivetrain: own, accessories: q("0 W") });
  // @ts-expect-error a model must say what it contains
  const silent: Drivetrain = { name: "own", batteryPower: (p: number) => p, frictionBrakePower: () => 0 };
  expectTypeOf(silent).toEqualTypeOf<Drivetrain>();
});
