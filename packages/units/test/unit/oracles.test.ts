import { convert } from "convert";
import Qty from "js-quantities";
import * as mathjs from "mathjs";
import { describe, expect, it } from "vitest";
import { quantity, type UnitSymbol, unitSymbols } from "../../src/index.js";

/**
 * Every unit against three general-purpose libraries that were written independently of this one and of each other. One
 * unit is converted to SI by each that knows it.
 */

/** What one unit is worth in SI, by the name that an oracle has for it. */
type Oracle = "mathjs" | "js-quantities" | "convert";

const worth: Readonly<Record<Oracle, (unit: string, si: string) => number>> = {
  mathjs: (unit, si) => mathjs.evaluate(`number(1 * (${unit}), ${si})`),
  "js-quantities": (unit, si) => Qty(1, unit).to(si).scalar,
  convert: (unit, si) => convert(1, unit as "km").to(si as "m"),
};

interface Row {
  /** SI unit in our notation and in the oracles'; the same text everywhere when only one is given. */
  readonly si: string;
  readonly mathjs?: string;
  readonly "js-quantities"?: string;
  readonly convert?: string;
}

/** The SI unit as `convert` calls it, and as js-quantities does where that differs. */
const siNames: Readonly<Partial<Record<Oracle, Readonly<Record<string, string>>>>> = {
  mathjs: { Ω: "ohm", "m³": "m^3", "1/s": "Hz" },
  "js-quantities": { Ω: "ohm", "m³": "m3", "rad/s": "rad/s", "1": "" },
  convert: { "m³": "m3" },
};

const length = { si: "m" } as const;
const volume = { si: "m³" } as const;
const mass = { si: "kg" } as const;
const time = { si: "s" } as const;
const speed = { si: "m/s" } as const;
const force = { si: "N" } as const;
const pressure = { si: "Pa" } as const;
const energy = { si: "J" } as const;
const power = { si: "W" } as const;

const all = (name: string, other: Partial<Row> = {}) => ({
  mathjs: name,
  "js-quantities": name,
  convert: name,
  ...other,
});
const twoOf = (name: string, other: Partial<Row> = {}) => ({ mathjs: name, "js-quantities": name, ...other });

const rows: Readonly<Partial<Record<UnitSymbol, Row>>> = {
  m: { ...length, ...all("m") },
  km: { ...length, ...all("km") },
  cm: { ...length, ...all("cm") },
  mm: { ...length, ...all("mm") },
  µm: { ...length, ...twoOf("um", { convert: "µm" }) },
  in: { ...length, ...all("in") },
  ft: { ...length, ...all("ft") },
  yd: { ...length, ...all("yd") },
  mi: { ...length, ...all("mi") },
  L: { ...volume, mathjs: "L", "js-quantities": "l", convert: "L" },
  mL: { ...volume, mathjs: "mL", "js-quantities": "ml", convert: "mL" },
  US_gal: { ...volume, mathjs: "gal", "js-quantities": "gal", convert: "gallon" },
  imp_gal: { ...volume, "js-quantities": "galimp", convert: "imperial gallon" },
  kg: { ...mass, ...all("kg") },
  g: { ...mass, ...all("g") },
  mg: { ...mass, ...all("mg") },
  t: { ...mass, mathjs: "tonne", "js-quantities": "tonne", convert: "t" },
  lb: { ...mass, mathjs: "lbm", "js-quantities": "lb", convert: "lb" },
  oz: { ...mass, ...all("oz") },
  short_ton: { ...mass, mathjs: "ton", "js-quantities": "short-ton", convert: "short tons" },
  s: { ...time, ...all("s") },
  ms: { ...time, ...all("ms") },
  min: { ...time, mathjs: "minute", "js-quantities": "min", convert: "min" },
  h: { ...time, mathjs: "hour", "js-quantities": "h", convert: "h" },
  d: { ...time, mathjs: "day", "js-quantities": "d", convert: "d" },
  year: { ...time, mathjs: "year", "js-quantities": "year" },
  mph: { ...speed, mathjs: "mi/hour", "js-quantities": "mph" },
  kn: { ...speed, "js-quantities": "knot" },
  N: { ...force, ...all("N") },
  kN: { ...force, ...all("kN") },
  kgf: { ...force, mathjs: "kgf", convert: "kgf" },
  lbf: { ...force, ...all("lbf") },
  Pa: { ...pressure, ...all("Pa") },
  hPa: { ...pressure, ...all("hPa") },
  kPa: { ...pressure, ...all("kPa") },
  MPa: { ...pressure, ...all("MPa") },
  bar: { ...pressure, ...all("bar") },
  mbar: { ...pressure, ...twoOf("mbar", { convert: "mbar" }) },
  atm: { ...pressure, ...all("atm") },
  psi: { ...pressure, ...all("psi") },
  mmHg: { ...pressure, ...twoOf("mmHg") },
  inHg: { ...pressure, "js-quantities": "inHg", convert: "inHg" },
  J: { ...energy, ...all("J") },
  kJ: { ...energy, ...all("kJ") },
  MJ: { ...energy, ...all("MJ") },
  Wh: { ...energy, ...all("Wh") },
  kWh: { ...energy, ...all("kWh") },
  MWh: { ...energy, ...all("MWh") },
  GWh: { ...energy, ...all("GWh") },
  Btu: { ...energy, mathjs: "BTU", "js-quantities": "btu" },
  W: { ...power, ...all("W") },
  kW: { ...power, ...all("kW") },
  MW: { ...power, ...all("MW") },
  GW: { ...power, ...all("GW") },
  hp: { ...power, ...all("hp") },
  PS: { ...power, mathjs: "75 kgf m/s" },
  A: { si: "A", ...twoOf("A") },
  mA: { si: "A", ...twoOf("mA") },
  C: { si: "C", ...twoOf("C") },
  Ah: { si: "C", mathjs: "A hour", "js-quantities": "Ah" },
  mAh: { si: "C", mathjs: "mA hour", "js-quantities": "mAh" },
  V: { si: "V", ...twoOf("V") },
  mV: { si: "V", ...twoOf("mV") },
  kV: { si: "V", ...twoOf("kV") },
  Ω: { si: "Ω", ...twoOf("ohm") },
  mΩ: { si: "Ω", ...twoOf("mohm") },
  kΩ: { si: "Ω", ...twoOf("kohm") },
  ohm: { si: "Ω", ...twoOf("ohm") },
  mohm: { si: "Ω", ...twoOf("mohm") },
  F: { si: "F", ...twoOf("F") },
  "%": { si: "1", "js-quantities": "%" },
  ppm: { si: "1", "js-quantities": "ppm" },
  rad: { si: "rad", ...all("rad") },
  "°": { si: "rad", ...all("deg") },
  deg: { si: "rad", ...all("deg") },
  Hz: { si: "1/s", mathjs: "Hz", "js-quantities": "Hz" },
  rpm: { si: "rad/s", "js-quantities": "rpm" },
  ΔK: { si: "ΔK", ...temperature("K", "degK") },
  "Δ°C": { si: "ΔK", ...temperature("K", "degC") },
  "Δ°F": { si: "ΔK", ...temperature("degR", "degF") },
};

/** An interval is a plain unit in these libraries: the kelvin, the degree Rankine, or js-quantities' deg units. */
function temperature(mathjsName: string, other: string) {
  return { mathjs: mathjsName, "js-quantities": other } as const;
}

/** Units that no oracle has, and what holds them instead. */
const notCovered: Readonly<Partial<Record<UnitSymbol, string>>> = {
  K: "a point: compared as a scale below",
  "°C": "a point: compared as a scale below",
  "°F": "a point: compared as a scale below",
  degC: "a point: compared as a scale below",
  degF: "a point: compared as a scale below",
  "1": "the pure number: there is nothing to convert",
  MPGe: "a unit of US energy labels, in no general library: factors.test.ts holds it against 33.705 kWh a gallon",
};

/** Where an oracle works with a rounded constant, or with another definition. Each row must be needed. */
const disagreements: Readonly<Record<string, { readonly relative: number; readonly because: string }>> = {
  "mathjs psi": { relative: 1e-10, because: "stored as 6894.75729276459 Pa; lbf/in² gives 6894.757293168 Pa" },
  "mathjs mmHg": { relative: 3e-6, because: "stored as 133.322 Pa" },
  "mathjs hp": { relative: 1e-10, because: "stored as 745.6998715386 W; 550 ft·lbf/s gives 745.699871582 W" },
  "js-quantities US_gal": { relative: 1e-8, because: "stored as 0.0037854118 m³" },
  "js-quantities oz": { relative: 1e-8, because: "stored with nine digits" },
  "js-quantities year": { relative: 3e-5, because: "the tropical year, 31 556 926 s; ours is the Julian year" },
  "js-quantities kn": { relative: 1e-9, because: "stored as 0.514444444 m/s" },
  "js-quantities lbf": { relative: 1e-7, because: "stored as 4.448222 N" },
  "js-quantities psi": { relative: 1e-6, because: "stored as 6894.76 Pa" },
  "js-quantities mmHg": { relative: 2e-7, because: "Torr (101325/760 Pa), not the conventional millimetre of mercury" },
  "js-quantities inHg": { relative: 2e-7, because: "25.4 Torr, not conventional millimetres of mercury" },
  "js-quantities Btu": { relative: 2e-7, because: "stored as 1055.056 J" },
  "js-quantities hp": { relative: 1e-9, because: "stored as 745.699872 W" },
  "convert lbf": { relative: 1e-7, because: "stored as 4.448222 N" },
  "convert psi": { relative: 1e-7, because: "stored as 6894.757 Pa" },
  "convert inHg": { relative: 2e-7, because: "stored as 3386.389 Pa" },
  "convert hp": { relative: 1e-9, because: "stored as 745.699872 W" },
};

/** What two correct ways of multiplying a few exact factors may differ by. */
const ROUNDING = 1e-14;

const cases = (Object.entries(rows) as [UnitSymbol, Row][]).flatMap(([symbol, row]) =>
  (Object.keys(worth) as Oracle[]).flatMap((oracle) => {
    const name = row[oracle];
    return name === undefined ? [] : [{ symbol, oracle, name, si: row.si }];
  }),
);

describe("one unit in SI, as other libraries have it", () => {
  it.each(cases)("$symbol: $oracle calls it $name", ({ symbol, oracle, name, si }) => {
    const theirSi = si === "ΔK" ? (oracle === "mathjs" ? "K" : "degK") : (siNames[oracle]?.[si] ?? si);
    const theirs = worth[oracle](name, theirSi);
    const ours = quantity<string>(1, symbol).in<string>(si);
    const disagreement = disagreements[`${oracle} ${symbol}`];
    const difference = Math.abs(ours - theirs) / theirs;
    expect(difference).toBeLessThanOrEqual(disagreement?.relative ?? ROUNDING);
    if (disagreement !== undefined) expect(difference, "the exception is not needed").toBeGreaterThan(ROUNDING);
  });

  it("leaves out no unit without a reason", () => {
    const covered = unitSymbols.filter((symbol) => rows[symbol] !== undefined);
    const excused = unitSymbols.filter((symbol) => notCovered[symbol] !== undefined);
    expect([...covered, ...excused].sort()).toEqual([...unitSymbols].sort());
    expect(Object.values(rows).filter((row) => Object.keys(row).length < 2)).toEqual([]);
  });

  it("excuses only disagreements of units that are compared", () => {
    const compared = new Set(cases.map(({ symbol, oracle }) => `${oracle} ${symbol}`));
    expect(Object.keys(disagreements).filter((key) => !compared.has(key))).toEqual([]);
  });
});

describe("temperature scales, as mathjs has them", () => {
  const names = { K: "K", "°C": "degC", "°F": "degF", degC: "degC", degF: "degF" } as const;
  const scales = Object.keys(names) as (keyof typeof names)[];
  const pairs = scales.flatMap((from) => scales.map((to) => ({ from, to })));
  it.each(pairs)("$from to $to", ({ from, to }) => {
    for (const value of [-40, 0, 20, 68, 273.15, 1000]) {
      const theirs = mathjs.unit(value, names[from]).toNumber(names[to]);
      // Absolute, as zero is somewhere else in each scale: a few roundings of numbers of about a thousand.
      expect(Math.abs(quantity<string>(value, from).in<string>(to) - theirs)).toBeLessThan(1e-12 * 1500);
    }
  });
});

/** The compound units of this trade: here it is the grammar that is compared, not the table. */
describe("compound units, as mathjs reads them", () => {
  it.each([
    ["Wh/kg", "Wh/kg", "J/kg"],
    ["kWh/100 km", "kWh/(100 km)", "J/m"],
    ["Wh/mi", "Wh/mi", "J/m"],
    ["mi/kWh", "mi/kWh", "m/J"],
    ["Wh/L", "Wh/L", "J/m^3"],
    ["kW/kg", "kW/kg", "W/kg"],
    ["kg/m³", "kg/m^3", "kg/m^3"],
    ["g/cm³", "g/cm^3", "kg/m^3"],
    ["lb/ft³", "lbm/ft^3", "kg/m^3"],
    ["lbf/mph", "lbf/(mi/hour)", "N s/m"],
    ["lbf/mph²", "lbf/(mi/hour)^2", "N s^2/m^2"],
    ["N/(km/h)²", "N/(km/hour)^2", "N s^2/m^2"],
    ["N·m", "N m", "J"],
    ["lbf·ft", "lbf ft", "J"],
    ["W/(m²·K)", "W/(m^2 K)", "W/(m^2 K)"],
    ["J/(kg·K)", "J/(kg K)", "J/(kg K)"],
    ["mΩ·A²", "mohm A^2", "W"],
    ["V·Ah", "V A hour", "J"],
    ["ft²", "ft^2", "m^2"],
    ["km/h/s", "km/hour/s", "m/s^2"],
    ["m·s⁻²", "m s^-2", "m/s^2"],
    ["kgf/cm²", "kgf/cm^2", "Pa"],
  ])("%s", (ours, theirs, si) => {
    if (ours === "km/h/s") {
      // mathjs reads it from left to right; here it needs parentheses, as two readings are one too many.
      expect(() => quantity<string>(1, ours)).toThrow("a second '/' needs parentheses");
      return;
    }
    const written = si.replaceAll("^", "").replaceAll(" ", "·");
    const factor = quantity<string>(1, ours);
    const target = quantity<string>(1, written);
    expect(factor.dimension.key).toBe(target.dimension.key);
    // Products drop the kind, so that a torque may be compared with a joule here.
    const number = factor.times(1).per(target).in<string>("1");
    const wanted = worth.mathjs(theirs, si);
    expect(Math.abs(number / wanted - 1)).toBeLessThan(/lbf/.test(ours) ? 1e-13 : ROUNDING);
  });
});
