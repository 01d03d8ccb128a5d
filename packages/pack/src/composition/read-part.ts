import { describeGiven, InputError, nearest, readNumber } from "@tarewatt/units";
import { readText } from "../check/read-text.js";
import type { PackPart, PartGroup } from "./pack-part.js";

const groups: readonly PartGroup[] = [
  "holders",
  "cooling",
  "conductors",
  "electronics",
  "fire barrier",
  "housing",
  "other",
];

/** @internal Reads what a part is for. */
export function readGroup(group: unknown): PartGroup {
  const known = groups.find((each) => each === group);
  if (known !== undefined) return known;
  const [near = groups.join(", ")] = typeof group === "string" ? nearest(group, groups) : [];
  throw new InputError("WRONG_CHOICE", `group cannot be ${describeGiven(group)}: did you mean ${near}?`, { groups });
}

/** @internal Reads how a part is counted. */
export function readCounted(counted: unknown = "once"): PackPart["counted"] {
  if (counted === "once" || counted === "with each cell") return counted;
  throw new InputError("WRONG_CHOICE", `counted is "once" or "with each cell": got ${describeGiven(counted)}`, {});
}

/** @internal Checks a part by what it holds: it may come from another copy of the package. */
export function readPart(name: string, thing: unknown): PackPart {
  const held = (typeof thing === "object" && thing !== null ? thing : {}) as {
    readonly [K in keyof PackPart]?: unknown;
  };
  if (typeof held.working !== "function") {
    const made = `${name} must be made with sheetPart, fillPart or weighedPart`;
    throw new InputError("NOT_AN_OBJECT", `${made}: got ${describeGiven(thing)}`, { name });
  }
  if (readText(`${name}.name`, held.name) === undefined) {
    throw new InputError("MISSING_OPTION", `${name} needs a name`, { name });
  }
  readGroup(held.group);
  readCounted(held.counted);
  readNumber(`${name}.mass`, held.mass, { unit: "kg", atLeast: 0 });
  if (held.volume !== undefined) readNumber(`${name}.volume`, held.volume, { unit: "L", atLeast: 0 });
  return thing as PackPart;
}
