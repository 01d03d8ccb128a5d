import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { published } from "../../../../test/support/published.js";
import type { EvidenceRead } from "../../src/evidence/evidence.js";
import { quantileOf, reachWithin } from "../../src/evidence/quantile.js";

const evidence = (low: number, likely: number, high: number): EvidenceRead => ({
  low,
  likely,
  high,
  reach: reachWithin({ low, likely, high }, { unit: "1" }),
  grade: "assumed",
  source: "",
});

const anyEvidence = fc
  .tuple(
    fc.double({ min: -1e6, max: 1e6, noNaN: true }),
    fc.double({ min: 0, max: 1e6, noNaN: true }),
    fc.double({ min: 0, max: 1e6, noNaN: true }),
  )
  .map(([likely, below, above]) => evidence(likely - below, likely, likely + above));

describe("the distribution behind low, likely and high", () => {
  it("has the three figures given as its 10th, 50th and 90th percentiles", () => {
    fc.assert(
      fc.property(anyEvidence, (given) => {
        const scale = Math.max(Math.abs(given.low), Math.abs(given.high), 1);
        expect(Math.abs(quantileOf(given, 0.1) - given.low)).toBeLessThan(1e-12 * scale);
        expect(quantileOf(given, 0.5) - given.likely).toBe(0);
        expect(Math.abs(quantileOf(given, 0.9) - given.high)).toBeLessThan(1e-12 * scale);
      }),
    );
  });

  it("never falls as the share rises", () => {
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(anyEvidence, share, share, (given, a, b) => {
        expect(quantileOf(given, Math.min(a, b))).toBeLessThanOrEqual(quantileOf(given, Math.max(a, b)));
      }),
    );
  });

  it("ends its tails at the limit of what makes sense, and keeps the three figures", () => {
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(share, share, share, share, (a, b, c, u) => {
        const [low, likely, high] = [a, b, c].sort((x, y) => x - y) as [number, number, number];
        const given = {
          low,
          likely,
          high,
          reach: reachWithin({ low, likely, high }, { unit: "1", atLeast: 0, atMost: 1 }),
        };
        const value = quantileOf(given, u);
        expect(value).toBeGreaterThanOrEqual(-1e-15);
        expect(value).toBeLessThanOrEqual(1 + 1e-15);
        expect(quantileOf(given, 0.1)).toBeCloseTo(low, 12);
        expect(quantileOf(given, 0.5)).toBeCloseTo(likely, 12);
        expect(quantileOf(given, 0.9)).toBeCloseTo(high, 12);
        expect(quantileOf(given, Math.min(1, u + 0.01))).toBeGreaterThanOrEqual(value - 1e-15);
      }),
    );
  });

  const reach = quantileOf(evidence(-1, 0, 1), 1);
  const steps = 200_000;
  published({
    quantity: "standard deviation of low/likely/high with equal halves, as a share of its largest deviation",
    source: "JCGM 100:2008, 4.3.9: a triangular distribution of half-width a has the standard uncertainty a/√6",
    status: "memory",
    given: "low −1, likely 0, high 1; mean of the squared quantile over 200 000 equal shares",
    published: 1 / Math.sqrt(6),
    computed: () => {
      let sum = 0;
      for (let i = 0; i < steps; i++) sum += quantileOf(evidence(-1, 0, 1), (i + 0.5) / steps) ** 2;
      return Math.sqrt(sum / steps) / reach;
    },
    tolerance: 1e-6,
    why: "error of the midpoint sum",
  });
});
