import type { Dimension } from "../dimension/dimension.js";
import { labelOf } from "../dimension/table.js";
import { fail } from "./errors.js";

/** @internal Throws for another dimension or another kind; the message is made of the names of what was given and expected. */
export function mismatch(
  given: Dimension,
  expected: Dimension,
  message: (given: string, expected: string) => string,
): never {
  const details = { given: labelOf(given), expected: labelOf(expected) };
  const code = given.key === expected.key ? "WRONG_KIND" : "WRONG_DIMENSION";
  return fail(code, message(details.given, details.expected), details);
}
