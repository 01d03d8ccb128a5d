import { describe, expect, it } from "vitest";
import { figureToCsv, figureToMarkdown, figureToText, type LineFigureOptions, lineFigure } from "../../src/index.js";
import { codeOf, messageOf } from "../support/codes.js";
import { parseCsv } from "../support/csv.js";
import { HOSTILE, ranges } from "../support/samples.js";

const base: LineFigureOptions = {
  title: "T",
  x: { title: "Speed", unit: "km/h" },
  y: { title: "Drag", unit: "N" },
  series: [
    {
      name: "A",
      points: [
        { x: 1, y: 2 },
        { x: 2, y: 3 },
      ],
    },
  ],
  description: "D",
};

function withPoints(...points: object[]) {
  return () => lineFigure({ ...base, series: [{ name: "A", points: points as never }] });
}

describe("a line figure", () => {
  it("is plain frozen data with its points row by row", () => {
    expect(
      Object.isFrozen(ranges) && Object.isFrozen(ranges.rows[0]) && Object.isFrozen(ranges.series[0]?.points),
    ).toBe(true);
    expect(ranges.rows[0]).toEqual({ series: "Touring van", x: 80, y: 520, low: 480, high: 565 });
    expect(JSON.parse(JSON.stringify(ranges))).toEqual(ranges);
  });

  it("says in its caption what line and band are, and names source and date", () => {
    expect(ranges.caption).toBe(
      "Level road, 20 °C. Line: P50; shaded band: P10 to P90. Source: invented data, 24 November 2026.",
    );
    expect(lineFigure(base).caption).toBe("");
  });

  it("says what another band is", () => {
    const points = [{ x: 1, y: 2, low: 1, high: 3 }];
    expect(lineFigure({ ...base, series: [{ name: "A", points }], band: "least to most" }).caption).toBe(
      "Shaded band: least to most.",
    );
  });

  it.each([
    ["no series", () => lineFigure({ ...base, series: [] }), "EMPTY"],
    ["no points", withPoints(), "EMPTY"],
    ["NaN", withPoints({ x: 1, y: Number.NaN }), "NOT_A_NUMBER"],
    ["an infinite x", withPoints({ x: Number.POSITIVE_INFINITY, y: 1 }), "NOT_A_NUMBER"],
    ["a text", withPoints({ x: 1, y: "2" }), "NOT_A_NUMBER"],
    ["a value beyond all measure", withPoints({ x: 1, y: 1e16 }), "OUT_OF_RANGE"],
    ["a band upside down", withPoints({ x: 1, y: 2, low: 3, high: 1 }), "NOT_ORDERED"],
    ["a band beside its line", withPoints({ x: 1, y: 5, low: 1, high: 3 }), "NOT_ORDERED"],
    ["half a band", withPoints({ x: 1, y: 2, low: 1 }), "MISSING_OPTION"],
    ["a band with gaps", withPoints({ x: 1, y: 2, low: 1, high: 3 }, { x: 2, y: 2 }), "INCONSISTENT"],
    ["x that goes back", withPoints({ x: 2, y: 2 }, { x: 1, y: 2 }), "NOT_ORDERED"],
    ["an unknown key of a point", withPoints({ x: 2, y: 2, hihg: 3 }), "UNKNOWN_OPTION"],
    ["an unknown option", () => lineFigure({ ...base, sorce: "x" } as never), "UNKNOWN_OPTION"],
    ["a name twice", () => lineFigure({ ...base, series: [...base.series, ...base.series] }), "REPEATED_NAME"],
    [
      "eight series",
      () => lineFigure({ ...base, series: [..."abcdefgh"].map((name) => ({ name, points: [{ x: 1, y: 1 }] })) }),
      "TOO_MANY_SERIES",
    ],
    ["a target without a place", () => lineFigure({ ...base, targets: [{ label: "L" } as never] }), "INCONSISTENT"],
    [
      "a target in two places",
      () => lineFigure({ ...base, targets: [{ label: "L", x: 1, value: 1 } as never] }),
      "INCONSISTENT",
    ],
    ["no description", () => lineFigure({ ...base, description: "" }), "EMPTY"],
    ["an axis without unit", () => lineFigure({ ...base, x: { title: "Speed" } as never }), "MISSING_OPTION"],
    ["a title that is no text", () => lineFigure({ ...base, title: 3 as never }), "NOT_A_TEXT"],
  ])("refuses %s", (_, make, code) => {
    expect(codeOf(make)).toBe(code);
  });

  it("says where the band is wrong", () => {
    expect(messageOf(withPoints({ x: 1, y: 2, low: 3, high: 1 }))).toBe(
      "series[0].points[0] must have low ≤ y ≤ high: got 3, 2, 1",
    );
  });
});

describe("a figure in numbers", () => {
  it("prints as text", () => {
    expect(figureToText(ranges)).toMatchInlineSnapshot(`
      "Range at steady speed
      Level road, 20 °C. Line: P50; shaded band: P10 to P90. Source: invented data, 24 November 2026.

      Series         Speed              Range
                    (km/h)               (km)
      -----------   ------   ----------------
      Touring van       80   520 (480 to 565)
      Touring van      100   421 (385 to 460)
      Touring van      120   340 (310 to 372)
      Rival             80              470.0
      Rival            110              380.5

      Note: Announced: 400 km (rule at range 400 km)
      Note: Motorway (rule at speed 110 km/h)

      Range falls from 520 km at 80 km/h to 340 km at 120 km/h.
      "
    `);
  });

  it("prints as Markdown", () => {
    expect(figureToMarkdown(ranges)).toMatchInlineSnapshot(`
      "**Range at steady speed**

      | Series | Speed (km/h) | Range (km) |
      | --- | ---: | ---: |
      | Touring van | 80 | 520 (480 to 565) |
      | Touring van | 100 | 421 (385 to 460) |
      | Touring van | 120 | 340 (310 to 372) |
      | Rival | 80 | 470.0 |
      | Rival | 110 | 380.5 |

      Level road, 20 °C. Line: P50; shaded band: P10 to P90. Source: invented data, 24 November 2026.

      Note: Announced: 400 km (rule at range 400 km)

      Note: Motorway (rule at speed 110 km/h)

      Range falls from 520 km at 80 km/h to 340 km at 120 km/h.
      "
    `);
  });

  it("gives every number of the points back from CSV", () => {
    const [head, ...records] = parseCsv(figureToCsv(ranges));
    expect(head).toEqual(["Series", "Speed (km/h)", "Range (km)", "Range low (km)", "Range high (km)"]);
    expect(
      records.map(([series, ...numbers]) => [
        series,
        ...numbers.map((text) => (text === "" ? undefined : Number(text))),
      ]),
    ).toEqual(ranges.rows.map(({ series, x, y, low, high }) => [series, x, y, low, high]));
  });

  it("shows hostile texts as text", () => {
    const hostile = lineFigure({
      ...base,
      title: HOSTILE,
      source: HOSTILE,
      description: HOSTILE,
      series: [{ name: HOSTILE, points: [{ x: 1, y: 1 }] }],
    });
    expect(figureToMarkdown(hostile)).not.toContain("<script");
    expect(parseCsv(figureToCsv(hostile))[1]?.[0]).toBe(HOSTILE);
  });
});
