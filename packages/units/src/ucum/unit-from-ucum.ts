import { fail } from "../quantity/errors.js";
import type { UnitSymbol } from "../unit/table.js";
import { builtIn } from "../unit/unit.js";
import { codes } from "./ucum-code.js";

/** Longest code that is read; anything longer is refused before any work is done. */
const MAX_LENGTH = 120;
const MAX_DEPTH = 8;
const MAX_POWER = 9;

/** A power of ten, a whole number, an annotation, or an atom with its power. */
const TOKEN = /(10[*^][+-]?\d{1,2})|(\d{1,15})|(\{[^{}]*\})|((?:[A-Za-z%]*\[[^\][]*\]|[A-Za-z%_]+))([+-]?\d{1,2})?/y;

/** Our symbol for each code that is one atom; where several have one code, the first of the table. */
function symbolsByCode(): ReadonlyMap<string, string> {
  const found = new Map([
    ["l", "L"],
    ["ml", "mL"],
    ["a_j", "year"],
  ]);
  for (const symbol of builtIn.definitions.keys()) {
    const code = codes[symbol as UnitSymbol] ?? symbol;
    const atom = code !== "" && !/[./]/.test(code) && !symbol.startsWith("Δ");
    if (atom && !found.has(code)) found.set(code, symbol);
  }
  return found;
}

/**
 * The text of the unit that a code of the Unified Code for Units of Measure (UCUM) stands for.
 *
 * Reads products, quotients from left to right, powers of atoms, parentheses, whole numbers and powers of ten. Annotations in braces
 * are dropped. Kinds are not part of UCUM: see {@link ucumCode}.
 *
 * @param code - case-sensitive code, at most 120 characters, of units that this package has
 * @returns text of a unit; read it with `quantity`
 * @throws QuantityError `BAD_UCUM_CODE`, with the position, for what is no code and for units that this package does not have
 * @example
 * unitFromUcum("kW.h/(100.km)"); // "kW·h/(km·100)"
 */
export function unitFromUcum(code: string): string {
  if (typeof code !== "string" || code.length > MAX_LENGTH) {
    return fail("BAD_UCUM_CODE", `a UCUM code is a text of at most ${MAX_LENGTH} characters`);
  }
  return code === "" ? "1" : written(new UcumReader(code).read());
}

/** What a code comes to: symbols with their powers, and whole numbers above or below the line. */
interface Factors {
  readonly terms: ReadonlyMap<string, number>;
  readonly numbers: readonly (readonly [digits: string, sign: number])[];
}

class UcumReader {
  private position = 0;
  private readonly symbols = symbolsByCode();

  constructor(private readonly code: string) {}

  read(): Factors {
    const factors = this.term(0);
    if (this.position < this.code.length) this.fail(`unexpected '${this.next()}'`);
    return factors;
  }

  /** Left to right: a slash turns around the one component behind it. */
  private term(depth: number): Factors {
    if (depth > MAX_DEPTH) this.fail(`more than ${MAX_DEPTH} parentheses deep`);
    let product: Factors = { terms: new Map(), numbers: [] };
    let power = this.accept("/") ? -1 : 1;
    for (;;) {
      product = this.times(product, this.component(depth), power);
      if (this.accept(".")) power = 1;
      else if (this.accept("/")) power = -1;
      else return product;
    }
  }

  private component(depth: number): Factors {
    if (this.accept("(")) {
      const inner = this.term(depth + 1);
      return this.accept(")") ? inner : this.fail("a ')' is missing");
    }
    TOKEN.lastIndex = this.position;
    const [all, ten, number, note, atom, power] = TOKEN.exec(this.code) ?? [];
    if (all === undefined)
      this.fail(this.next() === "" ? "a unit is missing at the end" : `unexpected '${this.next()}'`);
    const symbol = atom === undefined ? undefined : this.symbols.get(atom);
    if (atom !== undefined && symbol === undefined) this.fail(`no unit here has the code '${atom}'`);
    this.position += all.length;
    // An annotation may follow what it annotates.
    if (note === undefined) this.position += /^\{[^{}]*\}/.exec(this.code.slice(this.position))?.[0].length ?? 0;
    if (ten !== undefined) {
      const exponent = Number(ten.slice(3));
      return { terms: new Map(), numbers: [[`1${"0".repeat(Math.abs(exponent))}`, Math.sign(exponent) || 1]] };
    }
    if (number !== undefined) return { terms: new Map(), numbers: [[number, 1]] };
    return { terms: symbol === undefined ? new Map() : new Map([[symbol, Number(power ?? 1)]]), numbers: [] };
  }

  private times(a: Factors, b: Factors, power: number): Factors {
    const terms = new Map(a.terms);
    for (const [symbol, exponent] of b.terms) {
      const sum = (terms.get(symbol) ?? 0) + exponent * power;
      if (Math.abs(sum) > MAX_POWER || power === 0 || exponent === 0) this.fail(`a power must be 1 to ${MAX_POWER}`);
      if (sum === 0) terms.delete(symbol);
      else terms.set(symbol, sum);
    }
    const numbers = b.numbers.flatMap(([digits, sign]) =>
      Array.from({ length: Math.abs(power) }, () => [digits, sign * Math.sign(power)] as const),
    );
    return { terms, numbers: [...a.numbers, ...numbers] };
  }

  private accept(character: string): boolean {
    const found = this.next() === character;
    if (found) this.position++;
    return found;
  }

  private next(): string {
    return this.code.charAt(this.position);
  }

  private fail(what: string): never {
    return fail("BAD_UCUM_CODE", `${what}, at character ${this.position + 1} of the UCUM code '${this.code}'`, {
      code: this.code,
      position: this.position + 1,
    });
  }
}

function written({ terms, numbers }: Factors): string {
  const side = (sign: number): string[] => [
    ...[...terms].flatMap(([symbol, power]) => {
      const size = power * sign;
      return size > 0 ? [size === 1 ? symbol : `${symbol}^${size}`] : [];
    }),
    // Last, because a unit may not start with a number
    ...numbers.flatMap(([digits, itsSign]) => (itsSign === sign && digits !== "1" ? [digits] : [])),
  ];
  const [above, below] = [side(1), side(-1)];
  const top = /^\d/.test(above[0] ?? "") ? `(${above.join("·")})` : above.join("·") || "1";
  if (below.length === 0) return top;
  return `${top}/${below.length === 1 ? below[0] : `(${below.join("·")})`}`;
}
