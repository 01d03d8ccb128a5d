import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  changeLeft,
  changeOfWhole,
  massChangeAtEqualEnergy,
  overlapsOf,
  type RelativeStatementOptions,
  relativeStatement,
} from "../../src/index.js";

const than = "the last model (invented)";
const denserCell = { change: 0.2, of: "specific energy", part: "cell", than } as const;
const lighterPack = { change: -0.15, of: "mass", part: "pack", than } as const;
const lighterBody = { change: -0.1, of: "mass", part: "body", than } as const;
const lighterVehicle = { change: -0.05, of: "mass", part: "vehicle", than } as const;
const further = { change: 0.15, of: "range", part: "vehicle", than } as const;
const denserByVolume = { change: 0.1, of: "energy density", part: "pack", than } as const;

describe("a relative statement", () => {
  it("names its base in words", () => {
    expect(relativeStatement(lighterPack).words).toBe("mass of the pack 15 % less than the last model (invented)");
  });

  it.each([
    ["OUT_OF_RANGE", { ...lighterPack, change: -1 }],
    ["OUT_OF_RANGE", { ...lighterPack, change: -15 }],
    ["WRONG_CHOICE", { ...lighterPack, of: "weight" }],
    ["WRONG_CHOICE", { ...lighterPack, of: "__proto__" }],
    ["WRONG_CHOICE", { ...lighterPack, part: "wheel" }],
    ["WRONG_CHOICE", { ...further, part: "pack" }],
    ["WRONG_CHOICE", { ...lighterPack, than: "" }],
    ["MISSING_OPTION", { change: -0.1, of: "mass", part: "pack" }],
  ])("is refused with %s: %o", (code, options) => {
    expect(() => relativeStatement(options as never)).toThrow(expect.objectContaining({ code }));
  });
});

describe("overlap of statements", () => {
  const pairs = (...given: RelativeStatementOptions[]) =>
    overlapsOf(given).map(({ cause, effect }) => `${cause.part} ${cause.of} in ${effect.part} ${effect.of}`);

  it("is found where one can be the cause of the other, inside out, in either order", () => {
    expect(pairs(denserCell, lighterPack)).toEqual(["cell specific energy in pack mass"]);
    expect(pairs(lighterPack, denserCell)).toEqual(["cell specific energy in pack mass"]);
    expect(pairs(lighterVehicle, lighterBody)).toEqual(["body mass in vehicle mass"]);
    expect(pairs(denserCell, further)).toEqual(["cell specific energy in vehicle range"]);
  });

  it("is not found between parts beside each other, or between quantities that do not meet", () => {
    expect(pairs(denserCell, lighterBody)).toEqual([]);
    expect(pairs(lighterPack, lighterBody)).toEqual([]);
    expect(pairs(lighterVehicle, denserByVolume)).toEqual([]);
  });

  it("is always found between a statement and itself repeated, and asks when the bases differ", () => {
    const any = fc.constantFrom(denserCell, lighterPack, lighterBody, lighterVehicle, further, denserByVolume);
    fc.assert(
      fc.property(any, (statement) => {
        expect(overlapsOf([statement, relativeStatement(statement)])).toHaveLength(1);
      }),
    );
    const other = overlapsOf([denserCell, { ...lighterPack, than: "a rival (invented)" }])[0];
    expect(other?.sameBase).toBe(false);
    expect(other?.words).toContain("different things");
  });
});

describe("changes of parts and wholes", () => {
  it("fit together: what is explained and what is left make the stated change", () => {
    const change = fc.double({ min: -0.9, max: 3, noNaN: true });
    fc.assert(
      fc.property(change, change, (stated, explained) => {
        const left = changeLeft({ stated, explained });
        expect((1 + explained) * (1 + left)).toBeCloseTo(1 + stated, 9);
        expect(changeLeft({ stated, explained: stated })).toBeCloseTo(0, 12);
      }),
    );
  });

  it("of the whole follow from masses added up: 400 kg of 2000 kg, 10 % lighter", () => {
    expect(changeOfWhole({ share: 400 / 2000, change: -0.1 })).toBeCloseTo((1600 + 360) / 2000 - 1, 12);
  });

  it("of mass at equal energy follow from E = m·e: 100 kWh at 200 and at 250 Wh/kg", () => {
    expect(massChangeAtEqualEnergy({ specificEnergyChange: 250 / 200 - 1 })).toBeCloseTo(400 / 500 - 1, 12);
  });
});
