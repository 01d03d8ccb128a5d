import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  decimal,
  type ExactProduct,
  gcd,
  isBounded,
  productOf,
  single,
  toNumber,
} from "../../src/unit/exact-product.js";

const whole = fc.bigInt({ min: 1n, max: 10n ** 30n });
const terms = fc.dictionary(fc.constantFrom("m", "s", "π"), fc.integer({ min: 1, max: 4 }));
const products = fc
  .tuple(whole, whole, terms)
  .map(([n, d, powers]): ExactProduct => ({ n, d, terms: new Map(Object.entries(powers)) }));
const times = (a: ExactProduct, b: ExactProduct, power: number): ExactProduct => productOf([a, 1], [b, power]);
const fraction = (n: bigint, d: bigint): ExactProduct => ({ ...single(), n, d });

const same = (a: ExactProduct, b: ExactProduct): void => {
  expect(a.n * b.d).toBe(b.n * a.d);
  expect(new Map(a.terms)).toEqual(new Map(b.terms));
};

describe("exact products", () => {
  it("read plain decimals exactly", () => {
    expect(decimal("0.45359237")).toMatchObject({ n: 45_359_237n, d: 100_000_000n });
    expect(decimal("60")).toMatchObject({ n: 60n, d: 1n });
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 10 ** 9 }), fc.integer({ min: 0, max: 999_999 }), (units, part) => {
        const text = `${units}.${String(part).padStart(6, "0")}`;
        expect(toNumber(decimal(text))).toBe(Number(text));
      }),
    );
  });

  it("obey the laws of products", () => {
    fc.assert(
      fc.property(products, products, (a, b) => {
        same(times(times(a, b, 1), b, -1), a);
        same(times(a, b, 1), times(b, a, 1));
        same(times(times(a, b, 1), b, 1), times(a, b, 2));
        same(times(times(a, b, 5), b, -5), a);
        same(times(a, a, -1), single());
        same(productOf([a, 2], [b, -3], [a, 1]), times(productOf([a, 3]), b, -3));
      }),
    );
  });

  it("are one when there is nothing to multiply", () => same(productOf(), single()));

  it("become the nearest double, times π", () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true, min: 1e-100, max: 1e100 }), (value) => {
        // A double is a fraction itself: mantissa times a power of two.
        const [mantissa, shift] = exactly(value);
        const [n, d] = shift >= 0 ? [mantissa << BigInt(shift), 1n] : [mantissa, 1n << BigInt(-shift)];
        expect(toNumber(fraction(n, d))).toBe(value);
        expect(toNumber(fraction(-n, d))).toBe(-value);
      }),
    );
    expect(toNumber(fraction(1n, 3n))).toBe(1 / 3);
    expect(toNumber(fraction(-2n, 3n))).toBe(-2 / 3);
    expect(toNumber(fraction(0n, 3n))).toBe(0);
    expect(toNumber(fraction(10n ** 400n, 10n ** 399n))).toBe(10);
    expect(toNumber({ n: 1n, d: 180n, terms: new Map([["π", 1]]) })).toBe(Math.PI / 180);
  });

  it("say when they are beyond what a unit may hold", () => {
    const metres = (power: number): ExactProduct => ({ ...single(), terms: new Map([["m", power]]) });
    expect([9, -9, 10, -10].map((power) => isBounded(metres(power)))).toEqual([true, true, false, false]);
    expect(isBounded(fraction(10n ** 150n, 10n ** 150n))).toBe(true);
    expect(isBounded(fraction(10n ** 302n, 1n))).toBe(false);
    expect(isBounded(fraction(10n ** 151n, 10n ** 151n))).toBe(false);
  });
});

describe("greatest common divisor", () => {
  it("divides both, and nothing larger does", () => {
    fc.assert(
      fc.property(whole, whole, whole, (a, b, c) => {
        const common = gcd(a * c, b * c);
        expect([(a * c) % common, (b * c) % common, common % c]).toEqual([0n, 0n, 0n]);
        expect(gcd((a * c) / common, (b * c) / common)).toBe(1n);
      }),
    );
    expect([gcd(-6n, 4n), gcd(6n, -4n), gcd(-6n, 0n), gcd(8n, -4n)]).toEqual([2n, 2n, 6n, 4n]);
  });
});

/** The whole number m and the power s of two for which m · 2^s is the double. */
function exactly(value: number): [mantissa: bigint, shift: number] {
  let shift = Math.floor(Math.log2(value)) - 60;
  while (!Number.isInteger(value / 2 ** shift)) shift--;
  return [BigInt(value / 2 ** shift), shift];
}
