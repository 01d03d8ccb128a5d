import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { decimal, divide, multiply, power, rational, subtract, toNumber } from "../../src/unit/rational.js";

const integers = fc.bigInt({ min: -(10n ** 30n), max: 10n ** 30n });
const positive = fc.bigInt({ min: 1n, max: 10n ** 30n });
const fractions = fc.tuple(integers, positive).map(([n, d]) => rational(n, d));
const notZero = fractions.filter(({ n }) => n > 0n);

describe("exact fractions", () => {
  it("read plain decimals exactly", () => {
    expect(decimal("0.45359237")).toEqual({ n: 45_359_237n, d: 100_000_000n, pi: 0 });
    expect(decimal("60")).toEqual({ n: 60n, d: 1n, pi: 0 });
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 10 ** 9 }), fc.integer({ min: 0, max: 999_999 }), (whole, part) => {
        const text = `${whole}.${String(part).padStart(6, "0")}`;
        expect(toNumber(decimal(text))).toBe(Number(text));
      }),
    );
  });

  it("are in lowest terms", () => {
    expect(rational(6n, 4n)).toEqual({ n: 3n, d: 2n, pi: 0 });
    expect(rational(0n, 4n)).toEqual({ n: 0n, d: 1n, pi: 0 });
  });

  it("obey the laws of fractions", () => {
    fc.assert(
      fc.property(fractions, notZero, fractions, (a, b, c) => {
        expect(divide(multiply(a, b), b)).toEqual(a);
        expect(multiply(a, b)).toEqual(multiply(b, a));
        expect(subtract(a, a).n).toBe(0n);
        expect(multiply(b, subtract(a, c))).toEqual(subtract(multiply(b, a), multiply(b, c)));
      }),
    );
  });

  it("raise to powers, of π too", () => {
    fc.assert(
      fc.property(notZero, fc.integer({ min: 1, max: 5 }), (a, exponent) => {
        expect(multiply(power(a, exponent), power(a, -exponent))).toEqual({ n: 1n, d: 1n, pi: 0 });
      }),
    );
    expect(power({ n: 1n, d: 180n, pi: 1 }, -2)).toEqual({ n: 32_400n, d: 1n, pi: -2 });
  });

  it("become the nearest double", () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true, min: 1e-100, max: 1e100 }), (value) => {
        // A double is a fraction itself: mantissa times a power of two.
        const [mantissa, shift] = exactly(value);
        const exact = shift >= 0 ? rational(mantissa << BigInt(shift), 1n) : rational(mantissa, 1n << BigInt(-shift));
        expect(toNumber(exact)).toBe(value);
        expect(toNumber({ ...exact, n: -exact.n })).toBe(-value);
      }),
    );
    expect(toNumber(rational(1n, 3n))).toBe(1 / 3);
    expect(toNumber(rational(2n, 3n))).toBe(2 / 3);
    expect(toNumber(rational(10n ** 400n, 10n ** 399n))).toBe(10);
    expect(toNumber({ n: 1n, d: 180n, pi: 1 })).toBe(Math.PI / 180);
  });
});

/** The whole number m and the power s of two for which m · 2^s is the double. */
function exactly(value: number): [mantissa: bigint, shift: number] {
  let shift = Math.floor(Math.log2(value)) - 60;
  while (!Number.isInteger(value / 2 ** shift)) shift--;
  return [BigInt(value / 2 ** shift), shift];
}
