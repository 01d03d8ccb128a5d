import { quantity } from "@tarewatt/units";
import { describe, expect, it } from "vitest";
import {
  type Cycle,
  hwfet,
  roadLoad,
  roadLoadNumbers,
  speedTrace,
  udds,
  us06,
  wheelEnergy,
  wltc3b,
} from "../../src/index.js";

/** The same cycle with every second cut into so many: it has the same speed at every moment. */
function subdivided({ name, time, speed }: Cycle, parts: number): Cycle {
  const rows = time.flatMap((t, row) => {
    const next = time[row + 1];
    const from = speed[row] as number;
    if (next === undefined) return [[t, from] as const];
    const to = speed[row + 1] as number;
    return Array.from(
      { length: parts },
      (_, part) => [t + ((next - t) * part) / parts, from + ((to - from) * part) / parts] as const,
    );
  });
  return speedTrace({ name, time: rows.map(([t]) => t), speed: rows.map(([, v]) => v), speedUnit: "m/s" });
}

/** A hundred cars, all invented: small and slippery to large and blunt, with 3 % of rotating parts. */
const cars = [1000, 1400, 2000, 2700, 3500].flatMap((mass) =>
  [0.4, 0.55, 0.7, 0.9, 1.4].flatMap((dragArea) =>
    [0.006, 0.009, 0.012, 0.015].map((rollingResistanceCoefficient) =>
      roadLoadNumbers(
        roadLoad({
          mass: quantity(mass, "kg"),
          dragArea: quantity(dragArea, "m²"),
          rollingResistanceCoefficient,
          airDensity: quantity(1.189, "kg/m³"),
        }),
      ),
    ),
  ),
);

// Regression bounds, computed here: what a change of sign within a second moves from driving to braking.
describe("the split into driving and braking, second by second", () => {
  it.each([
    ["US06", us06, 2.3e-5, 1.9e-4],
    ["WLTC", wltc3b, 1.5e-5, 1e-4],
    ["UDDS", udds, 7e-6, 3e-5],
    ["HWFET", hwfet, 3e-6, 8e-5],
  ] as const)(
    "on %s is that of fiftieths of a second, within the bounds that the documentation says",
    (_name, cycle, driving, braking) => {
      const fine = subdivided(cycle, 50);
      for (const car of cars) {
        const a = wheelEnergy(cycle, car);
        const b = wheelEnergy(fine, car);
        expect(Math.abs(a.driving / b.driving - 1)).toBeLessThan(driving);
        expect(Math.abs(a.braking / b.braking - 1)).toBeLessThan(braking);
        // The net is exact: only rounding is left.
        expect(Math.abs((a.driving + a.braking) / (b.driving + b.braking) - 1)).toBeLessThan(1e-11);
      }
      // It is no nothing, or the bounds would bound nothing.
      const shifts = cars.map((car) => Math.abs(wheelEnergy(cycle, car).driving / wheelEnergy(fine, car).driving - 1));
      expect(Math.max(...shifts)).toBeGreaterThan(1e-6);
    },
  );
});
