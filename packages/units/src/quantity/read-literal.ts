import { describeGiven } from "../check/describe-given.js";
import { wholeNumber } from "../unit/superscripts.js";
import { builtIn, type Unit, type UnitSystem, unitOf } from "../unit/unit.js";
import { fail } from "./errors.js";

/** Longest text that `q` reads. */
export const MAX_QUANTITY_LENGTH = 120;

/** A group of digits does not start with a lone zero: "0,075" is a decimal comma, and never 75. */
const NUMBER =
  /^(Δ?)\s*([+\-−–]?)((?:[1-9]\d{0,2}(?:[ \u00a0\u202f,]\d{3})+|\d+)(?:\.\d+)?|\.\d+)(?:(?:[eE]|[ \u00a0\u202f]?×[ \u00a0\u202f]?10\^)([+\-−–]?\d{1,3})|[ \u00a0\u202f]?×[ \u00a0\u202f]?10(⁻?[⁰¹²³⁴⁵⁶⁷⁸⁹]{1,3}))?/;
/** A number with a decimal comma, grouped by points or spaces or not at all. */
const DECIMAL_COMMA = /^([^\d,]*)(\d{1,3}(?:[.\s]\d{3})+|\d+),(\d+(?![\d.,]).*)/s;

/** @internal What a text says: a number, and a unit that was read. */
export interface Literal {
  readonly value: number;
  readonly unit: Unit;
}

/** @internal Reads number and unit of a text such as "1 200 N·m", "−7 °C", "Δ10 K", "2×10⁻³ Ω". */
export function readLiteral(given: string, system = builtIn): Literal {
  if (typeof given !== "string")
    fail("NUMBER_SYNTAX", `a quantity must be a text such as "12.5 kg": got ${describeGiven(given)}`);
  return readPlain(given, system) ?? readAny(given.trim(), system);
}

/**
 * Reads what most texts are: plain digits, one space, and a unit text that is remembered; or gives up. A whole number and a
 * power of ten that doubles hold exactly have the nearest double as their quotient, as a division rounds once (IEEE 754).
 */
function readPlain(text: string, { units }: UnitSystem): Literal | undefined {
  let whole = 0;
  let divisor = 1;
  let step = 1;
  let at = 0;
  for (; at < MAX_QUANTITY_LENGTH; at++) {
    const code = text.charCodeAt(at);
    if (code > 47 && code < 58) {
      whole = whole * 10 + code - 48;
      divisor *= step;
    } else if (code === 46 && step === 1) step = 10;
    else break;
  }
  // Digits are wanted behind a point, and at least one in all
  const plain = text[at] === " " && (step === 1 ? at > 0 : divisor > 1) && whole < 2 ** 53 && divisor <= 1e22;
  const unit = plain ? units.get(text.slice(at + 1)) : undefined;
  // "12 1" is no number of anything
  return unit === undefined || unit.text === "1" ? undefined : { value: whole / divisor, unit };
}

function readAny(text: string, system: UnitSystem): Literal {
  if (text.length > MAX_QUANTITY_LENGTH)
    fail("NUMBER_SYNTAX", `a quantity has at most ${MAX_QUANTITY_LENGTH} characters`);
  const match = NUMBER.exec(text);
  if (match === null) fail("NUMBER_SYNTAX", `'${text}' does not start with a number, such as "12.5 kg"`);
  const [all, delta = "", sign = "", digits = "", exponent, power = exponent ?? "0"] = match;
  const rest = text.slice(all.length);
  // "0,5 kg", "12 34 kg" and "1.2.3 kg"; but "5 1/km" is five per kilometre
  if (/^(,\d|\.|[\s.]*\d)/.test(rest) && !/^\s+1\s*\//.test(rest)) {
    const [, before, whole, behind] = DECIMAL_COMMA.exec(text) ?? [];
    const mended = whole ? `: write ${before}${whole.replace(/[.\s]/g, "")}.${behind}` : "";
    fail(
      "NUMBER_SYNTAX",
      `'${text}' cannot be read after '${all}': spaces and commas group digits in threes, the decimal sign is a point${mended}`,
    );
  }
  const value = Number(`${sign.replace(/[−–]/, "-")}${digits.replace(/[^\d.]/g, "")}e${wholeNumber(power)}`);
  return { value, unit: unitOf(delta + rest.trim() || "1", system) };
}
