import { q } from "@tarewatt/units";
import { expectTypeOf, test } from "vitest";
import {
  type Figure,
  figureToSvg,
  figureToVegaLite,
  type LineFigure,
  lineFigure,
  page,
  type Table,
  type TableCell,
  table,
  tableToText,
  type VegaLiteSpec,
} from "../src/index.js";

test("tables", () => {
  expectTypeOf(table).returns.toEqualTypeOf<Table>();
  expectTypeOf(tableToText).parameter(0).toEqualTypeOf<Table>();
  expectTypeOf(q("3 kg")).toExtend<TableCell>();
  expectTypeOf<{ p10: number; p50: number; p90: number; mean: number }>().toExtend<TableCell>();
  expectTypeOf<Date>().not.toExtend<TableCell>();
  // @ts-expect-error a column needs a title
  table({ title: "T", columns: [{ key: "a" }], rows: [] });
  // @ts-expect-error one unit goes into `unit`
  table({ title: "T", columns: [{ key: "a", title: "A", units: ["kg"] }], rows: [] });
});

test("figures", () => {
  expectTypeOf(lineFigure).returns.toEqualTypeOf<LineFigure>();
  expectTypeOf<LineFigure>().toExtend<Figure>();
  expectTypeOf(figureToVegaLite).returns.toEqualTypeOf<VegaLiteSpec>();
  expectTypeOf(figureToSvg).returns.toEqualTypeOf<Promise<string>>();
  const axes = { title: "T", x: { title: "X", unit: "m" }, y: { title: "Y", unit: "N" }, description: "D" };
  // @ts-expect-error points are plain numbers in the units of the axes
  lineFigure({ ...axes, series: [{ name: "A", points: [{ x: q("3 m"), y: 2 }] }] });
  // @ts-expect-error a target stands at a value or at an x
  lineFigure({ ...axes, series: [], targets: [{ label: "L", x: 1, value: 2 }] });
  // @ts-expect-error a figure needs a description
  lineFigure({ title: "T", x: axes.x, y: axes.y, series: [] });
});

test("pages", () => {
  expectTypeOf(page).returns.toEqualTypeOf<string>();
  const rest = { title: "T", lead: "L", cautions: [], notes: [], date: "D" };
  // @ts-expect-error a figure block needs its picture
  page({ ...rest, sections: [{ heading: "H", blocks: [{ kind: "figure", figure: {} as Figure }] }] });
  // @ts-expect-error an answer has a value
  page({ ...rest, sections: [], answers: [{ label: "A", value: undefined }] });
});
