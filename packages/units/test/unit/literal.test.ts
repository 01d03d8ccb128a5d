import { describe, expect, it } from "vitest";
import { quantity } from "../../src/index.js";
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
