import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { inks, strokes } from "../../src/figure/palette.js";
import { spreadApart } from "../../src/figure/spread-apart.js";
import { apart, roundTicks } from "../../src/figure/ticks.js";
import { wrap } from "../../src/figure/wrap.js";
import { contrast, luminance } from "../support/contrast.js";

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
        fc.array(fc.stringMatching(/^[a-z]{1,30}$/), { minLength: 1 }),
        fc.integer({ min: 5, max: 40 }),
        (words, most) => {
          const lines = wrap(words.join(" "), most);
          expect(lines.every((line) => line.length <= most)).toBe(true);
          expect(lines.join("").replace(/ /g, "")).toBe(words.join(""));
        },
      ),
    );
  });
});

describe("palette", () => {
  // Okabe and Ito, "Color Universal Design" (2008), the eight colours; values from memory.
  it("uses colours of the published set only, each once", () => {
    const published = ["#000000", "#e69f00", "#56b4e9", "#009e73", "#f0e442", "#0072b2", "#d55e00", "#cc79a7"];
    expect(strokes.every(({ colour }) => published.includes(colour))).toBe(true);
    expect(new Set(strokes.map(({ colour }) => colour)).size).toBe(strokes.length);
  });

  it("can be read in grey: two strokes differ in dash or clearly in lightness", () => {
    for (const [index, one] of strokes.entries()) {
      for (const other of strokes.slice(index + 1)) {
        const [dark = 0, bright = 0] = [luminance(one.colour), luminance(other.colour)].sort((a, b) => a - b);
        expect(String(one.dash) !== String(other.dash) || (bright + 0.05) / (dark + 0.05) > 1.8).toBe(true);
      }
    }
  });

  it("writes in inks that stand out from white", () => {
    expect(contrast(inks.text, "#ffffff")).toBeGreaterThan(4.5);
    expect(contrast(inks.quiet, "#ffffff")).toBeGreaterThan(4.5);
  });
});
