import {
  type AngularVelocity,
  type Length,
  type Power,
  type Quantity,
  readOptions,
  type Speed,
  type Torque,
} from "@tarewatt/units";
import { readWordsIfGiven } from "../check/read-words.js";
import type { Fraction } from "../fraction.js";
import type { Loss } from "../resistance/loss.js";
import type { Drivetrain } from "./drivetrain.js";
import { keepEnergyOfPoints } from "./energy-of-points.js";
import { type MotorLossCoefficients, readMotor } from "./motor-loss.js";
import { readGearRatio, readGears, readInverter, readSpin, warningsOfGear } from "./read-loss.js";

/** Turns of the motor per turn of the wheel: one, or two with the speed at which the gear is changed. */
export type GearRatio =
  | number
  | {
      /** Below the speed of the change. */
      readonly low: number;
      /** From that speed on. */
      readonly high: number;
      /** Speed of the vehicle at which the gear is changed. */
      readonly change: Quantity<Speed>;
    };

/** Options of {@link lossDrivetrain}. */
export interface LossDrivetrainOptions {
  /** Losses of the motor: a named set such as {@link inductionMotor100kW}, one of {@link scaleMotor}, or your own. */
  readonly motor: MotorLossCoefficients;
  /** Turns of the motor per turn of the wheel. */
  readonly gearRatio: GearRatio;
  /** Rolling radius of the wheels. */
  readonly wheelRadius: Quantity<Length>;
  /** Losses of the gears; none when left out. */
  readonly gears?:
    | {
        /** Power out per power in of all meshes, without the spin. */
        readonly meshEfficiency: Fraction;
        /** Drag torque of the turning gears, at the shaft of the motor; zero when left out. */
        readonly spinTorque?: Quantity<Torque> | undefined;
      }
    | undefined;
  /** Losses of the inverter; none when left out. */
  readonly inverter?:
    | {
        /** Power out per power in. */
        readonly efficiency: Fraction;
        /** Power that it takes while the vehicle moves, whatever it passes; zero when left out. */
        readonly standby?: Quantity<Power> | undefined;
      }
    | undefined;
  /**
   * Where the drag of the turning, unloaded driveline is counted, the motor's own iron and windage losses among it:
   * `"here"`, or `"road load"` when that comes from a coast-down, in which the driveline turned.
   */
  readonly spin: "here" | "road load";
  /** Largest torque of the motor, driving and braking; no limit when left out. */
  readonly maximumTorque?: Quantity<Torque> | undefined;
  /** Largest power at the shaft of the motor, driving and braking; no limit when left out. */
  readonly maximumPower?: Quantity<Power> | undefined;
  /** Largest angular velocity of the motor: it gives no power above; no limit when left out. */
  readonly maximumAngularVelocity?: Quantity<AngularVelocity> | undefined;
  /** What the model is, in words. */
  readonly name?: string | undefined;
}

/**
 * A drivetrain by its losses in torque and speed: gears with a mesh and a spin loss, a motor, an inverter.
 *
 * Losses: `(1 − η_mesh)·P` and `T_spin·ω` in the gears, {@link motorLoss} in the motor, a part of the power and a constant in
 * the inverter. At rest nothing turns and nothing is taken. The motor brakes up to its torque and power; friction brakes take
 * the rest. {@link limitRegeneration} adds what axles, tyres and batteries forbid.
 *
 * What it contains follows from what is given. With `spin: "here"` it contains the driveline's spin, so that a road load from
 * a coast-down, which holds it too, is refused.
 *
 * @param options - motor, gear, wheel, inverter, limits
 * @returns the drivetrain
 * @throws InputError `WRONG_CHOICE`, `NEGATIVE`, `OUT_OF_RANGE`, `NOT_A_FRACTION`, and what `readOptions` throws
 * @example
 * const drivetrain = lossDrivetrain({
 *   motor: inductionMotor100kW, gearRatio: 10, wheelRadius: q("0.3 m"), spin: "here",
 *   gears: { meshEfficiency: 0.97 }, inverter: { efficiency: 0.98 },
 * });
 * drivetrain.batteryPower(10_000, 20) / 1000; // 12.7...
 */
export function lossDrivetrain(options: LossDrivetrainOptions): Drivetrain {
  const read = readOptions(
    "lossDrivetrain",
    options,
    {
      wheelRadius: { unit: "m", above: 0, atMost: 2 },
      maximumTorque: { unit: "N·m", above: 0, optional: true },
      maximumPower: { unit: "W", above: 0, optional: true },
      maximumAngularVelocity: { unit: "rad/s", above: 0, optional: true },
    },
    ["motor", "gearRatio", "gears?", "inverter?", "spin", "name?"],
  );
  const motor = readMotor("motor", options.motor);
  const { low, high, change } = readGearRatio(options.gearRatio);
  const { mesh, spinTorque } = readGears(options.gears);
  const { efficiency: inverter, standby } = readInverter(options.inverter);
  const spinHere = readSpin(options.spin);
  const name = readWordsIfGiven("name", options.name) ?? "losses in torque and speed";
  const { copper, constant } = motor;
  const iron = spinHere ? motor.iron : 0;
  const windage = spinHere ? motor.windage : 0;
  const spin = spinHere ? spinTorque : 0;
  const perSpeedLow = low / read.wheelRadius;
  const perSpeedHigh = high / read.wheelRadius;
  const {
    maximumTorque = Number.POSITIVE_INFINITY,
    maximumPower = Number.POSITIVE_INFINITY,
    maximumAngularVelocity = Number.POSITIVE_INFINITY,
  } = read;

  const angularVelocityAt = (speed: number): number => speed * (speed < change ? perSpeedLow : perSpeedHigh);
  const shaftLimit = (omega: number): number =>
    omega > maximumAngularVelocity ? 0 : Math.min(maximumTorque * omega, maximumPower);
  /** Power at the wheels that is braked by the motor, not positive. The spin of the gears helps to brake. */
  const brakedByMotor = (wheelPower: number, omega: number): number =>
    Math.max(wheelPower, -(shaftLimit(omega) + spin * omega) / mesh);
  const maximumWheelPower = (speed: number): number => {
    const omega = angularVelocityAt(speed);
    return Math.max(0, (shaftLimit(omega) - spin * omega) * mesh);
  };
  const batteryPower = (wheelPower: number, speed: number): number => {
    if (speed <= 0) return 0;
    const omega = angularVelocityAt(speed);
    const atGears = wheelPower > 0 ? wheelPower / mesh : brakedByMotor(wheelPower, omega) * mesh;
    const atShaft = atGears + spin * omega;
    const torque = atShaft / omega;
    const electric = atShaft + copper * torque * torque + omega * (iron + windage * omega * omega) + constant;
    return standby + (electric > 0 ? electric / inverter : electric * inverter);
  };
  keepEnergyOfPoints(batteryPower, ({ count, power, speed, seconds }) => {
    let energy = 0;
    for (let i = 0; i < count; i++)
      energy += batteryPower(power[i] as number, speed[i] as number) * (seconds[i] as number);
    return energy;
  });
  const limited = Math.min(maximumTorque, maximumPower, maximumAngularVelocity) < Number.POSITIVE_INFINITY;

  return Object.freeze({
    name,
    contains: Object.freeze([
      ...(spinHere ? (["driveline spin"] as const) : []),
      ...(options.gears === undefined ? [] : (["gears"] as const)),
      "motor",
      ...(options.inverter === undefined ? [] : (["inverter"] as const)),
    ] satisfies Loss[]),
    warnings: Object.freeze([
      ...(motor.note === undefined ? [] : [`the motor's losses are those of ${motor.note}`]),
      ...warningsOfGear(perSpeedHigh, read.maximumAngularVelocity),
    ]),
    batteryPower,
    frictionBrakePower: (wheelPower: number, speed: number): number =>
      wheelPower < 0 && speed > 0 ? brakedByMotor(wheelPower, angularVelocityAt(speed)) - wheelPower : 0,
    ...(limited ? { maximumWheelPower } : {}),
  });
}
