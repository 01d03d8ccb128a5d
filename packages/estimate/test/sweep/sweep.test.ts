import { q } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { around, model, propagate, solveFor, sweep } from "../../src/index.js";
import { crossingsOf } from "../../src/sweep/crossing.js";

const trip = model({
  name: "range of a body",
  inputs: {
    usable: { unit: "kWh", meaning: "usable energy", above: 0 },
    speed: { unit: "km/h", meaning: "speed", above: 0 },
    dragArea: { unit: "m²", meaning: "drag area", above: 0 },
  },
  outputs: { range: { unit: "km", meaning: "range" } },
  evaluate: ({ usable, speed, dragArea }) => {
    if (speed > 200) throw new Error("too fast");
    return { range: (1000 * usable) / (60 + 0.017 * dragArea * speed ** 2) };
  },
});
const evidence = { usable: q("80 kWh"), speed: q("100 km/h"), dragArea: around(q("0.7 m²"), 0.08) };
const speeds = { from: q("60 km/h"), to: q("140 km/h"), points: 9 };

describe("sweep", () => {
  it("gives at every point what propagate gives there, the first input running fastest", () => {
    const over = { speed: speeds, usable: [q("60 kWh"), q("90 kWh")] };
    const { rows, draws } = sweep({ model: trip, evidence, over, output: "range" });
    expect(rows).toHaveLength(18);
    expect(rows.map(({ at }) => [at.speed?.in("km/h"), at.usable?.in("kWh")]).slice(7, 10)).toEqual([
      [130, 60],
      [140, 60],
      [60, 90],
    ]);
    for (const row of rows) {
      const there = propagate({ model: trip, evidence: { ...evidence, ...row.at } as typeof evidence, draws });
      expect(row.spread).toEqual(there.spread.range);
      expect(row.likely).toEqual(there.likely.range);
    }
  });

  it("finds where the target is crossed: as solveFor does, within the straight lines", () => {
    const over = { speed: { ...speeds, points: 81 } };
    const { crossings, rows } = sweep({ model: trip, evidence, over, output: "range", target: q("450 km") });
    const solved = solveFor({
      ...{
        model: trip,
        evidence,
        unknown: "speed",
        between: [q("60 km/h"), q("140 km/h")],
        output: "range",
        target: q("450 km"),
      },
      draws: 1024,
    });
    const at = (line: string): number =>
      crossings.find((each) => each.line === line)?.at.speed?.in("km/h") ?? Number.NaN;
    expect(at("likely")).toBeCloseTo(
      solved.likely.outcome === "reached" ? solved.likely.value.in("km/h") : Number.NaN,
      1,
    );
    expect(at("p10")).toBeCloseTo(solved.needed.p10?.in("km/h") ?? Number.NaN, 0);
    expect(at("p90")).toBeCloseTo(solved.needed.p90?.in("km/h") ?? Number.NaN, 0);
    expect(crossings.every(({ rising }) => !rising)).toBe(true);
    const chances = rows.map(({ chanceOfAtLeast }) => chanceOfAtLeast as number);
    expect([chances[0], chances.at(-1)]).toEqual([1, 0]);
    expect([...chances].sort((a, b) => b - a)).toEqual(chances);
  });

  it("leaves a gap where the model does not hold, and says why", () => {
    const over = { speed: [q("150 km/h"), q("190 km/h"), q("230 km/h")] };
    const { rows, warnings } = sweep({ model: trip, evidence, over, output: "range", target: q("100 km") });
    expect(rows[2]).toMatchObject({ failed: 1024, reason: expect.stringContaining("too fast") });
    expect(rows[2]?.spread).toBeUndefined();
    expect(warnings).toEqual(["1 of 3 points have no result"]);
    expect(() =>
      sweep({ model: trip, evidence, over: { speed: [q("230 km/h"), q("240 km/h")] }, output: "range" }),
    ).toThrow("too fast");
  });

  it.each([
    ["WRONG_CHOICE", { over: { length: speeds } }],
    ["WRONG_DIMENSION", { over: { speed: [q("1 kg"), q("2 kg")] } }],
    ["NEGATIVE", { over: { speed: [q("-1 km/h"), q("2 km/h")] } }],
    ["INCONSISTENT", { over: { speed: [q("10 km/h")] } }],
    ["INCONSISTENT", { over: { speed: [q("10 km/h"), q("30 km/h"), q("20 km/h")] } }],
    ["INCONSISTENT", { over: { speed: { from: q("10 km/h"), to: q("10 km/h"), points: 3 } } }],
    ["OUT_OF_RANGE", { over: {} }],
    [
      "OUT_OF_RANGE",
      { over: { speed: { ...speeds, points: 1000 }, usable: { from: q("1 kWh"), to: q("2 kWh"), points: 11 } } },
    ],
    ["OUT_OF_RANGE", { over: { speed: { ...speeds, points: 1 } } }],
    ["UNKNOWN_OPTION", { over: { speed: { ...speeds, steps: 1 } } }],
    ["NOT_AN_OBJECT", { over: [] }],
    ["INCONSISTENT", { correlations: [{ between: ["speed", "dragArea"], rank: 0.5 }] }],
    ["WRONG_CHOICE", { output: "weight" }],
    ["WRONG_DIMENSION", { target: q("1 kg") }],
    ["OUT_OF_RANGE", { draws: 3 }],
  ])("refuses with %s: %o", (code, change) => {
    const options = { model: trip, evidence, over: { speed: speeds }, output: "range" };
    expect(() => sweep({ ...options, ...change } as never)).toThrow(expect.objectContaining({ code }));
  });
});

describe("crossings of a line through points", () => {
  it("meet every zero of a polygon once, with its direction", () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: -5, max: 5 }), { minLength: 2, maxLength: 20 }),
        fc.integer({ min: -4, max: 4 }),
        (ys, target) => {
          const xs = ys.map((_, i) => i);
          for (const { value, rising } of crossingsOf(xs, ys, target)) {
            const i = Math.min(Math.floor(value), ys.length - 2);
            const [a, b] = [ys[i] as number, ys[i + 1] as number];
            expect(a + (b - a) * (value - i)).toBeCloseTo(target, 9);
            expect(rising).toBe(b > a);
          }
          const signs = ys.map((y) => Math.sign(y - target));
          const changes = signs.slice(1).filter((sign, i) => sign * (signs[i] as number) < 0).length;
          expect(crossingsOf(xs, ys, target).length).toBeGreaterThanOrEqual(changes);
        },
      ),
    );
    expect(crossingsOf([0, 1, 2], [0, 1, 0], 0)).toEqual([
      { value: 0, rising: true },
      { value: 2, rising: false },
    ]);
    expect(crossingsOf([0, 1, 2], [-1, undefined, 1], 0)).toEqual([]);
  });
});
