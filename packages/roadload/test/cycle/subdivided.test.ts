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

describe("the split into driving and braking", () => {
  it.each([
    ["US06", us06],
    ["WLTC", wltc3b],
    ["UDDS", udds],
    ["HWFET", hwfet],
  ] as const)("on %s does not depend on how finely the seconds are cut", (_name, cycle) => {
    const fine = subdivided(cycle, 50);
    for (const car of cars) {
      const a = wheelEnergy(cycle, car);
      const b = wheelEnergy(fine, car);
      expect(Math.abs(a.driving / b.driving - 1)).toBeLessThan(1e-11);
      expect(Math.abs(a.braking / b.braking - 1)).toBeLessThan(1e-10);
    }
    // There is something to split, or this would show nothing: some car's force changes its sign within a second.
    const { time, speed } = cycle;
    const changes = cars.some(({ constant, linear, quadratic, inertiaMass }) =>
      time.some((_, row) => {
        const [from, to] = [speed[row] as number, speed[row + 1] ?? Number.NaN];
        const forces = [from, to].map((v) => constant + linear * v + quadratic * v * v + inertiaMass * (to - from));
        return (forces[0] as number) * (forces[1] as number) < 0;
      }),
    );
    expect(changes).toBe(true);
  });
});
