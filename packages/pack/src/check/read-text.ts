import { describeGiven, InputError } from "@tarewatt/units";

/** Longest text kept: a label, not an essay. */
const LONGEST = 200;

/** @internal Checks an optional text among the options: absent, or some words. */
export function readText(name: string, text: unknown): string | undefined {
  if (text === undefined) return undefined;
  if (typeof text !== "string") {
    throw new InputError("WRONG_CHOICE", `${name} must be a text: got ${describeGiven(text)}`, {
      name,
      expected: "text",
    });
  }
  if (text.trim() === "") {
    throw new InputError("EMPTY", `${name} must not be empty: leave it out when there is nothing to say`, { name });
  }
  if (text.length > LONGEST) {
    throw new InputError("TOO_LONG", `${name} has at most ${LONGEST} characters: got ${text.length}`, { name });
  }
  return text;
}
