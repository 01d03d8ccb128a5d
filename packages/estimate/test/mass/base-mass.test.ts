import { q } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { baseMass, type Comparator } from "../../src/index.js";

const a: Comparator = { name: "A (invented)", curbMass: q("2480 kg"), packMass: q("560 kg") };
const b: Comparator = { name: "B (invented)", curbMass: q("2390 kg"), packMass: q("530 kg") };

describe("base mass from comparators", () => {
  it("is the mean of curb mass less pack mass and adjustments", () => {
    const { mass, referencePackMass, comparators } = baseMass({
      comparators: [
        { ...a, adjustments: [{ reason: "second motor", mass: q("-80 kg") }] },
        { ...b, adjustments: [{ reason: "longer body", share: 0.05, of: "base mass" }] },
      ],
      adjustments: [{ reason: "glass roof", mass: q("20 lb") }],
    });
    const roof = 20 * 0.45359237;
    expect(comparators.map(({ adjusted }) => adjusted.in("kg"))).toEqual([1840 + roof, 1860 * 1.05 + roof]);
    expect(mass.likely.in("kg")).toBeCloseTo((1840 + 1953) / 2 + roof, 9);
    expect(referencePackMass.in("kg")).toBe(545);
  });

  it("spreads by the prediction interval of the comparators: t90 · s · √(1 + 1/n)", () => {
    const { mass, scatter } = baseMass({ comparators: [a, b] });
    // two comparators 60 kg apart: s = 60/√2, one degree of freedom, t90 = 3.078
    const expected = 3.078 * (60 / Math.SQRT2) * Math.sqrt(1.5);
    expect(scatter.in("kg")).toBeCloseTo(expected, 9);
    expect(mass.high.minus(mass.likely).in("kg")).toBeCloseTo(expected, 9);
    expect(mass.likely.minus(mass.low).in("kg")).toBeCloseTo(expected, 9);
  });

  it("adds the spread of different reasons as a root of squares, and of one reason straight", () => {
    const half = (reasons: readonly [string, string]): number => {
      const adjusted = [a, b].map((each, i) => ({
        ...each,
        adjustments: [{ reason: reasons[i] as string, mass: { low: q("0 kg"), likely: q("40 kg"), high: q("80 kg") } }],
      }));
      const { mass } = baseMass({ comparators: adjusted, scatter: 0 });
      return mass.high.minus(mass.likely).in("kg");
    };
    expect(half(["third row", "third row"])).toBeCloseTo(40, 9);
    expect(half(["third row", "sliding doors"])).toBeCloseTo(Math.hypot(20, 20), 9);
  });

  it("names the mass that a share refers to: the same share of another mass is another adjustment", () => {
    const lighter = (of: "base mass" | "curb mass" | "pack mass"): number =>
      baseMass({
        comparators: [{ ...a, adjustments: [{ reason: "structural pack", share: -0.1, of }] }],
        scatter: 0.03,
      }).mass.likely.in("kg");
    expect(lighter("base mass")).toBeCloseTo(1920 - 192, 9);
    expect(lighter("curb mass")).toBeCloseTo(1920 - 248, 9);
    expect(lighter("pack mass")).toBeCloseTo(1920 - 56, 9);
  });

  it("does not depend on the order of the comparators, and shifts with all of them", () => {
    const masses = fc.array(fc.integer({ min: 1500, max: 2500 }), { minLength: 2, maxLength: 6 });
    fc.assert(
      fc.property(masses, fc.integer({ min: -200, max: 200 }), (given, shift) => {
        const of = (curbs: readonly number[]): number =>
          baseMass({
            comparators: curbs.map((curb, i) => ({
              name: `x${i}`,
              curbMass: q(`${curb} kg` as "1 kg"),
              packMass: q("0 kg"),
            })),
            scatter: 0,
          }).mass.likely.in("kg");
        expect(of([...given].reverse())).toBeCloseTo(of(given), 6);
        expect(of(given.map((each) => each + shift))).toBeCloseTo(of(given) + shift, 6);
      }),
    );
  });

  it("shows its steps, one comparator after the other", () => {
    const working = baseMass({ comparators: [a, b] }).working();
    expect(working.map(({ result }) => result.printed)).toEqual([
      ...["1920", "1920", "1860", "1860"],
      // mean, standard deviation 60/√2, t90·s·√1.5, and the same on either side without adjustments
      ...["1890", "42.43", "159.9", "159.9", "159.9"],
    ]);
  });

  it("warns where few comparators say little about the scatter", () => {
    expect(baseMass({ comparators: [a, b] }).warnings.join()).toContain("two comparators");
    const alike = ["x", "y", "z"].map((name) => ({ ...a, name }));
    expect(baseMass({ comparators: alike }).warnings.join()).toContain("agree");
    expect(baseMass({ comparators: alike, scatter: 0.05 }).warnings).toEqual([]);
  });

  it.each([
    ["EMPTY", { comparators: [] }],
    ["NOT_AN_OBJECT", { comparators: a }],
    ["NOT_AN_OBJECT", { comparators: [a, b], adjustments: {} }],
    ["INCONSISTENT", { comparators: [a, a] }],
    ["MISSING_OPTION", { comparators: [a] }],
    ["INCONSISTENT", { comparators: [{ ...a, packMass: q("2480 kg") }], scatter: 0.05 }],
    ["NEGATIVE", { comparators: [{ ...a, curbMass: q("-1 kg") }, b] }],
    ["WRONG_DIMENSION", { comparators: [{ ...a, curbMass: q("98 kWh") }, b] }],
    ["UNKNOWN_OPTION", { comparators: [{ ...a, kerbMass: q("1 kg") }, b] }],
    ["WRONG_CHOICE", { comparators: [{ ...a, adjustments: [{ reason: "x", share: 0.1, of: "body" }] }, b] }],
    ["NOT_A_FRACTION", { comparators: [{ ...a, adjustments: [{ reason: "x", share: 10, of: "base mass" }] }, b] }],
    ["WRONG_CHOICE", { comparators: [{ ...a, adjustments: [{ reason: " ", mass: q("10 kg") }] }, b] }],
    ["NOT_VALID_HERE", { comparators: [a, b], adjustments: [{ reason: "x", mass: q("-2 t") }] }],
  ])("refuses with %s", (code, options) => {
    expect(() => baseMass(options as never)).toThrow(expect.objectContaining({ code }));
  });
});
