import { describeGiven } from "./describe-given.js";
import { InputError } from "./errors.js";

/** Something with named parts, which may be read without surprises: no array, no revoked proxy. @internal */
export function isRecord(thing: unknown): thing is Readonly<Record<string, unknown>> {
  if (typeof thing !== "object" || thing === null) return false;
  try {
    return !Array.isArray(thing);
  } catch {
    return false;
  }
}

/** Refuses anything but an object. @internal */
export function readRecord(name: string, thing: unknown): Readonly<Record<string, unknown>> {
  if (isRecord(thing)) return thing;
  throw new InputError("NOT_AN_OBJECT", `${name} must be an object: got ${describeGiven(thing)}`, { name });
}

/** Refuses anything but a text, and an empty one. @internal */
export function readWords(name: string, thing: unknown): string {
  if (typeof thing === "string" && thing !== "") return thing;
  const got = thing === "" ? "an empty one" : describeGiven(thing);
  throw new InputError("WRONG_CHOICE", `${name} must be a text: got ${got}`, { name, expected: "text" });
}

/** Refuses anything but an array. @internal */
export function readList(name: string, thing: unknown): readonly unknown[] {
  try {
    if (Array.isArray(thing)) return thing;
  } catch {
    // A revoked proxy is nothing that can be read
  }
  throw new InputError("WRONG_CHOICE", `${name} must be an array: got ${describeGiven(thing)}`, {
    name,
    expected: "array",
  });
}
