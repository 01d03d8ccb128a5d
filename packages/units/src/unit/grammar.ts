import { QuantityError } from "../quantity/errors.js";
import { misspellings } from "./misspellings.js";
import { nearest } from "./nearest.js";
import { decimal, divide, multiply, ONE, PI, power, type Rational } from "./rational.js";
import { lowered } from "./superscripts.js";

/**
 * The grammar of unit texts, at run time. Its compile-time twin is `literal.ts`.
 *
 * ```
 * unit    = [ product ] [ "/" product ]      a second "/" needs parentheses
 * product = factor { ( "·" | "*" | " " ) factor }
 * factor  = number | symbol [ power ] | "(" unit ")" [ power ]
 * power   = "^" integer | integer | superscript integer
 * ```
 */

/** @internal A unit text read into symbols with their powers and a numeric factor ("100" in "kWh/100 km"). */
export interface ParsedUnit {
  readonly terms: ReadonlyMap<string, number>;
  readonly scale: Rational;
}

/** Longest unit text that is read; anything longer is refused before any work is done. */
export const MAX_UNIT_LENGTH = 80;
const MAX_DEPTH = 8;
const MAX_POWER = 9;
const MAX_FACTOR_DIGITS = 300;

/** Spaces, then a number, a symbol, a power behind either a symbol or a parenthesis, or any other character. */
const TOKEN = /([ \u00a0\u202f]*)(?:(\d+(?:\.\d+)?)|([\p{L}_°%Δ#"'′″]+)|(.)|$)/suy;
const POWER = /\^?(-?\d+)|(⁻?[⁰¹²³⁴⁵⁶⁷⁸⁹]+)/y;

/** @internal Reads a text whose symbols are among the known ones. */
export function parseUnit(text: string, known: ReadonlyMap<string, string>): ParsedUnit {
  if (text.length > MAX_UNIT_LENGTH) {
    throw new QuantityError("UNIT_SYNTAX", `a unit has at most ${MAX_UNIT_LENGTH} characters: got ${text.length}`);
  }
  // Characters that look the same but are coded apart: micro and mu, ohm and omega, kelvin and K
  const plain = text
    .replace(/\u03bc/g, "\u00b5")
    .replace(/\u2126/g, "\u03a9")
    .replace(/\u212a/g, "K");
  return new UnitReader(plain, known).read();
}

class UnitReader {
  private position = 0;
  private depth = 0;

  constructor(
    private readonly text: string,
    private readonly known: ReadonlyMap<string, string>,
  ) {}

  read(): ParsedUnit {
    const unit = this.quotient();
    this.position += this.peek().space.length;
    const [next] = this.text.slice(this.position);
    return next === undefined ? unit : this.fail(`unexpected '${next}'`);
  }

  private quotient(): ParsedUnit {
    const numerator = this.peek().other === "/" ? { terms: new Map(), scale: ONE } : this.product();
    if (this.peek().other !== "/") return numerator;
    this.take();
    const denominator = this.product();
    if (this.peek().other === "/") this.fail("a second '/' needs parentheses: write W/(m²·K), not W/m²/K");
    return combine(numerator, denominator, -1);
  }

  private product(): ParsedUnit {
    let result = this.factor();
    for (;;) {
      const { space, number, symbol, other } = this.peek();
      if (other === "·" || other === "*" || other === "⋅") this.take();
      else if (space === "" || (number === undefined && symbol === undefined && other !== "(")) return result;
      result = combine(result, this.factor(), 1);
    }
  }

  private factor(): ParsedUnit {
    const { number, symbol, other } = this.take();
    if (number !== undefined) {
      const scale = decimal(number);
      return scale.n === 0n ? this.fail("a unit cannot hold a factor of zero") : { terms: new Map(), scale };
    }
    if (symbol === "π") return { terms: new Map(), scale: PI };
    if (symbol !== undefined) {
      if (!this.known.has(symbol)) this.unknown(symbol);
      // In a compound a temperature is an interval, so K and ΔK are one symbol there.
      return this.raised({ terms: new Map([[symbol.replace("Δ", ""), 1]]), scale: ONE });
    }
    if (other !== "(") {
      this.position -= other?.length ?? 0;
      this.fail(other === undefined ? "a unit is missing at the end" : `unexpected '${other}'`);
    }
    if (++this.depth > MAX_DEPTH) this.fail(`more than ${MAX_DEPTH} parentheses deep`);
    const inner = this.quotient();
    if (this.take().other !== ")") this.fail("a ')' is missing");
    this.depth--;
    return this.raised(inner);
  }

  /** Applies the power that follows, if any. */
  private raised({ terms, scale }: ParsedUnit): ParsedUnit {
    POWER.lastIndex = this.position;
    const [all = "", plain, superscript = ""] = POWER.exec(this.text) ?? [];
    this.position += all.length;
    const exponent = all === "" ? 1 : Number(plain ?? lowered(superscript));
    const powers = [...terms].map(([symbol, power]) => [symbol, power * exponent] as const);
    const digits = (String(scale.n).length + String(scale.d).length) * Math.abs(exponent);
    if (exponent === 0 || digits > MAX_FACTOR_DIGITS || powers.some(([, power]) => Math.abs(power) > MAX_POWER)) {
      this.fail(`a power must be 1 to ${MAX_POWER}`);
    }
    return { terms: new Map(powers), scale: power(scale, exponent) };
  }

  private peek(): { space: string; number?: string; symbol?: string; other?: string; end: number } {
    TOKEN.lastIndex = this.position;
    const [, space = "", number, symbol, other] = TOKEN.exec(this.text) as unknown as string[];
    return { space, number, symbol, other, end: TOKEN.lastIndex } as ReturnType<UnitReader["peek"]>;
  }

  private take(): ReturnType<UnitReader["peek"]> {
    const token = this.peek();
    this.position = token.end;
    return token;
  }

  private unknown(symbol: string): never {
    this.position -= symbol.length;
    const { [symbol]: advice } = misspellings;
    const near = advice === undefined ? nearest(symbol, this.known.keys()).slice(0, 3) : [advice];
    throw new QuantityError(
      "UNKNOWN_UNIT",
      `unknown unit '${symbol}' ${this.where()}${near.length === 0 ? "" : `: did you mean ${near.join(" or ")}?`}`,
      { unit: this.text, position: this.position + 1, symbol, nearest: near },
    );
  }

  private fail(what: string): never {
    throw new QuantityError("UNIT_SYNTAX", `${what}, ${this.where()}`, {
      unit: this.text,
      position: this.position + 1,
    });
  }

  private where(): string {
    return `at character ${this.position + 1} of the unit '${this.text}'`;
  }
}

/** @internal The product a × b^sign. */
export function combine(a: ParsedUnit, b: ParsedUnit, sign: 1 | -1): ParsedUnit {
  const terms = new Map(a.terms);
  for (const [symbol, exponent] of b.terms) {
    const sum = (terms.get(symbol) ?? 0) + sign * exponent;
    if (Math.abs(sum) > MAX_POWER) {
      throw new QuantityError("UNIT_SYNTAX", `a power must be 1 to ${MAX_POWER}: got ${sum} of ${symbol}`);
    }
    if (sum === 0) terms.delete(symbol);
    else terms.set(symbol, sum);
  }
  return { terms, scale: (sign === 1 ? multiply : divide)(a.scale, b.scale) };
}
