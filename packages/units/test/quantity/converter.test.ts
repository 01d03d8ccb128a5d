import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { sensibleNumbers } from "../../../../test/support/quantities.js";
import { converter, type QuantityError, quantity } from "../../src/index.js";

function codeOf(act: () => unknown): string {
  try {
    act();
  } catch (error) {
    return (error as QuantityError).code;
  }
  return "no error";
}

const pairs = [
  ["mph", "m/s"],
  ["°F", "°C"],
  ["°C", "K"],
  ["kWh/100 km", "Wh/mi"],
  ["rpm", "rad/s"],
  ["lb", "kg"],
] as const;

describe("converter", () => {
  it.each(pairs)("%s to %s: does what a quantity does", (from, to) => {
    const convert = converter<string, string>(from, to);
    fc.assert(
      fc.property(sensibleNumbers, (value) => {
        expect(convert(value)).toBe(quantity<string>(value, from).in<string>(to));
      }),
    );
  });

  it.each(pairs)("%s to %s: converts arrays as it converts numbers", (from, to) => {
    const convert = converter<string, string>(from, to);
    fc.assert(
      fc.property(fc.array(sensibleNumbers), (values) => {
        const wanted = values.map((value) => convert(value));
        expect([...convert.array(values)]).toEqual(wanted);
        const target = new Float64Array(values.length);
        expect(convert.array(Float64Array.from(values), target)).toBe(target);
        expect([...target]).toEqual(wanted);
      }),
    );
  });

  it("leaves the numbers given as they are, and converts in place when asked", () => {
    const given = [1, 2, 3];
    const convert = converter("km", "m");
    expect([...convert.array(given)]).toEqual([1000, 2000, 3000]);
    expect(given).toEqual([1, 2, 3]);
    expect(convert.array(given, given)).toBe(given);
    expect(given).toEqual([1000, 2000, 3000]);
  });

  const lists = fc.array(sensibleNumbers, { maxLength: 40 });

  it.each(pairs)("%s to %s: fills arrays of every kind, and itself, alike", (from, to) => {
    const convert = converter<string, string>(from, to);
    fc.assert(
      fc.property(lists, (values) => {
        const wanted = values.map((value) => convert(value));
        for (const given of [[...values], Float64Array.from(values)]) {
          for (const target of [values.map(() => 0), new Float64Array(values.length)]) {
            expect(convert.array(given, target)).toBe(target);
            expect([...target]).toEqual(wanted);
            expect([...given]).toEqual(values);
          }
          expect(convert.array(given, given)).toBe(given);
          expect([...given]).toEqual(wanted);
        }
        const rounded = convert.array(values, new Float32Array(values.length));
        expect([...rounded]).toEqual(wanted.map(Math.fround));
      }),
    );
  });

  it("converts into memory that it shares with the values, at any distance", () => {
    const convert = converter("°F", "°C");
    fc.assert(
      fc.property(
        fc.array(sensibleNumbers, { minLength: 1, maxLength: 20 }),
        fc.nat(20),
        fc.nat(20),
        (values, a, b) => {
          const memory = new ArrayBuffer(8 * 40);
          const given = new Float64Array(memory, 8 * a, values.length);
          given.set(values);
          const target = new Float64Array(memory, 8 * b, values.length);
          expect([...convert.array(given, target)]).toEqual(values.map((value) => convert(value)));
        },
      ),
    );
  });

  it("finds the one number among many that is none, or becomes too large, and says where", () => {
    const convert = converter("km", "mm");
    const wrong = fc.constantFrom(Number.NaN, Infinity, -Infinity, 1e305);
    fc.assert(
      fc.property(fc.nat(30), fc.nat(30), wrong, fc.boolean(), (before, after, value, typed) => {
        const list = [...Array<number>(before).fill(1), value, ...Array<number>(after).fill(2)];
        const given = typed ? Float64Array.from(list) : list;
        const act = () => convert.array(given, typed ? new Float64Array(list.length) : [...list]);
        expect(act).toThrow(`at index ${before} is ${value === 1e305 ? "too large" : "no finite number"}`);
        expect(codeOf(act)).toBe("NOT_FINITE");
        expect(codeOf(() => convert.array(given, given))).toBe("NOT_FINITE");
      }),
    );
  });

  it("changes nothing when the lengths differ", () => {
    const convert = converter("km", "m");
    for (const target of [[7, 7, 7], new Float64Array(3).fill(7), [7], new Float64Array(0)]) {
      const before = [...target];
      for (const given of [[1, 2], Float64Array.of(1, 2)]) {
        expect(codeOf(() => convert.array(given, target))).toBe("NUMBER_SYNTAX");
        expect([...target]).toEqual(before);
      }
    }
  });

  it("refuses what does not convert, and a target of another length", () => {
    const make = converter<string, string>;
    expect(codeOf(() => make("kg", "kWh"))).toBe("WRONG_DIMENSION");
    expect(codeOf(() => make("N", "Wh/km"))).toBe("WRONG_KIND");
    expect(codeOf(() => make("°C", "ΔK"))).toBe("WRONG_KIND");
    expect(codeOf(() => make("kgg", "kg"))).toBe("UNKNOWN_UNIT");
    expect(codeOf(() => converter("km", "m").array([1, 2], [0]))).toBe("NUMBER_SYNTAX");
  });

  it.each([undefined, null, 5])("refuses %j as a unit with a typed error", (thing) => {
    const make = converter as (from: unknown, to: unknown) => unknown;
    expect(codeOf(() => make(thing, "kg"))).toBe("UNIT_SYNTAX");
    expect(codeOf(() => make("kg", thing))).toBe("UNIT_SYNTAX");
  });
});
