import {
  InputError,
  type Length,
  type Mass,
  type Power,
  type Quantity,
  readOptions,
  type Speed,
} from "@tarewatt/units";
import type { Fraction } from "../fraction.js";
import { standardGravity } from "../resistance/gravity.js";
import { frontAxleLoad, rearAxleLoad } from "./axle-load.js";
import type { Drivetrain } from "./drivetrain.js";
import { powerAtLimit } from "./power-at-limit.js";
import { assertDrivetrain } from "./read-drivetrain.js";

/** What the tyres of the driven axle can hold. */
export interface BrakingAdhesion {
  /** Friction between tyres and road, 0 to 2: about 0.8 on dry, 0.3 on wet and slippery ground (common practice, no source). */
  readonly friction: Fraction;
  /** The axle that the motors brake. */
  readonly axle: "front" | "rear";
  /** Mass of the vehicle. */
  readonly mass: Quantity<Mass>;
  /** Part of the weight on the front axle at rest. */
  readonly frontShare: Fraction;
  /** Height of the centre of gravity. */
  readonly centreOfGravityHeight: Quantity<Length>;
  /** Distance between the axles. */
  readonly wheelbase: Quantity<Length>;
}

/** Options of {@link limitRegeneration}. Every limit may be left out. */
export interface LimitRegenerationOptions {
  /** The drivetrain to limit. */
  readonly drivetrain: Drivetrain;
  /** Part of the braking power at the wheels that falls to the driven axle; all of it when left out. */
  readonly drivenAxleShare?: Fraction | undefined;
  /** Adhesion of the driven axle, with the load that braking shifts to the front. */
  readonly adhesion?: BrakingAdhesion | undefined;
  /** Largest braking power of the motors, at the wheels. */
  readonly wheelPower?: Quantity<Power> | undefined;
  /** Largest power that the battery takes from the drivetrain, accessories not counted. */
  readonly chargePower?: Quantity<Power> | undefined;
  /** Speeds between which the motors give over to the friction brakes: all from `full` up, nothing below `none`. */
  readonly fade?:
    | {
        /** Above this speed nothing is taken away. */
        readonly full: Quantity<Speed>;
        /** Below this speed the motors do not brake: a few km/h (common practice, no source). */
        readonly none: Quantity<Speed>;
      }
    | undefined;
}

/**
 * A drivetrain whose braking by the motors is limited by axle, adhesion, power, battery and low speed; the friction brakes take
 * the rest. The smallest limit holds. While it drives, the drivetrain is as it was.
 *
 * The motors' own share must not be counted again: give a drivetrain that recovers all it can.
 *
 * @param options - drivetrain and limits
 * @returns the limited drivetrain
 * @throws InputError `WRONG_CHOICE`, `INCONSISTENT` when the speeds of the fade do not rise, `NEGATIVE`, `OUT_OF_RANGE`,
 *   `NOT_A_FRACTION`, and what `readOptions` throws
 * @example
 * const drivetrain = efficiencyDrivetrain({ efficiency: 0.9, regeneration: { share: 1 }, contains: ["gears", "motor"] });
 * const limited = limitRegeneration({ drivetrain, wheelPower: q("60 kW"), fade: { full: q("10 km/h"), none: q("3 km/h") } });
 * limited.frictionBrakePower(-100_000, 20); // 40000
 */
export function limitRegeneration(options: LimitRegenerationOptions): Drivetrain {
  const read = readOptions(
    "limitRegeneration",
    options,
    {
      drivenAxleShare: { unit: "1", atLeast: 0, atMost: 1, optional: true },
      wheelPower: { unit: "W", atLeast: 0, optional: true },
      chargePower: { unit: "W", atLeast: 0, optional: true },
    },
    ["drivetrain", "adhesion?", "fade?"],
  );
  const { drivetrain } = options;
  assertDrivetrain(drivetrain);
  const { drivenAxleShare = 1, wheelPower: mostAtWheels = Number.POSITIVE_INFINITY, chargePower } = read;
  const held = options.adhesion === undefined ? undefined : readAdhesion(options.adhesion);
  const fade = options.fade === undefined ? undefined : readFade(options.fade);

  /** Power at the wheels that is left to the motors; not positive. */
  const taken = (wheelPower: number, speed: number): number => {
    const asked = -wheelPower;
    let most = Math.min(drivenAxleShare * asked, mostAtWheels);
    if (held !== undefined && speed > 0) most = Math.min(most, speed * Math.max(0, held(asked / speed)));
    if (fade !== undefined) most *= Math.min(1, Math.max(0, (speed - fade.none) / (fade.full - fade.none)));
    return chargePower === undefined || most === 0 ? -most : powerAtLimit(drivetrain, -most, -chargePower, speed);
  };

  const { maximumWheelPower, covers } = drivetrain;
  return Object.freeze({
    name: `${drivetrain.name}, regeneration limited`,
    contains: Object.freeze([...drivetrain.contains]),
    warnings: Object.freeze([...(drivetrain.warnings ?? [])]),
    batteryPower: (wheelPower: number, speed: number): number =>
      drivetrain.batteryPower(wheelPower < 0 ? taken(wheelPower, speed) : wheelPower, speed),
    frictionBrakePower: (wheelPower: number, speed: number): number => {
      if (!(wheelPower < 0)) return 0;
      const byMotors = taken(wheelPower, speed);
      return byMotors - wheelPower + drivetrain.frictionBrakePower(byMotors, speed);
    },
    ...(maximumWheelPower === undefined
      ? {}
      : { maximumWheelPower: (speed: number) => drivetrain.maximumWheelPower?.(speed) as number }),
    ...(covers === undefined
      ? {}
      : {
          covers: (wheelPower: number, speed: number) =>
            drivetrain.covers?.(wheelPower < 0 ? taken(wheelPower, speed) : wheelPower, speed) as boolean,
        }),
  });
}

/** Largest braking force of the driven axle for a braking force of the whole vehicle, both in N. */
function readAdhesion(given: BrakingAdhesion): (force: number) => number {
  const { friction, ...vehicle } = readOptions(
    "adhesion",
    given,
    {
      friction: { unit: "1", atLeast: 0, atMost: 2 },
      mass: { unit: "kg", above: 0 },
      frontShare: { unit: "1", atLeast: 0, atMost: 1 },
      centreOfGravityHeight: { unit: "m", atLeast: 0, atMost: 3 },
      wheelbase: { unit: "m", above: 0, atMost: 10 },
    },
    ["axle"],
  );
  const { axle } = given;
  if (axle !== "front" && axle !== "rear") {
    throw new InputError("WRONG_CHOICE", "adhesion.axle must be 'front' or 'rear'", { name: "adhesion.axle" });
  }
  const load = axle === "front" ? frontAxleLoad : rearAxleLoad;
  // No tyre brakes harder than its friction allows, so neither does the load shift more.
  return (force) =>
    friction * load.of({ ...vehicle, acceleration: -Math.min(force / vehicle.mass, friction * standardGravity.value) });
}

function readFade(given: NonNullable<LimitRegenerationOptions["fade"]>): {
  readonly full: number;
  readonly none: number;
} {
  const rule = { unit: "m/s", atLeast: 0, atMost: 150 } as const;
  const { full, none } = readOptions("fade", given, { full: rule, none: rule });
  if (full > none) return { full, none };
  throw new InputError("INCONSISTENT", "fade.full must be more than fade.none", { full, none });
}
