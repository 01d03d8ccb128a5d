import { InputError } from "@tarewatt/units";
import type { Drivetrain } from "../drivetrain/drivetrain.js";
import type { Loss } from "../resistance/loss.js";
import type { RoadLoad } from "../resistance/road-load.js";

/** What takes part in a calculation, with the losses that each part holds. @internal */
export interface Scope {
  readonly load: RoadLoad;
  readonly drivetrain: Drivetrain;
  /** In W. */
  readonly accessories: number;
  readonly chargingEfficiency: number | undefined;
}

/**
 * Where the energy called "at battery" is counted, which follows from what the drivetrain contains: at the battery's direct
 * current terminals; at the cells, when the drivetrain contains the battery's own loss; at the wall, when it contains
 * charging.
 */
export type BatteryBoundary = "terminals" | "cells" | "wall";

/**
 * Refuses a loss that two parts hold.
 * @internal
 */
export function assertNotCountedTwice({ load, drivetrain, accessories, chargingEfficiency }: Scope): void {
  const contains = (loss: Loss): boolean => drivetrain.contains.includes(loss);
  for (const loss of load.holds) {
    if (contains(loss)) {
      refuse(loss, "the road load and the drivetrain", "take it out of one of them (load.holds, drivetrain.contains)");
    }
  }
  if (contains("accessories") && accessories > 0) {
    refuse("accessories", "the drivetrain and the accessory power", 'give accessories: q("0 W")');
  }
  if (contains("charging") && chargingEfficiency !== undefined) {
    refuse("charging", "the drivetrain and the charging efficiency", "leave out chargingEfficiency");
  }
}

/** Losses that no part holds, for a warning. The battery's own and that of charging are a matter of the boundary. */
function lossesNotCounted({ load, drivetrain, accessories }: Scope): Loss[] {
  const expected: readonly Loss[] = [
    "air",
    "tyres",
    "wheel bearings",
    "driveline spin",
    "gears",
    "motor",
    "inverter",
    "accessories",
  ];
  return expected.filter(
    (loss) =>
      !load.holds.includes(loss) && !drivetrain.contains.includes(loss) && !(loss === "accessories" && accessories > 0),
  );
}

/** Warnings that hold for cycles and steady speeds alike. @internal */
export function scopeWarnings(scope: Scope): string[] {
  const missing = lossesNotCounted(scope);
  return missing.length === 0 ? [] : [`nothing here counts these losses: ${missing.join(", ")}`];
}

/** @internal */
export function batteryBoundaryOf({ contains }: Drivetrain): BatteryBoundary {
  if (contains.includes("charging")) return "wall";
  return contains.includes("battery") ? "cells" : "terminals";
}

/** @internal */
export function assertDrivetrain(drivetrain: unknown): void {
  const { batteryPower, frictionBrakePower, contains } = (drivetrain ?? {}) as Partial<Drivetrain>;
  if (typeof batteryPower === "function" && typeof frictionBrakePower === "function" && Array.isArray(contains)) return;
  throw new InputError(
    "WRONG_CHOICE",
    "drivetrain must be a drivetrain: made by efficiencyDrivetrain, or an object with name, contains, batteryPower and frictionBrakePower",
    { name: "drivetrain" },
  );
}

/** A power that the caller's model gave, checked. @internal */
export function finite(drivetrain: Drivetrain, power: number, wheelPower: number, speed: number): number {
  if (Number.isFinite(power)) return power;
  throw new InputError(
    "NOT_A_NUMBER",
    `the drivetrain '${drivetrain.name}' must give finite powers: got ${power} for ${wheelPower} W at the wheels and ${speed} m/s`,
    { power, wheelPower, speed },
  );
}

function refuse(loss: Loss, holders: string, mend: string): never {
  throw new InputError("COUNTED_TWICE", `'${loss}' is counted twice, by ${holders}: ${mend}`, { loss });
}
