import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { keepInside, spreadApart } from "../../src/figure/spread-apart.js";
import { lineWidth, wrapTo } from "../../src/figure/text-width.js";
import { apart, roundTicks } from "../../src/figure/ticks.js";

describe("labels", () => {
  const wishes = fc.array(
    fc.record({
      centre: fc.double({ min: -50, max: 400, noNaN: true }),
      height: fc.double({ min: 10, max: 60, noNaN: true }),
    }),
    { maxLength: 9 },
  );

  it("do not overlap and keep their order", () => {
    fc.assert(
      fc.property(wishes, (labels) => {
        const centres = spreadApart(labels, 4);
        const order = labels
          .map((_, i) => i)
          .sort((a, b) => (labels[a]?.centre ?? 0) - (labels[b]?.centre ?? 0) || a - b);
        for (const [place, index] of order.slice(1).entries()) {
          const above = order[place] as number;
          const room = (centres[index] as number) - (centres[above] as number);
          expect(room).toBeGreaterThanOrEqual(
            ((labels[index]?.height ?? 0) + (labels[above]?.height ?? 0)) / 2 + 4 - 1e-9,
          );
        }
      }),
    );
  });

  it("stay where they are wanted when there is room", () => {
    expect(
      spreadApart(
        [
          { centre: 100, height: 20 },
          { centre: 0, height: 20 },
        ],
        4,
      ),
    ).toEqual([100, 0]);
    expect(
      spreadApart(
        [
          { centre: 50, height: 20 },
          { centre: 50, height: 20 },
        ],
        4,
      ),
    ).toEqual([38, 62]);
  });
});

describe("ticks", () => {
  it("are round, even, and hold the data", () => {
    const bound = fc.double({ min: -1e9, max: 1e9, noNaN: true });
    fc.assert(
      fc.property(bound, bound, (a, b) => {
        const [low, high] = apart(Math.min(a, b), Math.max(a, b));
        const { values } = roundTicks(low, high, 6);
        const [first, second, last] = [values[0], values[1], values.at(-1)] as [number, number, number];
        const step = second - first;
        expect(first).toBeLessThanOrEqual(low + 1e-8 * step);
        expect(last).toBeGreaterThanOrEqual(high - 1e-8 * step);
        expect(values.length).toBeLessThanOrEqual(9);
        const mantissa = Number(step.toExponential(3).split("e")[0]);
        expect([1, 2, 5, 10]).toContain(mantissa);
      }),
    );
  });

  it("print with as many places as their step needs", () => {
    expect(roundTicks(3.2, 4.15, 5)).toEqual({ values: [3.2, 3.4, 3.6, 3.8, 4, 4.2], format: ".1f" });
    expect(roundTicks(0, 50_000, 5).format).toBe(",.0f");
    expect(roundTicks(0, 1e-9, 5).format).toBe("~e");
  });
});

describe("wrapped text", () => {
  it("keeps every word and no line too long", () => {
    fc.assert(
      fc.property(
        fc.array(fc.stringMatching(/^[a-zA-Z0-9]{1,30}$/), { minLength: 1 }),
        fc.integer({ min: 40, max: 400 }),
        (words, width) => {
          const lines = wrapTo(words.join(" "), width, 14);
          expect(lines.every((line) => lineWidth(line, 14) <= width)).toBe(true);
          expect(lines.join("").replace(/ /g, "")).toBe(words.join(""));
        },
      ),
    );
  });

  it("does not part a number from its degrees", () => {
    expect(wrapTo("in winter at −10 °C", lineWidth("in winter at −10", 14) + 1, 14)[1]).toBe("−10\u00a0°C");
  });
});

describe("labels at an edge", () => {
  it("stay inside and apart when there is room for all", () => {
    const wishes = fc.array(
      fc.record({
        centre: fc.double({ min: -100, max: 500, noNaN: true }),
        height: fc.double({ min: 10, max: 40, noNaN: true }),
      }),
      { maxLength: 8 },
    );
    fc.assert(
      fc.property(wishes, (labels) => {
        const kept = keepInside(labels, spreadApart(labels, 5), { gap: 5, room: 400 });
        const boxes = labels
          .map(
            ({ height }, index) =>
              [(kept[index] as number) - height / 2, (kept[index] as number) + height / 2] as const,
          )
          .sort((a, b) => a[0] - b[0]);
        for (const [index, [top, bottom]] of boxes.entries()) {
          expect(top).toBeGreaterThanOrEqual(-1e-9);
          expect(bottom).toBeLessThanOrEqual(400 + 1e-9);
          expect(top).toBeGreaterThanOrEqual((boxes[index - 1]?.[1] ?? -10) + 5 - 1e-9);
        }
      }),
    );
  });
});
