/**
 * @internal What people write for a unit that has another symbol here, or that has several readings: what to write, and the
 * words that lead to it.
 */
export const misspellings = {
  "h (hour)": "hr hrs hour hours",
  "d (day)": "day days",
  "min (minute)": "mins minute minutes",
  "s (second)": "sec second seconds",
  year: "yr a years",
  "lb (mass) or lbf (force)": "lbs #",
  "t (1000 kg) or short_ton (2000 lb)": "ton tons",
  "t (1000 kg)": "tonne tonnes metric",
  "short_ton (2000 lb)": "short",
  "US_gal (231 in³) or imp_gal (4.54609 L)": "gal gallon gallons",
  US_gal: "US",
  imp_gal: "imp",
  N·m: "Nm",
  lbf·ft: "lb-ft ft-lb ft-lbs lbft ftlb lb.ft ft.lb",
  "km/h": "kph kmh kmph",
  mi: "mile miles",
  kWh: "kwh KWh kWH",
  Wh: "wh",
  kW: "kw",
  "hp (550 ft·lbf/s) or PS (75 kgf·m/s)": "HP bhp",
  "PS (75 kgf·m/s)": "ps cv ch",
  "L (litre)": "l liter litre",
  "°C (temperature) or C (coulomb)": "c",
  Ah: "AH",
  MPGe: "mpge",
  "MPGe (miles per 33.705 kWh)": "mpg",
  µm: "um",
  in: 'inch ″ "',
  ft: "′ '",
} as const satisfies Readonly<Record<string, string>>;

/** @internal What to write instead of a misspelt symbol, when that is known. */
export function adviceFor(symbol: string): string | undefined {
  return Object.entries(misspellings).find(([, words]) => words.split(" ").includes(symbol))?.[0];
}

/** @internal The same for the type system, which says it in its messages, too: never when it is not known. */
export type AdviceFor<Symbol extends string> = {
  [Advice in keyof typeof misspellings]: ` ${(typeof misspellings)[Advice]} ` extends `${string} ${Symbol} ${string}`
    ? Advice
    : never;
}[keyof typeof misspellings];
