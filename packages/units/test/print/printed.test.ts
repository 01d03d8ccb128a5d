import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { published } from "../../../../test/support/published.js";
import { compoundUnits, sensibleNumbers } from "../../../../test/support/quantities.js";
import {
  type Dimension,
  parseQuantity,
  printed,
  type Quantity,
  type QuantityError,
  q,
  quantity,
  unitSymbols,
  unitsWith,
} from "../../src/index.js";

const THIN = "\u202f";
const NO_BREAK = "\u00a0";
const MINUS = "\u2212";

function codeOf(act: () => unknown): string {
  try {
    act();
  } catch (error) {
    return (error as QuantityError).code;
  }
  return "no error";
}

const numbers = fc.oneof(
  sensibleNumbers,
  fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e200, max: 1e200 }),
  fc.integer({ min: -1_000_000, max: 1_000_000 }).map((whole) => whole / 1000),
);
const digits = fc.integer({ min: 1, max: 15 });

describe("printed", () => {
  // NIST SP 811 (2008), B.7.1, gives these; its fourth example is a tie, which it rounds to even: see below.
  published({
    quantity: "a number rounded to 3, 5 and 7 significant digits",
    source: "NIST SP 811 (2008), B.7.1",
    status: "memory",
    given: "6.974 951 5",
    published: [6.97, 6.975, 6.974952],
    computed: () =>
      [3, 5, 7].map((each) => Number(printed(quantity(6.9749515, "1"), { digits: each }))) as readonly number[],
    tolerance: 0,
    why: "rounding is exact",
  });

  it.each<[string, Parameters<typeof printed>[1], string]>([
    ["2716 kg", {}, "2720 kg"],
    ["27134.4 kg", {}, `27${THIN}100 kg`],
    ["2716 kg", { unit: "lb", digits: 2 }, "6000 lb"],
    ["2716 kg", { unit: "t", decimals: 1 }, "2.7 t"],
    ["9.996 m", {}, "10.0 m"],
    ["999.96 m", { digits: 4 }, "1000 m"],
    ["99999.6 m", { digits: 5 }, `100${THIN}000 m`],
    ["0 m", {}, "0.00 m"],
    ["-5 °C", { digits: 1 }, `${MINUS}5 °C`],
    ["-0.001 m", { decimals: 2 }, "0.00 m"],
    ["-0.005 m", { decimals: 2 }, `${MINUS}0.01 m`],
    ["Δ10 K", { digits: 2 }, "10 ΔK"],
    ["12.34°", {}, "12.3°"],
    ["12.34 %", {}, "12.3 %"],
    ["0.29", {}, "0.290"],
    ["1e15 J", {}, "1.00×10¹⁵ J"],
    ["999999999999999.9 J", { digits: 15 }, "1.00000000000000×10¹⁵ J"],
    ["1.5e-7 m", { digits: 2 }, "1.5×10⁻⁷ m"],
    ["0.000001 m", {}, "0.00000100 m"],
    ["1e20 kg", { decimals: 2 }, "1.0000000000000000×10²⁰ kg"],
    ["1e300 kg", { digits: 1 }, "1×10³⁰⁰ kg"],
    ["1234567.891 kg", { decimals: 2 }, `1${THIN}234${THIN}567.89 kg`],
  ])("%s with %j is %j", (text, options, expected) => {
    expect(printed(q<string>(text), options)).toBe(expected);
  });

  // ISO 80000-1 annex B, rule B (remembered): the value of larger magnitude. Doubles alone give 2.67, 1.00 and 8.57.
  it.each([
    [2.675, "2.68"],
    [1.005, "1.01"],
    [8.575, "8.58"],
    [-2.665, `${MINUS}2.67`],
  ])("a tie of %d, as it is written, goes away from zero", (value, expected) => {
    expect(printed(quantity(value, "1"))).toBe(expected);
  });

  it("is never further from the number than half a unit of its last digit", () => {
    fc.assert(
      fc.property(fc.integer({ min: -(10 ** 9), max: 10 ** 9 }), fc.integer({ min: 0, max: 6 }), (whole, decimals) => {
        const text = printed(quantity(whole / 1e4, "1"), { decimals })
          .replaceAll(THIN, "")
          .replace(MINUS, "-");
        // In steps of 10⁻⁶ all of this is whole numbers.
        const got = BigInt(text.replace(".", "") + "0".repeat(6 - decimals));
        const twice = 2n * (got - BigInt(whole) * 100n);
        const step = 10n ** BigInt(6 - decimals);
        expect(twice <= step && twice >= -step).toBe(true);
      }),
    );
  });

  it("reads back to the rounded number, whatever the unit", () => {
    const units = fc.oneof(
      fc.constantFrom(...unitSymbols),
      compoundUnits.map(({ text }) => text).filter((text) => !/^\s*\d/.test(text)),
    );
    fc.assert(
      fc.property(numbers, digits, units, (value, count, unit) => {
        const given = quantity<string>(value, unit);
        const read = parseQuantity<string>(printed(given, { digits: count }), unit);
        expect(read.unit).toBe(given.unit);
        expect(read.dimension).toEqual(given.dimension);
        expect(Math.abs(read.value - value)).toBeLessThanOrEqual(
          0.5000001 * 10 ** (Math.floor(Math.log10(Math.abs(value) || 1)) + 1 - count) +
            Number.EPSILON * Math.abs(value),
        );
        // What was rounded once stays.
        expect(printed(read, { digits: count })).toBe(printed(given, { digits: count }));
      }),
    );
  });

  it("has the digits that were asked for, and no sign of zero", () => {
    fc.assert(
      fc.property(numbers, digits, (value, count) => {
        const text = printed(quantity(value, "1"), { digits: count });
        const [mantissa = ""] = text.split("×10");
        const significant = mantissa.replace(/[^\d]/g, "").replace(/^0+(?=\d)/, "");
        if (value === 0) expect(text.startsWith(MINUS)).toBe(false);
        else if (Math.abs(value) < 10 ** count && !text.includes("×")) expect(significant).toHaveLength(count);
        expect(text).not.toMatch(/NaN|Infinity|-|e/);
      }),
    );
  });

  it("keeps order: a larger number never prints as a smaller one", () => {
    const number = (value: number, decimals: number): number =>
      parseQuantity(printed(quantity(value, "1"), { decimals }), "1").value;
    fc.assert(
      fc.property(sensibleNumbers, sensibleNumbers, fc.integer({ min: 0, max: 12 }), (a, b, decimals) => {
        const [low, high] = a < b ? [a, b] : [b, a];
        expect(number(low, decimals)).toBeLessThanOrEqual(number(high, decimals));
      }),
    );
  });

  // The signs of locales are those of the Unicode CLDR, which the engine carries.
  it.each([
    ["de", "12.345,68 kg"],
    ["en-US", "12,345.68 kg"],
    ["fr", `12${THIN}345,68 kg`],
    ["en-IN", "12,345.68 kg"],
    ["ar-EG", "١٢٬٣٤٥٫٦٨ kg"],
  ])("takes digits and signs from the locale %s", (locale, expected) => {
    expect(printed(q("12345.678 kg"), { locale, decimals: 2 })).toBe(expected);
  });

  it("keeps the true minus and the powers of ten in every locale", () => {
    expect(printed(q("-2.5 kg"), { locale: "de" })).toBe(`${MINUS}2,50 kg`);
    expect(printed(q("-2.5e-9 kg"), { locale: "de" })).toBe(`${MINUS}2,50×10⁻⁹ kg`);
  });

  it("takes as many digits in a locale as without one, for any number", () => {
    fc.assert(
      fc.property(numbers, digits, fc.constantFrom("de", "en-US", "fr"), (value, count, locale) => {
        const bare = (text: string): string => text.replace(/[^\d⁰¹²³⁴-⁹⁻×−]/g, "");
        const given = quantity(value, "1");
        expect(bare(printed(given, { digits: count, locale }))).toBe(bare(printed(given, { digits: count })));
      }),
    );
  });

  it("in HTML does not break between number and unit, and raises powers", () => {
    expect(printed(q("12.5 kg/m³"), { form: "html" })).toBe(`12.5${NO_BREAK}kg/m<sup>3</sup>`);
    expect(printed(q("12.5 %"), { form: "html" })).toBe(`12.5${NO_BREAK}%`);
    expect(printed(q("12.5°"), { form: "html" })).toBe("12.5°");
    expect(printed(q("-1.5e-9 m"), { form: "html" })).toBe(`${MINUS}1.50×10<sup>${MINUS}9</sup>${NO_BREAK}m`);
  });

  it("in MathML is one element with numbers, operators and upright units", () => {
    expect(printed(q("-1.5e-9 m"), { form: "mathml" })).toBe(
      `<math><mo form="prefix">${MINUS}</mo><mn>1.50</mn><mo>×</mo><msup><mn>10</mn><mrow><mo>${MINUS}</mo><mn>9</mn></mrow></msup>` +
        '<mspace width="0.17em"/><mrow><mi mathvariant="normal">m</mi></mrow></math>',
    );
  });

  it("prints units of one's own, in markup, too", () => {
    const own = unitsWith({ furlong: "660 ft" });
    const way = own.q("8 furlong") as unknown as Quantity<Dimension>;
    expect(printed(way)).toBe("8.00 furlong");
    expect(printed(way, { form: "html" })).toBe(`8.00${NO_BREAK}furlong`);
    expect(printed(way, { unit: "km" })).toBe("1.61 km");
  });

  it.each<[string, () => unknown, string]>([
    ["no quantity", () => printed(5 as never), "NOT_A_QUANTITY"],
    ["options that are no object", () => printed(q("5 kg"), null as never), "NOT_AN_OBJECT"],
    ["an unknown option", () => printed(q("5 kg"), { digit: 2 } as never), "UNKNOWN_OPTION"],
    ["digits and decimals", () => printed(q("5 kg"), { digits: 2, decimals: 1 }), "INCONSISTENT"],
    ["half a digit", () => printed(q("5 kg"), { digits: 2.5 }), "OUT_OF_RANGE"],
    ["no digits", () => printed(q("5 kg"), { digits: 0 }), "OUT_OF_RANGE"],
    ["sixteen digits", () => printed(q("5 kg"), { digits: 16 }), "OUT_OF_RANGE"],
    ["negative decimals", () => printed(q("5 kg"), { decimals: -1 }), "NEGATIVE"],
    ["a form that is none", () => printed(q("5 kg"), { form: "pdf" as never }), "WRONG_CHOICE"],
    ["a locale that is none", () => printed(q("5 kg"), { locale: "not a locale" }), "WRONG_CHOICE"],
    ["an empty locale", () => printed(q("5 kg"), { locale: "" }), "WRONG_CHOICE"],
    ["a unit of something else", () => printed(q("5 kg"), { unit: "km" }), "WRONG_DIMENSION"],
    ["a unit of another kind", () => printed(q("5 N·m"), { unit: "J" }), "WRONG_KIND"],
  ])("refuses %s", (_, act, code) => {
    expect(codeOf(act)).toBe(code);
  });

  it("names the nearest option", () => {
    expect(() => printed(q("5 kg"), { digit: 2 } as never)).toThrow("did you mean 'digits'?");
  });
});
