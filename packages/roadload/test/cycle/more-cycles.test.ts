import { q } from "@tarewatt/units";
import { describe, expect, it } from "vitest";
import { published } from "../../../../test/support/published.js";
import {
  type Cycle,
  cltcP,
  cycles,
  driveCycle,
  ftp75,
  hwfet,
  nedc,
  sc03,
  udds,
  us06,
  us06City,
  us06Highway,
  wltc3b,
  wltc3bCity,
} from "../../src/index.js";
import { plainDrivetrain, plainLoad } from "../support.js";

const figures = (cycle: Cycle, length: "mi" | "km", speed: "mph" | "km/h"): number[] => [
  cycle.duration.in("s"),
  cycle.distance.in(length),
  cycle.meanSpeed.in(speed),
  cycle.maximumSpeed.in(speed),
];

describe("further regulated cycles", () => {
  published({
    quantity: "SC03: duration in s, distance in mi, mean and largest speed in mph",
    source: "secondary tables of 40 CFR part 86, appendix I (h)",
    status: "quoted",
    published: [596, 3.58, 21.6, 54.8],
    computed: () => figures(sc03, "mi", "mph"),
    tolerance: 0.05,
    why: "last printed digit of the mean; the distance 3.58 is from memory, 3.6 was seen",
  });
  published({
    quantity: "FTP-75 without its soak: duration in s, distance in mi, mean speed in mph",
    source: "a secondary table",
    status: "quoted",
    published: [1874, 11.04, 21.2],
    computed: () => figures(ftp75, "mi", "mph").slice(0, 3),
    tolerance: 0.05,
    why: "last printed digit of the mean",
  });
  published({
    quantity: "FTP-75: duration in s, distance in km, mean speed in km/h",
    source: "a government page on the five test cycles",
    status: "seen",
    published: [31 * 60 + 14, 17.8, 34],
    computed: () => figures(ftp75, "km", "km/h").slice(0, 3),
    tolerance: 0.5,
    why: "last printed digit of the mean",
  });
  published({
    quantity: "CLTC-P: duration in s, distance in km, mean and largest speed in km/h",
    source: "two secondary tables of GB/T 38146.1-2019",
    status: "quoted",
    published: [1800, 14.48, 28.96, 114.0],
    computed: () => figures(cltcP, "km", "km/h"),
    tolerance: 0.005,
    why: "last printed digit",
  });
  published({
    quantity: "CLTC-P: distance of low, medium, high, in km",
    source: "two secondary tables of GB/T 38146.1-2019",
    status: "quoted",
    published: [2.45, 5.91, 6.12],
    computed: () => cltcP.phases.map(({ distance }) => distance.in("km")),
    tolerance: 0.005,
    why: "last printed digit",
  });
  published({
    quantity: "NEDC: duration in s, largest speed in km/h, distance of the extra-urban part in km",
    source: "UN R83, annex 4a, and a secondary table",
    status: "seen",
    published: [1180, 120, 6.955],
    computed: () => [
      nedc.duration.in("s"),
      nedc.maximumSpeed.in("km/h"),
      nedc.phases.find(({ name }) => name === "extra-urban")?.distance.in("km") ?? 0,
    ],
    tolerance: 0.0005,
    why: "last printed digit of the distance",
  });
  published({
    quantity: "NEDC: whole distance in km",
    source: "UN R83, annex 4a",
    status: "seen",
    published: 11.007,
    computed: () => nedc.distance.in("km"),
    tolerance: { relative: 0.002 },
    why: "the printed 1.013 km of an urban cycle is met by no reading of its table; ours, with speed held in gear changes, is 0.2 % longer",
  });

  it("NEDC: an urban cycle spends the time in each operation that the regulation prints", () => {
    // UN R83, annex 4a, seen: idle 60 s; steady (with gear changes, 8 s) 57 + 8; acceleration 36; deceleration 25 + 9 declutched.
    const spent = { idle: 0, steady: 0, up: 0, down: 0 };
    for (let row = 1; (nedc.time[row] as number) <= 195; row++) {
      const seconds = (nedc.time[row] as number) - (nedc.time[row - 1] as number);
      const [a, b] = [nedc.speed[row - 1] as number, nedc.speed[row] as number];
      if (a === 0 && b === 0) spent.idle += seconds;
      else if (a === b) spent.steady += seconds;
      else if (b > a) spent.up += seconds;
      else spent.down += seconds;
    }
    expect(spent).toEqual({ idle: 60, steady: 65, up: 36, down: 34 });
  });

  it("FTP-75 is the UDDS and its transient part again", () => {
    expect(ftp75.speed.slice(0, 1370)).toEqual(udds.speed);
    expect(ftp75.speed.slice(1369)).toEqual(udds.speed.slice(0, 506));
    expect(ftp75.speed[1369]).toBe(0);
  });

  it("the parts of US06 and WLTC are parts of them", () => {
    const miles = us06City.distance.in("mi") + us06Highway.distance.in("mi");
    expect(miles).toBeCloseTo(us06.distance.in("mi"), 10);
    expect(us06City.duration.in("s") + us06Highway.duration.in("s")).toBe(596);
    expect([us06Highway.speed[0], us06Highway.speed.at(-1)]).toEqual([0, 0]);
    const [low, medium] = wltc3b.phases;
    expect(wltc3bCity.distance.in("m")).toBeCloseTo((low?.distance.in("m") ?? 0) + (medium?.distance.in("m") ?? 0), 8);
    expect(wltc3bCity.duration.in("s")).toBe(1022);
  });

  it("say how well their tables are known, and doubt nothing else", () => {
    for (const cycle of [...Object.values(cycles), us06City, us06Highway, wltc3bCity]) {
      expect(cycle.notes.length, cycle.name).toBeGreaterThan(0);
      const divided = cycle === us06City || cycle === us06Highway;
      expect(cycle.warnings.length, cycle.name).toBe(divided ? 1 : 0);
      expect(cycle.grade, cycle.name).toBeUndefined();
    }
    expect(hwfet.phases).toEqual([]);
  });

  it("the parts of US06 tell whoever drives them that their division is remembered", () => {
    for (const cycle of [us06City, us06Highway]) {
      expect(cycle.source.status).toBe("memory");
      const run = driveCycle({ cycle, load: plainLoad, drivetrain: plainDrivetrain, accessories: q("300 W") });
      expect(run.warnings.join(" ")).toContain("from memory");
    }
  });
});
