import { describe, expect, it } from "vitest";
import { uniforms } from "../../src/propagate/uniform.js";

const count = 100_000;

function draws(seed: number, name: string): Float64Array {
  const uniform = uniforms(seed, name);
  return Float64Array.from({ length: count }, (_, index) => uniform(index));
}

function correlation(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += ((a[i] as number) - 0.5) * ((b[i] as number) - 0.5);
  return (sum / a.length) * 12;
}

describe("uniform draws addressed by seed, name and index", () => {
  it("are spread evenly: chi-square over 1000 cells within five standard deviations of its mean", {
    timeout: 60_000,
  }, () => {
    for (const [seed, name] of [
      [1, "packEnergy"],
      [2, "packEnergy"],
      [1, "dragCoefficient"],
      [4_294_967_295, ""],
    ] as const) {
      const cells = new Float64Array(1000);
      const all = draws(seed, name);
      expect(all.every((u) => u > 0 && u < 1)).toBe(true);
      for (const u of all) {
        (cells[Math.floor(u * 1000)] as number) += 1;
      }
      const expected = count / 1000;
      const chiSquare = cells.reduce((sum, n) => sum + (n - expected) ** 2 / expected, 0);
      // 999 degrees of freedom: mean 999, standard deviation √(2·999) = 44.7
      expect(Math.abs(chiSquare - 999)).toBeLessThan(5 * Math.sqrt(2 * 999));
    }
  });

  it("do not follow each other, neighbouring seeds, similar names or neighbouring indices", () => {
    const a = draws(1, "packEnergy");
    const limit = 5 / Math.sqrt(count);
    expect(Math.abs(correlation(a, draws(2, "packEnergy")))).toBeLessThan(limit);
    expect(Math.abs(correlation(a, draws(1, "packEnergz")))).toBeLessThan(limit);
    expect(Math.abs(correlation(a.subarray(0, count - 1), a.subarray(1)))).toBeLessThan(2 * limit);
  });

  it("are the same on every machine: whole-number arithmetic, fixed here", () => {
    const uniform = uniforms(1, "packEnergy");
    expect([0, 1, 2].map(uniform)).toMatchInlineSnapshot(`
      [
        0.05301539429257385,
        0.239930126877007,
        0.2737993657240497,
      ]
    `);
  });
});
