import { describeGiven } from "../check/describe-given.js";
import { lowered } from "../unit/superscripts.js";
import { builtIn, type Unit, unitOf } from "../unit/unit.js";
import { fail } from "./errors.js";

/** Longest text that `q` reads. */
export const MAX_QUANTITY_LENGTH = 120;

const NUMBER =
  /^(Δ?)\s*([+\-−]?)((?:\d{1,3}(?:[ \u00a0\u202f,]\d{3})+|\d+)(?:\.\d+)?|\.\d+)(?:[eE]([+\-−]?\d{1,3})|×10(⁻?[⁰¹²³⁴⁵⁶⁷⁸⁹]{1,3}))?/;

/** @internal Reads number and unit of a text such as "1 200 N·m", "−7 °C", "Δ10 K", "2×10⁻³ Ω". */
export function readLiteral(given: string, system = builtIn): { readonly value: number; readonly unit: Unit } {
  if (typeof given !== "string")
    fail("NUMBER_SYNTAX", `a quantity must be a text such as "12.5 kg": got ${describeGiven(given)}`);
  const text = given.trim();
  if (text.length > MAX_QUANTITY_LENGTH)
    fail("NUMBER_SYNTAX", `a quantity has at most ${MAX_QUANTITY_LENGTH} characters`);
  const match = NUMBER.exec(text);
  if (match === null) fail("NUMBER_SYNTAX", `'${text}' does not start with a number, such as "12.5 kg"`);
  const [all, delta = "", sign = "", digits = "", exponent = "0", raised] = match;
  const rest = text.slice(all.length);
  if (/^,\d/.test(rest)) {
    const mended = text.replace(",", ".");
    fail("NUMBER_SYNTAX", `'${text}': a comma groups digits in threes, the decimal sign is a point: write ${mended}`);
  }
  // "12 34 kg" and "1.2.3 kg"; but "5 1/km" is five per kilometre
  if (/^(\.|[\s.]*\d)/.test(rest) && !/^\s+1\s*\//.test(rest)) {
    fail("NUMBER_SYNTAX", `'${text}' cannot be read after '${all}': spaces and commas group digits in threes`);
  }
  const power = raised === undefined ? exponent.replace("−", "-") : lowered(raised);
  const size = Number(`${digits.replace(/[^\d.]/g, "")}e${power}`);
  return { value: /[-−]/.test(sign) ? -size : size, unit: unitOf(delta + rest.trim() || "1", system) };
}
