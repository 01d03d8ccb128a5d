import { plainData, q, quantity } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  certifiedRoadLoad,
  driveCycle,
  moveRoadLoad,
  type RoadLoad,
  roadLoad,
  roadLoadFromJSON,
  roadLoadInWind,
  speedTrace,
  steadySpeed,
  udds,
  withAddOns,
} from "../../src/index.js";
import { codeOf, loads, plainDrivetrain, plainLoad } from "../support.js";

const certified = certifiedRoadLoad({
  ...{ constant: q("30 lbf"), linear: q("0.2 lbf/mph"), quadratic: q("0.018 lbf/mph²") },
  conditions: {
    ...{ testMass: q("4000 lb"), airDensity: q("1.166 kg/m³"), temperature: q("68 °F"), standard: "SAE J2263" },
  },
  holds: ["air", "tyres"],
});
const back = (load: RoadLoad): RoadLoad => roadLoadFromJSON(JSON.parse(JSON.stringify(load)));
const speeds = [0, 7, 100].map((v) => quantity(v, "km/h"));

/** The same fields, and the same forces to the last bit. */
function expectSame(load: RoadLoad): void {
  const again = back(load);
  expect(plainData(again)).toEqual(plainData(load));
  for (const speed of speeds) {
    expect(again.at(speed, { grade: 0.03 }).total.in("N")).toBe(load.at(speed, { grade: 0.03 }).total.in("N"));
  }
  expect(roadLoadFromJSON(structuredClone(plainData(load)))).toEqual(expect.objectContaining({ form: load.form }));
}

describe("a road load from JSON", () => {
  it("is the load that was written, to the last bit", () => {
    fc.assert(fc.property(loads, (load) => expectSame(load)));
  });

  it("keeps basis, conditions, wind, what is towed, its cautions, and what was moved", () => {
    expectSame(certified);
    expectSame(roadLoadInWind(certified, { headWind: q("-4 m/s") }));
    const built = { dragCoefficient: 0.28, frontalArea: q("30 ft²"), rollingResistanceCoefficient: 0.009 };
    expectSame(roadLoad({ mass: q("2 t"), massBasis: "curb + driver", ...built, airDensity: q("1.2 kg/m³") }));
    expectSame(moveRoadLoad(plainLoad, { temperature: q("-7 °C"), fromTemperature: q("20 °C") }).load);
    const trailer = { name: "trailer", mass: q("900 kg"), dragArea: q("0.9 m²"), rollingResistanceCoefficient: 0.012 };
    const towing = withAddOns(plainLoad, [{ ...trailer, source: "invented" }]).load;
    expect(towing.cautions?.length).toBeGreaterThan(0);
    expectSame(towing);
  });

  it("refuses what is no road load, and figures that none has", () => {
    const json = (more: object) =>
      codeOf(() => roadLoadFromJSON({ ...JSON.parse(JSON.stringify(plainLoad)), ...more }));
    for (const nothing of [null, undefined, 5, "load", [], {}, { form: "other" }]) {
      expect(codeOf(() => roadLoadFromJSON(nothing))).toBe("WRONG_CHOICE");
    }
    expect(json({})).toBe("nothing thrown");
    expect(json({ mass: 2000 })).toBe("BAD_JSON");
    expect(json({ mass: { value: 2000, unit: "kWh", kind: "" } })).toBe("WRONG_DIMENSION");
    expect(json({ mass: { value: -1, unit: "kg", kind: "" } })).toBe("NEGATIVE");
    expect(json({ rollingResistanceCoefficient: "0.009" })).toBe("NOT_A_QUANTITY");
    expect(json({ holds: ["air", "tires"] })).toBe("WRONG_CHOICE");
    expect(json({ conditions: null })).toBe("WRONG_CHOICE");
  });
});

describe("results and inputs as plain data", () => {
  it("give the same drive again, in another place", () => {
    const driven = { load: plainLoad, drivetrain: plainDrivetrain, accessories: q("300 W") };
    const sent = structuredClone(
      plainData({ load: plainLoad, cycle: { ...udds, segments: undefined } }),
    ) as unknown as {
      readonly load: unknown;
      readonly cycle: { readonly name: string; readonly time: number[]; readonly speed: number[] };
    };
    const { name, time, speed } = sent.cycle;
    const cycle = speedTrace({ name, time, speed, speedUnit: "m/s" });
    const again = driveCycle({ ...driven, cycle, load: roadLoadFromJSON(sent.load) });
    const first = driveCycle({ ...driven, cycle: udds });
    expect(plainData(again.ledger)).toEqual(plainData(first.ledger));
    const stored = JSON.parse(JSON.stringify(plainData(steadySpeed({ ...driven, speed: q("90 km/h") }))));
    expect(stored.working.length).toBeGreaterThan(2);
    const series = driveCycle({ ...driven, cycle: udds, series: true });
    expect((plainData(series) as never as typeof series).series?.speed).toEqual([...(series.series?.speed ?? [])]);
  });
});
