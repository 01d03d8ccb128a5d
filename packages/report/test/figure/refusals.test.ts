import { q } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { placeLabels, touch } from "../../src/figure/place-labels.js";
import {
  barFigure,
  bridgeFigure,
  distributionFigure,
  figureToSvg,
  figureToText,
  figureToVegaLite,
  intervalFigure,
  layoutFigure,
  panelFigure,
  pointFigure,
  stackFigure,
} from "../../src/index.js";
import { codeOf, messageOf } from "../support/codes.js";

const words = { title: "T", description: "D" };
const x = { title: "Range", unit: "km" };

const interval = (row: object) => () => intervalFigure({ ...words, x, rows: [{ label: "A", ...row }] });
const bar = (row: object) => () => barFigure({ ...words, x, rows: [{ label: "A", value: 2, ...row }] });
const point = (given: object) => () =>
  pointFigure({ ...words, x, y: x, points: [{ label: "A", x: 1, y: 2, ...given }] });
const distribution = (given: object) => () => distributionFigure({ ...words, x, ...given });
const curve = [
  { x: 1, density: 1 },
  { x: 2, density: 2 },
];
const layout = (shape: object) => () =>
  layoutFigure({ ...words, views: [{ title: "V", width: 10, height: 10, shapes: [shape as never] }] });

describe("what cannot be drawn is refused", () => {
  it.each<[string, () => unknown, string]>([
    ["an interval upside down", interval({ value: 2, low: 3, high: 1 }), "NOT_ORDERED"],
    ["an inner interval beyond the outer", interval({ value: 2, low: 1, high: 3, least: 1.5, most: 4 }), "NOT_ORDERED"],
    ["a row with nothing", interval({}), "MISSING_OPTION"],
    ["half an interval", interval({ value: 2, low: 1 }), "MISSING_OPTION"],
    ["a spread beside a value", interval({ value: 2, spread: { p10: 1, p50: 2, p90: 3 } }), "INCONSISTENT"],
    ["a mass on an axis of lengths", interval({ value: q("3 kg") }), "WRONG_DIMENSION"],
    ["NaN", interval({ value: Number.NaN }), "NOT_A_NUMBER"],
    ["a misspelt key", interval({ valeu: 2 }), "UNKNOWN_OPTION"],
    ["no rows", () => intervalFigure({ ...words, x, rows: [] }), "EMPTY"],
    [
      "a second unit of something else",
      () => intervalFigure({ ...words, x: { ...x, also: "kg" }, rows: [{ label: "A", value: 1 }] }),
      "WRONG_DIMENSION",
    ],
    ["a whisker beside its bar", bar({ low: 3, high: 4 }), "NOT_ORDERED"],
    ["half a whisker", bar({ high: 4 }), "MISSING_OPTION"],
    ["a bar without a value", bar({ value: undefined }), "MISSING_OPTION"],
    [
      "a bridge without steps",
      () => bridgeFigure({ ...words, x, from: { label: "A", value: 1 }, steps: [], to: "B" }),
      "EMPTY",
    ],
    [
      "a stack with one part twice",
      () =>
        stackFigure({
          ...words,
          x,
          bars: [
            {
              label: "A",
              parts: [
                { name: "P", value: 1 },
                { name: "P", value: 2 },
              ],
            },
          ],
        }),
      "REPEATED_NAME",
    ],
    ["neither curve nor bins", distribution({}), "INCONSISTENT"],
    ["both curve and bins", distribution({ curve, bins: [{ from: 1, to: 2, count: 1 }] }), "INCONSISTENT"],
    ["a negative density", distribution({ curve: [...curve, { x: 3, density: -1 }] }), "NEGATIVE"],
    ["a curve that goes back", distribution({ curve: [...curve, { x: 0, density: 1 }] }), "NOT_ORDERED"],
    ["a curve without an area", distribution({ curve: [{ x: 1, density: 1 }] }), "EMPTY"],
    ["a chance of 13", distribution({ curve, targets: [{ label: "A", value: 1, chance: 13 }] }), "NOT_A_FRACTION"],
    ["a median outside its interval", distribution({ curve, median: 3, low: 1, high: 2 }), "NOT_ORDERED"],
    ["an empty bin", distribution({ bins: [{ from: 2, to: 2, count: 1 }] }), "NOT_ORDERED"],
    ["a point beside its bar", point({ xLow: 2, xHigh: 3 }), "NOT_ORDERED"],
    ["half a bar of a point", point({ yLow: 2 }), "MISSING_OPTION"],
    [
      "a second unit upwards",
      () => pointFigure({ ...words, x, y: { ...x, also: "mi" }, points: [{ label: "A", x: 1, y: 1 }] }),
      "INCONSISTENT",
    ],
    ["a circle without a diameter", layout({ shape: "circle", x: 0, y: 0 }), "MISSING_OPTION"],
    ["a cell without a size", layout({ shape: "rectangle", x: 0, y: 0, width: 0, height: 1 }), "OUT_OF_RANGE"],
    ["another shape", layout({ shape: "hexagon", x: 0, y: 0, width: 1, height: 1 }), "WRONG_CHOICE"],
    [
      "five panels",
      () =>
        panelFigure({
          ...words,
          x,
          panels: [..."abcde"].map((title) => ({
            y: { title, unit: "1" },
            series: [{ name: "A", points: [{ x: 1, y: 1 }] }],
          })),
        }),
      "OUT_OF_RANGE",
    ],
    [
      "two panels of one name",
      () =>
        panelFigure({
          ...words,
          x,
          panels: [1, 2].map(() => ({ y: x, series: [{ name: "A", points: [{ x: 1, y: 1 }] }] })),
        }),
      "REPEATED_NAME",
    ],
  ])("%s", (_, make, code) => {
    expect(codeOf(make)).toBe(code);
  });

  it("more rows than a card holds, and says how high it would have to be", () => {
    const rows = Array.from({ length: 30 }, (_, index) => ({ label: `Row ${index}`, value: index }));
    const figure = barFigure({ ...words, x, rows });
    expect(codeOf(() => figureToVegaLite(figure, { size: "card" }))).toBe("NO_ROOM");
    const least = Number(
      /at least (\d+) pixels/.exec(messageOf(() => figureToVegaLite(figure, { size: "card" })))?.[1],
    );
    expect(figureToVegaLite(figure, { size: "card", height: least }).height).toBeGreaterThan(600);
    expect(codeOf(() => figureToVegaLite(figure, { size: "card", height: least - 1 }))).toBe("NO_ROOM");
  });
});

describe("a bridge", () => {
  it("arrives at the sum of all causes", () => {
    const changes = fc.array(fc.integer({ min: -1000, max: 1000 }), { minLength: 1, maxLength: 12 });
    fc.assert(
      fc.property(fc.integer({ min: -5000, max: 5000 }), changes, (value, list) => {
        const steps = list.map((change, index) => ({ label: `Cause ${index}`, change }));
        const { rows } = bridgeFigure({ ...words, x, from: { label: "A", value }, steps, to: "B" });
        expect(rows.at(-1)?.total).toBe(list.reduce((sum, change) => sum + change, value));
        expect(rows).toHaveLength(list.length + 2);
      }),
    );
  });

  it("prints changes in miles as coarsely as in kilometres; a mile is 1.609344 km (definition)", () => {
    const figure = bridgeFigure({
      ...{ ...words, x: { ...x, also: "mi" }, from: { label: "A", value: 480 }, to: "B" },
      steps: [{ label: "C", change: -35 }],
    });
    expect(JSON.stringify(figure.spec)).toContain("−35 km (−22 mi)");
    expect(-35 / 1.609344).toBeCloseTo(-21.7, 1);
  });

  it("between temperatures takes a change as a difference and a total as a point", () => {
    const figure = bridgeFigure({
      ...{ ...words, x: { title: "Temperature", unit: "°C", also: "°F" }, from: { label: "A", value: 20 }, to: "B" },
      steps: [{ label: "C", change: 10 }],
    });
    const spec = JSON.stringify(figure.spec).replace(/\u00a0/g, " ");
    expect(spec).toContain("20 °C (68 °F)");
    expect(spec).toContain("+10 °C (+18 °F)");
  });
});

describe("a histogram", () => {
  it("has areas as its counts", () => {
    const widths = fc.array(
      fc.record({ width: fc.integer({ min: 1, max: 50 }), count: fc.integer({ min: 1, max: 90 }) }),
      {
        minLength: 1,
        maxLength: 20,
      },
    );
    fc.assert(
      fc.property(widths, (list) => {
        const startOf = (at: number) => list.slice(0, at).reduce((sum, { width }) => sum + width, 0);
        const bins = list.map(({ count }, index) => ({ from: startOf(index), to: startOf(index + 1), count }));
        const { rows } = distributionFigure({ ...words, x, bins });
        for (const [index, { count, width }] of list.entries()) {
          expect((rows[2 * index]?.density ?? 0) * width).toBeCloseTo(count, 9);
        }
      }),
    );
  });
});

describe("labels of points", () => {
  it("touch neither each other nor an obstacle, and stay in the picture", () => {
    const wish = fc.record({
      x: fc.integer({ min: 0, max: 600 }),
      y: fc.integer({ min: 0, max: 400 }),
      width: fc.integer({ min: 10, max: 120 }),
      height: fc.constant(16),
    });
    const within = { left: 0, right: 640, top: 0, bottom: 420 };
    fc.assert(
      fc.property(fc.array(wish, { minLength: 1, maxLength: 25 }), (wishes) => {
        const dots = wishes.map((w) => ({ left: w.x - 5, right: w.x + 5, top: w.y - 5, bottom: w.y + 5 }));
        const placed = placeLabels(wishes, dots, { within, gap: 9 }).filter((label) => label !== undefined);
        expect(placed.length).toBeGreaterThan(0);
        for (const [index, label] of placed.entries()) {
          expect([...dots, ...placed.slice(index + 1)].some((other) => touch(label, other))).toBe(false);
          expect(label.left >= 0 && label.right <= 640 && label.top >= 0 && label.bottom <= 420).toBe(true);
        }
      }),
    );
  });
});

describe("a layout", () => {
  const cylinders = (count: number) =>
    layoutFigure({
      ...words,
      views: [
        {
          ...{ title: "Plan", width: 2100, height: 1500 },
          shapes: Array.from({ length: count }, (_, index) => ({
            ...({ shape: "circle", diameter: 21 } as const),
            ...{ x: 22 * (index % 90), y: 22 * Math.floor(index / 90) },
          })),
        },
      ],
    });

  it("stays light with thousands of cells: 60 characters for each", async () => {
    const svg = await figureToSvg(cylinders(4000));
    expect(svg.length).toBeLessThan(4000 * 60);
    expect(svg.match(/<path/g)?.length).toBeLessThan(15);
  });

  it("draws to scale: a circle is as wide as its diameter says", async () => {
    const svg = await figureToSvg(
      layoutFigure({
        ...words,
        views: [{ title: "V", width: 828, height: 100, shapes: [{ shape: "circle", x: 0, y: 0, diameter: 80 }] }],
      }),
      { width: 860 },
    );
    // 828 mm over the 828 pixels between the margins: one pixel a millimetre, so the dot is 80 wide.
    expect(svg).toContain('stroke-width="80"');
  });

  it("prints how many cells there are and not every one of them", () => {
    expect(figureToText(cylinders(4000))).toContain("4000");
    expect(figureToText(cylinders(4000)).split("\n").length).toBeLessThan(14);
  });
});
