import { describeGiven } from "../check/describe-given.js";
import { SUPERSCRIPTS } from "../unit/superscripts.js";
import { fail } from "./errors.js";

const MINUS = "\u2212";
const THIN_SPACE = "\u202f";

/** All digits of a number, grouped; for the steps of a working. @internal */
export function fullNumber(value: number): string {
  return readable(String(value));
}

/** At most six significant digits, all digits of a whole number; for `toString`. @internal */
export function shortNumber(value: number): string {
  if (Number.isInteger(value) && Math.abs(value) < 1e15) return fullNumber(value);
  return readable(String(Number(value.toPrecision(6))));
}

/**
 * A number with exactly so many significant digits, with a true minus sign and digits grouped in threes by thin spaces
 * from five digits on, as ISO 80000-1 recommends.
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
  const rounded = value.toPrecision(digits);
  const exponent = rounded.indexOf("e");
  const plain = exponent >= 0 && Math.abs(Number(rounded)) < 1e15 && Math.abs(Number(rounded)) >= 1e-6;
  return readable(plain ? withoutExponent(rounded, digits) : rounded);
}

/** A number that is already printed, with its unit. @internal */
export function withUnit(number: string, unit: string): string {
  return unit === "1" ? number : number + (unit === "°" ? "" : " ") + unit;
}

function withoutExponent(rounded: string, digits: number): string {
  const number = Number(rounded);
  const magnitude = Math.floor(Math.log10(Math.abs(number)));
  return number.toFixed(Math.max(0, digits - 1 - magnitude));
}

function readable(text: string): string {
  const [mantissa = "", exponent] = text.split("e");
  const [whole = "", fraction] = mantissa.replace("-", MINUS).split(".");
  const grouped = whole.replace(MINUS, "").length >= 5 ? whole.replace(/(?<=\d)(?=(\d{3})+$)/g, THIN_SPACE) : whole;
  const number = fraction === undefined ? grouped : `${grouped}.${fraction}`;
  return exponent === undefined ? number : `${number}×10${superscript(Number(exponent))}`;
}

function superscript(exponent: number): string {
  const size = [...String(Math.abs(exponent))].map((c) => SUPERSCRIPTS.charAt(Number(c))).join("");
  return exponent < 0 ? `⁻${size}` : size;
}
