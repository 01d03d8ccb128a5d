import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { compoundUnits } from "../../../../test/support/quantities.js";
import { MAX_UNIT_LENGTH, type QuantityError, q, quantity, unitSymbols } from "../../src/index.js";
import { builtIn, MOST_REMEMBERED, unitOf } from "../../src/unit/unit.js";

/** Reads a unit as plain JavaScript would; the error, when there is one, has to be typed. */
function refusal(read: () => unknown): QuantityError | undefined {
  try {
    read();
    return undefined;
  } catch (error) {
    expect(error).toMatchObject({ name: "QuantityError", code: expect.any(String) });
    return error as QuantityError;
  }
}

const symbols = [...unitSymbols, "π"].filter((symbol) => symbol !== "1").sort((a, b) => b.length - a.length);
const word = symbols.map((symbol) => symbol.replace(/[.*+?^${}()|[\]\\]/g, "\\$&")).join("|");
const SYMBOL = new RegExp(`(?<![\\p{L}_°%])(?:${word})(?![\\p{L}_°%Δ#"'′″])`, "gu");

/**
 * Whether a text belongs to the grammar, found out in another way than by reading it from left to right: symbols and numbers
 * become letters, and what is complete is put together to one letter, from the inside of the parentheses outwards.
 */
function belongs(text: string): boolean {
  let rest = text
    .normalize()
    .replaceAll("μ", "µ")
    .trim()
    // "deg C" is nothing, where "deg·C" is an angle times a charge
    .replace(/(?:°|deg)[ \u00a0\u202f][CF]/g, "?")
    .replace(/[ \u00a0\u202f]+/g, " ")
    .replace(SYMBOL, "①")
    .replace(/(?<=[①)])(\^?-?\d+|⁻?[⁰¹²³⁴⁵⁶⁷⁸⁹]+)/g, "③")
    .replace(/\d+(\.\d+)?/g, "②")
    // A symbol may touch the number before it
    .replace(/②(?=①)/g, "② ")
    // π has no power of its own meaning that a number has not, but is written like a symbol
    .replace(/①③/g, "①");
  const thing = "[①②]";
  const product = `${thing}(?: ?[·*⋅] ?${thing}| ${thing})*`;
  const unit = `(?:${product})?(?: ?/ ?${product})?`;
  const inner = new RegExp(`\\( ?(?!\\))(?:${unit}) ?\\)③?`, "g");
  for (let before = ""; before !== rest; ) {
    before = rest;
    rest = rest.replace(inner, "①");
  }
  return rest !== "" && new RegExp(`^${unit}$`).test(rest);
}

/** Refusals of texts that belong to the grammar: their numbers are not allowed. */
const ALLOWED = /a power must be 1 to 9|factor of zero|cannot start with a number|at most 80 characters/;

const character = fc.constantFrom(..."mkgWhsJ()/·* ^-²³⁻¹⁰0123459.,+°CΔKπµ%_eE\u00a0\u202f×é\u0301");
const mutations = fc.array(
  fc.tuple(fc.constantFrom("insert", "delete", "replace", "swap", "double"), fc.nat(), character),
  {
    minLength: 1,
    maxLength: 3,
  },
);

function mutated(text: string, changes: readonly (readonly [string, number, string])[]): string {
  let parts = [...text];
  for (const [change, where, added] of changes) {
    const at = where % (parts.length + 1);
    const [before, one = "", other = "", after] = [parts.slice(0, at), parts[at], parts[at + 1], parts.slice(at + 2)];
    const middle = {
      insert: [added, one, other],
      delete: [other],
      replace: [added, other],
      swap: [other, one],
      double: [one, one, other],
    };
    parts = [...before, ...(middle[change as keyof typeof middle] ?? []), ...after];
  }
  return parts.join("");
}

describe("texts that were made by the rules", () => {
  it("are read, and no more of them is thought valid than is", () => {
    fc.assert(
      fc.property(compoundUnits, ({ text }) => {
        expect(belongs(text)).toBe(true);
        expect(refusal(() => quantity<string>(1, `(${text})`))?.message ?? "").toMatch(/^$|a power must be/);
      }),
    );
  });

  it("are read with the number that JavaScript reads, whether the unit is remembered or not", () => {
    const digits = fc.string({ unit: fc.constantFrom(..."0123456789"), maxLength: 30 });
    fc.assert(
      fc.property(digits, digits, fc.constantFrom("", "-"), fc.nat(1e9), (whole, fraction, sign, fresh) => {
        fc.pre(whole !== "" || fraction !== "");
        const number = `${sign}${whole}${fraction === "" ? "" : `.${fraction}`}`;
        for (const unit of ["Wh/km", `Wh/${fresh + 1} km`]) {
          expect(q<string>(`${number} ${unit}`).value).toBe(Number(number));
        }
      }),
      { numRuns: 500 },
    );
  });
});

describe("texts that were mutated", () => {
  it("are refused when they left the grammar, at a place within them, and read when they did not", () => {
    let [read, refused] = [0, 0];
    fc.assert(
      fc.property(compoundUnits, mutations, ({ text }, changes) => {
        const changed = mutated(text, changes);
        const error = refusal(() => quantity<string>(1, changed));
        if (error === undefined) {
          expect(`${changed}: ${belongs(changed)}`).toBe(`${changed}: true`);
          read++;
          return;
        }
        refused++;
        if (belongs(changed)) expect(`${changed}: ${error.message}`).toMatch(ALLOWED);
        const { position } = error.details as { position?: number };
        if (position !== undefined) {
          expect(position).toBeGreaterThanOrEqual(1);
          expect(position).toBeLessThanOrEqual(changed.trim().length + 1);
          expect(error.message).toContain(`at character ${position} of`);
        }
      }),
      { numRuns: 3000 },
    );
    // Both happen often, so neither half of this test is empty
    expect(Math.min(read, refused)).toBeGreaterThan(300);
  });

  it("never become another number: what is read prints the digits that were given", () => {
    const numbers = fc.constantFrom("12", "1 200", "1,200", "0.5", "3.5e3", "2×10³", "-7", "−7", ".5");
    fc.assert(
      fc.property(numbers, fc.constantFrom("kg", "Wh/km", "1/km", "%"), mutations, (number, unit, changes) => {
        const text = mutated(`${number} ${unit}`, changes);
        const error = refusal(() => q<string>(text));
        if (error !== undefined) return;
        const { value, unit: itsUnit } = q<string>(text);
        // Without its unit the text is the number, in one of the ways to write it
        const body = text.trim().replace(/^Δ/, "");
        const written = itsUnit === "1" ? body : body.slice(0, body.length - itsUnit.replace("Δ", "").length);
        const plain = written
          .normalize("NFKC")
          .replace(/×10(−?\d)/, "e$1")
          .replaceAll("−", "-")
          .replace(/[ ,]/g, "");
        expect(`${text}: ${value}`).toBe(`${text}: ${Number(plain)}`);
      }),
      { numRuns: 1000 },
    );
  });
});

describe("time and memory", () => {
  const fill = (part: string): string =>
    part.repeat(Math.ceil(MAX_UNIT_LENGTH / part.length)).slice(0, MAX_UNIT_LENGTH);
  const hostile = [
    "(",
    "((m",
    "m ",
    "m·",
    "9 ",
    "1.",
    "m^9·",
    "(m)^9",
    "km⁹·",
    "0",
    "Δ",
    "°",
    "m/(",
    "x",
    "xm ",
    "_",
    "m\u0301",
  ];

  it.each(hostile)("is read or refused at once: '%s' again and again", (part) => {
    const start = performance.now();
    refusal(() => unitOf(fill(part)));
    refusal(() => q<string>(`5 ${fill(part)}`));
    refusal(() => q<string>(fill(part).padStart(120, "1 000")));
    // Some microseconds a character; a second is what a text with an exponent in its cost would exceed
    expect(performance.now() - start).toBeLessThan(1000);
  });

  it("is the same for a text of any length: it is refused by its length", () => {
    for (const part of ["m", "(", " m", "9", "1,000"]) {
      const long = part.repeat(1e6);
      expect(refusal(() => unitOf(long))?.message).toContain("at most 80 characters");
      expect(refusal(() => q<string>(`5 ${long}`))?.message).toContain("at most 120 characters");
    }
  });

  it("has room for so many texts and no more, and for none with the spaces around it", () => {
    for (let i = 1; i <= 3 * MOST_REMEMBERED; i++) {
      unitOf(`m/${i} s`);
      quantity<string>(1, "km/h").in(`m/(${i} s)` as string);
      quantity<string>(1, "km/h").times(quantity<string>(1, `s/${i}`));
    }
    const { units, worths } = builtIn;
    const memories = [...units.values()].flatMap(({ conversions, products }) => [conversions, products]);
    for (const memory of [units, worths, ...memories]) expect(memory.size).toBeLessThanOrEqual(MOST_REMEMBERED);
    expect(unitOf(`${" ".repeat(1e5)}kg\n`)).toBe(unitOf("kg"));
    for (const text of units.keys()) expect(text.length).toBeLessThanOrEqual(MAX_UNIT_LENGTH);
  });

  it("converts between the longest units, whose fractions have thousands of digits, and keeps π out of the text", () => {
    const from = ["inHg", "psi", "Btu", "hp", "kn", "mi", "lbf", "oz"];
    const to = ["mmHg", "atm", "J", "W", "mph", "in", "kgf", "lb"];
    const [one, other] = [from, to].map((symbols) => symbols.map((symbol) => `${symbol}^9`).join("·")) as [
      string,
      string,
    ];
    const wanted = from.reduce(
      (product, symbol, i) => product * quantity<string>(1, symbol).in<string>(to[i] ?? "") ** 9,
      1,
    );
    expect(quantity<string>(1, one).in<string>(other) / wanted).toBeCloseTo(1, 12);
    const small = quantity<string>(1, "π rad/180").times(quantity<string>(1, "s"));
    expect(small.unit).toBe("rad·s");
    expect(small.in<string>("°·s")).toBeCloseTo(1, 15);
  });

  it("remembers nothing of what it refused", () => {
    const before = builtIn.units.size;
    for (let i = 0; i < 50; i++) refusal(() => unitOf(`kg${i}x`));
    expect(builtIn.units.size).toBe(before);
  });
});
