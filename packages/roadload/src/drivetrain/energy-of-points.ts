import type { WheelPoints } from "../energy/wheel-points.js";
import type { Drivetrain } from "./drivetrain.js";

type BatteryPower = Drivetrain["batteryPower"];
type EnergyOfPoints = (points: WheelPoints) => number;

/** Loops of drivetrains that have one of their own; they go when the drivetrain goes. */
const own = /* @__PURE__ */ new WeakMap<BatteryPower, EnergyOfPoints>();

/**
 * Remembers the loop of a drivetrain for {@link energyOfPoints}.
 *
 * It is kept for the function that it stands for, not for the drivetrain: a copy of a drivetrain with another function does
 * not have it, and one with the same function has.
 *
 * @internal
 */
export function keepEnergyOfPoints(batteryPower: BatteryPower, loop: EnergyOfPoints): void {
  own.set(batteryPower, loop);
}

/**
 * Energy of the battery, in J, at the points of a drive.
 *
 * A loop that calls the functions of several drivetrains is compiled for none of them, and takes twice as long, measured. So a
 * drivetrain that is asked for thousands of vehicles brings its own loop.
 *
 * @internal
 */
export function energyOfPoints(drivetrain: Drivetrain, points: WheelPoints): number {
  const loop = own.get(drivetrain.batteryPower);
  if (loop !== undefined) return loop(points);
  const { count, power, speed, seconds } = points;
  let energy = 0;
  for (let i = 0; i < count; i++) {
    energy += drivetrain.batteryPower(power[i] as number, speed[i] as number) * (seconds[i] as number);
  }
  return energy;
}
