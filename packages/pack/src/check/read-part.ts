import { describeGiven, InputError } from "@tarewatt/units";
import { isArray } from "./is-array.js";

/** @internal An object among the options, as something whose parts can be looked at. */
export function readPart(name: string, given: unknown): Readonly<Record<string, unknown>> {
  if (typeof given === "object" && given !== null && !isArray(given)) return given as Record<string, unknown>;
  throw new InputError("NOT_AN_OBJECT", `${name} must be an object: got ${describeGiven(given)}`, { name });
}
