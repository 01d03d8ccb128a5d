import { type InputError, q } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { speedTraceFromCsv, udds } from "../../src/index.js";
import { close, codeOf } from "../support.js";

const from = (text: string, options = {}) => speedTraceFromCsv({ name: "own", text, ...options });

describe("a speed trace from text", () => {
  it("reads back a cycle that was written, whatever the separator, the mark of decimals and the end of lines", () => {
    const formats = fc.record({
      separator: fc.constantFrom(",", ";", "\t"),
      end: fc.constantFrom("\n", "\r\n", "\r"),
      quoted: fc.boolean(),
    });
    fc.assert(
      fc.property(formats, fc.boolean(), ({ separator, end, quoted }, comma) => {
        const cell = (value: string | number) => {
          const text = comma && separator !== "," ? String(value).replace(".", ",") : String(value);
          return quoted ? `"${text}"` : text;
        };
        const rows = udds.time.map((t, i) => [t, (udds.speed[i] as number) / 0.44704].map(cell).join(separator));
        const text = [`time_s${separator}Speed (mph)`, ...rows].join(end);
        const read = from(`# a comment${end}${end}\uFEFF`.slice(0, -1) + text);
        expect(close(read.distance.in("m"), udds.distance.in("m"))).toBe(true);
      }),
      { numRuns: 24 },
    );
  });

  it.each([
    ["time (s),speed (km/h)", 36],
    ["time [s],speed [kph]", 36],
    ["T_s,V_kmh", 36],
    ["lap,time s,other,speed m/s", 10],
    ["time (min),speed (mph)", 10 / 0.44704],
  ])("finds the columns and units of %s", (header, ten) => {
    const [lead, middle] = header.startsWith("lap") ? ["7,", ",x"] : ["", ""];
    const text = `${header}\n${lead}0${middle},${ten}\n${lead}10${middle},${ten}`;
    const speed = from(text).speed;
    expect(speed[0]).toBeCloseTo(10, 10);
    expect(from(text).duration.in("s")).toBe(header.includes("min") ? 600 : 10);
  });

  it("takes grades in per cent, and altitudes as the way they rise over", () => {
    const grades = from("time (s),speed (m/s),grade (%)\n0,10,0\n10,10,2\n20,10,4").grade;
    expect(grades?.slice(1).map((g) => Number(g.toFixed(12)))).toEqual([0.01, 0.03]);
    const rise = from(
      "time (s),speed (m/s),elevation (ft)\n0,10,0\n10,10,16.404199475\n20,0,16.404199475\n30,0,20",
    ).grade;
    expect(rise?.[1]).toBeCloseTo(5 / Math.sqrt(100 ** 2 - 5 ** 2), 9);
    expect(rise?.slice(2)).toEqual([0, 0]);
  });

  it("names every row that is wrong by its line, twenty at most, and counts all", () => {
    const text = "# log\ntime (s),speed (km/h)\n0,0\n1,abc\n\n2,5\n2,6\n3\n4,-7\n5,=1+1\n6,8";
    try {
      from(text);
      expect.unreachable();
    } catch (error) {
      const { code, details } = error as InputError;
      expect(code).toBe("INCONSISTENT");
      const { rows, total } = details as { rows: { line: number; problem: string }[]; total: number };
      expect(rows.map(({ line }) => line)).toEqual([4, 7, 8, 9, 10]);
      expect(rows.map(({ problem }) => problem).join("|")).toMatch(/abc.*does not increase.*missing.*negative.*=1\+1/);
      expect(total).toBe(5);
    }
    const many = `time (s),speed (km/h)\n${Array.from({ length: 500 }, () => "x,y").join("\n")}`;
    try {
      from(many);
      expect.unreachable();
    } catch (error) {
      const { details, message } = error as InputError;
      expect((details as { rows: unknown[] }).rows).toHaveLength(20);
      expect((details as { total: number }).total).toBe(500);
      expect(message).toContain("and 480 more");
      expect(message.length).toBeLessThan(2000);
    }
  });

  it.each<[string, string, object, string]>([
    ["no unit of speed", "time (s),speed\n0,1\n1,1", {}, "MISSING_OPTION"],
    ["no column of speed", "time (s),velo (m/s)\n0,1\n1,1", {}, "MISSING_OPTION"],
    ["no column for a unit given", "time (s),speed (m/s)\n0,1\n1,1", { gradeUnit: "%" }, "MISSING_OPTION"],
    ["two columns of speed", "time (s),speed (m/s),v (mph)\n0,1,1\n1,1,1", {}, "INCONSISTENT"],
    ["a header and an option that differ", "time (s),speed (m/s)\n0,1\n1,1", { speedUnit: "mph" }, "INCONSISTENT"],
    ["an unknown unit", "time (s),speed (knots)\n0,1\n1,1", {}, "WRONG_CHOICE"],
    ["grades and altitudes", "time (s),speed (m/s),grade (%),altitude (m)\n0,1,0,0\n1,1,0,0", {}, "INCONSISTENT"],
    ["nothing", " \n# only a comment\n", {}, "EMPTY"],
    ["one row", "time (s),speed (m/s)\n0,1", {}, "EMPTY"],
    ["an altitude in the wrong unit", "time (s),speed (m/s),altitude (m)\n0,1,0\n1,1,500", {}, "OUT_OF_RANGE"],
    ["a speed in the wrong unit", "time (s),speed (m/s)\n0,0\n1,200", {}, "OUT_OF_RANGE"],
  ])("refuses %s", (_, text, options, code) => {
    expect(codeOf(() => from(text, options))).toBe(code);
  });

  it("takes a unit as an option where the header says none", () => {
    const trace = from("t,v\n0,36\n10,36", { timeUnit: "s", speedUnit: "km/h" });
    expect(trace.distance.ratioTo(q("100 m"))).toBeCloseTo(1, 12);
  });

  it("refuses a text that is too long before it reads it", () => {
    expect(codeOf(() => from(" ".repeat(50_000_001)))).toBe("TOO_LONG");
  });

  it("refuses rows with more cells than the header, as decimal commas make them", () => {
    const text = "time (s),speed (km/h)\n0,0,0,0\n1,0,10,5\n2,0,20,5";
    expect(() => speedTraceFromCsv({ name: "x", text })).toThrow(
      /line 2, it has 4 cells, and the header 2; where a comma is the decimal mark, separate the columns by semicolons/,
    );
    // A separator at the end of a line is no cell.
    expect(speedTraceFromCsv({ name: "x", text: "time (s),speed (m/s)\n0,0,\n10,5,\n20,0," }).warnings).toEqual([]);
  });

  it("refuses a very long cell at once", () => {
    const text = `time (s),speed (m/s)\n0,0\n1,${"1".repeat(1_000_000)}x`;
    const start = performance.now();
    expect(() => speedTraceFromCsv({ name: "x", text })).toThrow(/line 3, speed \(m\/s\) is no number: '1{30}'/);
    // Milliseconds; minutes if the cost grew with the square of the length.
    expect(performance.now() - start).toBeLessThan(5000);
  });

  it("doubts gaps in which the vehicle moves, and none in which it rests", () => {
    const doubts = (rows: string) => speedTraceFromCsv({ name: "x", text: `time (s),speed (km/h)\n${rows}` }).warnings;
    const steady = Array.from({ length: 20 }, (_, i) => `${i},${i === 0 ? 0 : 30}`).join("\n");
    expect(doubts(`${steady}\n4000,30\n4020,0`).join()).toMatch(
      /gaps of up to 3980 s after row 20, where the vehicle moves/,
    );
    expect(doubts(`${steady}\n25,0\n4000,0\n4001,5`)).toEqual([]);
  });

  it("doubts altitudes that go up and down within a hundred metres, and lets hills be", () => {
    const trip = (height: (metres: number) => number) => {
      const rows = Array.from({ length: 600 }, (_, i) => `${i},50,${height((i * 50) / 3.6)}`).join("\n");
      return speedTraceFromCsv({ name: "x", text: `time (s),speed (km/h),altitude (m)\n${rows}` }).warnings;
    };
    expect(trip((metres) => 200 + 20 * Math.sin(metres / 150))).toEqual([]);
    expect(trip((metres) => Math.round(200 + 0.8 * Math.sin(metres / 7))).join()).toMatch(/over stretches of 100 m/);
  });
});
