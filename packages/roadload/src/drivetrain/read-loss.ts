import { InputError, readNumber, readOptions } from "@tarewatt/units";
import type { GearRatio, LossDrivetrainOptions } from "./loss-drivetrain.js";

/** A usual speed on a motorway, in m/s, and the turns a minute that no motor of a car is known to pass: common practice, no source. */
const MOTORWAY = 130 / 3.6;
const MOST_TURNS = 25_000;

/** A warning for a gear that turns the motor faster than motors turn. @internal */
export function warningsOfGear(perSpeed: number, maximumAngularVelocity: number | undefined): string[] {
  const turns = (MOTORWAY * perSpeed * 30) / Math.PI;
  if (turns <= MOST_TURNS || maximumAngularVelocity !== undefined) return [];
  return [
    `at 130 km/h the motor turns at ${Number(turns.toPrecision(3))} rpm, more than the ${MOST_TURNS} rpm of the fastest motors (common practice, ` +
      "no source): check gearRatio and wheelRadius, or give maximumAngularVelocity",
  ];
}

/** @internal */
export function readGearRatio(given: GearRatio): {
  readonly low: number;
  readonly high: number;
  readonly change: number;
} {
  const rule = { unit: "1", above: 0, atMost: 100 } as const;
  if (typeof given === "object" && given !== null && "change" in given) {
    const change = { unit: "m/s", above: 0 } as const;
    return readOptions("gearRatio", given, { low: rule, high: rule, change });
  }
  const ratio = readNumber("gearRatio", given, rule);
  return { low: ratio, high: ratio, change: 0 };
}

/** @internal */
export function readGears(given: LossDrivetrainOptions["gears"]): {
  readonly mesh: number;
  readonly spinTorque: number;
} {
  if (given === undefined) return { mesh: 1, spinTorque: 0 };
  const { meshEfficiency: mesh, spinTorque = 0 } = readOptions("gears", given, {
    meshEfficiency: { unit: "1", above: 0, atMost: 1 },
    spinTorque: { unit: "N·m", atLeast: 0, optional: true },
  });
  return { mesh, spinTorque };
}

/** @internal */
export function readInverter(given: LossDrivetrainOptions["inverter"]): {
  readonly efficiency: number;
  readonly standby: number;
} {
  if (given === undefined) return { efficiency: 1, standby: 0 };
  const { efficiency, standby = 0 } = readOptions("inverter", given, {
    efficiency: { unit: "1", above: 0, atMost: 1 },
    standby: { unit: "W", atLeast: 0, optional: true },
  });
  return { efficiency, standby };
}

/** @internal */
export function readSpin(given: unknown): boolean {
  if (given === "here" || given === "road load") return given === "here";
  throw new InputError("WRONG_CHOICE", "spin must be 'here' or 'road load', which holds it after a coast-down", {
    name: "spin",
    allowed: ["here", "road load"],
  });
}
