import { q } from "@tarewatt/units";
import { describe, expect, it } from "vitest";
import * as roadload from "../src/index.js";
import {
  type CertifiedRoadLoad,
  certifiedRoadLoad,
  type Drivetrain,
  defaultRoadLoad,
  driveCycle,
  efficiencyDrivetrain,
  type PhysicalRoadLoad,
  type RangeBasis,
  type RoadLoad,
  rangeOn,
  roadLoadNumbers,
  speedTrace,
  steadySpeed,
  toCertified,
  toPhysical,
  udds,
  wheelEnergies,
  wheelEnergy,
} from "../src/index.js";
import { codeOf, plainDrivetrain, plainLoad } from "./support.js";

/** Things that a program without types may hand over. A null prototype has no `toString`. */
const garbage: readonly unknown[] = [
  undefined,
  null,
  0,
  Number.NaN,
  "text",
  true,
  [],
  {},
  () => 1,
  Symbol("s"),
  1n,
  Object.create(null),
  [Symbol("s")],
  { name: Symbol("s"), form: "physical", kind: "table" },
];

/** What a call throws, as far as it is no error of the library. */
function untyped(call: () => unknown): string | undefined {
  try {
    call();
  } catch (error) {
    const { code, message } = error as { code?: unknown; message?: unknown };
    if (typeof code === "string" && typeof message === "string" && !message.includes("a object")) return undefined;
    return String(error);
  }
  return undefined;
}

/** A thing with one part after the other, at any depth, replaced by garbage. */
function* spoilt(thing: object, depth = 3): Generator<object> {
  for (const [key, value] of Object.entries(thing)) {
    // A function of the caller's own may return anything: it is not put in the place of another.
    const fitting = garbage.filter((junk) => typeof junk !== "function" || typeof value !== "function");
    for (const junk of fitting) yield { ...thing, [key]: junk };
    const inside =
      depth > 1 && typeof value === "object" && value !== null && Object.getPrototypeOf(value) === Object.prototype;
    if (inside) for (const part of spoilt(value as object, depth - 1)) yield { ...thing, [key]: part };
  }
}

const certified = certifiedRoadLoad({
  constant: q("130 N"),
  linear: q("0 N/(m/s)"),
  quadratic: q("0.45 N/(m/s)²"),
  conditions: { testMass: q("1900 kg"), airDensity: q("1.17 kg/m³") },
});
const driven = { cycle: udds, load: plainLoad, drivetrain: plainDrivetrain, accessories: q("350 W"), grade: 0.01 };
const steady = { speed: q("110 km/h"), load: certified, drivetrain: plainDrivetrain, accessories: q("350 W") };
const lists = () => ({
  constant: new Float64Array(1),
  linear: new Float64Array(1),
  quadratic: new Float64Array(1),
  inertiaMass: new Float64Array(1),
});

describe("whatever is handed over, errors are the library's own", () => {
  const functions = Object.entries(roadload).filter(
    (entry): entry is [string, ((...given: unknown[]) => unknown) & (typeof entry)[1]] =>
      typeof entry[1] === "function",
  );

  it.each(functions)("%s, called with garbage", (_, call) => {
    const pairs = [[], ...garbage.map((one) => [one]), ...garbage.map((other) => [garbage[7], other])];
    expect(pairs.map((given) => untyped(() => call(...given))).filter(Boolean)).toEqual([]);
  });

  it.each<[string, object, (options: never) => unknown]>([
    ["driveCycle", driven, driveCycle],
    ["driveCycle and its working", driven, (options) => driveCycle(options).working()],
    ["driveCycle of a model", { ...driven, drivetrain: { ...plainDrivetrain, form: "own" } }, driveCycle],
    ["steadySpeed and its working", steady, (options) => steadySpeed(options).working()],
    ["speedTrace", { name: "t", time: [0, 1], speed: [1, 1], speedUnit: "m/s", source: udds.source }, speedTrace],
    [
      "efficiencyDrivetrain",
      { efficiency: 0.9, regeneration: { share: 1 }, contains: ["motor"] },
      efficiencyDrivetrain,
    ],
    [
      "roadLoad",
      {
        mass: q("2 t"),
        dragArea: q("0.7 m²"),
        rollingResistanceCoefficient: 0.01,
        airDensity: q("1.2 kg/m³"),
        massBasis: "curb",
      },
      roadload.roadLoad,
    ],
    [
      "certifiedRoadLoad",
      { ...certified.coefficients, conditions: { ...certified.conditions, standard: "own" }, holds: ["air"] },
      certifiedRoadLoad,
    ],
    ["roadLoadNumbers", plainLoad, roadLoadNumbers],
    ["toCertified", plainLoad, toCertified],
    ["toPhysical", certified, toPhysical],
    ["rangeOn", { usableEnergy: q("75 kWh"), result: driveCycle(driven) }, rangeOn],
    ["wheelEnergy of a load", roadLoadNumbers(plainLoad), (load) => wheelEnergy(udds, load)],
    ["wheelEnergies of lists", lists(), (all) => wheelEnergies(udds, all)],
    [
      "wheelEnergies into lists",
      { driving: new Float64Array(1), braking: new Float64Array(1) },
      (out) => wheelEnergies(udds, lists(), out),
    ],
  ])("%s, with one part spoilt", (_, good, call) => {
    expect(untyped(() => call(good as never))).toBeUndefined();
    const found = [...spoilt(good)].map((options) => untyped(() => call(options as never))).filter(Boolean);
    expect(found).toEqual([]);
  });
});

describe("errors name what is wrong", () => {
  const bad = (load: object, more: object): string =>
    codeOf(() => driveCycle({ ...driven, load: { ...load, ...more } as RoadLoad }));

  it("in a road load that was changed by hand", () => {
    expect(bad(plainLoad, { mass: 2000 })).toBe("NOT_A_QUANTITY");
    expect(bad(plainLoad, { inertiaMass: q("2 m") })).toBe("WRONG_DIMENSION");
    expect(bad(plainLoad, { coefficients: null })).toBe("NOT_A_QUANTITY");
    expect(bad(plainLoad, { holds: "air" })).toBe("WRONG_CHOICE");
    expect(bad(plainLoad, { dragArea: undefined })).toBe("NOT_A_QUANTITY");
    expect(bad(certified, { conditions: {} })).toBe("NOT_A_QUANTITY");
    expect(codeOf(() => toCertified({ ...plainLoad, mass: 1 } as unknown as PhysicalRoadLoad))).toBe("NOT_A_QUANTITY");
    expect(codeOf(() => toCertified(certified as unknown as PhysicalRoadLoad))).toBe("WRONG_CHOICE");
    expect(codeOf(() => toPhysical(plainLoad as unknown as CertifiedRoadLoad))).toBe("WRONG_CHOICE");
  });

  it("where nothing is given at all", () => {
    expect(codeOf(() => defaultRoadLoad(undefined as never))).toBe("NOT_AN_OBJECT");
    expect(codeOf(() => roadLoadNumbers(plainLoad, null as never))).toBe("NOT_AN_OBJECT");
    expect(codeOf(() => wheelEnergy(udds, null as never))).toBe("NOT_A_NUMBER");
    expect(codeOf(() => wheelEnergies(udds, null as never))).toBe("WRONG_CHOICE");
    expect(codeOf(() => wheelEnergies(udds, lists(), {} as never))).toBe("WRONG_CHOICE");
  });

  it("in a result that gives no consumption", () => {
    const result = { procedure: "own", batteryBoundary: "terminals", consumption: { atBattery: 200 } };
    const range = (more: object) =>
      codeOf(() => rangeOn({ usableEnergy: q("75 kWh"), result: { ...result, ...more } as unknown as RangeBasis }));
    expect(range({})).toBe("NOT_A_QUANTITY");
    expect(range({ consumption: { atBattery: q("200 N") } })).toBe("WRONG_DIMENSION");
    expect(range({ consumption: {} })).toBe("WRONG_CHOICE");
    expect(range({ consumption: { atBattery: q("200 Wh/km") }, batteryBoundary: "wheel" })).toBe("WRONG_CHOICE");
    expect(range({ consumption: { atBattery: q("200 Wh/km") } })).toBe("nothing thrown");
  });

  it("in a row of a trace, a loss and a name", () => {
    const trace = (speed: unknown[]) => () =>
      speedTrace({ name: "t", time: [0, 1], speed: speed as number[], speedUnit: "m/s" });
    expect(trace([1, Symbol("s")])).toThrow("speed must be a finite number: got a symbol in row 2");
    expect(trace([1, 1n])).toThrow("got a bigint in row 2");
    expect(trace([Object.create(null), 1])).toThrow("got an object in row 1");
    const own: Drivetrain = { ...plainDrivetrain, contains: ["moter" as "motor"] };
    expect(() => driveCycle({ ...driven, drivetrain: own })).toThrow(
      "drivetrain.contains has no loss 'moter': did you mean 'motor'?",
    );
    expect(codeOf(() => driveCycle({ ...driven, drivetrain: { ...own, name: 7 as never } }))).toBe("WRONG_CHOICE");
    expect(() => efficiencyDrivetrain({ ...plainDrivetrain, contains: [] } as never)).toThrow();
  });
});
