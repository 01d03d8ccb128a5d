import { isQuantity } from "../quantity/brand.js";
import { shortNumber, withUnit } from "../quantity/format.js";

const LONGEST_TEXT = 60;

/**
 * What was given, in words, for the message of an error: works for anything, also for what cannot be turned into a text.
 *
 * @param thing - anything
 * @returns a few words such as `"the text 'five'"`, `"an array"` or `"−3 kg"`; never throws
 * @example
 * describeGiven({}); // "an object"
 * describeGiven("five"); // "the text 'five'"
 */
export function describeGiven(thing: unknown): string {
  if (isQuantity(thing)) return withUnit(shortNumber(thing.value), thing.unit);
  if (typeof thing === "string") return `the text '${thing.slice(0, LONGEST_TEXT)}'`;
  if (typeof thing === "number" || typeof thing === "boolean" || thing == null) return String(thing);
  if (typeof thing !== "object") return `a ${typeof thing}`;
  try {
    return Array.isArray(thing) ? "an array" : "an object";
  } catch {
    return "a revoked proxy";
  }
}

/** The same without quotation marks around a text, for places where a name is expected. @internal */
export function nameOf(thing: unknown): string {
  return typeof thing === "string" ? thing.slice(0, LONGEST_TEXT) : describeGiven(thing);
}
