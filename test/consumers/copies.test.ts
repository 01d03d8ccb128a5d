import { existsSync } from "node:fs";
import { createRequire } from "node:module";
import { fileURLToPath } from "node:url";
import * as source from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { numbersIn } from "../support/quantities.js";

/**
 * Two copies of the package in one program: an ES module beside a CommonJS module, or two versions behind two dependencies.
 * Their classes differ; quantities must pass between them all the same. Here the copies are the built files and the source.
 */
type Units = typeof source;

const dist = new URL("../../packages/units/dist/", import.meta.url);
const built = existsSync(new URL("index.js", dist)) && existsSync(new URL("index.cjs", dist));

async function copies(): Promise<Record<"source" | "module" | "commonjs", Units>> {
  const module: Units = await import(/* @vite-ignore */ new URL("index.js", dist).href);
  const commonjs: Units = createRequire(import.meta.url)(fileURLToPath(new URL("index.cjs", dist)));
  return { source, module, commonjs };
}

const pairs = [
  ["module", "commonjs"],
  ["commonjs", "module"],
  ["source", "commonjs"],
  ["module", "source"],
] as const;

const reason = built ? "" : " (skipped: packages/units is not built, run the build first)";

describe.skipIf(!built)(`two copies of the package${reason}`, () => {
  it("are copies indeed: their classes and functions differ", async () => {
    const { module, commonjs } = await copies();
    expect(module.q).not.toBe(source.q);
    expect(module.q).not.toBe(commonjs.q);
    expect(module.QuantityError).not.toBe(commonjs.QuantityError);
  });

  it.each(pairs)("%s takes the quantities of %s in every operation", async (mine, other) => {
    const { [mine]: a, [other]: b } = await copies();
    fc.assert(
      fc.property(numbersIn({ min: 1, max: 1e6 }), numbersIn({ min: 1, max: 1e6 }), (x, y) => {
        const mass = a.quantity(x, "kg");
        const pounds = b.quantity(y, "lb");
        const same = a.quantity(y, "lb");
        expect(b.isQuantity(mass)).toBe(true);
        expect(mass.plus(pounds)).toEqual(mass.plus(same));
        expect(mass.minus(pounds)).toEqual(mass.minus(same));
        expect(mass.times(pounds)).toEqual(mass.times(same));
        expect(mass.per(pounds)).toEqual(mass.per(same));
        expect(mass.ratioTo(pounds)).toBe(mass.ratioTo(same));
        expect(mass.compareTo(pounds)).toBe(mass.compareTo(same));
        expect(a.readNumber("mass", pounds, { unit: "kg" })).toBe(same.in("kg"));
        expect(a.quantityFromJSON(pounds.toJSON(), "kg")).toEqual(same);
        // A product made of both goes on in either.
        expect(b.quantity(1, "m").times(mass.times(pounds)).in("kg²·m")).toBeCloseTo(mass.times(same).in("kg²"), 6);
      }),
      { numRuns: 30 },
    );
  });

  it.each(pairs)("%s keeps the kinds and the temperature rules of %s", async (mine, other) => {
    const { [mine]: a, [other]: b } = await copies();
    const codeOf = (act: () => unknown): unknown => {
      try {
        return act();
      } catch (error) {
        return (error as source.TarewattError).code;
      }
    };
    const energy = a.q("5 J") as unknown as { plus(other: unknown): unknown };
    expect(codeOf(() => energy.plus(b.q("5 N·m")))).toBe("WRONG_KIND");
    expect(codeOf(() => energy.plus(b.q("5 kg")))).toBe("WRONG_DIMENSION");
    expect(a.q("98 kWh").per(b.q("500 kg")).dimension.kind).toBe("specific energy");
    expect(a.q("20 °C").minus(b.q("10 °C")).in("ΔK")).toBe(10);
    expect(a.q("20 °C").plus(b.q("Δ10 K")).in("°C")).toBe(30);
    const point = a.q("20 °C") as unknown as { plus(other: unknown): unknown };
    expect(codeOf(() => point.plus(b.q("10 °C")))).toBe("TEMPERATURE_POINT");
  });

  it.each(pairs)("%s recognises the errors of %s by their code, not by their class", async (mine, other) => {
    const { [mine]: a, [other]: b } = await copies();
    try {
      b.q<string>("5 kWhh");
      expect.unreachable();
    } catch (error) {
      expect(error).toMatchObject({ name: "QuantityError", code: "UNKNOWN_UNIT" });
      expect(error).toBeInstanceOf(Error);
      expect(error).not.toBeInstanceOf(a.QuantityError);
    }
  });

  it.each(pairs)("%s runs a relation of its own on quantities of %s", async (mine, other) => {
    const { [mine]: a, [other]: b } = await copies();
    const double = a.relation<{ readonly mass: source.Quantity<source.Mass> }, source.Quantity<source.Mass>>({
      name: "double",
      inputs: { mass: { symbol: "m", unit: "kg", meaning: "mass" } },
      result: { symbol: "d", unit: "kg" },
      expression: "2·m",
      source: { document: "arithmetic", status: "definition" },
      evaluate: ({ mass }) => 2 * mass,
    });
    expect(double({ mass: b.q("1 t") }).in("kg")).toBe(2000);
  });
});
