import { InputError } from "@tarewatt/units";
import { assertLosses } from "../resistance/loss.js";
import type { Drivetrain } from "./drivetrain.js";

/** Checks a drivetrain by what it holds, never by its class: it may be the caller's own. @internal */
export function assertDrivetrain(given: unknown, name = "drivetrain"): asserts given is Drivetrain {
  const drivetrain = (given ?? {}) as Partial<Drivetrain>;
  const { batteryPower, frictionBrakePower, maximumWheelPower, covers, contains, warnings } = drivetrain;
  const powers = typeof batteryPower === "function" && typeof frictionBrakePower === "function";
  const more = [maximumWheelPower, covers].every((each) => each === undefined || typeof each === "function");
  const lists = Array.isArray(contains) && (warnings === undefined || Array.isArray(warnings));
  if (!powers || !more || !lists || typeof drivetrain.name !== "string") {
    throw new InputError(
      "WRONG_CHOICE",
      `${name} must be a drivetrain: made by efficiencyDrivetrain, or an object with name, contains, batteryPower and frictionBrakePower`,
      { name },
    );
  }
  assertLosses(`${name}.contains`, contains);
}
