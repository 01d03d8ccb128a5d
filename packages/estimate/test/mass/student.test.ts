import { describe, expect, it } from "vitest";
import { studentT90 } from "../../src/mass/student.js";

/** Density of Student's t; for whole degrees of freedom the ratio of gamma functions is a finite product. */
function density(t: number, degrees: number): number {
  let ratio = degrees % 2 === 0 ? 1 / (2 * Math.sqrt(degrees)) : 1 / (Math.PI * Math.sqrt(degrees));
  for (let k = degrees - 1; k > 1; k -= 2) ratio *= k / (k - 1);
  return ratio * (1 + t ** 2 / degrees) ** (-(degrees + 1) / 2);
}

/** Share below t: one half, and Simpson's rule from 0 to t. */
function below(t: number, degrees: number): number {
  const steps = 2000;
  let sum = density(0, degrees) + density(t, degrees);
  for (let i = 1; i < steps; i++) sum += density((t * i) / steps, degrees) * (i % 2 === 0 ? 2 : 4);
  return 0.5 + (sum * t) / steps / 3;
}

describe("90th percentile of Student's t", () => {
  it("agrees with the integral of the density to the third decimal it is printed with", () => {
    for (const degrees of [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 12, 15, 20, 30, 60]) {
      const t = studentT90(degrees);
      const rounding = 0.0005 * density(t, degrees);
      expect(Math.abs(below(t, degrees) - 0.9)).toBeLessThan(rounding * 1.01);
    }
  });

  it("errs on the wide side between the rows", () => {
    for (const degrees of [11, 14, 25, 45, 1000]) expect(below(studentT90(degrees), degrees)).toBeGreaterThan(0.9);
  });
});
