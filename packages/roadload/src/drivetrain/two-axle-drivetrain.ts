import { InputError, type Power, type Quantity, readOptions } from "@tarewatt/units";
import { readWordsIfGiven } from "../check/read-words.js";
import type { Fraction } from "../fraction.js";
import type { Drivetrain } from "./drivetrain.js";
import { assertDrivetrain } from "./read-drivetrain.js";

/** Options of {@link twoAxleDrivetrain}. */
export interface TwoAxleDrivetrainOptions {
  /** What drives the front axle. */
  readonly front: Drivetrain;
  /** What drives the rear axle. */
  readonly rear: Drivetrain;
  /** Part of the power at the wheels that falls to the front axle. */
  readonly frontShare: {
    /** While driving. */
    readonly driving: Fraction;
    /** While braking. */
    readonly braking: Fraction;
  };
  /** An axle that is uncoupled, and then loses nothing, while little power is asked for; none when left out. */
  readonly disconnect?:
    | {
        /** The axle that is uncoupled. */
        readonly axle: "front" | "rear";
        /** Size of the power at the wheels up to which the other axle works alone. */
        readonly upTo: Quantity<Power>;
      }
    | undefined;
  /** What the model is, in words. */
  readonly name?: string | undefined;
}

/**
 * Two driven axles with a drivetrain each, and a fixed split between them.
 *
 * What one axle cannot drive, the other takes. An axle that is coupled and gets no power still costs what its model says at
 * zero power: its spin.
 *
 * @param options - both axles, the split, an axle that is uncoupled
 * @returns the drivetrain
 * @throws InputError `INCONSISTENT` when the axles do not hold the same losses, `WRONG_CHOICE`, `NEGATIVE`, `NOT_A_FRACTION`,
 *   and what `readOptions` throws
 * @example
 * const axle = (efficiency: number) =>
 *   efficiencyDrivetrain({ efficiency, regeneration: { share: 1 }, contains: ["gears", "motor", "inverter"] });
 * const both = twoAxleDrivetrain({ front: axle(0.8), rear: axle(0.9), frontShare: { driving: 0.4, braking: 0.6 } });
 * both.batteryPower(36_000, 20); // 42000
 */
export function twoAxleDrivetrain(options: TwoAxleDrivetrainOptions): Drivetrain {
  readOptions("twoAxleDrivetrain", options, {}, ["front", "rear", "frontShare", "disconnect?", "name?"]);
  const { front, rear } = options;
  assertDrivetrain(front, "front");
  assertDrivetrain(rear, "rear");
  const share = { unit: "1", atLeast: 0, atMost: 1 } as const;
  const { driving, braking } = readOptions("frontShare", options.frontShare, { driving: share, braking: share });
  const off = options.disconnect === undefined ? undefined : readDisconnect(options.disconnect);
  assertSameLosses(front, rear);
  const mostOf = (axle: Drivetrain, speed: number): number =>
    axle.maximumWheelPower?.(speed) ?? Number.POSITIVE_INFINITY;

  /** Power at the wheels of the front axle. */
  const toFront = (wheelPower: number, speed: number): number => {
    if (!(wheelPower > 0)) return braking * wheelPower;
    const wanted = Math.min(driving * wheelPower, mostOf(front, speed));
    return Math.max(wanted, wheelPower - mostOf(rear, speed));
  };
  const coupled = off?.axle === "front" ? rear : front;
  const alone = (wheelPower: number, speed: number): Drivetrain | undefined =>
    off !== undefined && Math.abs(wheelPower) <= off.upTo && wheelPower <= mostOf(coupled, speed) ? coupled : undefined;
  const sum = (of: "batteryPower" | "frictionBrakePower", wheelPower: number, speed: number): number => {
    const one = alone(wheelPower, speed);
    if (one !== undefined) return one[of](wheelPower, speed);
    const atFront = toFront(wheelPower, speed);
    return front[of](atFront, speed) + rear[of](wheelPower - atFront, speed);
  };

  const covers = (wheelPower: number, speed: number): boolean => {
    const one = alone(wheelPower, speed);
    if (one !== undefined) return one.covers?.(wheelPower, speed) ?? true;
    const atFront = toFront(wheelPower, speed);
    return (front.covers?.(atFront, speed) ?? true) && (rear.covers?.(wheelPower - atFront, speed) ?? true);
  };

  return Object.freeze({
    name: readWordsIfGiven("name", options.name) ?? `two axles: front ${front.name}; rear ${rear.name}`,
    contains: Object.freeze([...front.contains]),
    warnings: Object.freeze([...new Set([...(front.warnings ?? []), ...(rear.warnings ?? [])])]),
    batteryPower: (wheelPower: number, speed: number) => sum("batteryPower", wheelPower, speed),
    frictionBrakePower: (wheelPower: number, speed: number) => sum("frictionBrakePower", wheelPower, speed),
    ...(front.maximumWheelPower === undefined && rear.maximumWheelPower === undefined
      ? {}
      : { maximumWheelPower: (speed: number) => mostOf(front, speed) + mostOf(rear, speed) }),
    ...(front.covers === undefined && rear.covers === undefined ? {} : { covers }),
  });
}

function readDisconnect(given: NonNullable<TwoAxleDrivetrainOptions["disconnect"]>): {
  readonly axle: "front" | "rear";
  readonly upTo: number;
} {
  const { upTo } = readOptions("disconnect", given, { upTo: { unit: "W", atLeast: 0 } }, ["axle"]);
  const { axle } = given;
  if (axle === "front" || axle === "rear") return { axle, upTo };
  throw new InputError("WRONG_CHOICE", "disconnect.axle must be 'front' or 'rear'", { name: "disconnect.axle" });
}

function assertSameLosses(front: Drivetrain, rear: Drivetrain): void {
  const only = (one: Drivetrain, other: Drivetrain) => one.contains.filter((loss) => !other.contains.includes(loss));
  const different = [...only(front, rear), ...only(rear, front)];
  if (different.length === 0) return;
  throw new InputError(
    "INCONSISTENT",
    `both axles must contain the same losses: only one of them has ${different.join(", ")}`,
    { different },
  );
}
