import { isQuantity } from "@tarewatt/units";
import { describe, expect, it } from "vitest";
import { looks } from "../src/figure/look.js";
import { dashes } from "../src/figure/palette.js";
import { figureToSvg, figureToVegaLite, table } from "../src/index.js";
import { dark, light } from "../src/page/colours.js";
import { figures } from "./support/figures.js";
import { masses, ranges } from "./support/samples.js";

/** Paths of objects that somebody could change, from a thing down through its data. */
function changeable(thing: unknown, path: string): string[] {
  if (typeof thing !== "object" || thing === null || isQuantity(thing)) return [];
  const inside = Object.entries(thing).flatMap(([key, value]) => changeable(value, `${path}.${key}`));
  return Object.isFrozen(thing) ? inside : [path, ...inside];
}

describe("what is shared cannot be changed", () => {
  it.each([
    ["a table with its spreads", masses],
    ["a figure with its specification", ranges],
    ...Object.entries(figures).map(([kind, figure]): [string, object] => [`a ${kind} figure`, figure]),
    ["the dashes", dashes],
    ["the looks", looks],
    ["the light colours", light],
    ["the dark colours", dark],
  ])("%s", (name, thing) => {
    expect(changeable(thing, name)).toEqual([]);
  });

  it("a table does not follow a spread that changes later", () => {
    const spread = { p10: 1, p50: 2, p90: 3, mean: 2 };
    const made = table({ title: "T", columns: [{ key: "a", title: "A" }], rows: [{ a: spread }] });
    spread.p50 = 2.5;
    expect(made.rows[0]?.a).toEqual({ p10: 1, p50: 2, p90: 3 });
  });

  it("a specification is new at every call, down to its dashes, and may be changed", async () => {
    const first = figureToVegaLite(ranges);
    expect(figureToVegaLite(ranges)).toEqual(first);
    expect(first).toEqual(ranges.spec);
    const all = (thing: unknown): object[] =>
      typeof thing === "object" && thing !== null ? [thing, ...Object.values(thing).flatMap(all)] : [];
    const theirs = new Set(all(figureToVegaLite(ranges)));
    const own = all(first);
    expect(own.some((part) => theirs.has(part) || Object.isFrozen(part))).toBe(false);
    const before = await figureToSvg(ranges);
    for (const part of own) {
      for (const key of Object.keys(part)) (part as Record<string, unknown>)[key] = "spoilt";
    }
    expect(await figureToSvg(ranges)).toBe(before);
  });
});
