import { describe, expect, it } from "vitest";
import { type QuantityError, q, quantity } from "../../src/index.js";
import { invalidLiterals, invalidUnits } from "./invalid-texts.js";
import { literalTexts } from "./literal-texts.js";

/** The run-time half of the comparison; literal.test-d.ts holds the compiler against the same table. */
describe("unit texts of the trade, read at run time", () => {
  const texts = Object.entries(literalTexts);

  it("are enough to mean something", () => {
    expect(texts.length).toBeGreaterThanOrEqual(150);
  });

  it.each(texts)("%s", (text, [key, kind]) => {
    expect(quantity<string>(1, text).dimension).toEqual({ key, kind });
  });
});

describe("texts that are no unit or no quantity, refused at run time", () => {
  const tables: readonly (readonly [string, Readonly<Record<string, readonly string[]>>, (text: string) => unknown])[] =
    [
      ["unit", invalidUnits, (text: string) => quantity<string>(1, text)],
      ["quantity", invalidLiterals, (text: string) => q<string>(text)],
    ];

  it("are enough to mean something, and none twice", () => {
    for (const [, table] of tables) {
      const texts = Object.values(table).flat();
      expect(texts.length).toBeGreaterThanOrEqual(100);
      expect(texts.filter((text, i) => texts.indexOf(text) !== i)).toEqual([]);
    }
  });

  describe.each(tables)("as a %s", (_, table, read) => {
    it.each(Object.entries(table).flatMap(([code, texts]) => texts.map((text) => [text, code] as const)))(
      "'%s': %s",
      (text, code) => {
        let refusal: QuantityError | undefined;
        try {
          read(text);
        } catch (error) {
          refusal = error as QuantityError;
        }
        expect(refusal).toMatchObject({ name: "QuantityError", code });
      },
    );
  });
});
