import { test } from "vitest";
import { type Figure, figureToHtml, figureToSvg, figureToVegaLite, lineFigure, page, table } from "../src/index.js";

/** Values that a program knows or does not know. */
const text = undefined as string | undefined;
const number = undefined as number | undefined;

test("an optional option may be given as undefined", () => {
  table({
    title: "T",
    columns: [{ key: "a", title: "A", unit: text, units: undefined, align: undefined, digits: number }],
    rows: [{ a: undefined }],
    caption: text,
    notes: undefined,
  });
  lineFigure({
    title: "T",
    x: { title: "X", unit: "m" },
    y: { title: "Y", unit: "N" },
    series: [{ name: "A", points: [{ x: 1, y: 2, low: number, high: number }] }],
    targets: [{ label: "L", value: 1, x: undefined }],
    caption: text,
    source: text,
    date: text,
    band: text,
    description: "D",
  });
  const figure = {} as Figure;
  figureToVegaLite(figure, { width: number, height: number, caption: undefined, size: undefined });
  figureToSvg(figure, { width: number, theme: undefined });
  figureToHtml(figure, { svg: text });
  page({
    title: "T",
    lead: "L",
    answers: [{ label: "A", value: 1, detail: text }],
    warnings: undefined,
    sections: [{ heading: "H", level: number, blocks: [] }],
    cautions: [],
    notes: [],
    date: "D",
    invented: text,
    language: text,
  });
});
