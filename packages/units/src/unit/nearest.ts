import { describeGiven } from "../check/describe-given.js";
import { InputError } from "../check/errors.js";
import { nearestOf } from "./likeness.js";

/**
 * The known words nearest to a misspelt one, nearest first; empty when nothing is near.
 *
 * @param word - what was given
 * @param known - what would have been understood
 * @throws InputError `WRONG_CHOICE` when one of them is no text
 * @example
 * nearest("dragCoeficient", ["dragCoefficient", "frontalArea"]); // ["dragCoefficient"]
 */
export function nearest(word: string, known: Iterable<string>): string[] {
  if (typeof word !== "string") refuse("the word", "a text", word);
  if (typeof Object(known)[Symbol.iterator] !== "function") refuse("the known words", "a list of texts", known);
  const words = [...known];
  for (const each of words) if (typeof each !== "string") refuse("a known word", "a text", each);
  return nearestOf(word, words);
}

function refuse(name: string, expected: string, thing: unknown): never {
  throw new InputError("WRONG_CHOICE", `${name} must be ${expected}: got ${describeGiven(thing)}`, { name, expected });
}
