import { type Drivetrain, type TypicalDrivetrain, typicalDrivetrainFit } from "@tarewatt/roadload";
import type { Pair } from "./compared.js";

/** What a drivetrain differs by from a typical one. @internal */
export interface Differences {
  /** Factor on all that is drawn, the base load included. */
  readonly factor: number;
  /** Standing power beyond that, in W at the battery. */
  readonly power: number;
}

/**
 * The factor f and the power w with f + w·a = exp(u + w_0·a) on both cycles, where 1 W adds the share a: then the drivetrain gives
 * the predicted consumption of both, though what is learnt (u, w_0) is learnt on logarithms.
 *
 * @internal
 */
export function differencesOf(logFactor: number, power: number, perWatt: Pair): Differences {
  const [city, highway] = perWatt;
  const atHighway = Math.exp(logFactor + power * highway);
  const apart = power * (city - highway);
  // The slope of the exponential between the two; its derivative where they meet.
  const slope = power * atHighway * (apart === 0 ? 1 : Math.expm1(apart) / apart);
  return { factor: atHighway - slope * highway, power: slope };
}

/** A drivetrain and the base load beside it. @internal */
export interface CalibratedDrive {
  readonly drivetrain: Drivetrain;
  /** In W. */
  readonly accessories: number;
  /** Whether the drivetrain would give less than the wheels take, and is held at that. */
  readonly held: boolean;
}

/**
 * The typical drivetrain and base load with such differences. What the standing power takes away comes off the base load first; the
 * drivetrain itself never creates energy.
 *
 * @internal
 */
export function calibratedDrive(typical: TypicalDrivetrain, { factor, power }: Differences): CalibratedDrive {
  const base = factor * typical.accessories.in("W") + power;
  const rest = Math.min(base, 0);
  const { regenerationShare } = typicalDrivetrainFit;
  const plain = (wheelPower: number, speed: number): number => factor * typical.batteryPower(wheelPower, speed) + rest;
  const least = (wheelPower: number): number => wheelPower * (wheelPower > 0 ? 1 : regenerationShare);
  return {
    drivetrain: Object.freeze({
      name: `${typical.name}, corrected by comparators of the maker`,
      contains: typical.contains,
      warnings: typical.warnings,
      batteryPower: (wheelPower: number, speed: number) => Math.max(plain(wheelPower, speed), least(wheelPower)),
      frictionBrakePower: typical.frictionBrakePower,
      ...(typical.maximumWheelPower === undefined ? {} : { maximumWheelPower: typical.maximumWheelPower }),
    }),
    accessories: Math.max(base, 0),
    // A line above another at rest, and at a driving and a braking power far out, is above it everywhere.
    held: [0, 1e6, -1e6].some((wheelPower) => plain(wheelPower, 20) < least(wheelPower)),
  };
}
