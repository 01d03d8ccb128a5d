import { describeGiven, InputError, nearest } from "@tarewatt/units";

/** The losses that a road load, a drivetrain or a charging efficiency can hold. */
export const losses = /* @__PURE__ */ Object.freeze([
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
] as const);

/**
 * A loss, by the thing that causes it. Road loads and drivetrains say which ones they hold, so that nothing counts twice.
 *
 * "driveline spin" is the drag of the turning, unloaded driveline; "gears" is what gears lose of the power they carry.
 */
export type Loss = (typeof losses)[number];

/** Checks a list of losses: not empty, every name known; none stands twice in what is returned. @internal */
export function readLosses(name: string, given: unknown): readonly Loss[] {
  if (!Array.isArray(given) || given.length === 0) {
    throw new InputError(
      "EMPTY",
      `${name} must list at least one loss, such as ["gears", "motor"]: got ${describeGiven(given)}`,
      { name, known: losses },
    );
  }
  assertLosses(name, given);
  return Object.freeze([...new Set(given as readonly Loss[])]);
}

/** Refuses what is no loss: a misspelt one would be counted by nobody. @internal */
export function assertLosses(name: string, list: readonly unknown[]): void {
  for (const loss of list) {
    if ((losses as readonly unknown[]).includes(loss)) continue;
    const [given, near] = typeof loss === "string" ? [`'${loss}'`, ...nearest(loss, losses)] : [describeGiven(loss)];
    const hint = near === undefined ? `it can be ${losses.join(", ")}` : `did you mean '${near}'?`;
    throw new InputError("WRONG_CHOICE", `${name} has no loss ${given}: ${hint}`, {
      name,
      known: losses,
    });
  }
}
