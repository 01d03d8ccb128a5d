import { InputError, readOptions } from "@tarewatt/units";
import { readWords, readWordsIfGiven } from "../check/read-words.js";
import type { Fraction } from "../fraction.js";
import { type Loss, readLosses } from "../resistance/loss.js";
import { type EfficiencyDrivetrain, efficiencyDrivetrain, keepEfficiencyDrivetrain } from "./efficiency-drivetrain.js";

/** One part of a {@link chainDrivetrain}, such as the motor. */
export interface ChainPart {
  /** What it is, in words. */
  readonly name: string;
  /** Power out per power in, more than 0 and at most 1. */
  readonly efficiency: Fraction;
  /** The losses that the efficiency holds. */
  readonly contains: readonly Loss[];
}

/** A chain of parts with an efficiency each. Made by {@link chainDrivetrain}. */
export interface ChainDrivetrain extends EfficiencyDrivetrain {
  /** The parts, as read. */
  readonly parts: readonly {
    /** What it is, in words. */
    readonly name: string;
    /** Power out per power in. */
    readonly efficiency: number;
    /** The losses that the efficiency holds. */
    readonly contains: readonly Loss[];
  }[];
}

/** Options of {@link chainDrivetrain}. */
export interface ChainDrivetrainOptions {
  /** The parts from the wheels to the battery, one at least. */
  readonly parts: readonly ChainPart[];
  /** What happens while braking. */
  readonly regeneration: {
    /** Part of the braking energy at the wheels that the motors take, 0 to 1; the friction brakes take the rest. */
    readonly share: Fraction;
    /** Battery energy per energy that the motors take, 0 to 1; the efficiency of the chain when left out. */
    readonly efficiency?: Fraction | undefined;
  };
  /** What the chain is, in words. */
  readonly name?: string | undefined;
}

/**
 * A drivetrain as a chain of parts: its efficiency is the product of theirs, driving and, unless said otherwise, braking.
 *
 * @param options - parts with their efficiencies and what each holds, and the share of braking energy that is recovered
 * @returns a drivetrain of constant efficiency that holds what its parts hold
 * @throws InputError `EMPTY` without parts, `COUNTED_TWICE` when two parts hold one loss, and what
 *   {@link efficiencyDrivetrain} throws
 * @example
 * const parts = [
 *   { name: "gears", efficiency: 0.97, contains: ["gears"] },
 *   { name: "motor", efficiency: 0.92, contains: ["motor"] },
 *   { name: "inverter", efficiency: 0.98, contains: ["inverter"] },
 * ] as const;
 * chainDrivetrain({ parts, regeneration: { share: 0.9 } }).efficiency; // 0.874552
 */
export function chainDrivetrain(options: ChainDrivetrainOptions): ChainDrivetrain {
  readOptions("chainDrivetrain", options, {}, ["parts", "regeneration", "name?"]);
  if (!Array.isArray(options.parts) || options.parts.length === 0) {
    throw new InputError("EMPTY", "parts must list at least one part of the chain", { name: "parts" });
  }
  const parts = options.parts.map((part: ChainPart, index) => {
    const where = `parts[${index}]`;
    const rule = { efficiency: { unit: "1", above: 0, atMost: 1 } } as const;
    const { efficiency } = readOptions(where, part, rule, ["name", "contains"]);
    const name = readWords(`${where}.name`, part.name);
    return Object.freeze({ name, efficiency, contains: readLosses(`${where}.contains`, part.contains) });
  });
  const holders = new Map<Loss, string>();
  for (const { name, contains } of parts) {
    for (const loss of contains) {
      const other = holders.get(loss);
      if (other !== undefined) {
        const message = `'${loss}' is counted twice, by ${other} and ${name}: take it out of one of them`;
        throw new InputError("COUNTED_TWICE", message, { loss });
      }
      holders.set(loss, name);
    }
  }
  const whole = efficiencyDrivetrain({
    efficiency: parts.reduce((product, { efficiency }) => product * efficiency, 1),
    regeneration: options.regeneration,
    contains: [...holders.keys()],
    name: readWordsIfGiven("name", options.name) ?? `chain of ${parts.map(({ name }) => name).join(", ")}`,
  });
  return keepEfficiencyDrivetrain({ ...whole, parts: Object.freeze(parts) });
}
