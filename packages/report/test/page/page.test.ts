import { q } from "@tarewatt/units";
import { describe, expect, it } from "vitest";
import { figureToSvg, type PageOptions, page } from "../../src/index.js";
import { dark, light } from "../../src/page/colours.js";
import { codeOf } from "../support/codes.js";
import { contrast } from "../support/contrast.js";
import { elementsOf } from "../support/markup.js";
import { HOSTILE, masses, ranges, steps } from "../support/samples.js";

const base: PageOptions = {
  title: "Touring van",
  lead: "About 430 km.",
  answers: [
    { label: "Range", value: { p10: q("390 km"), p50: q("430 km"), p90: q("475 km") }, detail: "combined cycle" },
    { label: "Doors", value: 4 },
  ],
  sections: [
    { heading: "Mass", blocks: [{ kind: "table", table: masses }] },
    { heading: "How", level: 3, blocks: [{ kind: "working", title: "Energy", steps }] },
    {
      heading: "Words",
      blocks: [
        { kind: "text", text: "A paragraph." },
        { kind: "list", items: ["one", "two"] },
      ],
    },
  ],
  warnings: ["The efficiency is a mean over a cycle."],
  cautions: ["Above 60 V DC: touching it can kill."],
  notes: ["A note."],
  date: "24 November 2026",
  invented: "The vehicle does not exist.",
};

const svg = await figureToSvg(ranges, { caption: false });
const full = page({
  ...base,
  sections: [...base.sections, { heading: "Range", blocks: [{ kind: "figure", figure: ranges, svg }] }],
});

describe("a page", () => {
  it("is well formed, with a language, a title and one heading of level 1", () => {
    const elements = elementsOf(full);
    expect(elements[0]).toMatchObject({ name: "html", attributes: ' lang="en"' });
    expect(elements.filter(({ name }) => name === "h1").map(({ text }) => text)).toEqual(["Touring van"]);
    expect(elements.filter(({ name }) => name === "title").map(({ text }) => text)).toEqual(["Touring van"]);
  });

  it("leaves out no level of its headings", () => {
    const levels = elementsOf(full).flatMap(({ name }) => (/^h[1-6]$/.test(name) ? [Number(name[1])] : []));
    expect(levels[0]).toBe(1);
    for (const [index, level] of levels.slice(1).entries())
      expect(level).toBeLessThanOrEqual((levels[index] as number) + 1);
  });

  it("needs nothing else: no scripts, nothing to load", () => {
    expect(
      elementsOf(full).filter(({ name }) => ["script", "link", "img", "iframe", "object", "base"].includes(name)),
    ).toEqual([]);
    expect(full.replace(/ xmlns(:xlink)?="[^"]*"/g, "")).not.toMatch(/https?:|url\(|@import|\ssrc=/);
  });

  it("says first that the data are invented, then the answer, what is doubtful about it, and the cautions", () => {
    const places = [
      "The vehicle does not exist.",
      "About 430 km.",
      "430 (390\u00a0to\u00a0475)\u00a0km",
      "<h2>What is doubtful</h2>\n<ul><li>The efficiency is a mean over a cycle.</li></ul>",
      "touching it can kill",
      "<h2>Mass",
      "A note.",
    ].map((text) => full.indexOf(text));
    expect(places.every((place) => place > 0)).toBe(true);
    expect(places).toEqual([...places].sort((a, b) => a - b));
  });

  it("prints the answers as a list of terms", () => {
    const elements = elementsOf(full);
    expect(elements.filter(({ name }) => name === "dt").map(({ text }) => text)).toEqual(["Range", "Doors"]);
    expect(elements.filter(({ name }) => name === "dd").map(({ text }) => text)).toEqual([
      "430 (390\u00a0to\u00a0475)\u00a0km",
      "combined cycle",
      "4",
    ]);
  });

  it("has no box for what is not doubtful", () => {
    expect(full).toContain('<section class="warnings">');
    for (const warnings of [[], undefined]) {
      expect(page({ ...base, warnings })).not.toContain("What is doubtful");
    }
  });

  it("takes warnings and cautions as texts, or as the objects of a result", () => {
    const caution = { code: "HIGH_VOLTAGE", text: "Above 60 V DC: touching it can kill.", source: { document: "x" } };
    const warning = { code: "MEAN", text: "The efficiency is a mean over a cycle." };
    expect(page({ ...base, cautions: [caution], warnings: [warning] })).toBe(page(base));
  });

  it("names its pictures", () => {
    expect(full).toContain(`<svg role="img" aria-label="${ranges.description}"`);
  });

  // WCAG 2, success criterion 1.4.3: at least 4.5 to 1 for text (from memory).
  it.each([
    ["light", light],
    ["dark", dark],
  ])("has enough contrast in its %s colours", (_, colours) => {
    for (const ground of [colours.ground, colours.panel]) {
      for (const text of [colours.text, colours.quiet, colours.accent])
        expect(contrast(text, ground)).toBeGreaterThanOrEqual(4.5);
    }
    expect(contrast(colours.cautionText, colours.cautionGround)).toBeGreaterThanOrEqual(4.5);
  });

  it("shows hostile texts as text wherever they stand", () => {
    const hostile = page({
      title: HOSTILE,
      lead: HOSTILE,
      answers: [{ label: HOSTILE, value: HOSTILE, detail: HOSTILE }],
      sections: [
        {
          heading: HOSTILE,
          blocks: [
            { kind: "text", text: HOSTILE },
            { kind: "list", items: [HOSTILE] },
            {
              kind: "working",
              title: HOSTILE,
              steps: steps.map((step) => ({ ...step, source: { ...step.source, document: HOSTILE } })),
            },
            { kind: "table", table: { ...masses, title: HOSTILE } },
            { kind: "figure", figure: { ...ranges, caption: HOSTILE, description: HOSTILE }, svg: "<svg></svg>" },
          ],
        },
      ],
      warnings: [HOSTILE],
      cautions: [HOSTILE],
      notes: [HOSTILE],
      date: HOSTILE,
      invented: HOSTILE,
      language: HOSTILE,
    });
    expect(elementsOf(hostile).filter(({ name }) => name === "script")).toEqual([]);
    expect(hostile.match(/&lt;script&gt;/g)?.length).toBeGreaterThanOrEqual(20);
  });

  it.each([
    ["no sections", { sections: [] }, "EMPTY"],
    [
      "a level left out",
      { sections: [{ heading: "A", level: 3, blocks: [{ kind: "text", text: "x" }] }] },
      "HEADING_ORDER",
    ],
    ["level 1", { sections: [{ heading: "A", level: 1, blocks: [{ kind: "text", text: "x" }] }] }, "OUT_OF_RANGE"],
    ["level 2.5", { sections: [{ heading: "A", level: 2.5, blocks: [{ kind: "text", text: "x" }] }] }, "HEADING_ORDER"],
    ["an unknown block", { sections: [{ heading: "A", blocks: [{ kind: "chart" }] }] }, "UNKNOWN_BLOCK"],
    ["no block", { sections: [{ heading: "A", blocks: [null] }] }, "UNKNOWN_BLOCK"],
    [
      "an unknown option of a block",
      { sections: [{ heading: "A", blocks: [{ kind: "text", txet: "x", text: "y" }] }] },
      "UNKNOWN_OPTION",
    ],
    [
      "an unsafe picture",
      { sections: [{ heading: "A", blocks: [{ kind: "figure", figure: ranges, svg: "<svg onload='x'></svg>" }] }] },
      "UNSAFE_SVG",
    ],
    ["an unknown option", { leed: "x" }, "UNKNOWN_OPTION"],
    ["an answer without a value", { answers: [{ label: "A" }] }, "MISSING_OPTION"],
    ["a warning that is no text", { warnings: [null] }, "NOT_A_TEXT"],
    ["warnings that are one text", { warnings: "doubtful" }, "NOT_AN_OBJECT"],
    ["a table that is none", { sections: [{ heading: "A", blocks: [{ kind: "table", table: {} }] }] }, "WRONG_CHOICE"],
    ["a table left out", { sections: [{ heading: "A", blocks: [{ kind: "table" }] }] }, "MISSING_OPTION"],
    [
      "a figure that is none",
      { sections: [{ heading: "A", blocks: [{ kind: "figure", figure: null, svg }] }] },
      "NOT_AN_OBJECT",
    ],
    [
      "steps that are none",
      { sections: [{ heading: "A", blocks: [{ kind: "working", title: "T", steps: [{}] }] }] },
      "NOT_A_TEXT",
    ],
    ["a caution that is no text", { cautions: [60] }, "NOT_A_TEXT"],
    ["a caution without a text", { cautions: [{ code: "HIGH_VOLTAGE" }] }, "NOT_A_TEXT"],
    ["a caution that says nothing", { cautions: [{ text: " " }] }, "EMPTY"],
    ["cautions left out", { cautions: undefined }, "MISSING_OPTION"],
  ])("refuses %s", (_, change, code) => {
    expect(codeOf(() => page({ ...base, ...change } as PageOptions))).toBe(code);
  });
});
