import { describeGiven, InputError } from "@tarewatt/units";

/** A text that says something. @internal */
export function readWords(name: string, given: unknown): string {
  if (typeof given === "string" && given.trim() !== "") return given;
  if (typeof given === "string") throw new InputError("EMPTY", `${name} must be a text that is not empty`, { name });
  throw new InputError("WRONG_CHOICE", `${name} must be a text: got ${describeGiven(given)}`, { name });
}

/** A text that may be left out. @internal */
export function readWordsIfGiven(name: string, given: unknown): string | undefined {
  return given === undefined ? undefined : readWords(name, given);
}

/** The texts of a list that may come from elsewhere; what is no list of texts says nothing. @internal */
export function textsOf(given: unknown): string[] {
  return Array.isArray(given) ? given.filter((each): each is string => typeof each === "string") : [];
}
