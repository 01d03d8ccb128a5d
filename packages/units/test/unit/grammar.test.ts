import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { compoundUnits, sensibleNumbers } from "../../../../test/support/quantities.js";
import {
  type AnyQuantity,
  type Dimension,
  MAX_QUANTITY_LENGTH,
  MAX_UNIT_LENGTH,
  nearest,
  type Quantity,
  type QuantityError,
  q,
  quantity,
  unitSymbols,
} from "../../src/index.js";

/** The unit text as plain JavaScript would pass it: unknown to the compiler. */
const unit = (text: string) => quantity<string>(1, text);

/** A pure number, which is an angle when degrees and radians were among its factors. */
const number = (ratio: AnyQuantity) =>
  (ratio as Quantity<Dimension>).in(ratio.dimension.kind === "angle" ? "rad" : "1");

function errorOf(act: () => unknown): QuantityError {
  try {
    act();
  } catch (error) {
    return error as QuantityError;
  }
  throw new Error("expected an error, and there was none");
}

describe("grammar of unit texts", () => {
  it.each([
    ["kWh/100 km", "Wh/km", 10],
    ["kWh/(100 km)", "Wh/km", 10],
    ["kWh/100km", "Wh/km", 10],
    ["kWh/100\u00a0km", "Wh/km", 10],
    ["kWh/(100km)", "Wh/km", 10],
    ["m³/2s² 3kg", "m³/(s²·kg)", 1 / 6],
    ["W/m²·K", "W/(m²·K)", 1],
    ["kg·m/s²", "N", 1],
    ["kg m/s^2", "N", 1],
    ["kg*m/s2", "N", 1],
    ["kg⋅m·s⁻²", "N", 1],
    ["kg m s-2", "N", 1],
    ["(km/h)²", "m²/s²", 1 / 12.96],
    ["((m))", "m", 1],
    ["(m/s)/(s)", "m/s²", 1],
    ["/s", "1/s", 1],
    ["1/s", "1/s", 1],
    ["  kg", "kg", 1],
    ["kg\u00a0m/s²", "N", 1],
    ["kg\u202fm/s²", "N", 1],
    ["m¹", "m", 1],
    ["s⁻¹", "1/s", 1],
    ["\u00b5m", "mm", 0.001],
    ["\u03bcm", "mm", 0.001],
    ["k\u03a9", "Ω", 1000],
    ["π rad/180", "°", 1],
  ])("reads '%s' as a multiple of %s", (text, other, factor) => {
    const there = unit(text);
    const here = unit(other);
    expect(there.dimension.key).toBe(here.dimension.key);
    expect(there.per(here).in<string>("1")).toBeCloseTo(factor, 14);
  });

  it("reads the ohm sign of Unicode, U+2126, as the letter that it stands for", () => {
    expect(unit("m\u2126").in<string>("Ω")).toBe(0.001);
  });

  it.each([
    ["", 1, "a unit is missing"],
    ["m/", 3, "a unit is missing"],
    ["m·", 3, "a unit is missing"],
    ["·m", 1, "unexpected '·'"],
    ["m··s", 3, "unexpected '·'"],
    ["W/m²/K", 5, "a second '/' needs parentheses"],
    ["(m", 3, "a ')' is missing"],
    ["m)", 2, "unexpected ')'"],
    ["()", 2, "unexpected ')'"],
    ["m(s)", 2, "unexpected '('"],
    ["kWh/100(km)", 8, "unexpected '('"],
    ["m2s", 3, "unexpected 's'"],
    ["m^", 2, "unexpected '^'"],
    ["m^x", 2, "unexpected '^'"],
    ["m^1.5", 4, "unexpected '.'"],
    ["m^0", 4, "a power must be 1 to 9"],
    ["m10", 4, "a power must be 1 to 9"],
    ["m⁻⁰", 4, "a power must be 1 to 9"],
    ["m/(0 s)", 5, "factor of zero"],
    ["m+s", 2, "unexpected '+'"],
    ["€", 1, "unexpected '€'"],
  ])("refuses '%s' at character %d", (text, position, message) => {
    const error = errorOf(() => unit(text));
    expect(error).toMatchObject({ name: "QuantityError", code: "UNIT_SYNTAX", details: { unit: text, position } });
    expect(error.message).toContain(message);
    expect(error.message).toContain(`character ${position} `);
  });

  it.each([
    ["kWhh", 1, ["kWh"]],
    ["m·Kmh", 3, []],
    ["kWh/100 Km", 9, ["km"]],
    ["kph", 1, ["km/h"]],
    ["Wh/mile", 4, ["mi"]],
    ["lbs", 1, ["lb (mass) or lbf (force)"]],
    ["ton", 1, ["t (1000 kg) or short_ton (2000 lb)"]],
    ["short ton", 1, ["short_ton"]],
    ["mi/gal", 4, ["US_gal or imp_gal"]],
    ["US gal", 1, ["US_gal or imp_gal"]],
    ["deg C", 1, ["degC"]],
    ["ºC", 1, ["°C"]],
    ["W/° F", 3, ["°F"]],
    ["Nm", 1, ["N·m"]],
    ["N.m", 1, ["N·m"]],
    ["kW-h/km", 1, ["kWh"]],
    ["lb-ft", 1, ["lbf·ft"]],
    ["cv", 1, ["PS (75 kgf·m/s)"]],
    ["km/hour", 4, ["h (hour)"]],
    ["days", 1, ["d"]],
  ])("does not know '%s', says where and what is near", (text, position, near) => {
    const error = errorOf(() => unit(text));
    expect(error).toMatchObject({ code: "UNKNOWN_UNIT", details: { unit: text, position } });
    for (const word of near) expect(error.details.nearest).toContain(word);
    for (const word of near) expect(error.message).toContain(word);
    expect(error.message).toContain(`' at character ${position} of the unit '${text}'`);
  });

  it("multiplies before it divides: W/m²·K is W/(m²·K)", () => {
    expect(unit("W/m²·K").dimension).toEqual(unit("W/(m²·K)").dimension);
    expect(unit("W/m² K").dimension).not.toEqual(unit("W·K/m²").dimension);
  });

  it("reads a compound as the product of its parts", () => {
    fc.assert(
      fc.property(compoundUnits, ({ text, terms, numbers }) => {
        let product: Quantity<Dimension> = quantity<string>(1, "1");
        for (const [symbol, power] of terms) {
          // A temperature point has no factor; within a compound it is an interval, which is what its square root is here.
          const one = unit(`${symbol} s`).per(unit("s"));
          for (let i = 0; i < Math.abs(power); i++) {
            product = (power > 0 ? product.times(one) : product.per(one)) as Quantity<Dimension>;
          }
        }
        for (const [value, power] of numbers) product = product.times(value ** power);
        const read = unit(`(${text}) s`);
        expect(read.dimension.key).toBe(product.times(unit("s")).dimension.key);
        const ratio = read.per(product.times(unit("s")));
        // Six factors, each up to squared or cubed: some tens of roundings at most.
        expect(Math.abs(number(ratio) - 1)).toBeLessThan(1e-14);
      }),
    );
  });

  it("prints a unit so that it reads back to the same", () => {
    fc.assert(
      fc.property(compoundUnits, ({ text }) => {
        // A product makes the library write the unit in its own way; the second keeps a temperature from standing alone.
        const given = unit(`(${text}) s`).times(quantity(1, "1"));
        const again = quantity<string>(given.value, given.unit);
        expect(again.dimension.key).toBe(given.dimension.key);
        expect(number(again.per(given))).toBeCloseTo(1, 14);
        expect(quantity<string>(1, given.unit).times(quantity(1, "1")).unit).toBe(given.unit);
      }),
    );
  });

  it.each([
    ["m^9", "m", 1],
    ["1/s^5", "1/s^5", 1],
    ["m^5", "1/m^5", -1],
  ] as const)("bounds products as it bounds texts: '%s' with '%s'", (a, b, sign) => {
    const [one, other] = [unit(a), unit(b)];
    const error = errorOf(() => (sign === 1 ? one.times(other) : one.per(other)));
    expect(error).toMatchObject({ name: "QuantityError", code: "UNIT_SYNTAX" });
    expect(error.message).toContain("a power must be 1 to 9");
  });

  it("does not mind an order: a·b is b·a", () => {
    fc.assert(
      fc.property(compoundUnits, compoundUnits, ({ text: a }, { text: b }) => {
        fc.pre(a.length + b.length < 60);
        const one = unit(`(${a})·(${b})·s`);
        const other = unit(`(${b})·(${a})·s`);
        expect(other.dimension.key).toBe(one.dimension.key);
        expect(number(one.per(other))).toBeCloseTo(1, 14);
      }),
    );
  });
});

describe("grammar of quantities", () => {
  it.each([
    ["5 kg", 5],
    ["5kg", 5],
    ["  5 kg  ", 5],
    ["5\u00a0kg", 5],
    ["-5 kg", -5],
    ["−5 kg", -5],
    ["+5 kg", 5],
    [".5 kg", 0.5],
    ["0.5 kg", 0.5],
    ["1 200 kg", 1200],
    ["1\u202f234\u202f567.5 kg", 1_234_567.5],
    ["3,500 kg", 3500],
    ["1,234,567.25 kg", 1_234_567.25],
    ["1e3 kg", 1000],
    ["1.5E-3 kg", 0.0015],
    ["1e−3 kg", 0.001],
    ["2×10³ kg", 2000],
    ["1.2 × 10^3 kg", 1200],
    ["1.2×10^-3 kg", 0.0012],
    ["1.2\u00a0×\u202f10^−3 kg", 0.0012],
    ["1.2 ×10⁻³ kg", 0.0012],
    ["–5 kg", -5],
    ["0075 kg", 75],
    ["10 075 kg", 10_075],
    ["2.5×10⁻³ kg", 0.0025],
    ["100 000 kg", 100_000],
  ])("reads '%s'", (text, value) => {
    expect(q<string>(text).in<string>("kg")).toBe(value);
  });

  it.each(["", "kg", "five kg", "--5 kg", "5. kg", "1.2.3 kg", "1,5 kg", "1,2000 kg", "1,23,456 kg", "NaN kg"])(
    "refuses the number of '%s'",
    (text) => {
      expect(errorOf(() => q<string>(text))).toMatchObject({ name: "QuantityError", code: "NUMBER_SYNTAX" });
    },
  );

  it.each([
    ["1,5 kg", "1.5 kg"],
    ["0,075 kg", "0.075 kg"],
    ["-0,075 kg", "-0.075 kg"],
    ["0,500", "0.500"],
    ["1234,5 kg", "1234.5 kg"],
    ["1.200,5 kg", "1200.5 kg"],
    ["1 200,5 kg", "1200.5 kg"],
    ["1\u202f234\u202f567,25 kg", "1234567.25 kg"],
    ["1.234.567,8 kg", "1234567.8 kg"],
    ["Δ0,5 K", "Δ0.5 K"],
  ])("says how to write the decimal comma of '%s'", (text, mended) => {
    expect(() => q<string>(text)).toThrow(`write ${mended}`);
    expect(q<string>(mended).value).toBeTruthy();
  });

  it.each(["0 075 kg", "0\u202f000 kg", "1,23,456 kg", "1,234,56 kg", "1.234.567 kg"])(
    "guesses nothing for '%s'",
    (text) => {
      expect(() => q<string>(text)).toThrow("spaces and commas group digits in threes");
    },
  );

  it.each(["12 34 kg", "1 20 kg", "5 0 kg", "3 50 lb"])("does not multiply the two numbers of '%s'", (text) => {
    expect(() => q<string>(text)).toThrow();
  });

  it("refuses a number that no double holds", () => {
    expect(errorOf(() => q<string>("1e400 kg"))).toMatchObject({ code: "NOT_FINITE" });
    expect(errorOf(() => quantity(Number.NaN, "kg"))).toMatchObject({ code: "NOT_FINITE" });
    expect(errorOf(() => quantity(Number.POSITIVE_INFINITY, "kg"))).toMatchObject({ code: "NOT_FINITE" });
  });

  it("reads back what it prints, to the six digits that it prints", () => {
    fc.assert(
      fc.property(sensibleNumbers, compoundUnits, (value, { text }) => {
        const made = quantity<string>(value, text);
        // The product makes the library write the unit in its own way; a point has no product.
        const given = made.dimension.key === "m0 kg0 s0 A0 K1" ? made : made.times(quantity(1, "1"));
        fc.pre(given.unit !== "" && given.toString().length <= MAX_QUANTITY_LENGTH);
        const again = q<string>(given.toString());
        expect(again.unit).toBe(given.unit);
        expect(Math.abs(again.value / given.value - 1)).toBeLessThan(5.1e-6);
      }),
    );
  });

  it("refuses a unit that starts with a number: 5 of it would print as another number", () => {
    for (const text of ["100 km", "0.5 h", "10 kg/m", "1 kg", "12"]) {
      expect(() => quantity(5, text as string)).toThrow("a unit cannot start with a number");
    }
    expect(quantity(5, "1/km").in("1/m")).toBe(0.005);
    expect(quantity(5, "1").value).toBe(5);
  });
});

describe("hostile texts", () => {
  const texts = [
    "__proto__",
    "constructor",
    "toString",
    "hasOwnProperty",
    "valueOf",
    "__proto__·kg",
    "kg/constructor",
    "m".repeat(MAX_UNIT_LENGTH),
    "m".repeat(MAX_UNIT_LENGTH + 1),
    "m".repeat(1_000_000),
    "(".repeat(40) + ")".repeat(40),
    `${"(".repeat(30)}m${")".repeat(30)}`,
    "m^999999999",
    "m⁹⁹⁹⁹⁹⁹",
    "1".repeat(79),
    "kg\u0000",
    "kg\nm",
    "k\u0301g",
    "ｋｇ",
    "\ud800",
    "/".repeat(80),
    "m ".repeat(40),
    "%".repeat(80),
  ].map((text) => [text.slice(0, 24), text] as const);

  it.each(texts)("%j as a unit: read or refused, with a typed error", (_, text) => {
    expect(() => {
      try {
        unit(text);
      } catch (error) {
        expect(error).toMatchObject({
          name: "QuantityError",
          code: expect.stringMatching(/^UN(IT_SYNTAX|KNOWN_UNIT)$/),
        });
        expect((error as Error).message.length).toBeLessThan(400);
      }
    }).not.toThrow();
  });

  it.each(texts)("5 %j as a quantity: read or refused, with a typed error", (_, text) => {
    expect(() => {
      try {
        q<string>(`5 ${text}`);
      } catch (error) {
        expect(error).toMatchObject({ name: "QuantityError" });
      }
    }).not.toThrow();
  });

  it("anything at all is read or refused, with a typed error", () => {
    const noise = fc.string({ unit: fc.constantFrom(..."mkgWhs()/·*^²⁻¹23 0.×eΔ°C%π_\"'__proto__"), maxLength: 30 });
    fc.assert(
      fc.property(fc.oneof(noise, fc.string({ unit: "binary", maxLength: 90 })), (text) => {
        for (const act of [() => unit(text), () => q<string>(text), () => q<string>(`5 ${text}`)]) {
          try {
            act();
          } catch (error) {
            expect(error).toMatchObject({ name: "QuantityError" });
          }
        }
      }),
      { numRuns: 500 },
    );
  });

  /**
   * A power of a power multiplies the exponents: nine levels of ^9 are 9^9 digits of an exact number. The limit on a single
   * power does not bound that, so powers of parentheses must be bounded as well. Three levels show it without the wait.
   */
  it.each(["((km^9)^9)^9", "(((in^9)^9)^9)^9"])("refuses the towering power %s", (text) => {
    expect(errorOf(() => unit(text))).toMatchObject({ name: "QuantityError", code: "UNIT_SYNTAX" });
  });

  it.each(["constructor", "__proto__", "toString"])("does not take %s for a kind or an option", (word) => {
    expect(errorOf(() => (q("5 N") as { as(kind: string): unknown }).as(word))).toMatchObject({ code: "WRONG_KIND" });
  });

  it("keeps working after more texts than it remembers", () => {
    const before = q("5 km").in("m");
    for (let i = 1; i <= 5000; i++) unit(`m/${i} s`);
    expect(unit("m/5000 s").in<string>("mm/s")).toBe(0.2);
    expect(q("5 km").in("m")).toBe(before);
  });
});

describe("a slip of the pen in a symbol", () => {
  const near = (word: string): unknown => errorOf(() => unit(word)).details.nearest;

  it("is a letter too many, too few, or another one", () => {
    for (const symbol of unitSymbols.filter((each) => /^[a-zA-Z]{4,}$/.test(each))) {
      for (const word of [`${symbol}x`, symbol.slice(1), `x${symbol.slice(1)}`]) {
        // What is a symbol itself, or known to stand for another, is no slip
        if (unitSymbols.includes(word as never) || word.toLowerCase() === symbol.toLowerCase()) continue;
        expect(near(word), word).toContain(symbol);
      }
    }
  });

  it("in its case alone comes before all others", () => {
    for (const [word, symbol] of [
      ["mwh", "MWh"],
      ["KM", "km"],
      ["PSI", "psi"],
      ["DEGC", "degC"],
    ] as const) {
      expect((near(word) as string[])[0]).toBe(symbol);
    }
  });

  it("is not looked for behind one letter, which is near to every other, or in words of something else", () => {
    for (const word of ["x", "q", "zebra", "colour", "x".repeat(70)]) expect(near(word), word).toEqual([]);
  });
});

describe("nearest word", () => {
  it("finds a misspelt option, nearest first, and nothing for another word", () => {
    const known = ["dragCoefficient", "dragArea", "frontalArea", "mass"];
    expect(nearest("dragCoeficient", known)).toEqual(["dragCoefficient"]);
    expect(nearest("DRAGAREA", known)).toEqual(["dragArea"]);
    expect(nearest("colour", known)).toEqual([]);
    expect(nearest("mas", known)[0]).toBe("mass");
  });

  it("answers at once for a word of any length", () => {
    expect(nearest("x".repeat(1_000_000), ["mass"])).toEqual([]);
  });
});
