import { describeGiven } from "../check/describe-given.js";
import { InputError } from "../check/errors.js";

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
  const short = word.slice(0, 40).toLowerCase();
  const limit = Math.max(1, Math.floor(short.length / 3));
  return [...known]
    .map((candidate) => {
      if (typeof candidate !== "string") refuse("a known word", "a text", candidate);
      return { candidate, distance: editDistance(short, candidate.toLowerCase()) };
    })
    .filter(({ distance }) => distance <= limit)
    .sort((a, b) => a.distance - b.distance)
    .map(({ candidate }) => candidate);
}

function refuse(name: string, expected: string, thing: unknown): never {
  throw new InputError("WRONG_CHOICE", `${name} must be ${expected}: got ${describeGiven(thing)}`, { name, expected });
}

/** Insertions, deletions, substitutions and swaps of neighbours, one each (optimal string alignment). */
function editDistance(a: string, b: string): number {
  let before: number[] = [];
  let previous = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const substitution = previous[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1);
      const swap = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1] ? before[j - 2]! + 1 : Infinity;
      row.push(Math.min(previous[j]! + 1, row[j - 1]! + 1, substitution, swap));
    }
    [before, previous] = [previous, row];
  }
  return previous[b.length]!;
}
