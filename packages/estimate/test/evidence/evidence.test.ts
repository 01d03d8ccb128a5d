import { type InputError, q } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readEvidence } from "../../src/evidence/evidence.js";
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
    expect(readEvidence("mass", q("2 t"), kilograms)).toMatchObject({
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

  it("takes a fraction that may be as high as one, and ends its tail there", () => {
    const rule = { unit: "1", above: 0, atMost: 1 };
    const { reach } = readEvidence("usableFraction", { low: 0.85, likely: 0.95, high: 1 }, rule);
    expect(reach[1]).toBeCloseTo(1, 12);
    expect(reach[0]).toBeCloseTo(1 / (1 - Math.sqrt(0.2)), 12);
    expect(codeOf(() => readEvidence("usableFraction", { low: 0.85, likely: 0.95, high: 1.02 }, rule))).toBe(
      "NOT_A_FRACTION",
    );
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

  it("refuses what is no number and what is no provenance", () => {
    expect(codeOf(() => around(Number.NaN, 0.1))).toBe("NOT_A_QUANTITY");
    expect(codeOf(() => around("5" as never, 0.1))).toBe("NOT_A_QUANTITY");
    expect(codeOf(() => around(5, 0.1, { gradee: "assumed" } as never))).toBe("UNKNOWN_OPTION");
  });

  it("keeps the unit and refuses a percentage given as a number", () => {
    expect(around(q("3.10 m²"), 0.1).low.in("m²")).toBeCloseTo(2.79, 12);
    expect(codeOf(() => around(q("3.10 m²"), 3))).toBe("NOT_A_FRACTION");
  });
});
