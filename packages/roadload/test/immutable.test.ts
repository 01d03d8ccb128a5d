import { isQuantity, q } from "@tarewatt/units";
import { describe, expect, it } from "vitest";
import * as roadload from "../src/index.js";
import { plainDrivetrain, plainLoad } from "./support.js";

/** Paths of objects that somebody could change, from a thing down through its data. */
function changeable(thing: unknown, path: string): string[] {
  if (typeof thing !== "object" || thing === null || isQuantity(thing)) return [];
  const inside = Object.entries(thing).flatMap(([key, value]) => changeable(value, `${path}.${key}`));
  return Object.isFrozen(thing) ? inside : [path, ...inside];
}

const ends = { from: q("100 km/h"), to: q("20 km/h"), step: q("5 s") };
const coastDown = roadload.coastDown({
  runs: [{ direction: "out", ...roadload.simulateCoastDown({ load: plainLoad, ...ends }) }],
  ...{ speedUnit: "m/s", testMass: q("2 t"), air: { temperature: q("20 °C"), pressure: q("1 bar") } },
});
const wind = { windSpeed: q("3 m/s"), vehicleSpeed: q("100 km/h") };

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
    ["a coast-down", coastDown],
    ["a moved load", roadload.moveRoadLoad(plainLoad, { mass: q("2.2 t") })],
    ["its changes", roadload.moveRoadLoad(plainLoad, { mass: q("2.2 t") }).changesAt(q("20 m/s"))],
    ["a bridge", roadload.roadLoadBridge({ from: plainLoad, to: plainLoad, speed: q("20 m/s") })],
    ["tyres", roadload.radialTyres()],
    [
      "a load with things added",
      roadload.withAddOns(plainLoad, [{ name: "box", dragArea: q("0.1 m²"), source: "own" }]),
    ],
    ["a tyre class", roadload.tyreClass({ letter: "B", category: "C1", regulation: "EU 2020/740" })],
    ["a climate", roadload.cabinClimate({ ambient: q("-7 °C"), target: q("20 °C"), heater: "heat pump" })],
    ["a drag area in wind", roadload.windAveragedDragArea({ dragArea: q("0.6 m²"), ...wind })],
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
