import { InputError, nearest } from "@tarewatt/units";

/** The losses that a road load, a drivetrain or a charging efficiency can hold. */
export const losses = [
  "air",
  "tyres",
  "wheel bearings",
  "driveline spin",
  "gears",
  "motor",
  "inverter",
  "battery",
  "accessories",
  "charging",
] as const;

/**
 * A loss, by the thing that causes it. Road loads and drivetrains say which ones they hold, so that nothing counts twice.
 *
 * "driveline spin" is the drag of the turning, unloaded driveline; "gears" is what gears lose of the power they carry.
 */
export type Loss = (typeof losses)[number];

/** Checks a list of losses: not empty, every name known, none twice. @internal */
export function readLosses(name: string, given: unknown): readonly Loss[] {
  if (!Array.isArray(given) || given.length === 0) {
    throw new InputError("EMPTY", `${name} must list at least one loss, such as ["gears", "motor"]: got ${given}`, {
      name,
      known: losses,
    });
  }
  for (const loss of given as readonly unknown[]) {
    if ((losses as readonly unknown[]).includes(loss)) continue;
    const [near] = nearest(String(loss), losses);
    const hint = near === undefined ? `it can be ${losses.join(", ")}` : `did you mean '${near}'?`;
    throw new InputError("WRONG_CHOICE", `${name} has no loss '${loss}': ${hint}`, {
      name,
      given: loss,
      known: losses,
    });
  }
  return Object.freeze([...new Set(given as readonly Loss[])]);
}
