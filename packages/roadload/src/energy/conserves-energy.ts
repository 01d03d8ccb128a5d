import { InputError } from "@tarewatt/units";
import type { Pieces } from "../cycle/pieces.js";
import type { Drivetrain } from "../drivetrain/drivetrain.js";
import { isEfficiencyDrivetrain } from "../drivetrain/efficiency-drivetrain.js";
import type { SplitNumbers } from "../resistance/road-load-numbers.js";

/** Rounding, in parts of the powers or energies that are compared. */
const ROUNDING = 1e-9;
/** Points of a cycle that a model is asked at: one that creates energy does so at many. */
const SAMPLES = 48;

/** Energies in J, or powers in W, on either side of a drivetrain. @internal */
export interface DrivetrainSums {
  /** At the wheels; not negative. */
  readonly driving: number;
  /** At the wheels; not positive. */
  readonly braking: number;
  /** Of the battery, for the drivetrain alone. */
  readonly drivetrain: number;
  /** Heat of the friction brakes. */
  readonly brakes: number;
}

/**
 * Refuses what no drivetrain does: to give more than it gets. What is not a number is refused elsewhere, and passes here.
 *
 * @param where - when it was so, in words such as "on UDDS"
 * @internal
 */
export function assertConserves({ name }: Drivetrain, sums: DrivetrainSums, where: string, unit: "J" | "W"): void {
  const { driving, braking, drivetrain, brakes } = sums;
  const rounding = ROUNDING * (driving - braking + Math.abs(drivetrain) + Math.abs(brakes)) + 1e-6;
  const shown = (value: number): string => `${Number((value / 1000).toPrecision(4))} k${unit}`;
  const refuse = (what: string): never => {
    throw new InputError(
      "INCONSISTENT",
      `the drivetrain '${name}' creates energy ${where}: ${what}. Check its units (powers are in W) and its signs`,
      { ...sums },
    );
  };
  if (brakes < -rounding) refuse(`its friction brakes give ${shown(-brakes)}`);
  if (brakes > -braking + rounding) {
    refuse(`its friction brakes take ${shown(brakes)} of the ${shown(-braking)} that the wheels are braked with`);
  }
  if (drivetrain - driving - braking - brakes < -rounding) {
    const asked = `the wheels take ${shown(driving)} and give ${shown(-braking)}, of which the friction brakes take ${shown(brakes)}`;
    refuse(`${asked}, and the battery gives ${shown(drivetrain)}`);
  }
}

/** The same at one point. @internal */
export function assertConservesAt(drivetrain: Drivetrain, wheelPower: number, speed: number): void {
  const sums = {
    driving: Math.max(0, wheelPower),
    braking: Math.min(0, wheelPower),
    drivetrain: drivetrain.batteryPower(wheelPower, speed),
    brakes: wheelPower < 0 ? drivetrain.frictionBrakePower(wheelPower, speed) : 0,
  };
  const shown = [wheelPower / 1000, speed * 3.6].map((value) => Number(value.toPrecision(4)));
  assertConserves(drivetrain, sums, `at ${shown[0]} kW at the wheels and ${shown[1]} km/h`, "W");
}

/**
 * The same at some points of a cycle, because a sum hides what one half of it creates and the other loses. Points that the model does
 * not know, or cannot reach, are not asked.
 *
 * @internal
 */
export function assertConservesOn(
  { count, from, to, duration }: Pieces,
  { constant, gradeForce, linear, quadratic, inertiaMass }: SplitNumbers,
  drivetrain: Drivetrain,
): void {
  // Made of checked numbers, it cannot.
  if (isEfficiencyDrivetrain(drivetrain)) return;
  const every = Math.max(1, Math.floor(count / SAMPLES));
  for (let i = 0; i < count; i += every) {
    const [first, last, seconds] = [from[i] as number, to[i] as number, duration[i] as number];
    const v = (first + last) / 2;
    const force = constant + gradeForce + (inertiaMass * (last - first)) / seconds + v * (linear + quadratic * v);
    const known =
      drivetrain.covers?.(v * force, v) !== false && !(v * force > (drivetrain.maximumWheelPower?.(v) ?? v * force));
    if (known) assertConservesAt(drivetrain, v * force, v);
  }
  assertConservesAt(drivetrain, 0, 0);
}
