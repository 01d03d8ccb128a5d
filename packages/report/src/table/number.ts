import { formatNumber } from "@tarewatt/units";

const MOST_DIGITS = 15;
const MOST_PLACES = 12;

/**
 * @internal Decimal places that a spread justifies: half the width is kept to two significant digits, and the numbers end
 * where it ends. Negative places round to tens, hundreds and so on. Undefined for a spread without width.
 */
export function placesOfSpread(low: number, high: number): number | undefined {
  const half = high / 2 - low / 2;
  if (half === 0) return undefined;
  // toExponential rounds first, so that a half width of 9.96 counts as the 10 that it would be printed as.
  const places = 1 - exponentOf(half, 1);
  const largest = Math.max(Math.abs(low), Math.abs(high));
  return Math.min(places, MOST_DIGITS - 1 - exponentOf(largest, MOST_DIGITS - 1));
}

/** @internal A number with so many decimal places, with the signs and the grouping of `formatNumber`. */
export function formatPlaces(value: number, places: number): string {
  const unit = 10 ** -places;
  const rounded = places >= 0 ? Number(value.toFixed(Math.min(places, 100))) : Math.round(value / unit) * unit;
  if (rounded === 0) return `0${places > 0 && places <= MOST_PLACES ? `.${"0".repeat(places)}` : ""}`;
  const digits = exponentOf(rounded, MOST_DIGITS - 1) + places + 1;
  return formatNumber(rounded, Math.min(MOST_DIGITS, Math.max(1, digits)));
}

/** @internal A best value with its spread, all three to the places that the spread justifies: "27.1 (22.3 to 31.8)". */
export function formatSpread(
  { p10, p50, p90 }: { readonly p10: number; readonly p50: number; readonly p90: number },
  digits: number,
): string {
  const places = placesOfSpread(p10, p90);
  const print = (value: number): string =>
    places === undefined ? formatNumber(value, digits) : formatPlaces(value, places);
  return `${print(p50)} (${print(p10)} to ${print(p90)})`;
}

/** @internal Decimal places that show every one of the numbers to so many significant digits, without trailing zeros in all. */
export function commonPlaces(values: readonly number[], digits: number): number {
  const places = values.map((value) => {
    const [mantissa = "", exponent = "0"] = Number(value.toPrecision(digits)).toExponential().split("e");
    return Math.max(0, (mantissa.split(".")[1]?.length ?? 0) - Number(exponent));
  });
  return Math.min(MOST_PLACES, Math.max(0, ...places));
}

function exponentOf(value: number, fraction: number): number {
  return Number(value.toExponential(fraction).split("e")[1]);
}
