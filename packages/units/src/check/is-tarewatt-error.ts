import type { TarewattError } from "../quantity/errors.js";

const names: readonly unknown[] = ["TarewattError", "QuantityError", "InputError"];

/**
 * Whether something that was thrown is an error of this library, from whatever copy of it.
 *
 * `instanceof` knows the classes of its own copy only: an error of the CommonJS build is no instance of the ES module's class,
 * and an application may hold two versions. What tells the errors apart is their `code`.
 *
 * @param thrown - anything
 * @returns true for a `TarewattError`, `QuantityError` or `InputError`
 * @example
 * try {
 *   q<string>("5 kgg");
 * } catch (error) {
 *   isTarewattError(error) && error.code; // "UNKNOWN_UNIT"
 * }
 */
export function isTarewattError(thrown: unknown): thrown is TarewattError {
  try {
    const { name, code, details } = thrown as Partial<TarewattError>;
    return thrown instanceof Error && names.includes(name) && typeof code === "string" && typeof details === "object";
  } catch {
    return false;
  }
}
