import { fail } from "../quantity/errors.js";
import { decimal, type ExactProduct, isBounded, MAX_POWER, productOf, single } from "./exact-product.js";
import { nearestOf } from "./likeness.js";
import { adviceFor } from "./misspellings.js";
import { wholeNumber } from "./superscripts.js";

/**
 * The grammar of unit texts, at run time. Its compile-time twin is `literal.ts`.
 *
 * ```
 * unit    = [ product ] [ "/" product ]      a second "/" needs parentheses
 * product = factor { ( "·" | "*" | " " ) factor }      a symbol may also follow a number at once
 * factor  = number | symbol [ power ] | "(" unit ")" [ power ]
 * power   = "^" integer | integer | superscript integer
 * ```
 */

/** Longest unit text that is read; anything longer is refused before any work is done. */
export const MAX_UNIT_LENGTH = 80;

/**
 * Spaces, then a number, a symbol, any other character, or the end. "deg C", "N.m" and "lb-ft" are taken whole, as people mean
 * them, though no symbol is written so; otherwise the first would be a degree of angle times a coulomb.
 */
const TOKEN =
  /([ \u00a0\u202f]*)(?:(\d+(?:\.\d+)?)|((?:°|deg)[ \u00a0\u202f][CF]\p{L}*|[\p{L}_°%Δ#"'′″]+(?:[-.]\p{L}+)*)|(.)|$)/suy;
/** What may stand right behind a symbol or a parenthesis. */
const POWER = /\^?-?\d+|⁻?[⁰¹²³⁴⁵⁶⁷⁸⁹]+/y;

/** @internal A text with one code for characters that look the same: ohm and omega, kelvin and K, mu and micro, degrees Celsius. */
export function canonical(text: string): string {
  return text.normalize().replace(/[℃℉\u03bc]/g, (sign) => (sign === "\u03bc" ? "\u00b5" : sign.normalize("NFKC")));
}

/** @internal Reads a text, whose symbols are among the known ones, into their product. */
export function parseUnit(given: string, known: ReadonlyMap<string, string>): ExactProduct {
  if (given.length > MAX_UNIT_LENGTH) {
    fail("UNIT_SYNTAX", `a unit has at most ${MAX_UNIT_LENGTH} characters: got ${given.length}`);
  }
  const text = canonical(given);

  // The token ahead: spaces, then one of three things or the end; and where it starts and ends
  let [space, number, symbol, other]: (string | undefined)[] = [];
  let start = 0;
  let end = 0;
  const take = (): void => {
    TOKEN.lastIndex = end;
    [, space = "", number, symbol, other] = TOKEN.exec(text) ?? [];
    start = end + space.length;
    end = TOKEN.lastIndex;
  };

  const refuse = (what: string, at = start, hint = "", unknown?: object): never =>
    fail(
      unknown === undefined ? "UNIT_SYNTAX" : "UNKNOWN_UNIT",
      `${what}${unknown === undefined ? "," : ""} at character ${at + 1} of the unit '${text}'${hint}`,
      { unit: text, position: at + 1, ...unknown },
    );
  const unexpected = (): never => {
    const [next] = text.slice(start);
    return refuse(next === undefined ? "a unit is missing at the end" : `unexpected '${next}'`);
  };

  const bounded = (result: ExactProduct | undefined, at = start): ExactProduct =>
    result !== undefined && isBounded(result) ? result : refuse(`a power must be 1 to ${MAX_POWER}`, at);

  const quotient = (): ExactProduct => {
    const numerator = other === "/" ? single() : series();
    if (other !== "/") return numerator;
    take();
    const result = bounded(productOf([numerator, 1], [series(), -1]));
    return other === "/" ? refuse("a second '/' needs parentheses: write W/(m²·K), not W/m²/K") : result;
  };

  const series = (): ExactProduct => {
    let result = single();
    for (;;) {
      // "100km" is 100 km; nothing else may touch what it multiplies
      const touching = number !== undefined;
      result = bounded(productOf([result, 1], [factor(), 1]));
      if (other === "·" || other === "*" || other === "⋅") take();
      else if (
        symbol !== undefined ? space === "" && !touching : space === "" || (number === undefined && other !== "(")
      ) {
        return result;
      }
    }
  };

  const factor = (): ExactProduct => {
    let result: ExactProduct;
    if (number !== undefined) {
      result = decimal(number);
      if (result.n === 0n) refuse("a unit cannot hold a factor of zero", end);
    } else {
      result = symbol === undefined ? parenthesis() : named(symbol);
      POWER.lastIndex = end;
      const [power] = POWER.exec(text) ?? [];
      if (power !== undefined) {
        end += power.length;
        const size = wholeNumber(power.replace("^", ""));
        // Not multiplied out before it is known to be small
        const small = size !== 0 && Math.abs(size) <= MAX_POWER;
        result = bounded(small ? productOf([result, size]) : undefined, end);
      }
    }
    take();
    return result;
  };

  const named = (symbol: string): ExactProduct => {
    if (!known.has(symbol)) {
      const advice = adviceFor(symbol);
      const near = advice === undefined ? nearestOf(symbol, [...known.keys()]).slice(0, 3) : [advice];
      const hint = near[0] === undefined ? "" : `: did you mean ${near.join(" or ")}?`;
      refuse(`unknown unit '${symbol}'`, start, hint, { symbol, nearest: near });
    }
    // In a compound a temperature is an interval, so K and ΔK are one symbol there.
    return single(symbol.replace("Δ", ""));
  };

  const parenthesis = (): ExactProduct => {
    if (other !== "(") unexpected();
    take();
    const inner = quotient();
    return other === ")" ? inner : refuse("a ')' is missing");
  };

  take();
  const unit = quotient();
  return start < text.length ? unexpected() : unit;
}
