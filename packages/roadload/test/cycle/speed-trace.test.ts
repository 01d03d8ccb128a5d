import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type SpeedTraceOptions, speedTrace, wheelEnergy } from "../../src/index.js";
import { between, close, codeOf, traces } from "../support.js";

const good: SpeedTraceOptions = {
  name: "to the mill",
  time: [0, 10, 60, 70],
  speed: [0, 50, 50, 0],
  speedUnit: "km/h",
};
const bad = (more: object) => codeOf(() => speedTrace({ ...good, ...more } as SpeedTraceOptions));

describe("speed trace", () => {
  it("integrates straight lines exactly", () => {
    const { total } = speedTrace({ name: "ramp", time: [0, 8], speed: [0, 20], speedUnit: "m/s" }).segments;
    // v = 2.5 t: ∫v = 80, ∫v² = 6.25·8³/3, ∫v³ = 15.625·8⁴/4
    expect(total.distance).toBeCloseTo(80, 10);
    expect(total.speedSquared).toBeCloseTo((6.25 * 512) / 3, 9);
    expect(total.speedCubed).toBeCloseTo((15.625 * 4096) / 4, 8);
    expect(total.kineticChange).toBe(200);
    expect(total.duration).toBe(8);
  });

  it("does not depend on how finely a straight line is tabled", () => {
    fc.assert(
      fc.property(between(0, 40), between(0, 40), between(0.5, 30), fc.integer({ min: 1, max: 20 }), (a, b, t, n) => {
        fc.pre(a + b > 0.01);
        const times = Array.from({ length: n + 1 }, (_, i) => (t * i) / n);
        const fine = speedTrace({
          name: "fine",
          time: times,
          speed: times.map((_, i) => (a * (n - i) + b * i) / n),
          speedUnit: "m/s",
        }).segments.total;
        const coarse = speedTrace({ name: "coarse", time: [0, t], speed: [a, b], speedUnit: "m/s" }).segments.total;
        expect(close(fine.distance, coarse.distance, undefined, 1e-10)).toBe(true);
        expect(close(fine.speedSquared, coarse.speedSquared, undefined, 1e-10)).toBe(true);
        expect(close(fine.speedCubed, coarse.speedCubed, undefined, 1e-10)).toBe(true);
      }),
    );
  });

  it("cuts long steps into equal parts of at most 1 s", () => {
    const { segments } = speedTrace({ name: "long", time: [0, 2.5, 3], speed: [10, 20, 20], speedUnit: "m/s" });
    expect(Array.from(segments.duration)).toEqual([2.5 / 3, 2.5 / 3, 2.5 / 3, 0.5]);
    expect(segments.count).toBe(4);
    expect(segments.integrals.length).toBe(4 * segments.count);
  });

  it("sees a change from driving to braking inside a long step", () => {
    // Rolling out from 30 m/s in 60 s: drag brakes at first more than the deceleration, at the end less.
    const trace = speedTrace({ name: "roll-out", time: [0, 60], speed: [30, 0], speedUnit: "m/s" });
    const { driving, braking } = wheelEnergy(trace, { constant: 100, linear: 0, quadratic: 2, inertiaMass: 2000 });
    expect(driving).toBeGreaterThan(0);
    expect(braking).toBeLessThan(0);
    // ∫(100 + 2v² − 1000)v dt by hand: 100·900 + 2·∫v³dt − 2000·450, ∫v³dt = 30³·60/4
    expect(driving + braking).toBeCloseTo(100 * 900 + 2 * ((27_000 * 60) / 4) - 2000 * 450, 5);
  });

  it("counts standstill as time, not as pieces", () => {
    const trace = speedTrace({ name: "stop", time: [0, 10, 100, 110], speed: [10, 0, 0, 10], speedUnit: "m/s" });
    expect(trace.segments.standstill).toBe(90);
    expect(trace.segments.count).toBe(20);
    expect(trace.duration.in("s")).toBe(110);
  });

  it("keeps sums of its pieces", () => {
    fc.assert(
      fc.property(traces, ({ segments }) => {
        const sums = [0, 0, 0, 0];
        for (let i = 0; i < segments.integrals.length; i++)
          sums[i % 4] = (sums[i % 4] ?? 0) + (segments.integrals[i] ?? 0);
        const { total } = segments;
        expect(close(sums[0] as number, total.distance)).toBe(true);
        expect(close(sums[1] as number, total.speedSquared)).toBe(true);
        expect(close(sums[2] as number, total.speedCubed)).toBe(true);
        expect(close(sums[3] as number, total.kineticChange, 2500)).toBe(true);
        let seconds = segments.standstill;
        for (let i = 0; i < segments.count; i++) {
          seconds += segments.duration[i] as number;
          expect(segments.duration[i]).toBeLessThanOrEqual(1);
        }
        expect(close(seconds, total.duration)).toBe(true);
      }),
    );
  });

  it("reads other units", () => {
    const trace = speedTrace({ ...good, time: [0, 0.5, 1], speed: [0, 60, 60], timeUnit: "min", speedUnit: "mph" });
    expect(trace.distance.in("mi")).toBeCloseTo(0.75, 12);
    expect(trace.distance.unit).toBe("mi");
    expect(speedTrace({ ...good, time: Float32Array.of(0, 1), speed: new Float64Array([5, 5]) }).speed.length).toBe(2);
  });

  it("copies what it is given", () => {
    const time = [0, 1];
    const speed = [10, 10];
    const trace = speedTrace({ name: "copied", time, speed, speedUnit: "m/s" });
    speed[1] = 99;
    expect(trace.speed).toEqual([10, 10]);
  });

  it("refuses bad tables and names the row", () => {
    expect(bad({ time: [0], speed: [0] })).toBe("EMPTY");
    expect(bad({ time: [], speed: [] })).toBe("EMPTY");
    expect(bad({ speed: [0, 50, 50] })).toBe("INCONSISTENT");
    expect(bad({ time: [0, 10, 10, 70] })).toBe("TIME_NOT_INCREASING");
    expect(bad({ speed: [0, 50, Number.NaN, 0] })).toBe("NOT_A_NUMBER");
    expect(bad({ speed: [0, 50, null, 0] })).toBe("NOT_A_NUMBER");
    expect(bad({ time: [0, 10, Number.POSITIVE_INFINITY, 70] })).toBe("NOT_A_NUMBER");
    expect(bad({ speed: [0, 50, "50", 0] })).toBe("NOT_A_NUMBER");
    expect(bad({ speed: [0, -1, 50, 0] })).toBe("NEGATIVE");
    expect(bad({ speed: [0, 541, 50, 0] })).toBe("OUT_OF_RANGE");
    expect(bad({ time: "0,10" })).toBe("NOT_AN_OBJECT");
    expect(bad({ time: undefined })).toBe("MISSING_OPTION");
    expect(bad({ speedUnit: "kn" })).toBe("WRONG_CHOICE");
    expect(bad({ timeUnit: "ms" })).toBe("WRONG_CHOICE");
    expect(bad({ name: " " })).toBe("EMPTY");
    expect(bad({ speeds: [] })).toBe("UNKNOWN_OPTION");
    expect(bad({ time: [0, 1, 2, 1e9] })).toBe("TOO_LONG");
    expect(bad({ time: new Float64Array(1_000_001), speed: new Float64Array(1_000_001) })).toBe("TOO_LONG");
    expect(() => speedTrace({ ...good, time: [0, 10, 9, 70] })).toThrow("got 9 after 10 in row 3");
  });
});
