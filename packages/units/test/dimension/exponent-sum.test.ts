import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";

/** The table is a type, so nothing of it is left at run time: it is read as text, and every cell computed again. */
const source = readFileSync(new URL("../../src/dimension/exponent-sum.ts", import.meta.url), "utf8");
const numbers = Array.from({ length: 19 }, (_, index) => index - 9);

/** The cells of one row: `"0": "-9"; "1": "-8"` as pairs of numbers. */
function cellsOf(text: string): [column: number, sum: number][] {
  return [...text.matchAll(/"(-?\d+)": "(-?\d+)"/g)].map(([, column, sum]) => [Number(column), Number(sum)]);
}

describe("table of sums of exponents", () => {
  const table = /interface ExponentSum \{\n([\s\S]*?)\n\}/.exec(source)?.[1] ?? "";
  const rows = new Map(
    [...table.matchAll(/^ {2}"(-?\d+)": \{([^}]*)\};$/gm)].map(([, row, cells]) => [Number(row), cellsOf(cells ?? "")]),
  );

  it("has a row for every exponent from -9 to 9", () => {
    expect([...rows.keys()]).toEqual(numbers);
  });

  it.each(numbers)("holds the sums of %d that stay within -9 to 9, and no other", (row) => {
    const wanted = numbers.filter((column) => Math.abs(row + column) <= 9).map((column) => [column, row + column]);
    expect(rows.get(row)).toEqual(wanted);
  });

  it("holds nothing but numbers and their sums", () => {
    const lines = table.split("\n").filter((line) => line.trim() !== "");
    expect(lines).toHaveLength(19);
    for (const line of lines) expect(line).toMatch(/^ {2}"-?\d+": \{ ("-?\d+": "-?\d+"(; )?)+ \};$/);
  });
});

describe("table of negated exponents", () => {
  const cells = cellsOf(/interface ExponentNegation \{([^}]*)\}/.exec(source)?.[1] ?? "");

  it("negates every exponent from -9 to 9", () => {
    expect(cells).toEqual(numbers.map((number) => [number, number === 0 ? 0 : -number]));
  });
});
