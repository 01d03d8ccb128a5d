import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { quotients } from "../../src/dimension/dimension.js";
import { keyOf } from "../../src/dimension/key.js";
import { dimensions, labelOf, readingsOf } from "../../src/dimension/table.js";
import { q, quantity, unitSymbols } from "../../src/index.js";

const source = readFileSync(new URL("../../src/dimension/names.ts", import.meta.url), "utf8");
/** Name, key and symbols of each row, read here once more in another way. */
const entries = Object.entries(dimensions).map(([name, row]): [string, readonly [string, (readonly string[])?]] => {
  const [exponents = "", ...symbols] = row.split(" ");
  const key = keyOf([...exponents.matchAll(/-?\d/g)].map(([power]) => Number(power)));
  return [name, symbols.length === 0 ? [key] : [key, symbols]];
});
const kindOf = (name: string, symbols: readonly string[] | undefined): string => (symbols === undefined ? "" : name);

/** `Energy` -> `m2 kg1 s-2 A0 K0|`, from the interfaces. */
const interfaces = new Map(
  [...source.matchAll(/interface (\w+) extends Dimension<"([^"]+)", "([^"]*)">/g)].map(([, name, key, kind]) => [
    name,
    `${key}|${kind}`,
  ]),
);

describe("named dimensions", () => {
  it("are the same in the interfaces, in the list by key, and in the table", () => {
    const listed = [...source.matchAll(/^ {2}"([^"]+\|[^"]*)": (\w+);$/gm)].map(([, id, name]) => [name, id]);
    expect(listed.length).toBeGreaterThan(30);
    expect(new Map(listed as [string, string][])).toEqual(interfaces);
    const words = [...interfaces].map(([name, id]) => [name?.replaceAll(/\B([A-Z])/g, " $1").toLowerCase(), id]);
    const tabled = entries.map(([name, [key, symbols]]) => [name, `${key}|${kindOf(name, symbols)}`]);
    expect(new Map(tabled as [string, string][])).toEqual(new Map(words as [string, string][]));
  });

  it("have one label each, so that a message cannot mean two things", () => {
    for (const [name, [key, symbols]] of entries) expect(labelOf({ key, kind: kindOf(name, symbols) })).toBe(name);
    expect(labelOf({ key: "m9 kg0 s0 A0 K0", kind: "" })).toBe("the dimension m9 kg0 s0 A0 K0");
  });

  it("say their SI unit in their description, and it is of that dimension", () => {
    const described = [...source.matchAll(/SI unit (\S+)\. \*\/\nexport interface (\w+)/g)];
    expect(described).toHaveLength(interfaces.size);
    for (const [, unit, name] of described) {
      const { key, kind } = quantity<string>(1, unit ?? "").dimension;
      expect(`${name} ${key}|${kind}`).toBe(`${name} ${interfaces.get(name ?? "")}`);
    }
  });
});

describe("kinds", () => {
  const special = entries.filter(([, [, symbols]]) => symbols !== undefined);

  it("share their dimension with one plain reading, or stand alone", () => {
    expect(special.length).toBe(8);
    for (const [, [key]] of special) {
      expect(
        entries.filter(([, [itsKey, symbols]]) => itsKey === key && symbols === undefined).length,
      ).toBeLessThanOrEqual(1);
      expect(special.filter(([, [itsKey]]) => itsKey === key)).toHaveLength(1);
    }
  });

  it("are stated by name only for their own dimension", () => {
    const stated = (name: string): string => q<string>("5 J").as(name as "torque").dimension.kind;
    expect(stated("torque")).toBe("torque");
    expect(stated("energy")).toBe("");
    for (const name of ["force", "constructor"]) expect(() => stated(name)).toThrow("it can be energy or torque");
    expect(readingsOf("m1 kg1 s-2 A0 K0").map(([name]) => name)).toEqual(["force", "energy per distance"]);
  });

  it("are what the quotients name", () => {
    for (const [sides, kind] of Object.entries(quotients)) {
      expect(special.map(([name]) => name)).toContain(kind);
      for (const side of sides.split("/")) expect(Object.keys(dimensions)).toContain(side);
    }
  });

  it("are recognised by symbols that are units of the table", () => {
    const symbols = special.flatMap(([, [, texts]]) => texts ?? []);
    expect(symbols.length).toBeGreaterThan(20);
    expect(symbols.filter((symbol) => !(unitSymbols as readonly string[]).includes(symbol))).toEqual([]);
  });

  /** A kind is found by looking for "J" or "W" in a text; a unit that merely contains the letter must not set it off. */
  it("are not set off by another unit that contains the letters", () => {
    const plain: Record<string, string> = { "m-1 kg1 s-2 A0 K0": "", "m1 kg1 s-2 A0 K0": "", "m2 kg1 s-2 A0 K0": "" };
    for (const symbol of unitSymbols) {
      const { key, kind } = quantity(1, symbol).dimension;
      if (Object.hasOwn(plain, key)) expect(`${symbol}: ${kind}`).toBe(`${symbol}: `);
    }
    for (const text of ["Pa·m²", "hPa·m²", "MPa·mm²", "psi·in²", "kg·m/s²", "lb·ft/s²"]) {
      expect(`${text}: ${quantity<string>(1, text).dimension.kind}`).toBe(`${text}: `);
    }
  });

  it.each([
    ["Wh/km", "energy per distance"],
    ["kJ/km", "energy per distance"],
    ["hp·h/mi", "energy per distance"],
    ["V·Ah/km", "energy per distance"],
    ["N", ""],
    ["kgf", ""],
    ["N·m", "torque"],
    ["lbf·ft", "torque"],
    ["kN·mm", "torque"],
    ["J", ""],
    ["W·h", ""],
    ["V·A·s", ""],
    ["Wh/L", "energy density"],
    ["Pa", ""],
    ["kgf/cm²", ""],
    ["Wh/kg", "specific energy"],
    ["m²/s²", ""],
    ["km²/h²", ""],
    ["rad", "angle"],
    ["%", ""],
    ["m/m", ""],
    ["rpm", "angular velocity"],
    ["rad/s", "angular velocity"],
    ["°/s", "angular velocity"],
    ["1/s", ""],
    ["Hz", ""],
    ["°C", "temperature"],
    ["ΔK", ""],
    ["W/K", ""],
    ["1/K", ""],
  ])("%s states the kind '%s'", (text, kind) => {
    expect(quantity<string>(1, text).dimension.kind).toBe(kind);
  });

  it("come from quotients only where the trade divides so", () => {
    expect(q("150 Wh").per(q("1 km")).dimension.kind).toBe("energy per distance");
    expect(q("98 kWh").per(q("500 kg")).dimension.kind).toBe("specific energy");
    expect(q("98 kWh").per(q("400 L")).dimension.kind).toBe("energy density");
    expect(q("1 rad").per(q("1 s")).dimension.kind).toBe("angular velocity");
    // A torque is no energy, so its quotient is not one of these.
    expect(q("10 N·m").per(q("2 m")).dimension.kind).toBe("");
    expect(q("10 N").per(q("2 m²")).dimension.kind).toBe("");
  });
});
