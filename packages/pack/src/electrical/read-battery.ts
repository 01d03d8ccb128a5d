import { describeGiven, InputError } from "@tarewatt/units";
import { readPart } from "../check/read-part.js";
import type { PackBattery } from "./battery.js";

/** @internal A battery that {@link packBattery} made; anything else is refused. */
export function readBattery(given: unknown): PackBattery {
  const { form, lossPower, openCircuitVoltage } = readPart("battery", given);
  const made = form === "voltage behind a resistance" && Object.isFrozen(given);
  if (made && typeof lossPower === "function" && typeof openCircuitVoltage === "function") return given as PackBattery;
  throw new InputError("WRONG_CHOICE", `battery must be made by packBattery: got ${describeGiven(given)}`, {
    name: "battery",
  });
}
