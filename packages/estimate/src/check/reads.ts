import { describeGiven, InputError } from "@tarewatt/units";

/** @internal A text that is not empty. */
export function readText(name: string, given: unknown): string {
  if (typeof given === "string" && given.trim() !== "") return given;
  const got = typeof given === "string" ? "an empty one" : describeGiven(given);
  throw new InputError("WRONG_CHOICE", `${name} must be a text: got ${got}`, { name });
}

/** @internal A list of at least one. */
export function readFilled(name: string, given: unknown): readonly unknown[] {
  if (!Array.isArray(given)) {
    throw new InputError("WRONG_CHOICE", `${name} must be a list: got ${describeGiven(given)}`, { name });
  }
  if (given.length > 0) return given;
  throw new InputError("EMPTY", `${name} must hold at least one entry`, { name });
}

/** @internal Something with named parts. */
export function readParts(name: string, given: unknown): Readonly<Record<string, unknown>> {
  if (typeof given === "object" && given !== null && !Array.isArray(given)) {
    return given as Readonly<Record<string, unknown>>;
  }
  throw new InputError("NOT_AN_OBJECT", `${name} must be an object: got ${describeGiven(given)}`, { name });
}

/** @internal One of a few texts. */
export function readChoice<T extends string>(name: string, given: unknown, known: readonly T[]): T {
  if (known.includes(given as T)) return given as T;
  throw new InputError("WRONG_CHOICE", `${name} must be one of "${known.join('", "')}": got ${describeGiven(given)}`, {
    name,
  });
}
