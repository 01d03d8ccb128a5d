import { describeGiven, InputError, nearest } from "@tarewatt/units";
import { type Chemistry, type ChemistryName, chemistries } from "./chemistries.js";

/** @internal Finds a chemistry by its name. */
export function readChemistry(name: unknown): Chemistry {
  if (typeof name === "string" && Object.hasOwn(chemistries, name)) return chemistries[name as ChemistryName];
  const known = Object.keys(chemistries);
  const [near = known.join(", ")] = typeof name === "string" ? nearest(name, known) : [];
  throw new InputError("WRONG_CHOICE", `chemistry cannot be ${describeGiven(name)}: did you mean ${near}?`, { known });
}
