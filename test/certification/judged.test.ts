import { describe, expect, it } from "vitest";
import { judge, type Prediction } from "./judged.js";

const prediction = (maker: string, likely: number, certified = 100, half = 10): Prediction => ({
  ...{ maker, certified, likely, low: likely - half, high: likely + half },
});

describe("the judgement of predictions", () => {
  it("counts errors, and a maker with many rows once where it says so", () => {
    const many = Array.from({ length: 8 }, () => prediction("A", 102));
    const { errors } = judge([...many, prediction("B", 110), prediction("C", 120)]);
    expect(errors.median).toBeCloseTo(0.02, 9);
    expect(errors.balanced).toBeCloseTo(0.1, 9);
    expect(errors.bias).toBeCloseTo(0.02, 9);
  });

  it("counts what intervals hold, and how wide they are", () => {
    const { interval90, balanced90, width90 } = judge([
      ...[prediction("A", 105), prediction("A", 95), prediction("A", 111)],
      prediction("B", 100),
    ]);
    expect(interval90).toBe(0.75);
    expect(balanced90).toBeCloseTo((2 / 3 + 1) / 2, 9);
    expect(width90).toBeCloseTo((20 / 105 + 20 / 100) / 2, 9);
  });

  it("scores an interval by its width, and a miss twenty times by how far: (u − l) + (2/α)·miss", () => {
    expect(judge([prediction("A", 100)]).intervalScore).toBeCloseTo(0.2, 9);
    expect(judge([prediction("A", 113)]).intervalScore).toBeCloseTo(0.2 + 20 * 0.03, 9);
    expect(judge([prediction("A", 87)]).intervalScore).toBeCloseTo(0.2 + 20 * 0.03, 9);
  });

  it("draws makers anew: wide when they differ, of no width when all are alike, and the same each time", () => {
    const unlike = [1, 2, 3, 4, 5, 6].map((i) => prediction(`maker ${i}`, 100 + 3 * i));
    const alike = [1, 2, 3, 4, 5, 6].map((i) => prediction(`maker ${i}`, 104));
    const [low, high] = judge(unlike).makersDrawn.median;
    expect(low).toBeGreaterThan(0.03);
    expect(high).toBeLessThan(0.18);
    expect(high - low).toBeGreaterThan(0.04);
    expect(judge(alike).makersDrawn.median).toEqual([expect.closeTo(0.04, 9), expect.closeTo(0.04, 9)]);
    expect(judge(unlike)).toEqual(judge(unlike));
  });
});
