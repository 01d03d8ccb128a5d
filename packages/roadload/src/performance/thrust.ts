import {
  type Force,
  InputError,
  type Length,
  type Power,
  type Quantity,
  readNumber,
  readOptions,
  type Step,
  type Working,
} from "@tarewatt/units";
import { textsOf } from "../check/read-words.js";
import { massOnOwnAxles } from "../check/towing.js";
import type { Drivetrain } from "../drivetrain/drivetrain.js";
import { assertDrivetrain } from "../drivetrain/read-drivetrain.js";
import type { Fraction } from "../fraction.js";
import { standardGravity } from "../resistance/gravity.js";
import type { RoadLoad } from "../resistance/road-load.js";
import { tractionLimitFront, tractionLimitRear } from "./traction-limit.js";

/** What the tyres of the driven axles can hold while the vehicle accelerates. */
export type Traction =
  | {
      /** All wheels are driven, as their loads allow. */
      readonly axle: "all";
      /** Friction between tyres and road, 0 to 2: about 0.8 to 1 on dry asphalt (common practice, no source). */
      readonly friction: Fraction;
    }
  | {
      /** The axle that is driven. */
      readonly axle: "front" | "rear";
      /** Friction between tyres and road, 0 to 2: about 0.8 to 1 on dry asphalt (common practice, no source). */
      readonly friction: Fraction;
      /** Part of the weight on the front axle at rest. */
      readonly frontShare: Fraction;
      /** Height of the centre of gravity. */
      readonly centreOfGravityHeight: Quantity<Length>;
      /** Distance between the axles. */
      readonly wheelbase: Quantity<Length>;
    };

/** What pushes the vehicle: a drivetrain that knows its limits, or a power, both at the wheels. */
export interface ThrustOptions {
  /** A drivetrain with a largest power at the wheels; instead of power and force. */
  readonly drivetrain?: Drivetrain | undefined;
  /** Largest power at the wheels: what the battery or the shaft gives is more. */
  readonly power?: Quantity<Power> | undefined;
  /** Largest force at the wheels, from the torque of the motors and their gears; no limit when left out. */
  readonly force?: Quantity<Force> | undefined;
  /** Grip of the driven tyres; no limit when left out. */
  readonly traction?: Traction | undefined;
}

/** What can hold a vehicle back while it accelerates. */
export type ThrustLimit = "traction" | "force" | "power" | "drivetrain";

/** The thrust in SI numbers. @internal */
export interface Thrust {
  /** Largest force at a speed, in N; infinite at rest when only a power is known. */
  force(speed: number): number;
  /** What the force at a speed is limited by. */
  limitAt(speed: number): ThrustLimit;
  /** The same with another power; undefined for a drivetrain. */
  readonly withPower: ((power: number) => Thrust) | undefined;
}

/** What a reader should doubt: what load and drivetrain say of themselves. @internal */
export function warningsOfThrust(load: RoadLoad, { drivetrain }: ThrustOptions): string[] {
  return [...load.warnings, ...textsOf(drivetrain?.warnings)];
}

/** Names of the options, for readOptions. @internal */
export const thrustNames = ["drivetrain?", "power?", "force?", "traction?"] as const;

/** @internal */
export function readThrust(where: string, options: ThrustOptions, load: RoadLoad, needsPower = true): Thrust {
  const { drivetrain } = options;
  const grip =
    options.traction === undefined ? Number.POSITIVE_INFINITY : readTraction(options.traction, massOnOwnAxles(load));
  const most =
    options.force === undefined
      ? Number.POSITIVE_INFINITY
      : readNumber("force", options.force, { unit: "N", above: 0 });
  if (drivetrain !== undefined) {
    if (options.power !== undefined || options.force !== undefined) {
      throw new InputError("INCONSISTENT", `${where} takes a drivetrain, or a power with a force, not both`, {});
    }
    return ofDrivetrain(where, drivetrain, grip);
  }
  if (options.power === undefined && needsPower) {
    throw new InputError("MISSING_OPTION", `${where} needs a 'power' at the wheels, or a 'drivetrain'`, {
      options: ["power", "drivetrain"],
    });
  }
  const power =
    options.power === undefined
      ? Number.POSITIVE_INFINITY
      : readNumber("power", options.power, { unit: "W", above: 0 });
  return ofPower(power, most, grip);
}

function ofPower(power: number, most: number, grip: number): Thrust {
  const limits = [
    ["traction", () => grip],
    ["force", () => most],
    ["power", (speed: number) => power / speed],
  ] as const;
  return {
    force: (speed) => Math.min(grip, most, power / speed),
    limitAt: (speed) => limits.reduce((least, each) => (each[1](speed) < least[1](speed) ? each : least))[0],
    withPower: (other) => ofPower(other, most, grip),
  };
}

/** At rest a power is no force: the force of a drivetrain is asked for at a walking pace there. */
const SLOWEST = 0.1;

function ofDrivetrain(where: string, drivetrain: Drivetrain, grip: number): Thrust {
  assertDrivetrain(drivetrain);
  if (drivetrain.maximumWheelPower === undefined) {
    throw new InputError(
      "NOT_VALID_HERE",
      `${where} needs a drivetrain that knows its largest power, with maximumWheelPower: '${drivetrain.name}' does not`,
      { drivetrain: drivetrain.name },
    );
  }
  const own = (speed: number): number => {
    const v = Math.max(speed, SLOWEST);
    const force = (drivetrain.maximumWheelPower?.(v) as number) / v;
    if (typeof force === "number" && !Number.isNaN(force)) return force;
    throw new InputError("NOT_A_NUMBER", `the drivetrain '${drivetrain.name}' must give a power at ${v} m/s`, {});
  };
  return {
    force: (speed) => Math.min(grip, own(speed)),
    limitAt: (speed) => (grip < own(speed) ? "traction" : "drivetrain"),
    withPower: undefined,
  };
}

/** How the grip of one driven axle came about; nothing where all wheels are driven, or no traction is given. @internal */
export function explainTraction(traction: Traction | undefined, mass: number): Step[] {
  const working: Working = [];
  if (traction !== undefined) readTraction(traction, mass, working);
  return working;
}

function readTraction(given: Traction, mass: number, working?: Working): number {
  const friction = { unit: "1", atLeast: 0, atMost: 2 } as const;
  const { axle } = (given ?? {}) as Partial<Traction>;
  if (axle === "all") {
    return readOptions("traction", given, { friction }, ["axle"]).friction * mass * standardGravity.value;
  }
  const read = readOptions(
    "traction",
    given,
    {
      friction,
      frontShare: { unit: "1", atLeast: 0, atMost: 1 },
      centreOfGravityHeight: { unit: "m", atLeast: 0, atMost: 3 },
      wheelbase: { unit: "m", above: 0, atMost: 10 },
    },
    ["axle"],
  );
  if (axle === "front") return tractionLimitFront.of({ mass, ...read }, working);
  if (axle === "rear") return tractionLimitRear.of({ mass, ...read }, working);
  throw new InputError("WRONG_CHOICE", "traction.axle must be 'front', 'rear' or 'all'", { name: "traction.axle" });
}
