import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { compoundUnits } from "../../../../test/support/quantities.js";
import { quantity, symbolToHtml, symbolToMathML, unitSymbols, unitToHtml, unitToMathML } from "../../src/index.js";

const NO_BREAK = "\u00a0";
const MINUS = "\u2212";

describe("units in HTML", () => {
  // ISO 80000-1 (remembered): factors by a middle dot, powers raised, several factors below the line in parentheses
  it.each([
    ["kg/m^3", "kg/m<sup>3</sup>"],
    ["kg/m3", "kg/m<sup>3</sup>"],
    ["N*m", "N·m"],
    ["N m", "N·m"],
    ["W/(m² K)", "W/(m<sup>2</sup>·K)"],
    ["W/m² K", "W/(m<sup>2</sup>·K)"],
    ["N/(m/s)²", "N/(m/s)<sup>2</sup>"],
    ["kWh/100 km", `kWh/100${NO_BREAK}km`],
    ["s⁻¹", `s<sup>${MINUS}1</sup>`],
    ["m^-2", `m<sup>${MINUS}2</sup>`],
    ["°C", "°C"],
    ["short_ton", "short_ton"],
    ["1/km", "1/km"],
  ])("%s is %j", (unit, html) => {
    expect(unitToHtml(unit)).toBe(html);
  });

  it("read back, tags and all, to a unit of the same worth", () => {
    const units = fc.oneof(
      fc.constantFrom(...unitSymbols),
      compoundUnits.map(({ text }) => text),
    );
    fc.assert(
      fc.property(units, (unit) => {
        fc.pre(!/^\s*\d/.test(unit) || unit === "1");
        const text = unitToHtml(unit).replace(
          /<sup>(.*?)<\/sup>/g,
          (_, power: string) => `^${power.replace(MINUS, "-")}`,
        );
        const [one, other] = [quantity<string>(1, unit), quantity<string>(1, text)];
        expect(other.dimension.key).toBe(one.dimension.key);
        if (one.dimension.kind !== "temperature") expect(other.ratioTo(one)).toBeCloseTo(1, 12);
      }),
    );
  });

  it("refuse what is no unit", () => {
    for (const render of [unitToHtml, unitToMathML]) {
      expect(() => render("<script>")).toThrow(expect.objectContaining({ code: "UNIT_SYNTAX" }));
      expect(() => render("kgg")).toThrow(expect.objectContaining({ code: "UNKNOWN_UNIT" }));
    }
  });
});

describe("units in MathML", () => {
  it("are rows of upright symbols, operators and powers", () => {
    const [m, s] = ["m", "s"].map((symbol) => `<mi mathvariant="normal">${symbol}</mi>`);
    expect(unitToMathML("m/s")).toBe(`<mrow>${m}<mo>/</mo>${s}</mrow>`);
    expect(unitToMathML("s⁻¹")).toBe(`<mrow><msup>${s}<mrow><mo>${MINUS}</mo><mn>1</mn></mrow></msup></mrow>`);
    expect(unitToMathML("1/(m/s)²")).toBe(
      `<mrow><mn>1</mn><mo>/</mo><msup><mrow><mo>(</mo>${m}<mo>/</mo>${s}<mo>)</mo></mrow><mn>2</mn></msup></mrow>`,
    );
  });

  it("are well formed: every tag is closed in order", () => {
    fc.assert(
      fc.property(compoundUnits, ({ text }) => {
        fc.pre(!/^\s*\d/.test(text));
        const open: string[] = [];
        for (const [, end, name] of unitToMathML(text).matchAll(/<(\/?)(\w+)[^>]*?>/g)) {
          if (end === "") open.push(name ?? "");
          else expect(open.pop()).toBe(name);
        }
        expect(open).toEqual([]);
      }),
    );
  });
});

describe("symbols of formulas", () => {
  it.each([
    ["v", "<var>v</var>", "<mrow><mi>v</mi></mrow>"],
    ["F_a", "<var>F<sub>a</sub></var>", '<mrow><msub><mi>F</mi><mi mathvariant="normal">a</mi></msub></mrow>'],
    [
      "C_dA",
      "<var>C<sub>d</sub>A</var>",
      '<mrow><msub><mi>C</mi><mi mathvariant="normal">d</mi></msub><mi>A</mi></mrow>',
    ],
    ["p_10", "<var>p<sub>10</sub></var>", '<mrow><msub><mi>p</mi><mi mathvariant="normal">10</mi></msub></mrow>'],
    ["e_bat", "<var>e<sub>bat</sub></var>", '<mrow><msub><mi>e</mi><mi mathvariant="normal">bat</mi></msub></mrow>'],
    ["a_", "<var>a_</var>", "<mrow><mi>a</mi><mi>_</mi></mrow>"],
    ["<b>", "<var>&lt;b&gt;</var>", "<mrow><mi>&lt;b&gt;</mi></mrow>"],
  ])("%s", (symbol, html, mathml) => {
    expect(symbolToHtml(symbol)).toBe(html);
    expect(symbolToMathML(symbol)).toBe(mathml);
  });

  it("lose no letter, and let no markup through", () => {
    fc.assert(
      fc.property(fc.string({ minLength: 1 }), (symbol) => {
        const html = symbolToHtml(symbol);
        const bare = html.replace(/<\/?(?:var|sub)>/g, "");
        expect(bare).not.toMatch(/[<>]/);
        const text = bare
          .replace(/&lt;/g, "<")
          .replace(/&gt;/g, ">")
          .replace(/&quot;/g, '"')
          .replace(/&amp;/g, "&");
        expect(text.replaceAll("_", "")).toBe(symbol.replaceAll("_", ""));
      }),
    );
  });

  it("refuse what is no text", () => {
    expect(() => symbolToHtml(5 as never)).toThrow("symbol must be a text: got 5");
    expect(() => symbolToMathML("")).toThrow("symbol must be a text: got an empty one");
  });
});
