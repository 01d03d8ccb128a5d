import { readOptions } from "@tarewatt/units";
import { readWordsIfGiven } from "../check/read-words.js";
import { unusual } from "../check/unusual.js";
import type { BatteryBoundary } from "../energy/scope.js";
import type { Fraction } from "../fraction.js";
import { type Loss, readLosses } from "../resistance/loss.js";
import type { Drivetrain } from "./drivetrain.js";

/** A drivetrain of constant efficiency. Made by {@link efficiencyDrivetrain}. */
export interface EfficiencyDrivetrain extends Drivetrain {
  /** Tells this drivetrain from other models. */
  readonly form: "efficiency";
  /** Wheel energy per battery energy while driving, 0 to 1. */
  readonly efficiency: number;
  /** Part of the braking energy at the wheels that the motors take; the friction brakes take the rest. */
  readonly share: number;
  /** Battery energy per energy that the motors take while braking, 0 to 1. */
  readonly regenerationEfficiency: number;
  /** What a reader should doubt, such as an efficiency below a half; empty when there is nothing. */
  readonly warnings: readonly string[];
}

/** Options of {@link efficiencyDrivetrain}. */
export interface EfficiencyDrivetrainOptions {
  /** Wheel energy per battery energy while driving, more than 0 and at most 1. */
  readonly efficiency: Fraction;
  /** What happens while braking. */
  readonly regeneration: {
    /** Part of the braking energy at the wheels that the motors take, 0 to 1; the friction brakes take the rest. */
    readonly share: Fraction;
    /** Battery energy per energy that the motors take, 0 to 1; the driving efficiency when left out. */
    readonly efficiency?: Fraction | undefined;
  };
  /** The losses that the efficiency holds: its scope must be stated. */
  readonly contains: readonly Loss[];
  /** What the model is, in words. */
  readonly name?: string | undefined;
}

/**
 * A drivetrain with one efficiency for driving and one for braking.
 *
 * Such an efficiency is a mean over a cycle; at low power real drivetrains are worse, at high power better. One below a half
 * is kept, with a warning.
 *
 * Without `"battery"` in `contains` the battery's own loss is counted nowhere: "at battery" then means its terminals (see
 * {@link BatteryBoundary}), and the energy to compare with is what the terminals give, not what the cells hold.
 *
 * @param options - efficiencies, share of braking energy that is recovered, and what the efficiency holds
 * @returns the drivetrain
 * @throws InputError `NOT_A_FRACTION`, `OUT_OF_RANGE`, `EMPTY` when nothing is contained, `WRONG_CHOICE` for an unknown
 *   loss, and what `readOptions` throws
 * @example
 * const contains = ["gears", "motor", "inverter"] as const;
 * const drivetrain = efficiencyDrivetrain({ efficiency: 0.88, regeneration: { share: 0.9 }, contains });
 * drivetrain.batteryPower(8800, 20); // 10000
 */
export function efficiencyDrivetrain(options: EfficiencyDrivetrainOptions): EfficiencyDrivetrain {
  const { efficiency } = readOptions(
    "efficiencyDrivetrain",
    options,
    { efficiency: { unit: "1", above: 0, atMost: 1 } },
    ["regeneration", "contains", "name?"],
  );
  const regeneration = readOptions("efficiencyDrivetrain regeneration", options.regeneration, {
    share: { unit: "1", atLeast: 0, atMost: 1 },
    efficiency: { unit: "1", atLeast: 0, atMost: 1, optional: true },
  });
  const { share, efficiency: regenerationEfficiency = efficiency } = regeneration;
  const name = readWordsIfGiven("name", options.name) ?? `constant efficiency ${efficiency}`;
  return keepEfficiencyDrivetrain({
    form: "efficiency",
    name,
    contains: readLosses("contains", options.contains),
    efficiency,
    share,
    regenerationEfficiency,
    warnings: Object.freeze(unusual({ efficiency })),
    batteryPower: (wheelPower: number) =>
      wheelPower > 0 ? wheelPower / efficiency : wheelPower * share * regenerationEfficiency,
    frictionBrakePower: (wheelPower: number) => (wheelPower < 0 ? -wheelPower * (1 - share) : 0),
  });
}

/** The drivetrains whose numbers say what their functions do; they go when the drivetrain goes. */
const kept = /* @__PURE__ */ new WeakSet<object>();

/** Freezes a drivetrain whose numbers say what its functions do, and remembers it. @internal */
export function keepEfficiencyDrivetrain<Made extends EfficiencyDrivetrain>(drivetrain: Made): Readonly<Made> {
  kept.add(drivetrain);
  return Object.freeze(drivetrain);
}

/**
 * Whether the numbers of a drivetrain may be used in place of its functions. Not of a copy: whoever changes a function or a number
 * of it gets what the functions say, everywhere.
 * @internal
 */
export function isEfficiencyDrivetrain(drivetrain: Drivetrain): drivetrain is EfficiencyDrivetrain {
  return kept.has(drivetrain);
}
