import { q, quantity } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  cutCycle,
  cycleStatistics,
  gradeCycle,
  hwfet,
  joinCycles,
  nedc,
  repeatCycle,
  resampleCycle,
  speedTrace,
  udds,
  us06Highway,
  usHighwayGrade,
  wltc3b,
} from "../../src/index.js";
import { between, close, codeOf, traces } from "../support.js";

const fractions = between(0.01, 0.99);

describe("cutting", () => {
  it("by time or distance, two parts that touch make the whole: distance, duration and integrals", () => {
    fc.assert(
      fc.property(traces, fractions, fc.boolean(), (cycle, part, byTime) => {
        const place = quantity(part * cycle.distance.in("m"), "m");
        const at = byTime ? quantity(part * cycle.duration.in("s"), "s") : place;
        const halves = [cutCycle({ cycle, to: at }), cutCycle({ cycle, from: at })];
        for (const key of ["distance", "duration", "speedCubed", "kineticChange"] as const) {
          const sum = halves.reduce((all, { segments }) => all + segments.total[key], 0);
          expect(close(sum, cycle.segments.total[key], 3000 + cycle.segments.total[key], 1e-9), key).toBe(true);
        }
        if (!byTime) expect(close(halves[0]?.distance.in("m") ?? 0, place.in("m"), undefined, 1e-9)).toBe(true);
      }),
    );
  });

  it("keeps the grades of what is kept", () => {
    const hill = speedTrace({
      name: "hill",
      time: [0, 10, 20],
      speed: [0, 10, 10],
      speedUnit: "m/s",
      grade: [0, 0.01, 0.05],
    });
    expect(cutCycle({ cycle: hill, from: q("5 s") }).grade?.slice(1)).toEqual([0.01, 0.05]);
    expect(cutCycle({ cycle: hill, from: q("60 m") }).grade?.slice(1)).toEqual([0.05]);
  });

  it("gives the phases of WLTC", () => {
    for (const { from, to, distance } of wltc3b.phases) {
      const part = cutCycle({ cycle: wltc3b, from: quantity(from, "s"), to: quantity(to, "s") });
      expect(part.distance.in("m")).toBeCloseTo(distance.in("m"), 8);
      expect(part.time[0]).toBe(0);
    }
  });

  it("refuses cuts outside, the wrong way round, and of another dimension", () => {
    expect(codeOf(() => cutCycle({ cycle: udds, to: q("1370 s") }))).toBe("OUT_OF_RANGE");
    expect(codeOf(() => cutCycle({ cycle: udds, to: q("8 mi") }))).toBe("OUT_OF_RANGE");
    expect(codeOf(() => cutCycle({ cycle: udds, from: q("10 s"), to: q("10 s") }))).toBe("INCONSISTENT");
    expect(codeOf(() => cutCycle({ cycle: udds, from: q("5 kg") as never }))).toBe("WRONG_DIMENSION");
    expect(codeOf(() => cutCycle({ cycle: udds, from: q("-1 s") }))).toBe("NEGATIVE");
  });
});

describe("joining and repeating", () => {
  it("adds distances and durations, with the pauses", () => {
    fc.assert(
      fc.property(
        fc.array(fc.constantFrom(udds, hwfet, nedc, us06Highway), { minLength: 1, maxLength: 4 }),
        between(0, 60),
        (cycles, s) => {
          const joined = joinCycles({ cycles, pause: quantity(s, "s") });
          const sum = (of: "distance" | "duration") =>
            cycles.reduce((all, { segments }) => all + segments.total[of], 0);
          expect(close(joined.segments.total.distance, sum("distance"), undefined, 1e-9)).toBe(true);
          expect(
            close(joined.segments.total.duration, sum("duration") + s * (cycles.length - 1), undefined, 1e-9),
          ).toBe(true);
          expect(joined.phases.map(({ name }) => name)).toEqual(cycles.map(({ name }) => name));
          joined.phases.forEach(({ distance }, i) => {
            expect(distance.in("m")).toBeCloseTo(cycles[i]?.distance.in("m") ?? 0, 6);
          });
        },
      ),
    );
  });

  it("refuses parts that do not meet", () => {
    const moving = cutCycle({ cycle: udds, to: q("40 s") });
    expect(codeOf(() => joinCycles({ cycles: [moving, udds] }))).toBe("INCONSISTENT");
    expect(
      codeOf(() => joinCycles({ cycles: [moving, cutCycle({ cycle: udds, from: q("40 s") })], pause: q("1 s") })),
    ).toBe("INCONSISTENT");
    const again = joinCycles({ cycles: [moving, cutCycle({ cycle: udds, from: q("40 s") })] });
    expect(again.distance.in("m")).toBeCloseTo(udds.distance.in("m"), 8);
  });

  it("refuses nothing at all, too much, and parts of times", () => {
    expect(codeOf(() => joinCycles({ cycles: [] }))).toBe("EMPTY");
    expect(codeOf(() => joinCycles({ cycles: [udds, "hwfet" as never] }))).toBe("WRONG_CHOICE");
    expect(codeOf(() => repeatCycle({ cycle: udds, times: 1.5 }))).toBe("OUT_OF_RANGE");
    expect(codeOf(() => repeatCycle({ cycle: udds, times: 0 }))).toBe("OUT_OF_RANGE");
    expect(codeOf(() => repeatCycle({ cycle: udds, times: 1000 }))).toBe("TOO_LONG");
  });
});

describe("reading at even steps", () => {
  it("keeps the distance exactly when every row falls on a new one", () => {
    for (const cycle of [udds, nedc, wltc3b]) {
      for (const step of [1, 0.5, 0.25] as const) {
        const fine = resampleCycle({ cycle, step: quantity(step, "s") });
        expect(close(fine.distance.in("m"), cycle.distance.in("m"))).toBe(true);
        expect(fine.phases.map(({ name }) => name)).toEqual(cycle.phases.map(({ name }) => name));
      }
    }
  });

  it("moves the distance by no more than its documentation says", () => {
    fc.assert(
      fc.property(traces, between(0.05, 7), (cycle, step) => {
        const { time, speed } = cycle;
        const accelerations = speed
          .slice(1)
          .map((v, i) => (v - (speed[i] as number)) / ((time[i + 1] as number) - (time[i] as number)));
        const span = Math.max(...accelerations) - Math.min(...accelerations);
        const coarse = resampleCycle({ cycle, step: quantity(step, "s") });
        const moved = Math.abs(coarse.distance.in("m") - cycle.distance.in("m"));
        expect(moved).toBeLessThanOrEqual((span * step * cycle.duration.in("s")) / 8 + 1e-6);
        expect(close(coarse.duration.in("s"), cycle.duration.in("s"))).toBe(true);
      }),
    );
  });

  it("says by how much it moved", () => {
    expect(resampleCycle({ cycle: udds, step: q("7 s") }).notes.join(" ")).toMatch(/moved the distance by -?\d/);
    expect(codeOf(() => resampleCycle({ cycle: udds, step: q("1 ms") }))).toBe("TOO_LONG");
    expect(codeOf(() => resampleCycle({ cycle: udds, step: q("0 s") }))).toBe("OUT_OF_RANGE");
  });
});

describe("grades", () => {
  it("of the US highway profile are as many as its rows, and sum to no height by the symmetry it was completed with", () => {
    const { distance, grade, basis } = usHighwayGrade;
    expect([distance.length, grade.length, basis.length]).toEqual([213, 213, 213]);
    expect(["seen", "moved", "inferred"].map((kind) => basis.filter((each) => each === kind).length)).toEqual([
      123, 25, 65,
    ]);
    expect(Math.max(...grade)).toBe(0.0501);
    expect(usHighwayGrade.warnings.join(" ")).toContain("90 of the 213 rows");
  });

  it("gain the height of the road, over any cycle and from any place", () => {
    const height = (to: number): number => {
      let sum = 0;
      for (let i = 0; i < 20_000; i++) sum += gradeAt(((i + 0.5) / 20_000) * to) * (to / 20_000);
      return sum;
    };
    const cycle = gradeCycle({ cycle: hwfet, profile: usHighwayGrade });
    const climbed = (cycle.grade ?? []).slice(1).reduce((sum, grade, i) => {
      const way = ((hwfet.speed[i] as number) + (hwfet.speed[i + 1] as number)) / 2;
      return sum + grade * way;
    }, 0);
    expect(climbed).toBeCloseTo(height(hwfet.distance.in("m")), 2);
    expect(cycle.warnings.join(" ")).toContain("not read in the regulation");
  });

  it("refuse a road that is too short or no road", () => {
    expect(codeOf(() => gradeCycle({ cycle: wltc3b, profile: usHighwayGrade }))).toBe("OUT_OF_RANGE");
    const profile = { name: "hill", distance: [0, 20000], grade: [0.01, 0.02] };
    expect(codeOf(() => gradeCycle({ cycle: hwfet, profile: { ...profile, distance: [0] } }))).toBe("EMPTY");
    expect(codeOf(() => gradeCycle({ cycle: hwfet, profile: { ...profile, distance: [1, 0] } }))).toBe("INCONSISTENT");
    expect(codeOf(() => gradeCycle({ cycle: hwfet, profile: { ...profile, grade: [1, 5] } }))).toBe("OUT_OF_RANGE");
    expect(codeOf(() => gradeCycle({ cycle: hwfet, profile: { ...profile, grade: [Number.NaN, 0] } }))).toBe(
      "NOT_A_NUMBER",
    );
  });
});

/** The profile by plain search, independent of the one in the library. */
function gradeAt(place: number): number {
  const { distance, grade } = usHighwayGrade;
  const row = distance.findIndex((x) => x > place);
  const [a, b] = [distance[row - 1] as number, distance[row] as number];
  return (grade[row - 1] as number) + (((grade[row] as number) - (grade[row - 1] as number)) * (place - a)) / (b - a);
}

describe("physical sense", () => {
  it("warns of a change of speed that no road vehicle makes, and keeps the trace", () => {
    const jump = speedTrace({ name: "jump", time: [0, 1, 2], speed: [0, 30, 30], speedUnit: "m/s" });
    expect(jump.warnings.join(" ")).toMatch(/row 2 faster than 10 m\/s², up to 30 m\/s²/);
    expect(cycleStatistics({ cycle: jump }).largestAcceleration.in("m/s²")).toBe(30);
    const fine = speedTrace({ name: "fine", time: [0, 10], speed: [0, 30], speedUnit: "m/s" });
    expect(fine.warnings).toEqual([]);
  });

  it("warns of roads that are too steep, and refuses walls", () => {
    const trace = { name: "hill", time: [0, 1, 2], speed: [5, 5, 5], speedUnit: "m/s" } as const;
    expect(speedTrace({ ...trace, grade: [0, 0.1, 0.4] }).warnings.join(" ")).toContain("steeper than 35 %");
    expect(codeOf(() => speedTrace({ ...trace, grade: [0, 5, 0] }))).toBe("OUT_OF_RANGE");
    expect(codeOf(() => speedTrace({ ...trace, grade: [0, 0] }))).toBe("INCONSISTENT");
  });
});
