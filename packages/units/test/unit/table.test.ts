import { describe, expect, it } from "vitest";
import { keyOf } from "../../src/dimension/key.js";
import { quantity, unitSymbols } from "../../src/index.js";
import { misspellings, type UnitDefinition, unitTable } from "../../src/unit/table.js";
import { unitOf } from "../../src/unit/unit.js";

describe("unit table", () => {
  /** The key is declared for the type system, the exponents are computed from the definition: two roads to one dimension. */
  it.each(unitSymbols)("%s: the declared dimension is that of its definition", (symbol) => {
    expect(quantity(1, symbol).dimension.key).toBe(unitTable[symbol].key);
    expect(keyOf(unitOf(symbol).exponents)).toBe(unitTable[symbol].key);
  });

  it("has one entry for each symbol, in the form that the grammar reads", () => {
    expect(new Set(unitSymbols).size).toBe(unitSymbols.length);
    expect(unitSymbols).toEqual(Object.keys(unitTable));
    for (const symbol of unitSymbols) expect(symbol.normalize("NFC")).toBe(symbol);
  });

  it("gives a zero point to temperature scales and to nothing else", () => {
    const scales = unitSymbols.filter((symbol) => (unitTable[symbol] as UnitDefinition).zero !== undefined);
    expect(scales).toEqual(["°C", "°F", "degC", "degF"]);
  });

  it("builds on five base units", () => {
    expect(unitSymbols.filter((symbol) => unitTable[symbol].is === "")).toEqual(["m", "kg", "s", "A", "K"]);
  });

  it("counts no two units twice, except under names for a keyboard", () => {
    const byWorth = new Map<string, string[]>();
    for (const symbol of unitSymbols) {
      const { n, d, pi } = unitOf(symbol).factor;
      const id = `${unitTable[symbol].key} ${n}/${d} π${pi} ${unitOf(symbol).zero?.n ?? ""}${unitOf(symbol).kind}`;
      byWorth.set(id, [...(byWorth.get(id) ?? []), symbol]);
    }
    expect([...byWorth.values()].filter((symbols) => symbols.length > 1)).toEqual([
      ["Ω", "ohm"],
      ["mΩ", "mohm"],
      ["°C", "degC"],
      ["°F", "degF"],
      ["ΔK", "Δ°C"],
      ["°", "deg"],
    ]);
  });
});

describe("misspellings", () => {
  it("are no units themselves", () => {
    expect(Object.keys(misspellings).filter((word) => Object.hasOwn(unitTable, word))).toEqual([]);
  });

  it.each(Object.entries(misspellings))("'%s' leads to a unit: %s", (word, advice) => {
    const named = advice.split(" or ").map((part) => part.replace(/ \(.*\)$/, ""));
    for (const text of named) expect(() => quantity<string>(1, text)).not.toThrow();
    expect(() => quantity<string>(1, word)).toThrow(advice);
  });
});
