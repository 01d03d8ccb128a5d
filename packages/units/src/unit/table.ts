import type { DimensionName, Keys } from "../dimension/table.js";

/**
 * The one table of units, by what they measure: what one unit is worth, in other units of this table and exact decimals. A
 * temperature scale adds where it counts from, with two decimals. The type system and the run time read the same table.
 *
 * Exact definitions: SI brochure, 9th edition; NIST SP 811 (2008) appendix B.8 and NIST Handbook 44 appendix C for the
 * US customary units. Exceptions are named beside the unit.
 *
 * @internal
 */
// biome-ignore format: a table reads best with one unit a line
export const unitTable = {
  length: {
    m: "",
    km: "1000 m",
    cm: "0.01 m",
    mm: "0.001 m",
    µm: "0.001 mm",
    in: "0.0254 m",
    ft: "0.3048 m",
    yd: "0.9144 m",
    mi: "1609.344 m",
  },
  volume: {
    L: "0.001 m³",
    mL: "0.001 L",
    US_gal: "231 in³", // US liquid gallon; "gal" alone could be either
    imp_gal: "4.54609 L", // imperial gallon, Weights and Measures Act 1985 (UK), schedule 1
  },
  mass: {
    kg: "",
    g: "0.001 kg",
    mg: "0.001 g",
    t: "1000 kg",
    lb: "0.45359237 kg",
    oz: "lb/16",
    short_ton: "2000 lb",
  },
  time: {
    s: "",
    ms: "0.001 s",
    min: "60 s",
    h: "3600 s",
    d: "86400 s",
    year: "365.25 d", // Julian year, as UCUM's `a`
  },
  speed: {
    mph: "mi/h",
    kn: "1852 m/h",
  },
  force: {
    N: "kg m/s²",
    kN: "1000 N",
    kgf: "9.80665 N",
    lbf: "0.45359237 kgf",
  },
  pressure: {
    Pa: "N/m²",
    hPa: "100 Pa",
    kPa: "1000 Pa",
    MPa: "1000 kPa",
    bar: "100 kPa",
    mbar: "0.001 bar",
    atm: "101325 Pa",
    psi: "lbf/in²",
    mmHg: "133.322387415 Pa", // conventional: density 13 595.1 kg/m³, standard gravity
    inHg: "25.4 mmHg",
  },
  energy: {
    J: "N m",
    kJ: "1000 J",
    MJ: "1000 kJ",
    Wh: "3600 J",
    kWh: "1000 Wh",
    MWh: "1000 kWh",
    GWh: "1000 MWh",
    Btu: "1055.05585262 J", // International Table Btu
  },
  power: {
    W: "J/s",
    kW: "1000 W",
    MW: "1000 kW",
    GW: "1000 MW",
    hp: "550 ft lbf/s", // mechanical horsepower
    PS: "75 kgf m/s", // metric horsepower
  },
  "electric current": {
    A: "",
    mA: "0.001 A",
  },
  "electric charge": {
    C: "A s",
    Ah: "3600 C",
    mAh: "3.6 C",
  },
  voltage: {
    V: "W/A",
    mV: "0.001 V",
    kV: "1000 V",
  },
  "electric resistance": {
    Ω: "V/A",
    mΩ: "0.001 Ω",
    kΩ: "1000 Ω",
    ohm: "Ω",
    mohm: "mΩ",
  },
  capacitance: {
    F: "C/V",
  },
  temperature: {
    K: "",
    "°C": "K+273.15",
    "°F": "5 K/9+459.67",
    degC: "K+273.15",
    degF: "5 K/9+459.67",
    ΔK: "K",
    "Δ°C": "K",
    "Δ°F": "5 K/9",
  },
  ratio: {
    "1": "1",
    "%": "0.01",
    ppm: "0.000001",
    rad: "1",
    "°": "π/180",
    deg: "π/180",
  },
  frequency: {
    Hz: "1/s",
    rpm: "π/(30 s)",
  },
  "distance per energy": {
    MPGe: "mi/(33.705 kWh)", // 33.705 kWh a gasoline gallon, 40 CFR 600.002
  },
} as const satisfies { readonly [Name in DimensionName]?: Readonly<Record<string, string>> };

type Table = typeof unitTable;

/** The symbol of a unit in the table, such as `"kWh"`. */
export type UnitSymbol = { [Group in keyof Table]: keyof Table[Group] }[keyof Table] & string;

/** @internal The key of the dimension of every unit, by symbol. */
export type UnitKeys = {
  readonly [Symbol in UnitSymbol]: {
    [Group in keyof Table]: Symbol extends keyof Table[Group] ? Keys[Group] : never;
  }[keyof Table];
};

/** The symbols of all units, in the order of the table. */
export const unitSymbols: readonly UnitSymbol[] = /* @__PURE__ */ Object.freeze(
  /* @__PURE__ */ Object.values(unitTable).flatMap((group) => Object.keys(group) as UnitSymbol[]),
);
