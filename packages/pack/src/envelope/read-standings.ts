import { describeGiven, InputError, nearest } from "@tarewatt/units";
import type { CellStanding } from "../cell/footprint.js";
import { isArray } from "../check/is-array.js";

const all: readonly CellStanding[] = /* @__PURE__ */ Object.freeze(["height up", "width up", "thickness up"] as const);

/** @internal Reads which ways a box may stand; all when nothing is given. */
export function readStandings(given: unknown): readonly CellStanding[] {
  if (given === undefined) return all;
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
    throw new InputError("WRONG_CHOICE", `standings cannot hold ${describeGiven(each)}: did you mean ${near}?`, {});
  });
  return all.filter((standing) => wanted.includes(standing));
}
