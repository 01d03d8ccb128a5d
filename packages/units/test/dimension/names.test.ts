import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { quotientKinds, statedKinds } from "../../src/dimension/kind.js";
import { labelOf } from "../../src/dimension/names.js";
import { q, quantity, unitSymbols } from "../../src/index.js";
import { unitTable } from "../../src/unit/table.js";

const source = readFileSync(new URL("../../src/dimension/names.ts", import.meta.url), "utf8");
const kinds = readFileSync(new URL("../../src/dimension/kind.ts", import.meta.url), "utf8");

/** The rules that find a kind in a unit's text: they are private, so they are read from the source. */
const rulesForTexts = [...kinds.matchAll(/^ {2}"([^"]+)": \{ symbols: \[([^\]]+)\], kind: "([^"]+)" \}/gm)].map(
  ([, key = "", symbols = "", kind = ""]) => ({ key, kind, symbols: symbols.replaceAll('"', "").split(", ") }),
);

const label = (id: string): string => labelOf(...(id.split("|") as [string, string]));

/** `Energy` -> `m2 kg1 s-2 A0 K0|`, from the interfaces. */
const interfaces = new Map(
  [...source.matchAll(/interface (\w+) extends Dimension<"([^"]+)", "([^"]*)">/g)].map(([, name, key, kind]) => [
    name,
    `${key}|${kind}`,
  ]),
);

describe("named dimensions", () => {
  it("are the same in the interfaces, in the list by key, and in the labels", () => {
    const listed = [...source.matchAll(/^ {2}"([^"]+\|[^"]*)": (\w+);$/gm)].map(([, id, name]) => [name, id]);
    expect(listed.length).toBeGreaterThan(30);
    expect(new Map(listed as [string, string][])).toEqual(interfaces);
    const labelled = [...source.matchAll(/^ {2}"([^"]+\|[^"]*)": "[^"]+",$/gm)].map(([, id]) => id);
    expect(labelled).toEqual([...interfaces.values()]);
  });

  it("have one label each, made of the name, so that a message cannot mean two things", () => {
    const labels = [...interfaces.values()].map(label);
    expect(new Set(labels).size).toBe(labels.length);
    const words = [...interfaces.keys()].map((name) => name?.replaceAll(/\B([A-Z])/g, " $1").toLowerCase());
    expect(labels).toEqual(words);
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
  it("are stated by texts, by quotients and by name, and the three agree on what exists", () => {
    const named = new Set(interfaces.values());
    const stated = Object.entries(statedKinds).flatMap(([key, names]) =>
      Object.values(names).map((k) => `${key}|${k}`),
    );
    expect(stated.filter((id) => !named.has(id))).toEqual([]);
    const inTexts = rulesForTexts.map(({ key, kind }) => `${key}|${kind}`);
    expect(inTexts).toHaveLength(7);
    expect(inTexts.filter((id) => !stated.includes(id))).toEqual([]);
    const ofQuotients = Object.values(quotientKinds);
    expect(ofQuotients.filter((kind) => !stated.some((id) => id.endsWith(`|${kind}`)))).toEqual([]);
  });

  it("have as their name under `as` what their label says", () => {
    for (const [key, names] of Object.entries(statedKinds)) {
      for (const [name, kind] of Object.entries(names)) expect(labelOf(key, kind)).toBe(name);
    }
  });

  it("are recognised by symbols that are units of the table", () => {
    const symbols = rulesForTexts.flatMap((rule) => rule.symbols);
    expect(symbols.length).toBeGreaterThan(20);
    expect(symbols.filter((symbol) => !Object.hasOwn(unitTable, symbol))).toEqual([]);
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
