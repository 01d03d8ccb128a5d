import { InputError } from "@tarewatt/units";
import type { Drivetrain } from "../drivetrain/drivetrain.js";
import { powerAtLimit } from "../drivetrain/power-at-limit.js";
import { type Battery, batteryNumber, checkedLoss } from "./battery.js";
import { assertConservesAt } from "./conserves-energy.js";
import { finitePower, type Scope } from "./scope.js";

/** Powers at a steady speed, in W. @internal */
export interface SteadyPoint {
  /** At the wheels; negative when the vehicle is held back. */
  readonly atWheel: number;
  /** Of the battery for the drivetrain alone. */
  readonly drawn: number;
  /** Heat of the friction brakes. */
  readonly brakes: number;
  /** At the battery's terminals, with accessories and climate. */
  readonly terminals: number;
  /** Braking power at the wheels that the battery could not be charged with. */
  readonly refused: number;
}

/**
 * What a steady speed takes, with the limits of drivetrain and battery at a state of charge. What the battery cannot be charged
 * with, the friction brakes take; what it cannot give, nobody can drive.
 *
 * @internal
 */
export function steadyPoint(scope: Scope, atWheel: number, speed: number, stateOfCharge: number): SteadyPoint {
  const { drivetrain, battery } = scope;
  const auxiliary = scope.accessories + (scope.climate?.power ?? 0);
  assertReachable(drivetrain, atWheel, speed);
  const asked = (power: number): number => finitePower(drivetrain, drivetrain.batteryPower(power, speed), power, speed);
  let byMotors = atWheel;
  let drawn = asked(byMotors);
  if (battery !== undefined) {
    const least = -batteryNumber(
      battery,
      "largest power of charging",
      battery.maximumChargePower(stateOfCharge),
      stateOfCharge,
    );
    if (atWheel < 0 && drawn + auxiliary < least) {
      byMotors = powerAtLimit(drivetrain, atWheel, Math.min(0, least - auxiliary), speed);
      drawn = asked(byMotors);
    }
    assertGiven(battery, drawn + auxiliary, stateOfCharge);
  }
  const refused = byMotors - atWheel;
  const byBrakes = finitePower(drivetrain, drivetrain.frictionBrakePower(byMotors, speed), byMotors, speed);
  assertConservesAt(drivetrain, byMotors, speed);
  return { atWheel, drawn, brakes: byBrakes + refused, terminals: drawn + auxiliary, refused };
}

/** Heat in a battery at a power at its terminals, in W; none without a battery. @internal */
export function lossAt(battery: Battery | undefined, terminals: number, stateOfCharge: number): number {
  if (battery === undefined) return 0;
  return checkedLoss(battery, battery.lossPower(terminals, stateOfCharge), terminals, stateOfCharge);
}

/** Whether a battery gives a power at its terminals; rounding must not stop a vehicle that drives exactly at its limit. @internal */
export function isGiven(battery: Battery, terminals: number, stateOfCharge: number): boolean {
  const most = batteryNumber(battery, "largest power", battery.maximumDischargePower(stateOfCharge), stateOfCharge);
  return terminals <= most * (1 + 1e-12);
}

function assertGiven(battery: Battery, terminals: number, stateOfCharge: number): void {
  if (isGiven(battery, terminals, stateOfCharge)) return;
  const most = battery.maximumDischargePower(stateOfCharge);
  throw new InputError(
    "NOT_VALID_HERE",
    `the vehicle cannot hold this speed: it takes ${kilowatts(terminals)} of the battery, which gives ${kilowatts(most)} at a state of charge of ${stateOfCharge}`,
    { terminals, most, stateOfCharge },
  );
}

/** A speed that nobody can hold has no consumption. */
function assertReachable(drivetrain: Drivetrain, wheelPower: number, speed: number): void {
  const most = drivetrain.maximumWheelPower?.(speed) ?? Number.POSITIVE_INFINITY;
  if (!(wheelPower > most * (1 + 1e-12))) return;
  throw new InputError(
    "NOT_VALID_HERE",
    `the vehicle cannot hold this speed: it takes ${kilowatts(wheelPower)} at the wheels, and the drivetrain gives ` +
      `${kilowatts(most)} at ${Number(speed.toPrecision(4))} m/s`,
    { wheelPower, most, speed },
  );
}

function kilowatts(watts: number): string {
  return `${Number((watts / 1000).toPrecision(4))} kW`;
}
