import { describe, expect, it } from "vitest";
import * as units from "../src/index.js";
import { type Quantity, q, relation } from "../src/index.js";

/** Parts of a thing that could be changed, as paths. */
function changeable(thing: unknown, path: string, seen = new Set<unknown>()): string[] {
  if ((typeof thing !== "object" && typeof thing !== "function") || thing === null || seen.has(thing)) return [];
  seen.add(thing);
  const own = Object.isFrozen(thing) ? [] : [path];
  // A function's own `prototype` is its instances' business, and arrow functions have none.
  return [...own, ...Object.entries(thing).flatMap(([key, part]) => changeable(part, `${path}.${key}`, seen))];
}

const definition = {
  name: "double",
  inputs: { mass: { symbol: "m", unit: "kg", meaning: "mass", above: 0 } },
  result: { symbol: "d", unit: "kg" },
  expression: "2·m",
  source: { document: "arithmetic", status: "definition" },
  evaluate: ({ mass }: { readonly mass: number }) => 2 * mass,
} as const;
type Double = { readonly mass: Quantity<units.Mass> };

describe("nothing that is handed out can be changed", () => {
  it("not the data that is exported", () => {
    const data = Object.entries(units).filter(([, thing]) => typeof thing === "object");
    expect(data.map(([name]) => name)).toContain("unitSymbols");
    expect(data.flatMap(([name, thing]) => changeable(thing, name))).toEqual([]);
    expect(() => (units.unitSymbols as string[]).push("blub")).toThrow(TypeError);
  });

  it("not a relation, its inputs, its result or its source", () => {
    const double = relation<Double, Quantity<units.Mass>>(definition);
    const { of, explain, ...described } = double;
    expect(Object.isFrozen(double)).toBe(true);
    expect(changeable(described, "relation").filter((path) => path !== "relation")).toEqual([]);
    expect(() => Object.assign(double, { of: () => 7 })).toThrow(TypeError);
    expect(() => Object.assign(double.inputs.mass, { above: -9 })).toThrow(TypeError);
    expect([typeof of, typeof explain]).toEqual(["function", "function"]);
  });

  it("not a relation by way of the definition that was given", () => {
    const given = { ...definition, inputs: { mass: { ...definition.inputs.mass } }, source: { ...definition.source } };
    const double = relation<Double, Quantity<units.Mass>>(given);
    Object.assign(given.inputs.mass, { above: 1e9, symbol: "x" });
    Object.assign(given.source, { document: "rumour" });
    Object.assign(given, { evaluate: () => 7 });
    expect(double({ mass: q("3 kg") }).in("kg")).toBe(6);
    expect(double.inputs.mass.symbol).toBe("m");
    expect(double.explain({ mass: q("3 kg") }).source.document).toBe("arithmetic");
  });

  it("not a step, a converter, readers of units, a quantity", () => {
    const step = relation<Double, Quantity<units.Mass>>(definition).explain({ mass: q("3 kg") });
    expect(changeable(step, "step")).toEqual([]);
    expect(Object.isFrozen(units.converter("kg", "lb"))).toBe(true);
    expect(Object.isFrozen(units.unitsWith({ furlong: "660 ft" }))).toBe(true);
    expect(changeable(q("3 kg"), "quantity")).toEqual([]);
  });
});
