import { raised } from "../unit/superscripts.js";
import { type Decimal, digitsOf, exponentOf } from "./decimal.js";

/** @internal A printed number in its parts, so that every form can set them: sign, digits, and the power of ten if it has one. */
export interface NumberText {
  readonly negative: boolean;
  readonly digits: string;
  readonly exponent: number | undefined;
}

/** The true minus sign, U+2212. @internal */
export const MINUS = "\u2212";
const THIN_SPACE = "\u202f";
/** From here on, and below there, a row of zeros is harder to read than a power of ten: the limits of `formatNumber`. */
const POWERS_FROM = 15;
const POWERS_BELOW = -6;
const MOST_ZEROS = 16;

/** @internal A decimal in the signs of a locale, or with thin spaces and a decimal point as ISO 80000-1 allows. */
export function decimalText(decimal: Decimal, locale: string | undefined): NumberText {
  const exponent = exponentOf(decimal);
  const powers = decimal.units !== 0n && (exponent >= POWERS_FROM || exponent < POWERS_BELOW);
  // A zero beside a spread of 10⁻³⁰ is a zero, not a line of them.
  const bare = decimal.units === 0n && decimal.places > MOST_ZEROS;
  const places = bare ? 0 : powers ? digitsOf(decimal) - 1 : decimal.places;
  const shown = { units: decimal.units, places };
  const plain = plainDigits(shown);
  const digits = locale === undefined ? grouped(plain) : inLocale(plain, Math.max(0, shown.places), locale);
  // Zero has no sign: −0.001 with two decimals is 0.00.
  return { negative: decimal.units < 0n, digits, exponent: powers ? exponent : undefined };
}

/** @internal The same as plain text: "−1.50×10⁻⁷". */
export function plainText({ negative, digits, exponent }: NumberText): string {
  return (negative ? MINUS : "") + digits + (exponent === undefined ? "" : `×10${raised(exponent)}`);
}

function plainDigits({ units, places }: Decimal): string {
  const size = String(units).replace("-", "");
  if (places <= 0) return units === 0n ? "0" : size + "0".repeat(-places);
  const padded = size.padStart(places + 1, "0");
  return `${padded.slice(0, -places)}.${padded.slice(-places)}`;
}

/** Threes by thin spaces from five digits on; four stand together, as in a year. */
function grouped(plain: string): string {
  const [whole = "", fraction] = plain.split(".");
  const groups = whole.length >= 5 ? whole.replace(/(?<=\d)(?=(\d{3})+$)/g, THIN_SPACE) : whole;
  return fraction === undefined ? groups : `${groups}.${fraction}`;
}

function inLocale(plain: string, places: number, locale: string): string {
  const format = new Intl.NumberFormat(locale, { minimumFractionDigits: places, maximumFractionDigits: places });
  // A text, which keeps every digit: a number would lose those behind the seventeenth.
  return format.format(plain as `${number}`);
}
