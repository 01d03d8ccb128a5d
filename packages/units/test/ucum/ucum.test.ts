import { createRequire } from "node:module";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { published } from "../../../../test/support/published.js";
import { compoundUnits } from "../../../../test/support/quantities.js";
import { type QuantityError, q, quantity, ucumCode, unitFromUcum, unitSymbols } from "../../src/index.js";

/** The reference library for UCUM; it comes without types. */
interface UcumLibrary {
  validateUnitString(code: string): { readonly status: string };
  convertUnitTo(from: string, value: number, to: string): { readonly status: string; readonly toVal: number | null };
}
const { UcumLhcUtils } = createRequire(import.meta.url)("@lhncbc/ucum-lhc") as {
  UcumLhcUtils: { getInstance(): UcumLibrary };
};
const library = UcumLhcUtils.getInstance();

const withoutCode = ["PS", "rpm", "MPGe", "Δ°F"];
/** Temperature scales convert with an offset, which is checked apart. */
const scales = ["K", "°C", "°F", "degC", "degF", "ΔK", "Δ°C"];
/** An angle is a dimension of its own in UCUM, and no number. */
const angles = ["rad", "°", "deg"];
/** UCUM takes the mercury column for 133 322 Pa a metre a thousandth, the conventional value is 133.322 387 415 Pa. */
const mercury = ["mmHg", "inHg"];
const coded = unitSymbols.filter((symbol) => !withoutCode.includes(symbol));

const codeOf = (run: () => unknown): string => {
  try {
    run();
  } catch (error) {
    return (error as QuantityError).code;
  }
  return "nothing thrown";
};

/** SI base units of a dimension key, as a UCUM code: "m2 kg1 s-2 A0 K0" -> "m2.kg1.s-2". */
const baseCode = (key: string): string =>
  key
    .split(" ")
    .filter((part) => !/^\D+0$/.test(part))
    .join(".") || "1";

/** Our text of the same base units. */
const baseText = (key: string): string => unitFromUcum(baseCode(key));

describe("UCUM codes of units", () => {
  it.each(coded)("%s has a code that the reference library reads", (symbol) => {
    expect(library.validateUnitString(ucumCode(symbol)).status).toBe("valid");
  });

  it.each(coded.filter((symbol) => ![...scales, ...angles].includes(symbol)))(
    "%s is worth the same there",
    (symbol) => {
      const { key } = quantity(1, symbol).dimension;
      const { toVal } = library.convertUnitTo(ucumCode(symbol), 1, baseCode(key));
      expect(toVal).not.toBeNull();
      const difference = Math.abs((toVal as number) / worthOf(symbol, key) - 1);
      expect(difference).toBeLessThan(mercury.includes(symbol) ? 3e-6 : 1e-12);
      expect(mercury.includes(symbol)).toBe(difference > 1e-9);
    },
  );

  it.each(withoutCode)("%s has none, and says so", (symbol) => {
    expect(codeOf(() => ucumCode(symbol as "m"))).toBe("NO_UCUM_CODE");
    expect(codeOf(() => ucumCode(`${symbol}/m` as "m"))).toBe("NO_UCUM_CODE");
  });

  it("gives temperature differences the code of the kelvin", () => {
    expect([ucumCode("ΔK"), ucumCode("Δ°C"), ucumCode("W/°C")]).toEqual(["K", "K", "W/K"]);
  });

  it("turns degrees into radians as the reference library does", () => {
    expect(library.convertUnitTo("deg", 180, "rad").toVal).toBeCloseTo(q("180 °").in("rad"), 12);
  });

  it("converts temperature scales as the reference library does", () => {
    expect(library.convertUnitTo("Cel", 20, "[degF]").toVal).toBeCloseTo(q("20 °C").in("°F"), 9);
    expect(library.convertUnitTo("[degF]", 95, "K").toVal).toBeCloseTo(q("95 °F").in("K"), 9);
  });

  it("holds for random compounds: the library reads the code, and finds the same worth", () => {
    let compared = 0;
    fc.assert(
      fc.property(compoundUnits, ({ text }) => {
        const { dimension } = quantity<string>(1, text);
        if (codeOf(() => ucumCode<string>(text)) === "NO_UCUM_CODE" || dimension.key === "m0 kg0 s0 A0 K1") return;
        if ([...angles, ...mercury].some((symbol) => text.includes(symbol))) return;
        // The base units of the comparison are raised, too, and a power ends at 9.
        if (/-?\d\d/.test(dimension.key)) return;
        const code = ucumCode<string>(text);
        expect(library.validateUnitString(code).status).toBe("valid");
        const { toVal } = library.convertUnitTo(code, 1, baseCode(dimension.key));
        const worth = worthOf(text, dimension.key);
        expect(Math.abs((toVal as number) / worth - 1), `${text} -> ${code}`).toBeLessThan(1e-9);
        expect(quantity<string>(1, unitFromUcum(code)).dimension.key).toBe(dimension.key);
        expect(Math.abs(worthOf(unitFromUcum(code), dimension.key) / worth - 1)).toBeLessThan(1e-12);
        compared++;
      }),
      { numRuns: 300 },
    );
    expect(compared).toBeGreaterThan(100);
  });
});

/** Worth of a unit in SI base units; kinds, which UCUM does not have, are taken out by a pure number of the same kind. */
function worthOf(text: string, key: string): number {
  const one = quantity<string>(1, text);
  const base = quantity<string>(1, baseText(key));
  const bare = (thing: typeof one): typeof one => thing.times(quantity<string>(1, "kg·A")) as typeof one;
  return bare(one).ratioTo(bare(base));
}

describe("units from UCUM codes", () => {
  it.each([
    ["", "1"],
    ["/m", "1/m"],
    ["m3.kg-1.s-2", "m^3/(kg·s^2)"],
    ["12.h", "h·12"],
    ["{x}", "1"],
    ["kg{dry}/m3", "kg/m^3"],
    ["m/s/s", "m/s^2"],
    ["W/(m2.K)", "W/(m^2·K)"],
    ["10*3.g", "g·1000"],
    ["g/10^3", "g/1000"],
    ["kWh", ""],
  ])("reads '%s' as '%s'", (code, text) => {
    if (text === "") expect(codeOf(() => unitFromUcum(code))).toBe("BAD_UCUM_CODE");
    else expect(unitFromUcum(code)).toBe(text);
  });

  it.each([
    ["m/", 3],
    ["10+3/ul", 3],
    ["12h", 3],
    ["[ft_us]", 1],
    ["(m/s)2", 6],
    ["(m", 3],
    ["m)", 2],
    ["m..s", 3],
    ["m0", 3],
    ["m10", 4],
    ["(((((((((m)))))))))", 10],
    ["__proto__", 1],
    ["constructor", 1],
  ])("refuses '%s' at character %d", (code, position) => {
    expect(() => unitFromUcum(code)).toThrow(
      expect.objectContaining({ code: "BAD_UCUM_CODE", details: expect.objectContaining({ position }) }),
    );
  });

  it("refuses what is no text or too long, at once", () => {
    for (const code of [undefined, null, 3, {}, "m.".repeat(1_000_000)]) {
      expect(codeOf(() => unitFromUcum(code as string))).toBe("BAD_UCUM_CODE");
    }
  });

  published({
    quantity: "s/4.m is read from left to right: 6.3 of it are s·m",
    source: "UCUM functional tests (May 2010), case with s/4.m",
    status: "seen",
    published: 1.6,
    computed: () => worthOf(unitFromUcum("s/4.m"), "m1 kg0 s1 A0 K0") * 6.3,
    tolerance: 0.05,
    why: "the test prints two significant digits",
  });
});
