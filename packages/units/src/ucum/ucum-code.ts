import { describeGiven } from "../check/describe-given.js";
import { fail } from "../quantity/errors.js";
import { gcd } from "../unit/exact-product.js";
import { canonical, parseUnit } from "../unit/grammar.js";
import type { AnyUnit } from "../unit/literal.js";
import type { UnitSymbol } from "../unit/table.js";
import { builtIn } from "../unit/unit.js";

/**
 * @internal Codes of the Unified Code for Units of Measure (UCUM, unitsofmeasure.org, version 2.1, case sensitive), where they differ from
 * our symbols; an empty code means that UCUM has none.
 */
// biome-ignore format: one group a line
export const codes: { readonly [Symbol in UnitSymbol]?: string } = {
  µm: "um", in: "[in_i]", ft: "[ft_i]", yd: "[yd_i]", mi: "[mi_i]", US_gal: "[gal_us]", imp_gal: "[gal_br]",
  lb: "[lb_av]", oz: "[oz_av]", short_ton: "[ston_av]", year: "a", mph: "[mi_i]/h", kn: "[kn_i]", lbf: "[lbf_av]",
  psi: "[psi]", mmHg: "mm[Hg]", inHg: "[in_i'Hg]", Wh: "W.h", kWh: "kW.h", MWh: "MW.h", GWh: "GW.h", Btu: "[Btu_IT]", hp: "[HP]", PS: "",
  Ah: "A.h", mAh: "mA.h", Ω: "Ohm", mΩ: "mOhm", kΩ: "kOhm", ohm: "Ohm", mohm: "mOhm",
  "°C": "Cel", "°F": "[degF]", degC: "Cel", degF: "[degF]", ΔK: "K", "Δ°C": "K", "Δ°F": "",
  ppm: "[ppm]", "°": "deg", rpm: "", MPGe: "",
};

/**
 * The UCUM code of a unit.
 *
 * Kinds are not part of UCUM: N·m is `N.m` whether it is a torque or an energy, and a temperature difference in kelvin is `K`.
 *
 * @param unit - text of a unit
 * @returns a case-sensitive code
 * @throws QuantityError `NO_UCUM_CODE` for PS, rpm, MPGe and differences in °F, which UCUM does not have; `UNKNOWN_UNIT`, `UNIT_SYNTAX`
 * @example
 * ucumCode("kWh/100 km"); // "kW.h/(100.km)"
 */
export function ucumCode<const S extends string>(unit: AnyUnit<S>): string {
  if (typeof unit !== "string")
    return fail("UNIT_SYNTAX", `a unit must be a text such as "kg": got ${describeGiven(unit)}`);
  const text = canonical(unit.trim());
  // A temperature scale stands alone; in a compound a temperature is an interval, for which UCUM has the kelvin only.
  if (Object.hasOwn(SCALES, text)) return SCALES[text as keyof typeof SCALES];
  const { terms, n, d } = parseUnit(text, builtIn.definitions);
  if (terms.has("π")) noCode(text, "π");
  const common = gcd(n, d);
  const [above, below] = [n, d].map((each) => (each === common ? [] : [String(each / common)])) as [string[], string[]];
  for (const [symbol, exponent] of terms) {
    for (const [atom, itsPower] of atomsOf(symbol, text)) {
      const power = itsPower * exponent;
      const size = Math.abs(power);
      (power > 0 ? above : below).push(size === 1 ? atom : `${atom}${size}`);
    }
  }
  const numerator = above.join(".");
  if (below.length === 0) return numerator || "1";
  return `${numerator}/${below.length === 1 ? below[0] : `(${below.join(".")})`}`;
}

const SCALES = { "°C": "Cel", degC: "Cel", "°F": "[degF]", degF: "[degF]" } as const;

/** The atoms of a symbol's code with their powers: UCUM raises atoms only, so a square of "W.h" is "W2.h2". */
function atomsOf(symbol: string, text: string): (readonly [atom: string, power: number])[] {
  const code = symbol === "°C" || symbol === "degC" ? "K" : (codes[symbol as UnitSymbol] ?? symbol);
  if (code === "" || code === "[degF]") noCode(text, symbol);
  return code.split("/").flatMap((side, i) => side.split(".").map((atom) => [atom, i === 0 ? 1 : -1] as const));
}

function noCode(text: string, symbol: string): never {
  return fail(
    "NO_UCUM_CODE",
    `UCUM has no code for '${symbol}' of the unit '${text}': use another unit, such as W or rad/s`,
  );
}
