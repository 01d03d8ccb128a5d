import { describe, expect, it } from "vitest";
import { tableToHtml, tableToMarkdown, tableToText } from "../../src/index.js";
import { masses, ranges } from "../support/samples.js";

function show(thing: object): unknown {
  return (thing as Record<symbol, () => unknown>)[Symbol.for("Jupyter.display")]?.();
}

describe("in a notebook", () => {
  it("a table shows itself as text, HTML and Markdown", () => {
    expect(show(masses)).toEqual({
      "text/plain": tableToText(masses),
      "text/html": tableToHtml(masses),
      "text/markdown": tableToMarkdown(masses),
    });
  });

  it("a figure shows itself as a specification, and as a picture where that is not read", async () => {
    const bundle = (await show(ranges)) as Record<string, unknown>;
    expect(Object.keys(bundle)).toEqual([
      "text/plain",
      "text/html",
      "text/markdown",
      "application/vnd.vegalite.v5+json",
    ]);
    expect(bundle["text/html"]).toContain("<svg");
    expect(bundle["application/vnd.vegalite.v5+json"]).toEqual({
      ...ranges.spec,
      $schema: "https://vega.github.io/schema/vega-lite/v5.json",
    });
  });

  it("the method does not get in the way of the data", () => {
    expect(Object.getOwnPropertySymbols({ ...masses })).toEqual([]);
  });
});
