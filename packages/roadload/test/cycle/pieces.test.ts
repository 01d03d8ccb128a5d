import { runInNewContext } from "node:vm";
import { q } from "@tarewatt/units";
import { describe, expect, it, vi } from "vitest";
import { piecesOf } from "../../src/cycle/pieces-of.js";
import { type Cycle, driveCycle, speedTrace, udds, wheelEnergies, wheelEnergy } from "../../src/index.js";
import { codeOf, plainDrivetrain, plainLoad } from "../support.js";

const load = { constant: 200, linear: 0, quadratic: 0.5, inertiaMass: 2060 };
const list = (value: number) => Float64Array.of(value, value);
const vehicles = { constant: list(200), linear: list(0), quadratic: list(0.5), inertiaMass: list(2060) };

/** The same package, loaded a second time: its memory is its own. */
async function anotherCopy(): Promise<typeof import("../../src/index.js")> {
  vi.resetModules();
  return await import("../../src/index.js");
}

describe("the numbers of a cycle", () => {
  it("cannot be changed from outside", () => {
    const before = wheelEnergy(udds, load);
    const { segments } = udds;
    for (const numbers of [segments.integrals, segments.duration, udds.time, udds.speed]) {
      expect(() => {
        (numbers as number[])[0] = 1e9;
      }).toThrow(TypeError);
    }
    expect(() => {
      (segments.total as { distance: number }).distance = 1;
    }).toThrow(TypeError);
    expect(wheelEnergy(udds, load)).toEqual(before);
  });

  it("are those of the own arrays at the time of the trace", () => {
    const speed = new Float64Array([0, 10, 0]);
    const trace = speedTrace({ name: "hop", time: [0, 1, 2], speed, speedUnit: "m/s" });
    speed[1] = 20;
    expect(trace.segments.total.distance).toBe(10);
    expect(trace.speed).toEqual([0, 10, 0]);
  });

  it("are cut again for a cycle of another copy of the package, and come out the same", async () => {
    const other = await anotherCopy();
    expect(other.udds).not.toBe(udds);
    const theirs = other.udds as Cycle;
    expect(wheelEnergy(theirs, load)).toEqual(wheelEnergy(udds, load));
    // Remembered by then: the second time must not differ from the first.
    expect(wheelEnergy(theirs, load)).toEqual(wheelEnergy(udds, load));
    expect(wheelEnergies(theirs, vehicles)).toEqual(wheelEnergies(udds, vehicles));
    const options = { load: plainLoad, drivetrain: plainDrivetrain, accessories: q("350 W") };
    const [theirRun, run] = [driveCycle({ ...options, cycle: theirs }), driveCycle({ ...options, cycle: udds })];
    expect(theirRun.consumption.atBattery.in("Wh/km")).toBe(run.consumption.atBattery.in("Wh/km"));
  });

  it("are cut again for a changed copy of a cycle, whenever it changes", () => {
    const copy = { ...udds, name: "UDDS at half speed", speed: udds.speed.map((speed) => speed / 2) };
    const energy = () => wheelEnergy(copy, { ...load, constant: 0, inertiaMass: 0 }).driving;
    const full = wheelEnergy(udds, { ...load, constant: 0, inertiaMass: 0 }).driving;
    expect(energy()).toBeCloseTo(full / 8, 3);
    copy.speed = udds.speed.map((speed) => speed / 4);
    expect(energy()).toBeCloseTo(full / 64, 3);
  });

  it("are kept for copies that share the frozen table of a cycle, and never taken for those of another table", () => {
    const renamed = { ...udds, name: "own" };
    expect(piecesOf(renamed)).toBe(piecesOf({ ...udds, name: "another" }));
    expect(wheelEnergy(renamed, load)).toEqual(wheelEnergy(udds, load));
    const slower = { ...udds, time: Object.freeze(udds.time.map((seconds) => 2 * seconds)) };
    const uphill = { ...udds, grade: Object.freeze(udds.time.map(() => 0.01)) };
    expect(piecesOf(slower).total.distance).toBeCloseTo(2 * piecesOf(renamed).total.distance, 6);
    expect(piecesOf(uphill).grade).toBeDefined();
    expect(piecesOf(renamed).grade).toBeUndefined();
    const warm = { ...udds, speed: [...udds.speed] };
    expect(piecesOf(warm)).not.toBe(piecesOf(warm));
  });

  it("are refused where the table of a cycle cannot be one", () => {
    const spoilt = (more: object) => codeOf(() => wheelEnergy({ ...udds, ...more } as Cycle, load));
    expect(spoilt({ speed: udds.speed.slice(1) })).toBe("INCONSISTENT");
    expect(spoilt({ speed: undefined })).toBe("NOT_AN_OBJECT");
    expect(spoilt({ speed: udds.speed.map((speed) => -speed) })).toBe("NEGATIVE");
    expect(spoilt({ distance: 12 })).toBe("WRONG_CHOICE");
    expect(spoilt({ name: Symbol("x") })).toBe("WRONG_CHOICE");
  });

  it("may come in arrays of another realm", () => {
    const foreign = runInNewContext(
      "({ time: new Float64Array([0, 1]), speed: [10, 10], list: (value) => Float64Array.of(value, value) })",
    );
    const { time, speed } = foreign;
    expect(time instanceof Float64Array).toBe(false);
    expect(speedTrace({ name: "foreign", time, speed, speedUnit: "m/s" }).segments.total.distance).toBe(10);
    const theirs = Object.fromEntries(Object.entries(vehicles).map(([name, [value]]) => [name, foreign.list(value)]));
    expect(Array.from(wheelEnergies(udds, theirs as unknown as typeof vehicles).driving)).toEqual(
      Array.from(wheelEnergies(udds, vehicles).driving),
    );
    expect(codeOf(() => wheelEnergies(udds, { ...vehicles, linear: new Float32Array(2) as never }))).toBe(
      "WRONG_CHOICE",
    );
    expect(
      codeOf(() =>
        speedTrace({ name: "v", time: new DataView(new ArrayBuffer(16)) as never, speed, speedUnit: "m/s" }),
      ),
    ).toBe("NOT_AN_OBJECT");
  });
});
