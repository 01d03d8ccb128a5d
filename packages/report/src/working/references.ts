import type { Source, Step } from "@tarewatt/units";
import { readSteps } from "./read-steps.js";

/**
 * The sources that a calculation rests on, each one once, in the order of their first use.
 *
 * @param steps - the steps
 * @returns the sources; `sourceLine` prints one
 * @throws InputError `NOT_AN_OBJECT`, `WRONG_CHOICE` and ReportError `NOT_A_TEXT` when these are no steps
 * @example
 * references(working).map(sourceLine); // ["ISO 2533:1975, 2.7 (from memory, not checked)", ...]
 */
export function references(steps: readonly Step[]): readonly Source[] {
  const found = new Map<string, Source>();
  for (const { source } of readSteps("steps", steps)) {
    const key = JSON.stringify([source.document, source.section ?? "", source.status]);
    if (!found.has(key)) found.set(key, source);
  }
  return Object.freeze([...found.values()]);
}
