import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { numbersIn } from "../../../../test/support/quantities.js";
import { InputError, type NumberRule, q, quantity, readNumber, readOptions, TarewattError } from "../../src/index.js";

function errorOf(act: () => unknown): InputError {
  try {
    act();
  } catch (error) {
    return error as InputError;
  }
  throw new Error("expected an error, and there was none");
}

const mass = { unit: "kg", above: 0 } as const;
const fraction = { unit: "1", atLeast: 0, atMost: 1 } as const;

describe("readOptions", () => {
  const rules = { mass, dragCoefficient: { unit: "1", atLeast: 0 }, speed: { unit: "m/s", optional: true } } as const;
  const read = (given: unknown, others?: string[]) => readOptions("drag", given as object, rules, others);

  it("gives plain numbers in the units asked for, and undefined for what is left out", () => {
    expect(read({ mass: q("2 t"), dragCoefficient: 0.29 })).toEqual({
      mass: 2000,
      dragCoefficient: 0.29,
      speed: undefined,
    });
    expect(read({ mass: q("1 lb"), dragCoefficient: q("29 %"), speed: q("36 km/h") })).toEqual({
      mass: 0.45359237,
      dragCoefficient: 0.29,
      speed: 10,
    });
  });

  it.each([null, undefined, 5, "mass", [], () => 5])("refuses %j in place of options", (given) => {
    const error = errorOf(() => read(given));
    expect(error).toMatchObject({ name: "InputError", code: "NOT_AN_OBJECT" });
    expect(error.message).toContain("drag takes an object of named options");
  });

  it("refuses an option that it does not know, and names the nearest", () => {
    const error = errorOf(() => read({ mass: q("2 t"), dragCoeficient: 0.29 }));
    expect(error).toMatchObject({ code: "UNKNOWN_OPTION", details: { option: "dragCoeficient" } });
    expect(error.message).toContain("did you mean 'dragCoefficient'?");
  });

  it("lists what it takes when nothing is near", () => {
    const error = errorOf(() => read({ mass: q("2 t"), dragCoefficient: 0.29, colour: "red" }, ["cycle"]));
    expect(error).toMatchObject({ code: "UNKNOWN_OPTION" });
    expect(error.message).toContain("it takes mass, dragCoefficient, speed, cycle");
  });

  it.each(["__proto__", "constructor", "toString"])("does not take %s for an option", (name) => {
    const given = JSON.parse(`{"dragCoefficient": 0.29, "${name}": 5}`);
    expect(errorOf(() => read({ ...given, mass: q("2 t") })).code).toBe("UNKNOWN_OPTION");
  });

  it("refuses to go on without an option, and says in what it may be given", () => {
    const error = errorOf(() => read({ dragCoefficient: 0.29 }));
    expect(error).toMatchObject({ code: "MISSING_OPTION", details: { option: "mass" } });
    expect(error.message).toBe("drag needs the option 'mass', a quantity in kg for example");
    expect(errorOf(() => read({ mass: undefined, dragCoefficient: 0.29 })).code).toBe("MISSING_OPTION");
    expect(errorOf(() => read({ mass: q("2 t") })).message).toBe("drag needs the option 'dragCoefficient'");
  });

  it("knows options that are no numbers, needed or not", () => {
    const good = { mass: q("2 t"), dragCoefficient: 0.29 };
    expect(() => read({ ...good, cycle: {} }, ["cycle", "notes?"])).not.toThrow();
    expect(() => read({ ...good, cycle: {}, notes: "x" }, ["cycle", "notes?"])).not.toThrow();
    expect(errorOf(() => read(good, ["cycle"]))).toMatchObject({
      code: "MISSING_OPTION",
      details: { option: "cycle" },
    });
  });

  it("does not change what it was given", () => {
    const given = Object.freeze({ mass: q("2 t"), dragCoefficient: 0.29 });
    expect(() => read(given)).not.toThrow();
  });
});

describe("readNumber", () => {
  it("reads what a quantity holds, in the unit of the rule", () => {
    fc.assert(
      fc.property(numbersIn({ min: 0.1, max: 1e4 }), fc.constantFrom("lb", "kg", "t"), (value, unit) => {
        const given = quantity<string>(value, unit);
        expect(readNumber("mass", given, mass)).toBe(given.in<string>("kg"));
      }),
    );
  });

  it("wants a unit, and shows how to write it", () => {
    const error = errorOf(() => readNumber("mass", 5, mass));
    expect(error).toMatchObject({ name: "InputError", code: "NOT_A_QUANTITY", details: { name: "mass" } });
    expect(error.message).toContain("mass needs a unit: got the bare number 5");
    expect(error.message).toContain('q("5 kg")');
    expect(error.message).toContain("another unit of mass");
  });

  it.each(["5 kg", null, {}, [], true, Symbol("x"), { value: 5, unit: "kg" }])("refuses %s", (thing) => {
    expect(errorOf(() => readNumber("mass", thing, mass)).code).toBe("NOT_A_QUANTITY");
    expect(errorOf(() => readNumber("share", thing, fraction)).code).toBe("NOT_A_QUANTITY");
  });

  it.each([Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY])("refuses the number %d", (number) => {
    expect(errorOf(() => readNumber("share", number, fraction)).code).toBe("NOT_A_NUMBER");
    expect(errorOf(() => readNumber("mass", number, mass)).code).toBe("NOT_A_NUMBER");
  });

  it("refuses a quantity that is too large in the unit of the rule", () => {
    expect(errorOf(() => readNumber("distance", q("1e308 km"), { unit: "m" })).code).toMatch(/NOT_A_NUMBER|NOT_FINITE/);
  });

  it("refuses another dimension and another kind, and names both", () => {
    const error = errorOf(() => readNumber("mass", q("5 kWh"), mass));
    expect(error).toMatchObject({ code: "WRONG_DIMENSION", details: { given: "energy", expected: "mass" } });
    expect(error.message).toContain("mass must be mass, for example in kg: got 5 kWh, energy");
    expect(errorOf(() => readNumber("force", q("5 Wh/km"), { unit: "N" })).code).toBe("WRONG_DIMENSION");
    expect(errorOf(() => readNumber("rise", q("5 °C"), { unit: "ΔK" })).code).toBe("WRONG_DIMENSION");
    expect(errorOf(() => readNumber("share", q("5 °"), fraction)).code).toBe("WRONG_DIMENSION");
  });

  it.each<[string, unknown, NumberRule, string, string]>([
    ["area", q("-0.7 m²"), { unit: "m²", atLeast: 0 }, "NEGATIVE", "area must not be negative: got −0.7 m²"],
    ["mass", q("-5 kg"), mass, "NEGATIVE", "mass must be greater than zero: got −5 kg"],
    ["mass", q("0 kg"), mass, "OUT_OF_RANGE", "mass must be greater than zero: got 0 kg"],
    ["share", -0.1, fraction, "NEGATIVE", "share must not be negative: got -0.1"],
    ["share", 74, fraction, "NOT_A_FRACTION", 'for 74 % write 0.74 or q("74 %")'],
    ["share", 12.5, fraction, "NOT_A_FRACTION", 'for 12.5 % write 0.125 or q("12.5 %")'],
    ["share", 250, fraction, "NOT_A_FRACTION", "share must be a fraction of at most 1: got 250"],
    ["share", q("150 %"), fraction, "NOT_A_FRACTION", "share must be a fraction of at most 1: got 150 %"],
    ["speed", q("400 km/h"), { unit: "km/h", atLeast: 10, atMost: 300 }, "OUT_OF_RANGE", "at most 300 km/h: got 400"],
    ["speed", q("4 km/h"), { unit: "km/h", atLeast: 10 }, "OUT_OF_RANGE", "speed must be at least 10 km/h"],
    ["ratio", 1, { unit: "1", above: 1 }, "OUT_OF_RANGE", "ratio must be more than 1: got 1"],
    ["air", q("-300 °C"), { unit: "K", above: 0 }, "NEGATIVE", "air must be greater than zero: got −300 °C"],
  ])("%s: %s is refused", (name, value, rule, code, message) => {
    const error = errorOf(() => readNumber(name, value, rule));
    expect(error).toMatchObject({ name: "InputError", code, details: { name, rule } });
    expect(error.message).toContain(message);
  });

  it("gives no advice on per cent to somebody who wrote per cent", () => {
    expect(errorOf(() => readNumber("share", q("150 %"), fraction)).message).not.toContain("1.5 %");
  });

  it("takes the ends of a range, not beyond `above`", () => {
    expect(readNumber("share", 0, fraction)).toBe(0);
    expect(readNumber("share", 1, fraction)).toBe(1);
    expect(readNumber("share", q("100 %"), fraction)).toBe(1);
    expect(readNumber("speed", q("300 km/h"), { unit: "km/h", atMost: 300 })).toBe(300);
  });

  it("agrees with its rule for any number", () => {
    const bound = fc.option(numbersIn({ min: -10, max: 10 }), { nil: undefined });
    fc.assert(
      fc.property(numbersIn({ min: -20, max: 20 }), bound, bound, bound, (value, atLeast, above, atMost) => {
        const rule: NumberRule = {
          unit: "1",
          ...(atLeast === undefined ? {} : { atLeast }),
          ...(above === undefined ? {} : { above }),
          ...(atMost === undefined ? {} : { atMost }),
        };
        const allowed = value >= (atLeast ?? -99) && value > (above ?? -99) && value <= (atMost ?? 99);
        if (allowed) expect(readNumber("x", value, rule)).toBe(value);
        else expect(errorOf(() => readNumber("x", value, rule))).toBeInstanceOf(InputError);
      }),
    );
  });
});

describe("errors", () => {
  it("are errors of this library, with a code, a name and the parts of the message as data", () => {
    const error = errorOf(() => readNumber("mass", 5, mass));
    expect(error).toBeInstanceOf(TarewattError);
    expect(error).toBeInstanceOf(Error);
    expect(error.stack).toContain("InputError");
  });
});
