import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { csvField } from "../../src/escape/csv.js";
import { escapeHtml } from "../../src/escape/html.js";
import { escapeMarkdown, markdownParagraph } from "../../src/escape/markdown.js";
import { plainLine } from "../../src/escape/plain.js";

describe("escaping", () => {
  it("leaves no character in HTML that could open a tag, an attribute or an entity", () => {
    expect(escapeHtml(`<a href="x" title='y'>&`)).toBe("&lt;a href=&quot;x&quot; title=&#39;y&#39;&gt;&amp;");
    fc.assert(
      fc.property(fc.string({ unit: "binary" }), (text) => {
        expect(escapeHtml(text).replace(/&(?:amp|lt|gt|quot|#39);/g, "")).not.toMatch(/[&<>"']/);
      }),
    );
  });

  it("gives back the line when the entities are read again", () => {
    const read = (html: string) =>
      html
        .replace(/&lt;/g, "<")
        .replace(/&gt;/g, ">")
        .replace(/&quot;/g, '"')
        .replace(/&#39;/g, "'")
        .replace(/&amp;/g, "&");
    fc.assert(
      fc.property(fc.string({ unit: "grapheme" }), (text) => {
        expect(read(escapeHtml(text))).toBe(plainLine(text));
      }),
    );
  });

  it("makes one line without control characters and without marks that turn the direction of writing", () => {
    expect(plainLine("one\r\ntwo\u0000three\u2028four \u202eevil")).toBe("one two three four evil");
  });

  it("leaves nothing in Markdown that a renderer would read as markup", () => {
    expect(escapeMarkdown("F_a *b* [c](d) | <i> $x$ `e` # ~~f~~")).toBe(
      "F\\_a \\*b\\* \\[c\\](d) \\| &lt;i&gt; \\$x\\$ \\`e\\` \\# \\~\\~f\\~\\~",
    );
    expect(markdownParagraph("- not a list")).toBe("\\- not a list");
    expect(markdownParagraph("2026. A year")).toBe("2026\\. A year");
  });

  // The list of dangerous beginnings is common practice against "CSV injection"; no source was read.
  it.each(["=1+1", "+cmd", "-2+3", "@SUM(A1)", "\tx", "\rx", "＝1"])(
    "puts an apostrophe before the formula %j",
    (text) => {
      const field = csvField(text);
      expect(field.startsWith('"') ? field.slice(1, 2) : field.slice(0, 1)).toBe("'");
    },
  );

  it.each(["-5", "+5", "-1.5e-3", "-.5", "a=b", "−5", ""])("leaves %j as it is in CSV", (text) => {
    expect(csvField(text)).toBe(text);
  });
});
