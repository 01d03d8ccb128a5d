import { existsSync, readFileSync } from "node:fs";
import { q } from "@tarewatt/units";
import { describe, expect, it } from "vitest";
import { published } from "../../../../test/support/published.js";
import { type Cycle, cycles, hwfet, udds, us06, wltc3b } from "../../src/index.js";

const secondary = "secondary tables of cycle statistics";
const canadian = "a Canadian government page on the fuel consumption tests";

describe("regulated cycles", () => {
  published({
    quantity: "UDDS: duration, distance, mean, maximum",
    source: "40 CFR 1066.801 (about 7.5 miles, seen); two-decimal figures remembered",
    status: "memory",
    published: [1369, 7.45, 19.59, 56.7],
    computed: () => figures(udds, "mi", "mph"),
    tolerance: 0.005,
    why: "last printed digit",
  });
  published({
    quantity: "HWFET: duration, distance, mean",
    source: secondary,
    status: "quoted",
    published: [765, 10.26, 48.3],
    computed: () => figures(hwfet, "mi", "mph").slice(0, 3),
    tolerance: 0.05,
    why: "last printed digit of the mean",
  });
  published({
    quantity: "HWFET: maximum",
    source: "40 CFR part 600, appendix I",
    status: "memory",
    published: q("59.9 mph"),
    computed: () => hwfet.maximumSpeed,
    tolerance: 1e-9,
    why: "a value of the table; the unit is converted and back",
  });
  published({
    quantity: "HWFET: distance",
    source: canadian,
    status: "seen",
    published: q("16.5 km"),
    computed: () => hwfet.distance,
    tolerance: 0.05,
    why: "last printed digit",
  });
  published({
    quantity: "HWFET: mean",
    source: canadian,
    status: "seen",
    published: q("78 km/h"),
    computed: () => hwfet.meanSpeed,
    tolerance: 0.5,
    why: "last printed digit",
  });
  published({
    quantity: "HWFET: maximum, in whole km/h",
    source: canadian,
    status: "seen",
    published: q("97 km/h"),
    computed: () => hwfet.maximumSpeed,
    tolerance: 1,
    why: "the source rounds up: 59.9 mph are 96.4 km/h",
  });
  published({
    quantity: "US06: distance, maximum",
    source: secondary,
    status: "quoted",
    published: [8.01, 80.3],
    computed: () => [us06.distance.in("mi"), us06.maximumSpeed.in("mph")],
    tolerance: 0.005,
    why: "last printed digit",
  });
  published({
    quantity: "US06: duration, mean",
    source: secondary,
    status: "quoted",
    published: [596, 48.4],
    computed: () => [us06.duration.in("s"), us06.meanSpeed.in("mph")],
    tolerance: 0.05,
    why: "last printed digit of the mean",
  });
  published({
    quantity: "WLTC class 3b: distance",
    source: "UN GTR No. 15, annex 1, as quoted in a secondary table",
    status: "quoted",
    published: q("23266 m"),
    computed: () => wltc3b.distance,
    tolerance: 0.5,
    why: "last printed digit",
  });
  published({
    quantity: "WLTC class 3b: mean and maximum",
    source: "UN GTR No. 15, annex 1, as quoted in a secondary table",
    status: "quoted",
    published: [q("46.5 km/h"), q("131.3 km/h")],
    computed: () => [wltc3b.meanSpeed, wltc3b.maximumSpeed],
    tolerance: 0.05,
    why: "last printed digit",
  });
  published({
    quantity: "WLTC class 3b: duration of low, medium, high, extra high",
    source: "a working paper of the UN group on the procedure",
    status: "seen",
    published: [589, 433, 455, 323],
    computed: () => wltc3b.phases.map(({ from, to }) => to - from),
    tolerance: 0,
    why: "whole seconds",
  });
  published({
    quantity: "WLTC class 3b: distance of low, medium, high, extra high",
    source: "UN GTR No. 15, annex 1",
    status: "memory",
    published: [3095, 4756, 7162, 8254],
    computed: () => wltc3b.phases.map(({ distance }) => distance.in("m")),
    tolerance: 0.6,
    why: "the regulation rounds so that the phases sum to the whole: its 3095 is 3094.5",
  });
  published({
    quantity: "WLTC class 3b: largest speed of low, medium, high, extra high",
    source: "a working paper of the UN group on the procedure",
    status: "seen",
    published: [56.5, 76.6, 97.4, 131.3],
    computed: () => wltc3b.phases.map(({ from, to }) => Math.max(...wltc3b.speed.slice(from, to + 1)) * 3.6),
    tolerance: 1e-9,
    why: "values of the table; the unit is converted and back",
  });
  published({
    quantity: "WLTC class 3b: sum of the speeds of low, medium, high, extra high",
    source: "UN GTR No. 15, check sums, as quoted by others",
    status: "quoted",
    published: [11140.3, 17121.2, 25782.2, 29714.9],
    computed: () =>
      wltc3b.phases.map(({ from, to }) => wltc3b.speed.slice(from + 1, to + 1).reduce((a, b) => a + b, 0) * 3.6),
    tolerance: 1e-6,
    why: "rounding of the sum",
  });

  const sums = {
    UDDS: [udds, 26821.4, 29441932.232],
    HWFET: [hwfet, 36924.1, 95592765.709],
    US06: [us06, 28828.7, 111108473.927],
  } as const;
  for (const [name, [cycle, sum, sumOfCubes]] of Object.entries(sums)) {
    published({
      quantity: `${name}: Σv and Σv³ of the table, in mph`,
      source: "summed by a separate script over an independent copy of the table",
      status: "regression",
      published: [sum, sumOfCubes],
      computed: () => [1, 3].map((power) => cycle.speed.reduce((all, v) => all + (v / 0.44704) ** power, 0)),
      tolerance: { relative: 1e-10 },
      why: "rounding of the sums: one digit of one second, at 1 mph or more, shows in both",
    });
  }

  it("end at rest, start at rest, and have phases that cover them", () => {
    for (const cycle of Object.values(cycles)) {
      expect([cycle.speed[0], cycle.speed.at(-1)]).toEqual([0, 0]);
      expect(cycle.segments.total.kineticChange).toBe(0);
      if (cycle.phases.length === 0) continue;
      const sum = cycle.phases.reduce((all, { distance }) => all + distance.in("m"), 0);
      expect(sum).toBeCloseTo(cycle.distance.in("m"), 6);
      expect(cycle.phases[0]?.from).toBe(0);
      expect(cycle.phases.at(-1)?.to).toBe(cycle.duration.in("s"));
    }
  });

  it("compute their numbers once and cannot be changed", () => {
    for (const cycle of Object.values(cycles)) {
      expect(cycle.segments).toBe(cycle.segments);
      expect(() => (cycle.speed as number[]).push(1)).toThrow(TypeError);
      expect(() => {
        (cycle as { name: string }).name = "other";
      }).toThrow(TypeError);
    }
  });

  it("say that the printed US06 table is longer than the cycle", () => {
    expect(us06.phases.at(-1)?.to).toBe(596);
    expect(us06.notes.join(" ")).toContain("596 s");
  });
});

function figures(cycle: Cycle, length: "mi" | "km", speed: "mph" | "km/h"): number[] {
  const { duration, distance, meanSpeed, maximumSpeed } = cycle;
  return [duration.in("s"), distance.in(length), meanSpeed.in(speed), maximumSpeed.in(speed)];
}

/** Where a collection of reference tables, made independently of this project, may lie: beside the project. */
const beside = new URL("../../../../../shared/reference/cycles/", import.meta.url);
const files = {
  udds: "udds.csv",
  ftp75: "ftp75.csv",
  hwfet: "hwfet.csv",
  us06: "us06.csv",
  sc03: "sc03.csv",
  wltc3b: "wltc_3b.csv",
  cltcP: "cltc_p.csv",
} as const;

describe.each(Object.entries(files) as [keyof typeof files, string][])("%s", (name, file) => {
  const path = new URL(file, beside);
  const there = existsSync(path);
  const why = there ? "" : " (skipped: the reference tables are not beside the project)";
  it.skipIf(!there)(`is, row by row, the reference table of the same cycle${why}`, () => {
    const rows = readFileSync(path, "utf8")
      .split(/\r?\n/)
      .filter((line) => /^\d/.test(line))
      .map((line) => line.split(",").map(Number));
    const factor = file.startsWith("wltc") || file.startsWith("cltc") ? 1 / 3.6 : 0.44704;
    const { time, speed } = cycles[name];
    // US06 and SC03 are cut at their official end; the rows of the reference table beyond it must be at rest.
    expect(rows.length).toBe(name === "us06" || name === "sc03" ? 601 : time.length);
    for (const [, value] of rows.slice(time.length)) expect(value).toBe(0);
    rows.slice(0, time.length).forEach(([seconds, value], row) => {
      expect(time[row]).toBe(seconds);
      expect(speed[row]).toBeCloseTo((value as number) * factor, 10);
    });
  });
});
