import { type InputError, q } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readEvidence } from "../../src/evidence/evidence.js";
import { checkReach } from "../../src/evidence/quantile.js";
import { around } from "../../src/index.js";

const kilograms = { unit: "kg", above: 0 };

function codeOf(run: () => unknown): string {
  try {
    run();
  } catch (error) {
    return (error as InputError).code;
  }
  return "no error";
}

describe("reading evidence", () => {
  it("takes a plain value, a value with provenance, and low, likely, high, in any unit", () => {
    expect(readEvidence("mass", q("2 t"), kilograms)).toEqual({
      low: 2000,
      likely: 2000,
      high: 2000,
      grade: "assumed",
      source: "",
    });
    expect(readEvidence("mass", { value: q("2 t"), grade: "measured", source: "scales" }, kilograms)).toMatchObject({
      likely: 2000,
      grade: "measured",
      source: "scales",
    });
    expect(readEvidence("mass", { low: q("1900 kg"), likely: q("2 t"), high: q("5000 lb") }, kilograms)).toMatchObject({
      low: 1900,
      likely: 2000,
      high: 5000 * 0.45359237,
    });
  });

  it.each([
    ["UNKNOWN_OPTION", { low: q("1 kg"), likly: q("2 kg"), high: q("3 kg") }],
    ["MISSING_OPTION", { low: q("1 kg"), likely: q("2 kg") }],
    ["INCONSISTENT", { low: q("3 kg"), likely: q("2 kg"), high: q("4 kg") }],
    ["INCONSISTENT", { value: q("3 kg"), likely: q("2 kg") }],
    ["WRONG_DIMENSION", { low: q("1 m"), likely: q("2 kg"), high: q("3 kg") }],
    ["WRONG_CHOICE", { value: q("3 kg"), grade: "rumour" }],
    ["NEGATIVE", q("-3 kg")],
    ["NOT_A_QUANTITY", 3],
    ["NOT_A_QUANTITY", null],
  ])("refuses with %s: %o", (code, given) => {
    expect(codeOf(() => readEvidence("mass", given, kilograms))).toBe(code);
  });

  it("names the part that is misspelt", () => {
    expect(() => readEvidence("mass", { low: q("1 kg"), likly: q("2 kg"), high: q("3 kg") }, kilograms)).toThrow(
      "mass has no part 'likly': did you mean 'likely'?",
    );
  });

  it("refuses a spread whose tail makes no sense, and says which end to bring closer", () => {
    const rule = { unit: "1", above: 0, atMost: 1 };
    const wide = readEvidence("chargingEfficiency", { low: 0.85, likely: 0.9, high: 0.97 }, rule);
    expect(() => checkReach("chargingEfficiency", wide, rule)).toThrow(
      "chargingEfficiency: with low 0.85, likely 0.9 and high 0.97 the tail reaches 1.03, beyond the limit of 1; bring high closer to likely",
    );
    expect(
      codeOf(() =>
        checkReach(
          "mass",
          readEvidence("mass", { low: q("1 kg"), likely: q("100 kg"), high: q("101 kg") }, kilograms),
          kilograms,
        ),
      ),
    ).toBe("OUT_OF_RANGE");
  });
});

describe("around", () => {
  it("puts low below and high above, for either sign", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1e6, max: 1e6, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (likely, share) => {
          const { low, high } = around(likely, share);
          expect(low).toBeLessThanOrEqual(likely);
          expect(high).toBeGreaterThanOrEqual(likely);
          expect(high - likely).toBeCloseTo(likely - low, 6);
        },
      ),
    );
  });

  it("keeps the unit and refuses a percentage given as a number", () => {
    expect(around(q("3.10 m²"), 0.1).low.in("m²")).toBeCloseTo(2.79, 12);
    expect(codeOf(() => around(q("3.10 m²"), 3))).toBe("NOT_A_FRACTION");
  });
});
