/**
 * @internal What people write for a unit that has another symbol here, or that has several readings: what to write, and the
 * words that lead to it.
 */
export const misspellings = {
  "h (hour)": "hr hour",
  d: "day",
  min: "minute",
  "s (second)": "sec second",
  year: "yr a",
  "lb (mass) or lbf (force)": "lbs #",
  "t (1000 kg) or short_ton (2000 lb)": "ton",
  "t (1000 kg)": "tonne metric",
  short_ton: "short",
  "US_gal or imp_gal": "gal gallon US imp",
  N·m: "Nm N.m",
  lbf·ft: "lb-ft ft-lb lbft ftlb lb.ft ft.lb",
  "km/h": "kph kmh kmph",
  mi: "mile",
  kWh: "kwh KWh kWH",
  Wh: "wh",
  kW: "kw",
  "hp (550 ft·lbf/s) or PS (75 kgf·m/s)": "HP bhp",
  "PS (75 kgf·m/s)": "ps cv ch",
  "L (litre)": "l liter litre",
  "°C (temperature) or C (coulomb)": "c",
  "°C": "ºC",
  "°F": "ºF",
  Ah: "AH",
  MPGe: "mpge",
  "MPGe (miles per 33.705 kWh)": "mpg",
  µm: "um",
  in: 'inch ″ "',
  ft: "′ '",
} as const satisfies Readonly<Record<string, string>>;

/** @internal What to write instead of a misspelt symbol, or of several of it, when that is known. */
export function adviceFor(symbol: string): string | undefined {
  return Object.entries(misspellings).find(([, words]) =>
    words.split(" ").some((word) => word === symbol || `${word}s` === symbol),
  )?.[0];
}

/** @internal The same for the type system, which says it in its messages, too: never when it is not known. */
export type AdviceFor<Symbol extends string> = {
  [Advice in keyof typeof misspellings]: ` ${(typeof misspellings)[Advice]} ` extends `${string} ${Singular<Symbol>} ${string}`
    ? Advice
    : never;
}[keyof typeof misspellings];

type Singular<Word extends string> = Word | (Word extends `${infer One}s` ? One : never);
