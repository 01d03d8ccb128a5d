import type { Loss } from "../resistance/loss.js";

/**
 * What stands between the wheels and the battery: battery power for a wheel power at a speed, in plain SI numbers.
 *
 * Any model that has this shape can be driven: a constant efficiency, a chain of parts, a loss model, a map, your own.
 */
export interface Drivetrain {
  /** What the model is, in words. */
  readonly name: string;
  /** The losses that it holds; a road load, an accessory power or a charging efficiency must not hold them again. */
  readonly contains: readonly Loss[];
  /** What a reader should doubt; results carry it on. Nothing when left out. */
  readonly warnings?: readonly string[] | undefined;
  /**
   * Power of the battery, in W: positive when it discharges.
   * @param wheelPower - power at the wheels in W: positive drives the vehicle, negative brakes it
   * @param speed - speed in m/s
   */
  batteryPower(wheelPower: number, speed: number): number;
  /**
   * Heat of the friction brakes, in W; never negative, zero while the vehicle is driven.
   * @param wheelPower - power at the wheels in W: positive drives the vehicle, negative brakes it
   * @param speed - speed in m/s
   */
  frictionBrakePower(wheelPower: number, speed: number): number;
  /**
   * Largest power that it can give to the wheels, in W, not negative; no limit when left out. A vehicle that would need more
   * falls behind its cycle, and the result says by how much.
   * @param speed - speed in m/s
   */
  maximumWheelPower?(speed: number): number;
  /**
   * Whether the model knows this point; outside a map, for example, it is an extrapolation, and results say for how long.
   * Everywhere when left out.
   * @param wheelPower - power at the wheels in W: positive drives the vehicle, negative brakes it
   * @param speed - speed in m/s
   */
  covers?(wheelPower: number, speed: number): boolean;
}
