import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { bracketedRoot } from "../../src/solve/bracketed-root.js";

describe("root in a bracket", () => {
  it("finds the root of a rising or falling power within the tolerance", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 0.99, noNaN: true }),
        fc.integer({ min: 1, max: 9 }),
        fc.constantFrom(1, -1),
        (root, power, sign) => {
          const found = bracketedRoot((x) => sign * (x ** power - root ** power), 0, 1, 1e-9);
          expect(Math.abs(found - root)).toBeLessThanOrEqual(1e-9);
        },
      ),
    );
  });

  it("never takes more steps than halving plus one, and one for rounding, even on a step", () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-3, max: 1 - 1e-3, noNaN: true }), (root) => {
        let calls = 0;
        const step = (x: number): number => {
          calls++;
          return x < root ? -1e-9 : 1e9;
        };
        bracketedRoot(step, 0, 1, 1e-6);
        expect(calls - 2).toBeLessThanOrEqual(Math.ceil(Math.log2(1 / 2e-6)) + 2);
      }),
    );
  });

  it("takes few steps on a smooth function", () => {
    let calls = 0;
    bracketedRoot(
      (x) => {
        calls++;
        return x / (100 + x) - 0.5;
      },
      20,
      250,
      1e-4,
    );
    expect(calls).toBeLessThan(14);
  });
});
