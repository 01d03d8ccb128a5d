import { describe, expect, it } from "vitest";
import { type DimensionName, dimensions } from "../../src/dimension/table.js";
import { quantity, unitSymbols } from "../../src/index.js";
import { misspellings } from "../../src/unit/misspellings.js";
import { unitTable } from "../../src/unit/table.js";
import { unitOf } from "../../src/unit/unit.js";

const groups = Object.entries(unitTable) as [DimensionName, Record<string, string>][];
const entries = groups.flatMap(([name, units]) => Object.entries(units).map(([symbol, is]) => ({ name, symbol, is })));

describe("unit table", () => {
  /** The group is declared for the type system, the exponents are computed from the definition: two roads to one dimension. */
  it.each(entries)("$symbol: its group has the dimension of its definition", ({ name, symbol }) => {
    expect(quantity<string>(1, symbol).dimension.key).toBe(dimensions[name][0]);
  });

  it("has one entry for each symbol, in the form that the grammar reads", () => {
    expect(new Set(unitSymbols).size).toBe(unitSymbols.length);
    expect(unitSymbols).toEqual(entries.map(({ symbol }) => symbol));
    for (const symbol of unitSymbols) expect(symbol.normalize("NFC")).toBe(symbol);
  });

  it("gives a zero point to temperature scales and to nothing else", () => {
    expect(unitSymbols.filter((symbol) => unitOf(symbol).zero.n !== 0n)).toEqual(["°C", "°F", "degC", "degF"]);
  });

  it("builds on five base units", () => {
    expect(entries.filter(({ is }) => is === "").map(({ symbol }) => symbol)).toEqual(
      ["m", "kg", "A", "s", "K"].sort(
        (a, b) => entries.findIndex((e) => e.symbol === a) - entries.findIndex((e) => e.symbol === b),
      ),
    );
  });

  it("counts no two units twice, except under names for a keyboard", () => {
    const byWorth = new Map<string, string[]>();
    for (const symbol of unitSymbols) {
      const { factor, dimension, zero } = unitOf(symbol);
      const id = `${dimension.key} ${factor.n}/${factor.d} π${factor.pi} ${zero.n}${dimension.kind}`;
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
    expect(Object.keys(misspellings).filter((word) => (unitSymbols as readonly string[]).includes(word))).toEqual([]);
  });

  it.each(Object.entries(misspellings))("'%s' leads to a unit: %s", (word, advice) => {
    const named = advice.split(" or ").map((part) => part.replace(/ \(.*\)$/, ""));
    for (const text of named) expect(() => quantity<string>(1, text)).not.toThrow();
    expect(() => quantity<string>(1, word)).toThrow(advice);
  });
});
