import { describe, expect, it } from "vitest";
import { type DimensionName, readings } from "../../src/dimension/table.js";
import { quantity, type UnitSymbol, unitSymbols } from "../../src/index.js";
import { gcd } from "../../src/unit/exact-product.js";
import { misspellings } from "../../src/unit/misspellings.js";
import { unitTable } from "../../src/unit/table.js";
import { unitOf } from "../../src/unit/unit.js";

const groups = Object.entries(unitTable) as [DimensionName, Record<string, string>][];
const entries = groups.flatMap(([name, units]) => Object.entries(units).map(([symbol, is]) => ({ name, symbol, is })));

/** The key that a name of the table of dimensions stands for. */
const keyNamed = (name: DimensionName): string | undefined => readings.find(([each]) => each === name)?.[1];

describe("unit table", () => {
  /** The group is declared for the type system, the exponents are computed from the definition: two roads to one dimension. */
  it.each(entries)("$symbol: its group has the dimension of its definition", ({ name, symbol }) => {
    expect(quantity<string>(1, symbol).dimension.key).toBe(keyNamed(name));
  });

  it("has one entry for each symbol, in the form that the grammar reads", () => {
    expect(new Set(unitSymbols).size).toBe(unitSymbols.length);
    expect(unitSymbols).toEqual(entries.map(({ symbol }) => symbol));
    for (const symbol of unitSymbols) expect(symbol.normalize("NFC")).toBe(symbol);
  });

  it("gives a zero point to temperature scales and to nothing else", () => {
    expect(unitSymbols.filter((symbol) => unitOf(symbol).zero !== 0n)).toEqual(["°C", "°F", "degC", "degF"]);
  });

  it("builds on five base units", () => {
    expect(entries.filter(({ is }) => is === "").map(({ symbol }) => symbol)).toEqual(
      ["m", "kg", "A", "s", "K"].sort(
        (a, b) => entries.findIndex((e) => e.symbol === a) - entries.findIndex((e) => e.symbol === b),
      ),
    );
  });

  it("counts no two units twice, except under names for a keyboard and for weather", () => {
    const byWorth = new Map<string, string[]>();
    for (const symbol of unitSymbols) {
      const { worth, dimension, zero } = unitOf(symbol);
      const common = gcd(worth.n, worth.d);
      const id = `${dimension.key} ${worth.n / common}/${worth.d / common} π${worth.terms.get("π") ?? 0} ${zero}${dimension.kind}`;
      byWorth.set(id, [...(byWorth.get(id) ?? []), symbol]);
    }
    expect([...byWorth.values()].filter((symbols) => symbols.length > 1)).toEqual([
      ["hPa", "mbar"],
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
  const pairs = Object.entries(misspellings).flatMap(([advice, words]) =>
    words.split(" ").map((word) => [word, advice]),
  );

  it("are no units themselves, and lead one way each", () => {
    const words = pairs.map(([word]) => word as UnitSymbol);
    expect(words.filter((word) => unitSymbols.includes(word))).toEqual([]);
    expect(new Set(words).size).toBe(words.length);
  });

  it.each(pairs)("'%s' leads to a unit: %s", (word = "", advice = "") => {
    const named = advice.split(" or ").map((part) => part.replace(/ \(.*\)$/, ""));
    for (const text of named) expect(() => quantity<string>(1, text)).not.toThrow();
    expect(() => quantity<string>(1, word)).toThrow(`did you mean ${advice}?`);
  });
});
