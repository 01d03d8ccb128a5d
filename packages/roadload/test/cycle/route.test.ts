import { q, quantity } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { driveCycle, type RouteOptions, route, steadySpeed } from "../../src/index.js";
import { between, close, codeOf, plainDrivetrain, plainLoad } from "../support.js";

const segments = [
  { length: q("5 km"), speed: q("50 km/h"), stops: 4 },
  { length: q("30 km"), speed: q("100 km/h"), grade: 0.01 },
  { length: q("2 km"), speed: q("30 km/h"), grade: -0.02 },
];
const good: RouteOptions = { name: "invented", segments };
const bad = (more: object) => codeOf(() => route({ ...good, ...more } as RouteOptions));

describe("a route", () => {
  it("has the length of its segments, from rest to rest, whatever they are", () => {
    const many = fc.array(
      fc.record({
        km: between(2, 10),
        v: between(20, 140),
        grade: between(-0.1, 0.1),
        stops: fc.integer({ min: 0, max: 3 }),
      }),
      { minLength: 1, maxLength: 4 },
    );
    fc.assert(
      fc.property(many, between(1, 4), (list, a) => {
        const cycle = route({
          name: "any",
          segments: list.map(({ km, v, grade, stops }) => ({
            ...{ length: quantity(km, "km"), speed: quantity(v, "km/h"), grade, stops },
          })),
          ...{ acceleration: quantity(a, "m/s²"), deceleration: quantity(a, "m/s²"), stopDuration: q("20 s") },
        });
        const length = list.reduce((sum, { km }) => sum + km, 0);
        expect(close(cycle.distance.in("km"), length, undefined, 1e-7)).toBe(true);
        expect([cycle.speed[0], cycle.speed.at(-1)]).toEqual([0, 0]);
        cycle.speed.forEach((v, row) => {
          if (row === 0) return;
          const seconds = (cycle.time[row] as number) - (cycle.time[row - 1] as number);
          // In a shorter step the rounding of the times shows.
          if (seconds < 1e-3) return;
          expect(Math.abs(v - (cycle.speed[row - 1] as number)) / seconds).toBeLessThan(a * (1 + 1e-6));
        });
        // What was climbed is what the grades say.
        const run = driveCycle({ cycle, load: plainLoad, drivetrain: plainDrivetrain, accessories: q("0 W") });
        const climbed = list.reduce(
          (sum, { km, grade }) => sum + (km * 1000 * grade) / Math.sqrt(1 + grade * grade),
          0,
        );
        const booked = run.ledger.entries.find(({ cause }) => cause === "grade")?.energy.in("J") as number;
        expect(close(booked, 2000 * 9.80665 * climbed, 1e8, 1e-7)).toBe(true);
      }),
      { numRuns: 25 },
    );
  });

  it("that is long takes per distance what its steady speed takes", () => {
    const cycle = route({ name: "far", segments: [{ length: q("5000 km"), speed: q("100 km/h"), grade: 0.01 }] });
    const shared = { load: plainLoad, drivetrain: plainDrivetrain, accessories: q("350 W") };
    const run = driveCycle({ ...shared, cycle }).consumption.atBattery.in("Wh/km");
    const steady = steadySpeed({ ...shared, speed: q("100 km/h"), grade: 0.01 }).consumption.atBattery.in("Wh/km");
    expect(Math.abs(run / steady - 1)).toBeLessThan(1e-3);
  });

  it("stands at its stops, and drives more slowly where stops are close", () => {
    const close_ = route({ name: "stops", segments: [{ length: q("1 km"), speed: q("130 km/h"), stops: 9 }] });
    // Between stops 100 m apart at 1 m/s² the speed rises to √100 = 10 m/s.
    expect(close_.maximumSpeed.in("m/s")).toBeCloseTo(10, 9);
    expect(close_.duration.in("s")).toBeCloseTo(200, 6);
    const resting = route({
      ...{ name: "stops", stopDuration: q("30 s") },
      segments: [{ length: q("1 km"), speed: q("130 km/h"), stops: 9 }],
    });
    expect(resting.duration.in("s")).toBeCloseTo(200 + 270, 6);
  });

  it("refuses what cannot be driven", () => {
    const short = [
      { length: q("5 km"), speed: q("30 km/h") },
      { length: q("20 m"), speed: q("130 km/h") },
      { length: q("5 km"), speed: q("130 km/h") },
    ];
    expect(() => route({ ...good, segments: short })).toThrow(/segments\[1\] is too short/);
    expect(bad({ segments: [] })).toBe("EMPTY");
    expect(bad({ segments: [{ length: q("5 km"), speed: q("30 km/h"), stops: 1.5 }] })).toBe("OUT_OF_RANGE");
    expect(bad({ segments: [{ length: q("5 km") }] })).toBe("MISSING_OPTION");
    expect(bad({ acceleration: q("0 m/s²") })).toBe("OUT_OF_RANGE");
    expect(bad({ name: "" })).toBe("EMPTY");
  });
});
