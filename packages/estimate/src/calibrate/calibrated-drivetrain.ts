import type { Drivetrain, TypicalDrivetrain } from "@tarewatt/roadload";
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

/** @internal The typical drivetrain with such differences, to be driven with the typical base load. */
export function calibratedDrivetrain(typical: TypicalDrivetrain, { factor, power }: Differences): Drivetrain {
  const base = typical.accessories.in("W");
  return Object.freeze({
    name: `${typical.name}, corrected by comparators of the maker`,
    contains: typical.contains,
    warnings: typical.warnings,
    batteryPower: (wheelPower: number, speed: number) =>
      factor * (typical.batteryPower(wheelPower, speed) + base) + power - base,
    frictionBrakePower: typical.frictionBrakePower,
  });
}
