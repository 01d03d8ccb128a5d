const table = {
  // no prototype, so that a text such as "constructor" finds nothing here
  __proto__: null as never,
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
} as const;

/** @internal The same for the type system, which says it in its messages, too. */
export type Misspellings = typeof table;

/** @internal What people write for a unit that has another symbol here, or that has several readings. */
export const misspellings: Readonly<Record<string, string>> = table;
