/**
 * @internal A decimal number as it is printed: `units` steps of 10^−`places`. It is whole-number arithmetic, because doubles
 * cannot hold the decimals that people read: 2.675 is a little less than that, and would print as 2.67.
 */
export interface Decimal {
  readonly units: bigint;
  /** Decimal places; negative when the last digit stands for tens, hundreds and so on. */
  readonly places: number;
}

/** @internal The decimal that a number prints as, with all its digits: the shortest that reads back to the same number. */
export function decimalOf(value: number): Decimal {
  const [mantissa = "", exponent = "0"] = String(value).split("e");
  const [whole = "", fraction = ""] = mantissa.split(".");
  return { units: BigInt(whole + fraction), places: fraction.length - Number(exponent) };
}

/**
 * @internal A number rounded to decimal places. A tie goes away from zero, rule B of ISO 80000-1 annex B: 2.675 becomes 2.68,
 * and −0.5 becomes −1.
 */
export function roundedTo(value: number, places: number): Decimal {
  const exact = decimalOf(value);
  if (places >= exact.places) return { units: exact.units * 10n ** BigInt(places - exact.places), places };
  const step = 10n ** BigInt(exact.places - places);
  const half = exact.units < 0n ? -step / 2n : step / 2n;
  return { units: (exact.units + half) / step, places };
}

/** @internal The places that leave so many significant digits, once rounded: 9.996 with three digits is 10.0, not 10.00. */
export function placesFor(value: number, digits: number): number {
  const exact = decimalOf(value);
  const places = exact.places + digits - digitsOf(exact);
  return digitsOf(roundedTo(value, places)) > digits ? places - 1 : places;
}

/** @internal How many significant digits are printed; one for a zero. */
export function digitsOf({ units }: Decimal): number {
  return String(units).replace("-", "").length;
}

/** @internal The power of ten of the first digit. */
export function exponentOf(decimal: Decimal): number {
  return digitsOf(decimal) - 1 - decimal.places;
}

/** @internal The nearest double. */
export function numberOf({ units, places }: Decimal): number {
  return Number(`${units}e${-places}`);
}
