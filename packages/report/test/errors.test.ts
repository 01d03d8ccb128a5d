import { describe, expect, it } from "vitest";
import * as report from "../src/index.js";
import {
  type Figure,
  figureToCsv,
  figureToHtml,
  figureToMarkdown,
  figureToSvg,
  figureToText,
  figureToVegaLite,
  lineFigure,
  page,
  references,
  type Table,
  table,
  tableToCsv,
  tableToHtml,
  tableToMarkdown,
  tableToText,
  workingToHtml,
  workingToMarkdown,
  workingToText,
} from "../src/index.js";
import { codeOf, messageOf } from "./support/codes.js";
import { figures } from "./support/figures.js";
import { masses, ranges, steps } from "./support/samples.js";

/** Things that a program without types may hand over. A null prototype has no `toString`. */
const garbage: readonly unknown[] = [
  undefined,
  null,
  0,
  Number.NaN,
  "text",
  "",
  true,
  [],
  {},
  () => 1,
  Symbol("s"),
  1n,
  Object.create(null),
  [null],
  [Symbol("s")],
  { kind: "table" },
  { kind: "line" },
  { kind: "interval" },
  { kind: "bridge" },
];

/** What a call throws or a promise is rejected with, as far as it is no error of the library. */
async function untyped(call: () => unknown): Promise<string | undefined> {
  try {
    await call();
  } catch (error) {
    const { code, message } = error as { code?: unknown; message?: unknown };
    if (typeof code === "string" && typeof message === "string" && !message.includes("a object")) return undefined;
    return String(error);
  }
  return undefined;
}

/** A thing with one part after the other, at any depth, replaced by garbage. */
function* spoilt(thing: object, depth: number): Generator<object> {
  const with_ = (key: string, value: unknown): object =>
    Array.isArray(thing) ? Object.assign([...thing], { [key]: value }) : { ...thing, [key]: value };
  for (const [key, value] of Object.entries(thing)) {
    for (const junk of garbage) yield with_(key, junk);
    if (depth > 1 && typeof value === "object" && value !== null) {
      for (const part of spoilt(value, depth - 1)) yield with_(key, part);
    }
  }
}

/** Every row is read in the same way: to spoil all of them, thousands of cells too, would only take long. */
const fewShapes = Object.fromEntries(
  Object.entries(figures).map(([kind, figure]) => [kind, { ...figure, rows: figure.rows.slice(0, 2) }]),
);

const tablePrinters = { tableToText, tableToMarkdown, tableToHtml, tableToCsv };
const figurePrinters = { figureToText, figureToMarkdown, figureToCsv, figureToVegaLite };
const workingPrinters = { workingToText, workingToMarkdown, workingToHtml, references };
const svg = "<svg></svg>";
const plain = {
  title: "T",
  lead: "L",
  answers: [{ label: "A", value: 1, detail: "D" }],
  warnings: ["W"],
  sections: [
    { heading: "H", level: 2, blocks: [{ kind: "table", table: masses }] },
    { heading: "H", blocks: [{ kind: "figure", figure: ranges, svg }] },
    { heading: "H", blocks: [{ kind: "working", title: "T", steps }] },
    {
      heading: "H",
      blocks: [
        { kind: "text", text: "x" },
        { kind: "list", items: ["x"] },
      ],
    },
  ],
  cautions: [],
  notes: ["N"],
  date: "D",
};

describe("whatever is handed over, errors are the library's own", () => {
  const functions = Object.entries(report).filter(
    (entry): entry is [string, ((...given: unknown[]) => unknown) & (typeof entry)[1]] =>
      typeof entry[1] === "function" && !entry[0].endsWith("Error"),
  );

  it.each(functions)("%s, called with garbage", async (_, call) => {
    const good = [masses, ranges, steps];
    const given = [[], ...garbage.map((one) => [one]), ...garbage.flatMap((other) => good.map((one) => [one, other]))];
    const found = await Promise.all(given.map((each) => untyped(() => call(...each))));
    expect(found.filter(Boolean)).toEqual([]);
  });

  it.each<[string, object, number, (thing: never) => unknown]>([
    ["table", { title: "T", columns: masses.columns, rows: masses.rows, caption: "C", notes: ["N"] }, 3, table],
    ["lineFigure", { ...lineOptions(), caption: "C", band: "B", source: "S", date: "D" }, 4, lineFigure],
    ["page", plain, 4, page],
    ...Object.entries(tablePrinters).map(([name, print]): [string, object, number, (thing: never) => unknown] => [
      name,
      masses,
      3,
      print,
    ]),
    ...Object.entries(workingPrinters).map(([name, print]): [string, object, number, (thing: never) => unknown] => [
      name,
      steps,
      4,
      print,
    ]),
    ...Object.entries(fewShapes).flatMap(([kind, figure]) =>
      Object.entries(figurePrinters).map(([name, print]): [string, object, number, (thing: never) => unknown] => [
        `${name} of a ${kind} figure`,
        { ...figure, spec: {} },
        3,
        print,
      ]),
    ),
    ["figureToHtml", { ...ranges, spec: {} }, 2, (figure) => figureToHtml(figure, { svg })],
    [
      "figureToVegaLite of a size",
      { width: 300, height: 200, caption: true },
      1,
      (size) => figureToVegaLite(ranges, size),
    ],
    ["figureToSvg of a size", { width: 300, theme: "light" }, 1, (size) => figureToSvg(ranges, size)],
  ])("%s, with one part spoilt", async (_, good, depth, call) => {
    expect(await untyped(() => call(good as never))).toBeUndefined();
    const found = await Promise.all([...spoilt(good, depth)].map((each) => untyped(() => call(each as never))));
    expect(found.filter(Boolean)).toEqual([]);
  });
});

function lineOptions() {
  const { title, x, y, series, targets, description } = ranges;
  return { title, x, y, series, targets, description };
}

describe("what is no table, no figure and no step is refused by name", () => {
  it.each(Object.entries(tablePrinters))("%s", (_, print) => {
    expect(codeOf(() => print(undefined as never))).toBe("NOT_AN_OBJECT");
    expect(codeOf(() => print(ranges as never))).toBe("WRONG_CHOICE");
    expect(codeOf(() => print({ ...masses, rows: [{ prat: "x" }] } as Table))).toBe("UNKNOWN_COLUMN");
    expect(messageOf(() => print({} as never))).toBe("table must be made by table: its kind is undefined");
  });

  it.each(Object.entries(figurePrinters))("%s", (_, print) => {
    expect(codeOf(() => print(undefined as never))).toBe("NOT_AN_OBJECT");
    expect(codeOf(() => print(masses as never))).toBe("WRONG_CHOICE");
    expect(codeOf(() => print({ ...ranges, series: [] } as Figure))).toBe("EMPTY");
  });

  it.each([
    ["figureToSvg", figureToSvg],
    ["figureToHtml", figureToHtml],
  ])("%s", async (_, print) => {
    await expect(print(undefined as never)).rejects.toMatchObject({ code: "NOT_AN_OBJECT" });
    await expect(print(masses as never)).rejects.toMatchObject({ code: "WRONG_CHOICE" });
  });

  it.each(Object.entries(workingPrinters))("%s", (_, print) => {
    expect(codeOf(() => print({} as never))).toBe("NOT_AN_OBJECT");
    expect(codeOf(() => print([{}] as never))).toBe("NOT_A_TEXT");
    expect(messageOf(() => print([{ ...steps[0], source: { document: "x", status: "sure" } }] as never))).toContain(
      "steps[0] has no source that can be printed",
    );
    expect(print([])).toHaveLength(print === (workingToHtml as unknown) ? 37 : 0);
  });

  it("in words that are English", () => {
    expect(messageOf(() => tableToText({ ...masses, title: {} } as never))).toContain("got an object");
    expect(messageOf(() => page({ ...plain, notes: {} } as never))).toBe("notes must be an array: got an object");
  });
});
