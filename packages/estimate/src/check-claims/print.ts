import { formatNumber } from "@tarewatt/units";

const DIGITS = 3;

/** @internal A number with its unit, as an editor prints it. */
export function numberIn(value: number, unit: string): string {
  const text = formatNumber(value, Math.abs(value) >= 1000 ? 4 : DIGITS);
  return unit === "1" ? text : `${text} ${unit}`;
}

/** @internal A number with so many decimals. */
export function rounded(value: number, decimals: number): string {
  return value.toFixed(decimals);
}

/** @internal A chance in words: rare ones as one in so many. */
export function chanceInWords(chance: number): string {
  if (chance >= 0.01) return `${Number((100 * chance).toPrecision(2))} % of cases`;
  if (chance < 1e-6) return "less than one in a million cases";
  return `one in ${formatNumber(1 / chance, 2)} cases`;
}
