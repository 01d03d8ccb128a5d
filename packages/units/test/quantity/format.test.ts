import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { sensibleNumbers } from "../../../../test/support/quantities.js";
import { formatNumber, printed, type QuantityError, q, quantity } from "../../src/index.js";

const THIN = "\u202f";
const MINUS = "\u2212";

function codeOf(act: () => unknown): string {
  try {
    act();
  } catch (error) {
    return (error as QuantityError).code;
  }
  return "no error";
}

/** Reads a printed number as a person would: thin spaces group, the minus is a minus, ×10 raises. */
function reread(text: string): number {
  const [mantissa = "", exponent = ""] = text.replaceAll(THIN, "").replaceAll(MINUS, "-").split("×10");
  const power = [...exponent].map((c) => (c === "⁻" ? "-" : "⁰¹²³⁴⁵⁶⁷⁸⁹".indexOf(c))).join("");
  return Number(power === "" ? mantissa : `${mantissa}e${power}`);
}

/** What the engine's own formatter makes of the text of a number, which it reads as an exact decimal; ties go away from zero. */
function roundedByEngine(value: number, digits: number): number {
  const format = new Intl.NumberFormat("en", { maximumSignificantDigits: digits, useGrouping: false });
  return Number(format.format(String(value) as `${number}`));
}

/** Decimals that end in a 5, many of which the nearest double is below. */
const ties = fc
  .tuple(fc.integer({ min: -1e6, max: 1e6 }), fc.integer({ min: -9, max: 9 }))
  .map(([whole, exponent]) => Number(`${whole}5e${exponent}`));

describe("formatNumber", () => {
  it.each([
    [27_134.4, 3, `27${THIN}100`],
    [1234, 3, "1230"],
    [12_345, 5, `12${THIN}345`],
    [1_234_567, 7, `1${THIN}234${THIN}567`],
    [0.29, 3, "0.290"],
    [0.0092, 2, "0.0092"],
    [-5, 2, `${MINUS}5.0`],
    [-12_345.6, 6, `${MINUS}12${THIN}345.6`],
    [0, 3, "0.00"],
    [999.6, 3, "1000"],
    [99_999.5, 5, `100${THIN}000`],
    [1e15, 3, "1.00×10¹⁵"],
    [1.234e-7, 3, "1.23×10⁻⁷"],
    [0.000001, 3, "0.00000100"],
    [3.2, 1, "3"],
    [2.675, 3, "2.68"],
    [-2.675, 3, `${MINUS}2.68`],
    [1.005, 3, "1.01"],
    [0.15, 1, "0.2"],
    [2.67499, 3, "2.67"],
    [2.6749999999999994, 3, "2.67"],
    [9.995, 3, "10.0"],
  ])("%d with %d digits is %j", (value, digits, text) => {
    expect(formatNumber(value, digits)).toBe(text);
  });

  it("prints the decimal that a number prints as, rounded to its digits, and nothing else", () => {
    const digits = fc.integer({ min: 1, max: 15 });
    // The smallest doubles hold few digits, and their decimals are no longer the numbers.
    const numbers = fc.double({ noNaN: true, noDefaultInfinity: true }).filter((value) => Math.abs(value) > 1e-300);
    fc.assert(
      fc.property(fc.oneof(sensibleNumbers, ties, numbers, fc.constant(-0)), digits, (value, d) => {
        const text = formatNumber(value, d);
        // Adding zero makes of a negative zero a zero: both print as 0.
        expect(reread(text)).toBe(roundedByEngine(value, d) + 0);
      }),
    );
  });

  it("keeps as many digits as it was told, and a true minus sign", () => {
    fc.assert(
      fc.property(sensibleNumbers, fc.integer({ min: 1, max: 15 }), (value, d) => {
        fc.pre(value !== 0);
        const [mantissa = ""] = formatNumber(value, d).split("×10");
        const shown = mantissa.replaceAll(/[^\d.]/g, "");
        const significant = shown.replace(".", "").replace(/^0+/, "");
        // A whole number may end in zeros that hold its place: 27 100 with three digits.
        if (shown.includes(".")) expect(significant).toHaveLength(d);
        else expect(significant.length).toBeGreaterThanOrEqual(d);
        expect(mantissa.startsWith(MINUS)).toBe(value < 0);
        expect(mantissa).not.toContain("-");
      }),
    );
  });

  it("groups from five digits on, in threes, left of the point only", () => {
    fc.assert(
      fc.property(sensibleNumbers, (value) => {
        const [whole = "", fraction = ""] = (formatNumber(value, 12).split("×10")[0] ?? "")
          .replace(MINUS, "")
          .split(".");
        expect(fraction).not.toContain(THIN);
        if (whole.replaceAll(THIN, "").length < 5) expect(whole).not.toContain(THIN);
        else expect(whole).toMatch(/^\d{1,3}(\u202f\d{3})+$/);
      }),
    );
  });

  it.each([0, 16, -1, 2.5, Number.NaN, "3"])("refuses %s digits", (digits) => {
    expect(codeOf(() => formatNumber(5, digits as number))).toBe("NUMBER_SYNTAX");
  });

  it.each([Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY])("refuses to print %d", (value) => {
    expect(codeOf(() => formatNumber(value, 3))).toBe("NOT_FINITE");
  });
});

describe("printing a quantity", () => {
  it("puts the unit behind, with three digits unless told otherwise", () => {
    expect(q("186.4 Wh/kg").format()).toBe("186 Wh/kg");
    expect(q("186.4 Wh/kg").format({ digits: 5 })).toBe("186.40 Wh/kg");
    expect(q("5974 lb").format({ unit: "kg", digits: 4 })).toBe("2710 kg");
    expect(q("0.29").format()).toBe("0.290");
    expect(q("6 °").format({ digits: 1 })).toBe("6°");
    expect(q("74 %").format({ digits: 2 })).toBe("74 %");
    expect(q("-40 °C").format({ digits: 2 })).toBe(`${MINUS}40 °C`);
  });

  it("rounds as printed does, in format and in a text", () => {
    fc.assert(
      fc.property(fc.oneof(sensibleNumbers, ties), fc.integer({ min: 1, max: 15 }), (value, digits) => {
        const mass = quantity(value, "kg");
        expect(mass.format({ digits })).toBe(printed(mass, { digits }));
        if (!Number.isInteger(value))
          expect(q<string>(String(mass)).value).toBe(q<string>(printed(mass, { digits: 6 })).value);
      }),
    );
  });

  it("refuses a unit of something else, and an option that it does not know", () => {
    expect(codeOf(() => q("5 kg").format({ unit: "kWh" }))).toBe("WRONG_DIMENSION");
    const format = (options: object) => q("5 kg").format(options);
    expect(() => format({ digts: 5 })).toThrow("digits");
  });

  it("as text has at most six digits, and all digits of a whole number", () => {
    expect(String(q("1234567 kg")).replaceAll(THIN, "")).toBe("1234567 kg");
    expect(String(quantity(1 / 3, "kWh"))).toBe("0.333333 kWh");
    expect(String(q("-5 kg"))).toBe(`${MINUS}5 kg`);
    expect(String(q("1e-9 m"))).toBe("1×10⁻⁹ m");
    expect(String(q("45 °"))).toBe("45°");
    expect(`${q("0.5")}`).toBe("0.5");
  });

  it("is what a notebook shows", () => {
    const shown = (q("5 m²") as unknown as Record<symbol, () => object>)[Symbol.for("Jupyter.display")];
    expect(shown?.call(q("5 m²"))).toEqual({ "text/plain": "5 m²" });
  });

  it("is what a console shows", () => {
    const shown = (q("5 kg") as unknown as Record<symbol, () => string>)[Symbol.for("nodejs.util.inspect.custom")];
    expect(shown?.call(q("5 kg"))).toBe("5 kg");
  });
});
