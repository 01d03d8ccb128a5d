import { describe, expect, it } from "vitest";
import { inkOn, looks } from "../../src/figure/look.js";
import { dashes } from "../../src/figure/palette.js";
import { contrast } from "../support/contrast.js";
import { distance, seenBy, visions } from "../support/vision.js";

describe.each(Object.entries(looks))("the look %s", (_, look) => {
  it("has texts that stand out by 4.5 to 1 and marks by 3 to 1 (WCAG 2.2, 1.4.3 and 1.4.11; from memory)", () => {
    for (const ink of [look.text, look.quiet]) expect(contrast(ink, look.ground)).toBeGreaterThanOrEqual(4.5);
    for (const mark of [look.accent, look.axis, ...look.lines, ...look.fills]) {
      expect(contrast(mark, look.ground), mark).toBeGreaterThanOrEqual(3);
    }
  });

  it("has fills that a name can be read on", () => {
    for (const fill of look.fills) expect(contrast(inkOn(fill), fill), fill).toBeGreaterThanOrEqual(4.5);
  });

  it("tells lines apart by their dashes, whatever becomes of the colours", () => {
    expect(look.lines.length).toBe(dashes.length);
    expect(new Set(dashes.map(String)).size).toBe(dashes.length);
  });

  it("has neighbouring fills that differ in lightness", () => {
    for (const [index, fill] of look.fills.slice(1).entries()) {
      expect(contrast(fill, look.fills[index] as string), `${fill} beside ${look.fills[index]}`).toBeGreaterThan(1.25);
    }
  });
});

describe.each(["light", "dark"] as const)("the fills of the look %s", (name) => {
  it.each(visions)("can be told from their neighbours by %s", (vision) => {
    const seen = looks[name].fills.map((fill) => seenBy(vision, fill));
    for (const [index, fill] of seen.slice(1).entries()) {
      expect(distance(fill, seen[index] as (typeof seen)[number]), looks[name].fills[index + 1]).toBeGreaterThan(20);
    }
  });
});
