import { isQuantity } from "@tarewatt/units";
import { describe, expect, it } from "vitest";
import * as roadload from "../src/index.js";
import { plainDrivetrain, plainLoad } from "./support.js";

/** Paths of objects that somebody could change, from a thing down through its data. */
function changeable(thing: unknown, path: string): string[] {
  if (typeof thing !== "object" || thing === null || isQuantity(thing)) return [];
  const inside = Object.entries(thing).flatMap(([key, value]) => changeable(value, `${path}.${key}`));
  return Object.isFrozen(thing) ? inside : [path, ...inside];
}

describe("what the package shares", () => {
  const data = Object.entries(roadload).filter(([, thing]) => typeof thing === "object");

  it("is found by this test", () => {
    expect(data.map(([name]) => name)).toEqual(
      expect.arrayContaining([
        "losses",
        "coastDownLosses",
        "referenceAir",
        "standardGravity",
        "combinedWeights",
        "udds",
      ]),
    );
    expect(changeable({ a: { b: [1] } }, "x")).toEqual(["x", "x.a", "x.a.b"]);
  });

  it.each(data)("%s cannot be changed, down to its sources", (name, thing) => {
    expect(changeable(thing, name)).toEqual([]);
  });

  it.each([
    ["a road load", plainLoad],
    ["its forces", plainLoad.at(roadload.udds.maximumSpeed)],
    ["a certified load", roadload.toCertified(plainLoad)],
    ["a drivetrain", plainDrivetrain],
    [
      "a trace",
      roadload.speedTrace({
        name: "own",
        time: [0, 1],
        speed: [1, 1],
        speedUnit: "m/s",
        source: { document: "own", status: "definition" },
      }),
    ],
  ])("%s cannot be changed either", (name, thing) => {
    expect(changeable(thing, name)).toEqual([]);
  });
});
