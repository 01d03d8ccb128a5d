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
