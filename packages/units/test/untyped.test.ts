import { describe, expect, it } from "vitest";
import * as units from "../src/index.js";
import { q, type TarewattError, unitsWith } from "../src/index.js";

/** What programs without types do; each mistake gets an error with a code and a message that says what to do. */
type Untyped = (...given: unknown[]) => unknown;
const untyped = units as unknown as Readonly<Record<string, Untyped>>;
const call = (name: string, ...given: unknown[]): unknown => untyped[name]?.(...given);

function errorOf(act: () => unknown): TarewattError {
  try {
    act();
  } catch (error) {
    return error as TarewattError;
  }
  throw new Error("nothing was thrown");
}

const bare = Object.create(null) as object;
const source = { document: "arithmetic", status: "definition" };
const operand = { name: "mass", symbol: "m", meaning: "mass", value: 2, unit: "kg", printed: "2" };
const mass = q("5 kg") as unknown as Readonly<Record<string, Untyped>>;
const relationOf = (changes: object): Untyped => {
  const whole = {
    ...{ name: "double", inputs: { mass: { symbol: "m", unit: "kg", meaning: "mass" } }, expression: "2·m", source },
    ...{ result: { symbol: "d", unit: "kg" }, evaluate: ({ mass }: { mass: number }) => 2 * mass, ...changes },
  };
  return () => call("relation", whole);
};

describe("programs without types are told", () => {
  it.each<[string, () => unknown, string, string]>([
    ["readNumber without a rule", () => call("readNumber", "mass", q("5 kg")), "NOT_AN_OBJECT", "the rule of mass"],
    [
      "a bound that is no number",
      () => call("readNumber", "x", 1, { unit: "1", above: "0" }),
      "NOT_A_NUMBER",
      "bounds",
    ],
    [
      "a name that is no text",
      () => call("readNumber", Symbol("x"), "5", { unit: "kg" }),
      "NOT_A_QUANTITY",
      "a symbol",
    ],
    ["readOptions without rules", () => call("readOptions", "f", {}), "NOT_AN_OBJECT", "the rules of f"],
    ["readOptions with a bad rule", () => call("readOptions", "f", {}, { mass: null }), "NOT_AN_OBJECT", "mass"],
    ["others that are no list", () => call("readOptions", "f", {}, {}, "name"), "WRONG_CHOICE", "an array"],
    ["a relation of nothing", () => call("relation"), "NOT_AN_OBJECT", "definition of a relation"],
    ["a relation without inputs", relationOf({ inputs: undefined }), "NOT_AN_OBJECT", "the inputs of double"],
    ["a relation with a bad input", relationOf({ inputs: { mass: 5 } }), "NOT_AN_OBJECT", "the input mass of double"],
    ["a relation without code", relationOf({ evaluate: 7 }), "WRONG_CHOICE", "evaluate of double must be a function"],
    ["a relation without expression", relationOf({ expression: "" }), "WRONG_CHOICE", "got an empty one"],
    ["a relation of unknown status", relationOf({ source: { ...source, status: "rumour" } }), "WRONG_CHOICE", "rumour"],
    ["nearest without a word", () => call("nearest", undefined, []), "WRONG_CHOICE", "the word must be a text"],
    ["nearest without a list", () => call("nearest", "kg", 5), "WRONG_CHOICE", "the known words"],
    ["nearest with other things", () => call("nearest", "kg", [Symbol("x")]), "WRONG_CHOICE", "got a symbol"],
    ["sourceLine of nothing", () => call("sourceLine"), "NOT_AN_OBJECT", "source must be an object"],
    ["sourceLine without document", () => call("sourceLine", { status: "seen" }), "WRONG_CHOICE", "source.document"],
    ["stepLine of nothing", () => call("stepLine", null), "NOT_AN_OBJECT", "the step must be an object"],
    [
      "stepLine without result",
      () => call("stepLine", { expression: "m", operands: [] }),
      "NOT_AN_OBJECT",
      "the result",
    ],
    ["substitute without operands", () => call("substitute", "m"), "WRONG_CHOICE", "the operands must be an array"],
    [
      "an operand without a symbol",
      () => call("splitExpression", "m", [{ ...operand, symbol: "" }]),
      "WRONG_CHOICE",
      "symbol",
    ],
    ["format of null", () => mass.format?.(null), "NOT_AN_OBJECT", "the options of format"],
    ["format with digits in words", () => mass.format?.({ digits: "three" }), "NUMBER_SYNTAX", "the text 'three'"],
    ["formatNumber of a symbol", () => call("formatNumber", Symbol("x"), 3), "NOT_FINITE", "got a symbol"],
    ["a symbol as a unit", () => mass.in?.(Symbol("x")), "UNIT_SYNTAX", "got a symbol"],
    ["an object as a unit", () => mass.to?.(bare), "UNIT_SYNTAX", "got an object"],
    ["a bare object as a kind", () => mass.as?.(bare), "WRONG_KIND", "an object"],
    ["a bigint as a factor", () => mass.times?.(5n), "NOT_A_QUANTITY", "got a bigint"],
    ["a symbol to be parsed", () => call("parseQuantity", Symbol("x"), "kg"), "NUMBER_SYNTAX", "got a symbol"],
    ["a bare object to be like", () => call("parseQuantity", "5 kg", bare), "UNIT_SYNTAX", "got an object"],
    ["a symbol to convert from", () => call("converter", Symbol("x"), "kg"), "UNIT_SYNTAX", "got a symbol"],
    ["own units of nothing", () => call("unitsWith"), "NOT_AN_OBJECT", "the units of your own"],
    ["an own unit in numbers", () => call("unitsWith", { furlong: 660 }), "UNIT_SYNTAX", "the unit 'furlong'"],
  ])("%s", (_, act, code, words) => {
    const error = errorOf(act);
    expect(error).toMatchObject({ code });
    expect(error.message).toContain(words);
  });

  it("the values of a converter that are no numbers", () => {
    const convert = units.converter("kg", "lb");
    const one = convert as unknown as Untyped;
    for (const wrong of [undefined, "5", 5n, Symbol("x"), Number.NaN, Number.POSITIVE_INFINITY, null]) {
      expect(errorOf(() => one(wrong))).toMatchObject({ code: "NOT_FINITE" });
      expect(errorOf(() => convert.array([1, wrong as number]))).toMatchObject({ code: "NOT_FINITE" });
    }
    expect(errorOf(() => units.converter("km", "mm")(1e308)).message).toContain("too large");
    for (const wrong of [undefined, null, 5, "12", {}, { length: -1 }, { length: 1e300 }, { length: 0.5 }]) {
      expect(errorOf(() => convert.array(wrong as never))).toMatchObject({ code: "NUMBER_SYNTAX" });
    }
    expect(errorOf(() => convert.array([1], 5 as never))).toMatchObject({ code: "NUMBER_SYNTAX" });
  });

  it("the arguments of readers of own units", () => {
    const mine = unitsWith({ furlong: "660 ft" }) as unknown as Readonly<Record<string, Untyped>>;
    expect(errorOf(() => mine.in?.(5, "furlong"))).toMatchObject({ code: "NOT_A_QUANTITY" });
    expect(errorOf(() => mine.quantity?.("5", "furlong"))).toMatchObject({ code: "NOT_FINITE" });
    expect(errorOf(() => mine.q?.(Symbol("x")))).toMatchObject({ code: "NUMBER_SYNTAX" });
  });
});

describe("options", () => {
  it("take quantities in units of one's own", () => {
    const mine = unitsWith({ furlong: "660 ft" });
    expect(units.readNumber("distance", mine.q("8 furlong"), { unit: "mi" })).toBe(1);
  });

  it("may be undefined where they may be left out", () => {
    expect(q("5 kg").format({ digits: undefined, unit: undefined })).toBe("5.00 kg");
    expect(units.readNumber("x", 5, { unit: "1", atLeast: undefined, above: undefined, atMost: undefined })).toBe(5);
  });
});
