import { InputError, type Power, type Quantity, quantity, type Speed, type Step, type Working } from "@tarewatt/units";
import { textsOf } from "../check/read-words.js";
import type { Drivetrain } from "../drivetrain/drivetrain.js";
import { isEfficiencyDrivetrain } from "../drivetrain/efficiency-drivetrain.js";
import { assertDrivetrain } from "../drivetrain/read-drivetrain.js";
import { batteryPowerDriving, batteryPowerOfModel } from "../energy/battery-energy.js";
import { type BatteryBoundary, batteryBoundaryOf, finitePower } from "../energy/scope.js";
import type { Sprinter } from "./sprint.js";
import type { Thrust } from "./thrust.js";

/** Power of the battery in a sprint. */
export interface SprintAtBattery {
  /** Largest power of the battery in the sprint, accessories included. */
  readonly power: Quantity<Power>;
  /** Speed at which it is drawn. */
  readonly speed: Quantity<Speed>;
  /** Where it is counted: at the cells, when the drivetrain contains the battery's own loss. */
  readonly boundary: Exclude<BatteryBoundary, "wall">;
}

/** Speeds that a drivetrain is asked at. */
const SPEEDS = 100;

/** The largest power that a sprint draws from the battery, how it came about, and what to doubt about it. @internal */
export interface SprintDraw {
  readonly atBattery: SprintAtBattery;
  readonly warnings: readonly string[];
  readonly steps: () => Step[];
}

/** @internal */
export function drawOfSprint(
  { from, to }: Sprinter,
  thrust: Thrust,
  drivetrain: Drivetrain,
  accessories: number,
): SprintDraw {
  assertDrivetrain(drivetrain);
  const boundary = batteryBoundaryOf(drivetrain, undefined);
  if (boundary === "wall") {
    const message = "the drivetrain contains charging, so its power is one at the wall: give one without charging";
    throw new InputError("NOT_VALID_HERE", message, { boundary });
  }
  let [most, speed, wheel] = [0, to, 0];
  let lacks = 0;
  let known = true;
  for (let i = 1; i <= SPEEDS; i++) {
    const v = from + ((to - from) * i) / SPEEDS;
    const wheelPower = thrust.force(v) * v;
    const drawn = finitePower(drivetrain, drivetrain.batteryPower(wheelPower, v), wheelPower, v);
    if (drawn > most) [most, speed, wheel] = [drawn, v, wheelPower];
    lacks = Math.max(lacks, wheelPower - (drivetrain.maximumWheelPower?.(v) ?? Number.POSITIVE_INFINITY));
    known = known && drivetrain.covers?.(wheelPower, v) !== false;
  }
  return {
    atBattery: Object.freeze({
      power: quantity((most + accessories) / 1000, "kW"),
      speed: quantity(speed * 3.6, "km/h"),
      boundary,
    }),
    warnings: [
      ...textsOf(drivetrain.warnings),
      ...(lacks > 1e-6 * most
        ? [
            `the drivetrain '${drivetrain.name}' gives up to ${Number((lacks / 1000).toPrecision(3))} kW less at the wheels than this sprint takes`,
          ]
        : []),
      ...(known ? [] : [`the sprint lies in part outside of what the drivetrain '${drivetrain.name}' covers`]),
    ],
    steps: () => {
      const working: Working = [];
      if (isEfficiencyDrivetrain(drivetrain)) {
        batteryPowerDriving.of({ wheelPower: wheel, efficiency: drivetrain.efficiency, accessories }, working);
      } else batteryPowerOfModel.of({ drivetrain: most, accessories }, working);
      return working;
    },
  };
}
