import { describeGiven, InputError, nearest } from "@tarewatt/units";
import type { CellStanding } from "../cell/footprint.js";
import { isArray } from "../check/is-array.js";

const ofBoxes: readonly CellStanding[] = /* @__PURE__ */ Object.freeze([
  "height up",
  "width up",
  "thickness up",
] as const);
const ofCylinders: readonly CellStanding[] = /* @__PURE__ */ Object.freeze([
  "height up",
  "axis along",
  "axis across",
] as const);
/** Cylinders are cooled, welded and vented at their ends, so they stand unless somebody says that they may lie. */
const upright: readonly CellStanding[] = /* @__PURE__ */ Object.freeze(["height up"] as const);

/** @internal Reads which ways a cell may stand; when nothing is given a box may stand any way, a cylinder upright. */
export function readStandings(given: unknown, cylindrical: boolean): readonly CellStanding[] {
  if (given === undefined) return cylindrical ? upright : ofBoxes;
  const all = cylindrical ? ofCylinders : ofBoxes;
  if (!isArray(given) || given.length === 0) {
    throw new InputError(
      "WRONG_CHOICE",
      `standings must be some of ${all.join(", ")}: got ${describeGiven(given)}`,
      {},
    );
  }
  const wanted = Array.from(given, (each: unknown): CellStanding => {
    const known = all.find((standing) => standing === each);
    if (known !== undefined) return known;
    const [near = all.join(", ")] = typeof each === "string" ? nearest(each, all) : [];
    throw new InputError(
      "WRONG_CHOICE",
      `standings of a ${cylindrical ? "cylinder" : "box"} cannot hold ${describeGiven(each)}: did you mean ${near}?`,
      {},
    );
  });
  return all.filter((standing) => wanted.includes(standing));
}
