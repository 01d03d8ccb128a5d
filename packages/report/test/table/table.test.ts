import { q } from "@tarewatt/units";
import { describe, expect, it } from "vitest";
import { type TableCell, table, tableToCsv, tableToText } from "../../src/index.js";
import { codeOf, messageOf } from "../support/codes.js";
import { masses } from "../support/samples.js";

const columns = [
  { key: "name", title: "Name" },
  { key: "mass", title: "Mass", unit: "kg" },
];

function withCell(mass: unknown, unit = "kg") {
  return () =>
    table({
      title: "T",
      columns: [columns[0] as never, { key: "mass", title: "Mass", unit }],
      rows: [{ name: "a", mass: mass as TableCell }],
    });
}

describe("a table", () => {
  it("is plain frozen data that a copy through JSON leaves readable", () => {
    expect(Object.isFrozen(masses) && Object.isFrozen(masses.rows[0]) && Object.isFrozen(masses.columns[1])).toBe(true);
    expect(Object.keys(masses)).toEqual(["kind", "title", "columns", "rows", "caption", "notes"]);
    expect(masses.kind).toBe("table");
  });

  it("does not follow later changes of what it was made from", () => {
    const row: Record<string, TableCell> = { name: "a", mass: 1 };
    const made = table({ title: "T", columns, rows: [row] });
    row.mass = 2;
    expect(made.rows[0]?.mass).toBe(1);
  });

  it("takes a bare number in the unit of its column, and a ratio as the ratio", () => {
    expect(tableToText(withCell(12.34)())).toContain("12.3");
    expect(tableToText(withCell(0.74, "%")())).toContain("74.0");
    expect(tableToText(withCell(q("74 %"), "%")())).toContain("74.0");
  });

  it("prints counts and years in full, and rounds them only when asked to", () => {
    const make = (digits?: number) =>
      tableToText(
        table({
          title: "T",
          columns: [{ key: "year", title: "Year", ...(digits ? { digits } : {}) }],
          rows: [{ year: 2026 }],
        }),
      );
    expect(make()).toContain("2026");
    expect(make(2)).toContain("2000");
  });

  it("does not find cells in the prototype of a row", () => {
    const made = table({
      title: "T",
      columns: [
        { key: "name", title: "N" },
        { key: "constructor", title: "C" },
      ],
      rows: [{ name: "a" }],
    });
    expect(tableToCsv(made)).toBe("N,C\r\na,\r\n");
  });

  it.each([
    ["no columns", () => table({ title: "T", columns: [], rows: [{}] }), "EMPTY"],
    ["no rows", () => table({ title: "T", columns, rows: [] }), "EMPTY"],
    ["an empty title", () => table({ title: " ", columns, rows: [{ name: "a" }] }), "EMPTY"],
    ["no title", () => table({ columns, rows: [{ name: "a" }] } as never), "MISSING_OPTION"],
    ["an unknown option", () => table({ title: "T", columns, rows: [{}], captoin: "x" } as never), "UNKNOWN_OPTION"],
    [
      "an unknown option of a column",
      () => table({ title: "T", columns: [{ key: "a", title: "A", unot: "kg" } as never], rows: [{}] }),
      "UNKNOWN_OPTION",
    ],
    ["an unknown key in a row", () => table({ title: "T", columns, rows: [{ nmae: "a" }] }), "UNKNOWN_COLUMN"],
    ["a row that is none", () => table({ title: "T", columns, rows: [null as never] }), "NOT_AN_OBJECT"],
    [
      "a key twice",
      () => table({ title: "T", columns: [columns[0] as never, columns[0] as never], rows: [{}] }),
      "REPEATED_NAME",
    ],
    [
      "an unknown unit",
      () => table({ title: "T", columns: [{ key: "a", title: "A", unit: "kgg" }], rows: [{}] }),
      "UNKNOWN_UNIT",
    ],
    [
      "unit and units",
      () => table({ title: "T", columns: [{ key: "a", title: "A", unit: "kg", units: ["kg", "lb"] }], rows: [{}] }),
      "INCONSISTENT",
    ],
    [
      "three units",
      () => table({ title: "T", columns: [{ key: "a", title: "A", units: ["kg", "lb", "t"] as never }], rows: [{}] }),
      "INCONSISTENT",
    ],
    [
      "an unknown side",
      () => table({ title: "T", columns: [{ key: "a", title: "A", align: "centred" as never }], rows: [{}] }),
      "WRONG_CHOICE",
    ],
    [
      "half a digit",
      () => table({ title: "T", columns: [{ key: "a", title: "A", digits: 0.5 }], rows: [{}] }),
      "OUT_OF_RANGE",
    ],
    [
      "two and a half digits",
      () => table({ title: "T", columns: [{ key: "a", title: "A", digits: 2.5 }], rows: [{ a: 1 }] }),
      "OUT_OF_RANGE",
    ],
    ["NaN", withCell(Number.NaN), "NOT_A_NUMBER"],
    ["a wrong dimension", withCell(q("3 m")), "WRONG_DIMENSION"],
    ["a date object", withCell(new Date(0)), "NOT_A_CELL"],
    ["null", withCell(null), "NOT_A_CELL"],
    ["a spread upside down", withCell({ p10: 3, p50: 2, p90: 1 }), "NOT_ORDERED"],
    ["a spread with NaN", withCell({ p10: 1, p50: Number.NaN, p90: 3 }), "NOT_A_NUMBER"],
    [
      "a bare number for two units",
      () => table({ title: "T", columns: [{ key: "a", title: "A", units: ["kg", "lb"] }], rows: [{ a: 1 }] }),
      "NOT_A_QUANTITY",
    ],
  ])("refuses %s", (_, make, code) => {
    expect(codeOf(make)).toBe(code);
  });

  it("names the row, the key and the nearest column", () => {
    expect(messageOf(() => table({ title: "T", columns, rows: [{ name: "a" }, { nam: "b" }] }))).toBe(
      "rows[1] has 'nam', which is no column: did you mean 'name'?",
    );
  });
});
