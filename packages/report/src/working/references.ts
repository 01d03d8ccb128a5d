import type { Source, Step } from "@tarewatt/units";
import { readSteps } from "./read-steps.js";

/**
 * The sources that a calculation rests on, each one once, in the order of their first use.
 *
 * @param steps - the steps
 * @returns the sources; `sourceLine` prints one
 * @throws InputError `NOT_AN_OBJECT`, `WRONG_CHOICE` and ReportError `NOT_A_TEXT` when these are no steps
 * @example
 * const air = { airDensity: q("1.2 kg/m³"), dragArea: q("0.75 m²") };
 * const slow = aerodynamicDrag.explain({ ...air, airSpeed: q("80 km/h") });
 * const fast = aerodynamicDrag.explain({ ...air, airSpeed: q("120 km/h") });
 * references([slow, fast]).map(sourceLine); // ["Theory of Ground Vehicles (Wiley), chapter 3 (from memory, not checked)"]
 */
export function references(steps: readonly Step[]): readonly Source[] {
  const found = new Map<string, Source>();
  for (const { source } of readSteps("steps", steps)) {
    const key = JSON.stringify([source.document, source.section ?? "", source.status]);
    if (!found.has(key)) found.set(key, source);
  }
  return Object.freeze([...found.values()]);
}
