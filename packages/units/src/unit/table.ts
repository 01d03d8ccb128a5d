import type { DimensionKey } from "../dimension/key.js";

/**
 * The one table of units. Each entry is the dimension and what one unit is worth, in other units of this table and exact
 * decimals; the type system and the run time read the same table. Temperature scales add the value of their zero point.
 *
 * Exact definitions: SI brochure, 9th edition; NIST SP 811 (2008) appendix B.8 and NIST Handbook 44 appendix C for the
 * US customary units. Exceptions are named beside the unit.
 */

/** @internal What one unit is worth; a base unit has an empty text. `zero` is the offset of a scale, in its own unit. */
export interface UnitDefinition {
  readonly key: DimensionKey;
  readonly is: string;
  readonly zero?: string;
}

const LENGTH = "m1 kg0 s0 A0 K0";
const VOLUME = "m3 kg0 s0 A0 K0";
const MASS = "m0 kg1 s0 A0 K0";
const TIME = "m0 kg0 s1 A0 K0";
const SPEED = "m1 kg0 s-1 A0 K0";
const FORCE = "m1 kg1 s-2 A0 K0";
const PRESSURE = "m-1 kg1 s-2 A0 K0";
const ENERGY = "m2 kg1 s-2 A0 K0";
const POWER = "m2 kg1 s-3 A0 K0";
const VOLTAGE = "m2 kg1 s-3 A-1 K0";
const CURRENT = "m0 kg0 s0 A1 K0";
const CHARGE = "m0 kg0 s1 A1 K0";
const RESISTANCE = "m2 kg1 s-3 A-2 K0";
const CAPACITANCE = "m-2 kg-1 s4 A2 K0";
const TEMPERATURE = "m0 kg0 s0 A0 K1";
const NUMBER = "m0 kg0 s0 A0 K0";
const FREQUENCY = "m0 kg0 s-1 A0 K0";
const DISTANCE_PER_ENERGY = "m-1 kg-1 s2 A0 K0";

/** @internal The units, by symbol. */
// biome-ignore format: a table reads best with one unit a line
export const unitTable = {
  m: { key: LENGTH, is: "" },
  km: { key: LENGTH, is: "1000 m" },
  cm: { key: LENGTH, is: "0.01 m" },
  mm: { key: LENGTH, is: "0.001 m" },
  µm: { key: LENGTH, is: "0.000001 m" },
  in: { key: LENGTH, is: "0.0254 m" },
  ft: { key: LENGTH, is: "0.3048 m" },
  yd: { key: LENGTH, is: "0.9144 m" },
  mi: { key: LENGTH, is: "1609.344 m" },

  L: { key: VOLUME, is: "0.001 m³" },
  mL: { key: VOLUME, is: "0.001 L" },
  gal: { key: VOLUME, is: "231 in³" }, // US liquid gallon

  kg: { key: MASS, is: "" },
  g: { key: MASS, is: "0.001 kg" },
  mg: { key: MASS, is: "0.000001 kg" },
  t: { key: MASS, is: "1000 kg" },
  lb: { key: MASS, is: "0.45359237 kg" },
  oz: { key: MASS, is: "lb/16" },
  short_ton: { key: MASS, is: "2000 lb" },

  s: { key: TIME, is: "" },
  ms: { key: TIME, is: "0.001 s" },
  min: { key: TIME, is: "60 s" },
  h: { key: TIME, is: "3600 s" },
  d: { key: TIME, is: "86400 s" },
  year: { key: TIME, is: "365.25 d" }, // Julian year, as UCUM's `a`

  mph: { key: SPEED, is: "mi/h" },
  kn: { key: SPEED, is: "1852 m/h" },

  N: { key: FORCE, is: "kg m/s²" },
  kN: { key: FORCE, is: "1000 N" },
  kgf: { key: FORCE, is: "9.80665 N" },
  lbf: { key: FORCE, is: "0.45359237 kgf" },

  Pa: { key: PRESSURE, is: "N/m²" },
  hPa: { key: PRESSURE, is: "100 Pa" },
  kPa: { key: PRESSURE, is: "1000 Pa" },
  MPa: { key: PRESSURE, is: "1000000 Pa" },
  bar: { key: PRESSURE, is: "100000 Pa" },
  atm: { key: PRESSURE, is: "101325 Pa" },
  psi: { key: PRESSURE, is: "lbf/in²" },
  mmHg: { key: PRESSURE, is: "133.322387415 Pa" }, // conventional: density 13 595.1 kg/m³, standard gravity
  inHg: { key: PRESSURE, is: "25.4 mmHg" },

  J: { key: ENERGY, is: "N m" },
  kJ: { key: ENERGY, is: "1000 J" },
  MJ: { key: ENERGY, is: "1000000 J" },
  Wh: { key: ENERGY, is: "3600 J" },
  kWh: { key: ENERGY, is: "3600000 J" },
  MWh: { key: ENERGY, is: "1000 kWh" },
  Btu: { key: ENERGY, is: "1055.05585262 J" }, // International Table Btu

  W: { key: POWER, is: "J/s" },
  kW: { key: POWER, is: "1000 W" },
  MW: { key: POWER, is: "1000000 W" },
  hp: { key: POWER, is: "550 ft lbf/s" }, // mechanical horsepower
  PS: { key: POWER, is: "75 kgf m/s" }, // metric horsepower

  A: { key: CURRENT, is: "" },
  mA: { key: CURRENT, is: "0.001 A" },
  C: { key: CHARGE, is: "A s" },
  Ah: { key: CHARGE, is: "3600 C" },
  mAh: { key: CHARGE, is: "3.6 C" },
  V: { key: VOLTAGE, is: "W/A" },
  mV: { key: VOLTAGE, is: "0.001 V" },
  kV: { key: VOLTAGE, is: "1000 V" },
  Ω: { key: RESISTANCE, is: "V/A" },
  mΩ: { key: RESISTANCE, is: "0.001 Ω" },
  kΩ: { key: RESISTANCE, is: "1000 Ω" },
  ohm: { key: RESISTANCE, is: "Ω" },
  mohm: { key: RESISTANCE, is: "mΩ" },
  F: { key: CAPACITANCE, is: "C/V" },

  K: { key: TEMPERATURE, is: "" },
  "°C": { key: TEMPERATURE, is: "K", zero: "273.15" },
  "°F": { key: TEMPERATURE, is: "5 K/9", zero: "459.67" },
  degC: { key: TEMPERATURE, is: "K", zero: "273.15" },
  degF: { key: TEMPERATURE, is: "5 K/9", zero: "459.67" },
  ΔK: { key: TEMPERATURE, is: "K" },
  "Δ°C": { key: TEMPERATURE, is: "K" },
  "Δ°F": { key: TEMPERATURE, is: "5 K/9" },

  "1": { key: NUMBER, is: "1" },
  "%": { key: NUMBER, is: "0.01" },
  ppm: { key: NUMBER, is: "0.000001" },
  rad: { key: NUMBER, is: "1" },
  "°": { key: NUMBER, is: "π/180" },
  deg: { key: NUMBER, is: "π/180" },
  Hz: { key: FREQUENCY, is: "1/s" },
  rpm: { key: FREQUENCY, is: "π/(30 s)" },

  MPGe: { key: DISTANCE_PER_ENERGY, is: "mi/(33.705 kWh)" }, // 33.705 kWh a gasoline gallon, 40 CFR 600.002
} as const satisfies Record<string, UnitDefinition>;

/** The symbol of a unit in the table, such as `"kWh"`. */
export type UnitSymbol = keyof typeof unitTable;

/** The symbols of all units, in the order of the table. */
export const unitSymbols = Object.keys(unitTable) as readonly UnitSymbol[];

/** @internal What people write for a unit that has another symbol here, or that has several readings. */
export const misspellings: Readonly<Record<string, string>> = {
  hr: "h (hour)",
  hrs: "h (hour)",
  sec: "s (second)",
  yr: "year",
  a: "year",
  lbs: "lb (mass) or lbf (force)",
  "#": "lb (mass) or lbf (force)",
  ton: "t (1000 kg) or short_ton (2000 lb)",
  tons: "t (1000 kg) or short_ton (2000 lb)",
  tonne: "t (1000 kg)",
  kph: "km/h",
  kmh: "km/h",
  kmph: "km/h",
  mile: "mi",
  miles: "mi",
  kwh: "kWh",
  KWh: "kWh",
  kWH: "kWh",
  wh: "Wh",
  kw: "kW",
  HP: "hp (550 ft·lbf/s) or PS (75 kgf·m/s)",
  ps: "PS (75 kgf·m/s)",
  bhp: "hp (550 ft·lbf/s) or PS (75 kgf·m/s)",
  l: "L (litre)",
  liter: "L (litre)",
  litre: "L (litre)",
  c: "°C (temperature) or C (coulomb)",
  AH: "Ah",
  mpge: "MPGe",
  mpg: "MPGe (miles per 33.705 kWh)",
  um: "µm",
  inch: "in",
  "″": "in",
  "′": "ft",
  '"': "in",
  "'": "ft",
};
