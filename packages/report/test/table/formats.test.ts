import { q } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { table, tableToCsv, tableToHtml, tableToMarkdown, tableToText } from "../../src/index.js";
import { textWidth } from "../../src/table/width.js";
import { parseCsv } from "../support/csv.js";
import { elementsOf } from "../support/markup.js";
import { HOSTILE, masses } from "../support/samples.js";

describe("text", () => {
  it("aligns heads, units and cells", () => {
    expect(tableToText(masses)).toMatchInlineSnapshot(`
      "Mass by part
      Invented vehicle.

      Part                  Mass                  Mass   Share    Count   From
                            (kg)                  (lb)     (%)
      -------   ----------------   -------------------   -----   ------   ----------
      Pack      527 (490 to 570)   1162 (1080 to 1257)      20        1   estimate
      Cells                  389                   858      15   12 960   data sheet
      Trailer                  –                     –       –        –   none

      Note: Spread: P50 (P10 to P90).
      "
    `);
  });

  it("keeps every column in its place, whatever the cells are", () => {
    const cell = fc.string({ unit: "grapheme", minLength: 1, maxLength: 12 }).filter((text) => text.trim() !== "");
    const rows = fc.array(fc.record({ a: cell, b: cell, c: fc.option(cell, { nil: undefined }) }), {
      minLength: 1,
      maxLength: 6,
    });
    fc.assert(
      fc.property(rows, (given) => {
        const columns = [
          { key: "a", title: "A" },
          { key: "b", title: "B", align: "right" as const },
          { key: "c", title: "C", align: "centre" as const },
        ];
        const lines = tableToText(table({ title: "T", columns, rows: given }))
          .split("\n")
          .slice(2, -1);
        const rule = lines[1] as string;
        const starts = [...rule.matchAll(/-+/g)].map((dashes) => [dashes.index, dashes[0].length] as const);
        expect(starts).toHaveLength(3);
        for (const line of lines) {
          // Between the columns stand exactly three spaces, at the same cells of the terminal in every line.
          for (const [start, length] of starts.slice(0, 2)) {
            expect(cut(line, start + length, start + length + 3)).toMatch(/^ {0,3}$/);
          }
          expect(textWidth(line)).toBeLessThanOrEqual(textWidth(rule));
        }
      }),
    );
  });

  it("counts what a terminal shows: combined characters once, wide ones twice", () => {
    expect(["é", "e\u0301", "電", "−27\u202f100", "👍🏽"].map(textWidth)).toEqual([1, 1, 2, 7, 2]);
  });
});

/** The part of a line between two cells of a terminal. */
function cut(line: string, from: number, to: number): string {
  let at = 0;
  let part = "";
  for (const { segment } of new Intl.Segmenter("en").segment(line)) {
    if (at >= from && at < to) part += segment;
    at += textWidth(segment);
  }
  return part;
}

describe("Markdown", () => {
  it("prints a pipe table", () => {
    expect(tableToMarkdown(masses)).toMatchInlineSnapshot(`
      "**Mass by part**

      | Part | Mass (kg) | Mass (lb) | Share (%) | Count | From |
      | --- | ---: | ---: | ---: | ---: | --- |
      | Pack | 527 (490 to 570) | 1162 (1080 to 1257) | 20 | 1 | estimate |
      | Cells | 389 | 858 | 15 | 12 960 | data sheet |
      | Trailer | – | – | – | – | none |

      Invented vehicle.

      Note: Spread: P50 (P10 to P90).
      "
    `);
  });
});

describe("HTML", () => {
  const elements = elementsOf(tableToHtml(masses));
  const named = (name: string) => elements.filter((element) => element.name === name);

  it("has a caption, heads with a scope and one row head a row", () => {
    expect(named("caption").map(({ text }) => text)).toEqual(["Mass by part Invented vehicle."]);
    const heads = named("th");
    expect(heads.filter(({ attributes }) => attributes.includes('scope="col"')).map(({ text }) => text)).toEqual([
      "Part",
      "Mass (kg)",
      "Mass (lb)",
      "Share (%)",
      "Count",
      "From",
    ]);
    expect(heads.filter(({ attributes }) => attributes.includes('scope="row"')).map(({ text }) => text)).toEqual([
      "Pack",
      "Cells",
      "Trailer",
    ]);
    expect(named("tbody")).toHaveLength(1);
  });

  it("has as many cells in every row as there are heads", () => {
    expect(named("td").filter(({ attributes }) => !attributes.includes("colspan"))).toHaveLength(3 * 5);
  });
});

describe("CSV", () => {
  it("prints unrounded numbers, and three columns for a spread", () => {
    expect(tableToCsv(masses)).toMatchInlineSnapshot(`
      "Part,Mass P10 (kg),Mass P50 (kg),Mass P90 (kg),Mass P10 (lb),Mass P50 (lb),Mass P90 (lb),Share (%),Count,From
      Pack,490,527,570,1080.2650847059,1161.836121714305,1256.6348944538022,20,1,estimate
      Cells,,389.4,,,858.4800489479132,,15,12960,data sheet
      Trailer,,,,,,,,,none
      "
    `);
  });

  it("is read back to the same cells", () => {
    const text = fc.string({ unit: "binary", maxLength: 15 });
    const number = fc.double({ noNaN: true, noDefaultInfinity: true });
    fc.assert(
      fc.property(fc.array(fc.tuple(text, number), { minLength: 1, maxLength: 8 }), (pairs) => {
        const columns = [
          { key: "a", title: "A" },
          { key: "b", title: "B" },
        ];
        const csv = tableToCsv(table({ title: "T", columns, rows: pairs.map(([a, b]) => ({ a, b })) }));
        const [head, ...records] = parseCsv(csv);
        expect(head).toEqual(["A", "B"]);
        expect(records.map(([, b]) => Number(b))).toEqual(pairs.map(([, b]) => b + 0));
        for (const [index, [a = ""]] of records.entries()) {
          const given = pairs[index]?.[0] ?? "";
          expect([given, `'${given}`]).toContain(a);
          const starts = /^[=+\-@\t\r]/.test(a);
          expect(starts && Number.isNaN(Number(a))).toBe(false);
        }
      }),
    );
  });

  it("keeps the unit of a quantity in a column without one", () => {
    expect(tableToCsv(table({ title: "T", columns: [{ key: "a", title: "A" }], rows: [{ a: q("12.345 kWh") }] }))).toBe(
      "A\r\n12.345 kWh\r\n",
    );
  });
});

describe("a hostile text", () => {
  const hostile = table({
    title: HOSTILE,
    columns: [
      { key: "a", title: HOSTILE },
      { key: "b", title: "B" },
    ],
    rows: [{ a: HOSTILE, b: "=cmd()" }],
    caption: HOSTILE,
    notes: [HOSTILE],
  });

  it("comes out as text in every format", () => {
    const html = tableToHtml(hostile);
    expect(elementsOf(html).filter(({ name }) => name === "script")).toEqual([]);
    expect(html.match(/&lt;script&gt;alert\(1\)&lt;\/script&gt;/g)).toHaveLength(5);
    const markdown = tableToMarkdown(hostile);
    expect(markdown).not.toMatch(/<script/);
    const row = markdown.split("\n").find((line) => line.includes("=cmd")) as string;
    expect(row.match(/(?<!\\)\|/g)).toHaveLength(3);
    expect(parseCsv(tableToCsv(hostile))).toEqual([
      [HOSTILE, "B"],
      [HOSTILE, "'=cmd()"],
    ]);
    expect(tableToText(hostile)).toContain(HOSTILE);
  });
});
