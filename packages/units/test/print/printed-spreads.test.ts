import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { published } from "../../../../test/support/published.js";
import {
  printedBoth,
  printedEstimate,
  printedRange,
  printedSpread,
  printedUncertain,
  type QuantityError,
  q,
  quantity,
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

const numberIn = (text: string | undefined): number =>
  Number((text ?? "").replaceAll(THIN, "").replace(MINUS, "-").replace("×10", "e").split(" ")[0]);
const steps = fc.integer({ min: -10_000_000, max: 10_000_000 }).map((whole) => whole / 1000);

describe("printedUncertain", () => {
  published({
    quantity: "resistance and its uncertainty to the same place",
    source: "JCGM 100:2008, 7.2.6",
    status: "memory",
    given: "y 10.057 62 Ω, u 27 mΩ",
    published: [10.058, 0.027],
    computed: () =>
      printedUncertain(q("10.05762 Ω"), { uncertainty: q("27 mΩ") })
        .split(" ± ")
        .map(numberIn),
    tolerance: 0,
    why: "rounding is exact",
  });

  it.each<[string, string, 1 | 2, string]>([
    ["2716 kg", "108 kg", 2, "2720 kg ± 110 kg"],
    ["2716 kg", "108 kg", 1, "2700 kg ± 100 kg"],
    ["2716 kg", "0.108 t", 2, "2720 kg ± 110 kg"],
    // NIST SP 811 (2008), 7.7, remembered: the form 28.4 °C ± 0.2 °C
    ["28.42 °C", "Δ0.2 K", 1, "28.4 °C ± 0.2 °C"],
    ["68 °F", "Δ0.5 K", 1, "68.0 °F ± 0.9 °F"],
    ["1.2345 m", "0.0996 m", 2, "1.23 m ± 0.10 m"],
    ["9.996 m", "0.02 m", 1, "10.00 m ± 0.02 m"],
    ["-0.003 m", "0.5 m", 1, "0.0 m ± 0.5 m"],
    ["3 m", "500 m", 1, "0 m ± 500 m"],
    ["12.5°", "0.5°", 1, "12.5° ± 0.5°"],
    ["0 m", "1e-30 m", 1, "0 m ± 1×10⁻³⁰ m"],
    ["1.234e-9 m", "2e-11 m", 1, "1.23×10⁻⁹ m ± 2×10⁻¹¹ m"],
  ])("%s with %s to %d digits is %j", (text, uncertainty, digits, expected) => {
    expect(printedUncertain(q<string>(text), { uncertainty: q<string>(uncertainty), digits })).toBe(expected);
  });

  it("ends both numbers at one place, and the uncertainty has its digits", () => {
    const places = (text = ""): number => (text.split(" ")[0] ?? "").split(".")[1]?.length ?? 0;
    fc.assert(
      fc.property(steps, fc.integer({ min: 1, max: 999_999 }), fc.constantFrom(1, 2), (value, half, digits) => {
        const uncertainty = quantity(half / 1000, "m");
        const [best, spread] = printedUncertain(quantity(value, "m"), { uncertainty, digits }).split(" ± ");
        expect(places(best)).toBe(places(spread));
        expect(numberIn(spread)).toBe(Number(numberIn(spread).toPrecision(digits)));
        expect(Math.abs(numberIn(best) - value)).toBeLessThanOrEqual((half / 1000) * (digits === 1 ? 0.51 : 0.051));
      }),
    );
  });

  it.each<[string, () => unknown, string]>([
    ["none", () => printedUncertain(q("5 kg"), {} as never), "MISSING_OPTION"],
    ["of zero", () => printedUncertain(q("5 kg"), { uncertainty: q("0 kg") }), "OUT_OF_RANGE"],
    ["below zero", () => printedUncertain(q("5 kg"), { uncertainty: q("-1 kg") }), "OUT_OF_RANGE"],
    ["of another dimension", () => printedUncertain(q("5 kg"), { uncertainty: q("1 m") }), "WRONG_DIMENSION"],
    ["of another kind", () => printedUncertain(q("5 J"), { uncertainty: q("1 N·m") }), "WRONG_KIND"],
    ["that is a point", () => printedUncertain(q("5 °C"), { uncertainty: q("1 °C") }), "WRONG_KIND"],
    ["without unit", () => printedUncertain(q("5 kg"), { uncertainty: 1 as never }), "NOT_A_QUANTITY"],
    ["to three digits", () => printedUncertain(q("5 kg"), { uncertainty: q("1 kg"), digits: 3 }), "OUT_OF_RANGE"],
    ["that is lost", () => printedUncertain(q("1e9 kg"), { uncertainty: q("1e-12 kg") }), "OUT_OF_RANGE"],
  ])("refuses an uncertainty %s", (_, act, code) => {
    expect(codeOf(act)).toBe(code);
  });
});

describe("printedSpread", () => {
  it.each<[string, number, string]>([
    ["2716 kg", 0.04, "2720 kg ± 4 %"],
    ["2716 kg", 0.4, "2700 kg ± 40 %"],
    ["2716 kg", 0.0368, "2720 kg ± 3.7 %"],
    ["-2716 kg", 0.00996, `${MINUS}2716 kg ± 1 %`],
    ["2716 kg", 0.07, "2720 kg ± 7 %"],
    ["2716 kg", 1, "2700 kg ± 100 %"],
  ])("%s with a share of %d is %j", (text, spread, expected) => {
    expect(printedSpread(q<string>(text), { spread })).toBe(expected);
  });

  it("takes per cent, and one digit", () => {
    expect(printedSpread(q("2716 kg"), { spread: q("3.68 %"), digits: 1, unit: "t" })).toBe("2.7 t ± 4 %");
    expect(printedSpread(q("2716 kg"), { spread: 0.04, form: "html" })).toBe(`2720${NO_BREAK}kg ± 4${NO_BREAK}%`);
  });

  it.each<[string, () => unknown, string]>([
    ["of a zero", () => printedSpread(q("0 kg"), { spread: 0.1 }), "NOT_VALID_HERE"],
    ["of a temperature point", () => printedSpread(q("20 °C"), { spread: 0.1 }), "NOT_VALID_HERE"],
    ["that is 4 instead of 0.04", () => printedSpread(q("5 kg"), { spread: 4 }), "NOT_A_FRACTION"],
    ["of zero", () => printedSpread(q("5 kg"), { spread: 0 }), "OUT_OF_RANGE"],
    ["with a unit", () => printedSpread(q("5 kg"), { spread: q("1 kg") }), "WRONG_DIMENSION"],
  ])("refuses a spread %s", (_, act, code) => {
    expect(codeOf(act)).toBe(code);
  });
});

describe("printedRange", () => {
  it.each<[string, string, Parameters<typeof printedRange>[1], string]>([
    ["2.61 t", "2836 kg", {}, "2.61–2.84 t"],
    ["2.614 t", "2.616 t", {}, "2.614–2.616 t"],
    ["2.614 t", "2.616 t", { digits: 2 }, "2.614–2.616 t"],
    ["0.5 m", "12.34 m", {}, "0.5–12.3 m"],
    ["-10 °C", "35 °C", { digits: 2 }, `${MINUS}10 to 35 °C`],
    ["-1 m", "-0.5 m", { digits: 1 }, `${MINUS}1.0 to ${MINUS}0.5 m`],
    ["5 m", "5 m", {}, "5.00 m"],
    ["400 km", "520 km", { between: " to ", unit: "mi" }, "249 to 323 mi"],
    ["1e-8 m", "2e-8 m", {}, "1.00×10⁻⁸ to 2.00×10⁻⁸ m"],
    ["10000 m", "20000 m", { digits: 2 }, `10${THIN}000–20${THIN}000 m`],
    ["0 m", "5 m", { digits: 2 }, "0.0–5.0 m"],
  ])("%s and %s with %j are %j", (low, high, options, expected) => {
    expect(printedRange({ low: q<string>(low), high: q<string>(high) }, options)).toBe(expected);
  });

  it("never prints two ends as one, and keeps their order", () => {
    fc.assert(
      fc.property(steps, fc.integer({ min: 1, max: 10_000_000 }), fc.integer({ min: 1, max: 15 }), (low, w, digits) => {
        const ends = { low: quantity(low, "m"), high: quantity(low + w / 1000, "m") };
        const [first, last] = printedRange(ends, { digits, between: ";" }).split(";").map(numberIn);
        expect(first).toBeLessThan(last ?? Number.NaN);
      }),
    );
  });

  it("is one element of MathML", () => {
    const ends = { low: q("1 m"), high: q("2 m") };
    const unit = '<mspace width="0.17em"/><mrow><mi mathvariant="normal">m</mi></mrow>';
    expect(printedRange(ends, { digits: 1, form: "mathml" })).toBe(
      `<math><mn>1</mn><mo>–</mo><mn>2</mn>${unit}</math>`,
    );
    const words = "<mtext>\u00a0or\u00a0</mtext>";
    expect(printedRange(ends, { digits: 1, form: "mathml", between: " or " })).toBe(
      `<math><mn>1</mn>${words}<mn>2</mn>${unit}</math>`,
    );
  });

  it.each<[string, () => unknown, string]>([
    ["ends out of order", () => printedRange({ low: q("2 m"), high: q("1 m") }), "INCONSISTENT"],
    ["an end that is missing", () => printedRange({ low: q("2 m") } as never), "NOT_A_QUANTITY"],
    ["ends of two dimensions", () => printedRange({ low: q("2 m"), high: q("3 s") }), "WRONG_DIMENSION"],
    ["no ends", () => printedRange(null as never), "NOT_AN_OBJECT"],
    ["no word between", () => printedRange({ low: q("2 m"), high: q("3 m") }, { between: "" }), "WRONG_CHOICE"],
  ])("refuses %s", (_, act, code) => {
    expect(codeOf(act)).toBe(code);
  });

  it("escapes what stands between in markup", () => {
    const ends = { low: q("1 m"), high: q("2 m") };
    expect(printedRange(ends, { between: "<b>", form: "html" })).toBe(`1.00&lt;b&gt;2.00${NO_BREAK}m`);
  });
});

describe("printedEstimate", () => {
  it("prints all three to the place that half the width justifies", () => {
    const estimate = { low: q("2.61 t"), likely: q("2.716 t"), high: q("2.84 t") };
    expect(printedEstimate(estimate)).toBe("2.72 (2.61–2.84) t");
    expect(printedEstimate(estimate, { unit: "kg", between: " to ", locale: "en" })).toBe("2,720 (2,610 to 2,840) kg");
    expect(printedEstimate(estimate, { digits: 1 })).toBe("2.7 (2.6–2.8) t");
  });

  it("prints a value without width with three digits", () => {
    expect(printedEstimate({ low: q("5 t"), likely: q("5 t"), high: q("5 t") })).toBe("5.00 (5.00–5.00) t");
  });

  it("refuses what is out of order", () => {
    const [low, likely, high] = [q("1 t"), q("2 t"), q("3 t")];
    expect(codeOf(() => printedEstimate({ low: likely, likely: low, high }))).toBe("INCONSISTENT");
    expect(codeOf(() => printedEstimate({ low, likely: high, high: likely }))).toBe("INCONSISTENT");
    expect(codeOf(() => printedEstimate({ low, high } as never))).toBe("NOT_A_QUANTITY");
  });
});

describe("printedBoth", () => {
  const kilometres = (text: string): number => numberIn(/\((.*) km\)/.exec(text)?.[1]);
  published({
    quantity: "66 mi to two digits and 11.3 mi to three, in kilometres as exact as that",
    source: "NIST SP 1038 (2006), section 4.4",
    status: "memory",
    published: [106, 18.2],
    computed: () => [
      kilometres(printedBoth(q("66 mi"), { beside: "km", digits: 2 })),
      kilometres(printedBoth(q("11.3 mi"), { beside: "km" })),
    ],
    tolerance: 0,
    why: "the rule says how many digits are printed",
  });

  it.each<[string, Parameters<typeof printedBoth>[1], string]>([
    ["2720 kg", { beside: "lb" }, "2720 kg (6000 lb)"],
    ["2716 kg", { beside: "lb" }, "2720 kg (5990 lb)"],
    ["8 ft", { beside: "m", digits: 1 }, "8 ft (2.4 m)"],
    ["20 °C", { beside: "°F", digits: 2 }, "20 °C (68 °F)"],
    ["-40 °C", { beside: "°F", digits: 2 }, `${MINUS}40 °C (${MINUS}40 °F)`],
    ["20.5 °C", { beside: "K" }, "20.5 °C (293.7 K)"],
    ["15 kWh/100 km", { beside: "Wh/mi", digits: 2 }, "15 kWh/100 km (240 Wh/mi)"],
    ["9.0 kWh", { beside: "MJ", digits: 2 }, "9.0 kWh (32.4 MJ)"],
    ["0 kg", { beside: "lb" }, "0.00 kg (0.00 lb)"],
    ["2720 kg", { unit: "t", beside: "lb", decimals: 1, locale: "de" }, "2,7 t (6.000 lb)"],
  ])("%s with %j is %j", (text, options, expected) => {
    expect(printedBoth(q<string>(text), options)).toBe(expected);
  });

  it("rounds the second by no less and hardly more than the first", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1000, max: 99_999 }), fc.integer({ min: 1, max: 4 }), (value, digits) => {
        const text = printedBoth(quantity(value, "m"), { beside: "ft", digits });
        const feet = numberIn(/\((.*) ft\)/.exec(text)?.[1]);
        // A leading digit that is no smaller with as many digits: never coarser than half a step of the first, times ten.
        expect(Math.abs(feet - value / 0.3048) / (value / 0.3048)).toBeLessThanOrEqual(0.5 * 10 ** (1 - digits));
        expect(String(feet).replace(".", "").replace(/0+$/, "").length).toBeLessThanOrEqual(digits + 1);
      }),
    );
  });

  it.each<[string, () => unknown, string]>([
    ["no second unit", () => printedBoth(q("5 kg"), {} as never), "MISSING_OPTION"],
    ["a second unit of something else", () => printedBoth(q("5 kg"), { beside: "km" }), "WRONG_DIMENSION"],
    ["a reciprocal", () => printedBoth(q("5 mi/kWh"), { beside: "Wh/mi" }), "WRONG_DIMENSION"],
  ])("refuses %s", (_, act, code) => {
    expect(codeOf(act)).toBe(code);
  });
});
