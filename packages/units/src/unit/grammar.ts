import { QuantityError } from "../quantity/errors.js";
import { decimal, divide, multiply, ONE, PI, power, type Rational } from "./rational.js";
import { misspellings, type UnitSymbol, unitTable } from "./table.js";

/**
 * The grammar of unit texts, at run time. Its compile-time twin is `literal.ts`.
 *
 * ```
 * unit    = product [ "/" product ]          a second "/" needs parentheses
 * product = factor { ( "·" | "*" | " " ) factor }
 * factor  = number | symbol [ power ] | "(" unit ")" [ power ]
 * power   = "^" integer | integer | superscript integer
 * ```
 */

/** @internal A unit text read into symbols with their powers and a numeric factor ("100" in "kWh/100 km"). */
export interface ParsedUnit {
  readonly terms: ReadonlyMap<UnitSymbol, number>;
  readonly scale: Rational;
}

/** Longest unit text that is read; anything longer is refused before any work is done. */
export const MAX_UNIT_LENGTH = 80;
const MAX_DEPTH = 8;
const MAX_POWER = 9;
const MAX_FACTOR_DIGITS = 300;

const SUPERSCRIPTS = "⁰¹²³⁴⁵⁶⁷⁸⁹";
const isSymbolCharacter = (c: string): boolean => /[\p{L}_°%Δ#"'′″]/u.test(c);

/** @internal */
export function parseUnit(text: string): ParsedUnit {
  if (text.length > MAX_UNIT_LENGTH) {
    throw new QuantityError("UNIT_SYNTAX", `a unit has at most ${MAX_UNIT_LENGTH} characters: got ${text.length}`, {
      length: text.length,
    });
  }
  return new UnitReader(
    text.replaceAll("\u03bc", "\u00b5").replaceAll("\u2126", "\u03a9").replaceAll("\u212a", "K"),
  ).read();
}

class UnitReader {
  private position = 0;
  private depth = 0;

  constructor(private readonly text: string) {}

  read(): ParsedUnit {
    const unit = this.quotient();
    if (this.position < this.text.length) this.fail(`unexpected '${this.peek()}'`);
    return unit;
  }

  private quotient(): ParsedUnit {
    this.skipSpaces();
    const numerator = this.peek() === "/" ? { terms: new Map(), scale: ONE } : this.product();
    this.skipSpaces();
    if (this.peek() !== "/") return numerator;
    this.position++;
    const denominator = this.product();
    this.skipSpaces();
    if (this.peek() === "/") this.fail("a second '/' needs parentheses: write W/(m²·K), not W/m²/K");
    return combine(numerator, denominator, -1);
  }

  private product(): ParsedUnit {
    let result = this.factor();
    for (;;) {
      const before = this.position;
      this.skipSpaces();
      const next = this.peek();
      if (next === "·" || next === "*" || next === "⋅") this.position++;
      else if (before === this.position || next === "" || next === "/" || next === ")") return result;
      result = combine(result, this.factor(), 1);
    }
  }

  private factor(): ParsedUnit {
    this.skipSpaces();
    const start = this.position;
    const next = this.peek();
    if (next === "(") {
      if (++this.depth > MAX_DEPTH) this.fail(`more than ${MAX_DEPTH} parentheses deep`);
      this.position++;
      const inner = this.quotient();
      if (this.peek() !== ")") this.fail("a ')' is missing");
      this.position++;
      this.depth--;
      return this.raised(inner, this.power());
    }
    if (next === "π") {
      this.position++;
      return { terms: new Map(), scale: PI };
    }
    const number = /^\d+(\.\d+)?/.exec(this.text.slice(start))?.[0];
    if (number !== undefined) {
      this.position += number.length;
      const scale = decimal(number);
      if (scale.n === 0n) this.fail("a unit cannot hold a factor of zero");
      return { terms: new Map(), scale };
    }
    while (isSymbolCharacter(this.peek())) this.position++;
    const symbol = this.text.slice(start, this.position);
    if (symbol === "%" || Object.hasOwn(unitTable, symbol)) {
      return { terms: new Map([[intervalOf(symbol as UnitSymbol), this.power()]]), scale: ONE };
    }
    if (symbol === "") this.fail(next === "" ? "a unit is missing at the end" : `unexpected '${next}'`);
    return unknownUnit(symbol, this.text, start);
  }

  private power(): number {
    const rest = this.text.slice(this.position);
    const plain = /^(?:\^(-?\d+)|(-?\d+))/.exec(rest);
    const raised = /^⁻?[⁰¹²³⁴⁵⁶⁷⁸⁹]+/.exec(rest)?.[0];
    let exponent = 1;
    if (plain !== null) {
      this.position += plain[0].length;
      exponent = Number(plain[1] ?? plain[2]);
    } else if (raised !== undefined) {
      this.position += raised.length;
      const digits = [...raised].map((c) => (c === "⁻" ? "-" : SUPERSCRIPTS.indexOf(c)));
      exponent = Number(digits.join(""));
    }
    if (exponent === 0 || Math.abs(exponent) > MAX_POWER)
      this.fail(`a power must be 1 to ${MAX_POWER}: got ${exponent}`);
    return exponent;
  }

  private raised(unit: ParsedUnit, exponent: number): ParsedUnit {
    const terms = new Map([...unit.terms].map(([symbol, power]) => [symbol, power * exponent]));
    const digits = unit.scale.n.toString().length + unit.scale.d.toString().length;
    if ([...terms.values()].some(tooLarge) || digits * Math.abs(exponent) > MAX_FACTOR_DIGITS) {
      this.fail(`a power must stay within ${MAX_POWER}`);
    }
    return { terms, scale: power(unit.scale, exponent) };
  }

  private peek(): string {
    return this.text.charAt(this.position);
  }

  private skipSpaces(): void {
    while (this.peek() === " " || this.peek() === "\u00a0" || this.peek() === "\u202f") this.position++;
  }

  private fail(what: string): never {
    throw new QuantityError("UNIT_SYNTAX", `${what}, at character ${this.position + 1} of the unit '${this.text}'`, {
      unit: this.text,
      position: this.position + 1,
    });
  }
}

/** @internal The product a × b^sign. */
export function combine(a: ParsedUnit, b: ParsedUnit, sign: 1 | -1): ParsedUnit {
  const terms = new Map(a.terms);
  for (const [symbol, exponent] of b.terms) {
    const sum = (terms.get(symbol) ?? 0) + sign * exponent;
    if (tooLarge(sum)) {
      throw new QuantityError(
        "UNIT_SYNTAX",
        `a power must stay within ${MAX_POWER}: got ${symbol} to the power ${sum}`,
        {
          symbol,
          power: sum,
        },
      );
    }
    if (sum === 0) terms.delete(symbol);
    else terms.set(symbol, sum);
  }
  return { terms, scale: sign === 1 ? multiply(a.scale, b.scale) : divide(a.scale, b.scale) };
}

/** In a compound a temperature is an interval, so K and ΔK are one symbol there. */
function intervalOf(symbol: UnitSymbol): UnitSymbol {
  return (symbol.startsWith("Δ") ? symbol.slice(1) : symbol) as UnitSymbol;
}

function tooLarge(exponent: number): boolean {
  return Math.abs(exponent) > MAX_POWER;
}

function unknownUnit(symbol: string, text: string, start: number): never {
  const known = Object.hasOwn(misspellings, symbol) ? [misspellings[symbol] as string] : nearestSymbols(symbol);
  const hint = known.length > 0 ? `: did you mean ${known.join(" or ")}?` : "";
  throw new QuantityError("UNKNOWN_UNIT", `unknown unit '${symbol}' at character ${start + 1} of '${text}'${hint}`, {
    unit: text,
    symbol,
    position: start + 1,
    nearest: known,
  });
}

function nearestSymbols(symbol: string): string[] {
  return nearest(symbol, Object.keys(unitTable)).slice(0, 3);
}

/**
 * The known words nearest to a misspelt one, nearest first; empty when nothing is near.
 *
 * @param word - what was given
 * @param known - what would have been understood
 * @example
 * nearest("dragCoeficient", ["dragCoefficient", "frontalArea"]); // ["dragCoefficient"]
 */
export function nearest(word: string, known: Iterable<string>): string[] {
  const short = word.slice(0, 40).toLowerCase();
  const limit = Math.max(1, Math.floor(short.length / 3));
  return [...known]
    .map((candidate) => ({ candidate, distance: editDistance(short, candidate.toLowerCase()) }))
    .filter(({ distance }) => distance <= limit)
    .sort((a, b) => a.distance - b.distance)
    .map(({ candidate }) => candidate);
}

/** Levenshtein distance: insertions, deletions and substitutions, one each. */
function editDistance(a: string, b: string): number {
  let previous = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const substitution = (previous[j - 1] as number) + (a[i - 1] === b[j - 1] ? 0 : 1);
      row.push(Math.min((previous[j] as number) + 1, (row[j - 1] as number) + 1, substitution));
    }
    previous = row;
  }
  return previous[b.length] as number;
}
