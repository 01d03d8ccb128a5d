import { parseQuantity } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { commonPlaces, formatPlaces, formatSpread, placesOfSpread } from "../../src/table/number.js";

/** Reads what was printed, and the size of one unit of its last place. */
function reread(printed: string): { value: number; last: number } {
  const value = parseQuantity(printed, "1").value as number;
  const [, fraction = ""] = printed.replace(/×.*/, "").split(".");
  const power = /×10(⁻?)([⁰¹²³⁴⁵⁶⁷⁸⁹]+)/.exec(printed);
  const exponent =
    power === null
      ? 0
      : Number([...(power[2] ?? "")].map((digit) => "⁰¹²³⁴⁵⁶⁷⁸⁹".indexOf(digit)).join("")) *
        (power[1] === "⁻" ? -1 : 1);
  return { value, last: 10 ** (exponent - fraction.length) };
}

describe("digits of a spread", () => {
  // Two significant digits of an uncertainty: the usual reading of the Guide to the Expression of Uncertainty in
  // Measurement (JCGM 100), 7.2.6; from memory.
  it.each([
    [22.3, 27.1, 31.8, "27.1 (22.3 to 31.8)"],
    [390.4, 430.6, 474.9, "431 (390 to 475)"],
    [38_000, 43_049, 47_400, "43\u202f000 (38\u202f000 to 47\u202f400)"],
    [0.2801, 0.2897, 0.2998, "0.2897 (0.2801 to 0.2998)"],
    [-5.04, -0.02, 5.1, "0.0 (\u22125.0 to 5.1)"],
    [90.04, 100, 109.96, "100 (90 to 110)"],
    [12.34, 12.34, 12.34, "12.3 (12.3 to 12.3)"],
  ])("prints %d, %d, %d as %s", (p10, p50, p90, printed) => {
    expect(formatSpread({ p10, p50, p90 }, 3)).toBe(printed);
  });

  it("takes the places from half the width, of which it keeps two digits", () => {
    expect(placesOfSpread(0, 2)).toBe(1); // half width 1.0
    expect(placesOfSpread(0, 19.8)).toBe(1); // 9.9
    expect(placesOfSpread(0, 19.92)).toBe(0); // 9.96 is printed as 10
    expect(placesOfSpread(0, 20_000)).toBe(-3);
    expect(placesOfSpread(5, 5)).toBeUndefined();
  });

  it("prints a median that is read back within half a unit of its last place", () => {
    const size = fc.double({ min: -1e7, max: 1e7, noNaN: true });
    const below = fc.double({ min: 1e-3, max: 1e5, noNaN: true });
    fc.assert(
      fc.property(size, below, below, (p50, down, up) => {
        const [p10, p90] = [p50 - down, p50 + up];
        const printed = formatSpread({ p10, p50, p90 }, 3);
        const { value } = reread(printed.split(" (")[0] as string);
        const places = placesOfSpread(p10, p90) as number;
        expect(Math.abs(value - p50)).toBeLessThanOrEqual(0.5 * 10 ** -places * (1 + 1e-9) + 1e-9 * Math.abs(p50));
        // The last place printed is worth less than a tenth of half the width: no digit that the spread covers up.
        expect(10 ** -places).toBeLessThanOrEqual((up + down) / 2 / 9.9);
        expect(10 ** -places).toBeGreaterThan((up + down) / 2 / 101);
      }),
    );
  });
});

describe("places", () => {
  it("prints any finite number so that it is read back within half a unit of the last place", () => {
    fc.assert(
      fc.property(fc.double({ min: -1e9, max: 1e9, noNaN: true }), fc.integer({ min: -4, max: 5 }), (value, places) => {
        const printed = formatPlaces(value, places);
        expect(printed).not.toMatch(/NaN|^[\u2212-]0(\.0*)?$/);
        const read = reread(printed);
        expect(Math.abs(read.value - value)).toBeLessThanOrEqual(
          0.5 * 10 ** -places * (1 + 1e-9) + 1e-15 * Math.abs(value),
        );
        if (places > 0) expect(read.last).toBeCloseTo(10 ** -places, 12);
      }),
    );
  });

  it("finds the places that a column needs", () => {
    expect(commonPlaces([1, 2.5, 3.25], 4)).toBe(2);
    expect(commonPlaces([100, 2000], 4)).toBe(0);
    expect(commonPlaces([1e-20], 4)).toBe(12);
  });
});
