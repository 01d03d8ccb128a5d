import { describeGiven } from "../check/describe-given.js";
import { raised } from "../unit/superscripts.js";
import { fail } from "./errors.js";

const MINUS = "\u2212";
const THIN_SPACE = "\u202f";

/** All digits of a number, grouped; for the steps of a working. @internal */
export function fullNumber(value: number): string {
  return readable(String(value));
}

/** At most six significant digits, all digits of a whole number; for `toString`. @internal */
export function shortNumber(value: number): string {
  return fullNumber(Number.isInteger(value) && Math.abs(value) < 1e15 ? value : Number(rounded(value, 6)));
}

/**
 * Rounds the decimal that a number prints as, a tie away from zero, as the functions that print do (ISO 80000-1, annex B, rule B).
 * The double nearest to 2.675 is smaller; where a tie is what prints, a larger last digit takes its place.
 */
function rounded(value: number, digits: number): string {
  const oneMore = value.toExponential(digits);
  return (Number(oneMore) === value ? Number(oneMore.replace("5e", "9e")) : value).toPrecision(digits);
}

/**
 * A number with exactly so many significant digits, with a true minus sign and digits grouped in threes by thin spaces
 * from five digits on, as ISO 80000-1 recommends. A tie goes away from zero, as where {@link printed} rounds.
 *
 * @param value - finite number
 * @param digits - significant digits, 1 to 15
 * @throws QuantityError `NOT_FINITE`, and `NUMBER_SYNTAX` when `digits` is not a whole number from 1 to 15
 * @example
 * formatNumber(27134.4, 3); // "27\u202f100"
 */
export function formatNumber(value: number, digits: number): string {
  if (!Number.isFinite(value)) fail("NOT_FINITE", `a number to print must be finite: got ${describeGiven(value)}`);
  if (!Number.isInteger(digits) || digits < 1 || digits > 15) {
    fail("NUMBER_SYNTAX", `digits must be a whole number from 1 to 15: got ${describeGiven(digits)}`);
  }
  const text = rounded(value, digits);
  // A number with more digits before the point than were asked for comes with an exponent
  return readable(text.includes("e+") && Math.abs(Number(text)) < 1e15 ? String(Number(text)) : text);
}

/** A number that is already printed, with its unit. @internal */
export function withUnit(number: string, unit: string): string {
  return unit === "1" ? number : number + (unit === "°" ? "" : " ") + unit;
}

function readable(text: string): string {
  const [mantissa = "", exponent] = text.split("e");
  const [whole = "", fraction] = mantissa.replace("-", MINUS).split(".");
  const grouped = /\d{5}/.test(whole) ? whole.replace(/\B(?=(\d{3})+$)/g, THIN_SPACE) : whole;
  const number = fraction === undefined ? grouped : `${grouped}.${fraction}`;
  return exponent === undefined ? number : `${number}×10${raised(Number(exponent))}`;
}
