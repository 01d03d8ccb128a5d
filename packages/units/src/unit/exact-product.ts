/**
 * @internal An exact product: symbols with their powers, and the fraction n/d in front. Whole numbers of any size, so that
 * nothing is rounded before the end; they are cut down only when a conversion is made of them. π is one of the symbols.
 */
export interface ExactProduct {
  readonly terms: ReadonlyMap<string, number>;
  readonly n: bigint;
  readonly d: bigint;
}

/** @internal Largest power in a unit. */
export const MAX_POWER = 9;
/** Most bits of a number in a unit, so that powers of powers stay small: some three hundred digits. */
const MAX_BITS = 1000;

/** @internal A number without symbols, or one symbol. */
export function single(symbol?: string): ExactProduct {
  return { terms: new Map(symbol === undefined ? [] : [[symbol, 1]]), n: 1n, d: 1n };
}

/** @internal Reads a plain decimal such as "0.45359237" exactly. */
export function decimal(text: string): ExactProduct {
  const [whole = "", fraction = ""] = text.split(".");
  return { ...single(), n: BigInt(whole + fraction), d: 10n ** BigInt(fraction.length) };
}

/** @internal The product of factors, each raised to its power. */
export function productOf(...factors: readonly (readonly [factor: ExactProduct, power: number])[]): ExactProduct {
  const terms = new Map<string, number>();
  let [n, d] = [1n, 1n];
  for (const [factor, power] of factors) {
    for (const [symbol, each] of factor.terms) {
      const sum = (terms.get(symbol) ?? 0) + each * power;
      if (sum === 0) terms.delete(symbol);
      else terms.set(symbol, sum);
    }
    const size = BigInt(Math.abs(power));
    const [above, below] = power < 0 ? [factor.d, factor.n] : [factor.n, factor.d];
    n *= above ** size;
    d *= below ** size;
  }
  return { terms, n, d };
}

/** @internal Whether the powers and numbers of a product are as small as those of a unit must be. */
export function isBounded({ terms, n, d }: ExactProduct): boolean {
  return (
    BigInt.asUintN(MAX_BITS, n * d) === n * d && [...terms.values()].every((power) => Math.abs(power) <= MAX_POWER)
  );
}

/** @internal Greatest common divisor, not negative. A loop, as whole numbers of thousands of digits take thousands of steps. */
export function gcd(a: bigint, b: bigint): bigint {
  while (b !== 0n) [a, b] = [b, a % b];
  return a < 0n ? -a : a;
}

/** @internal The double nearest to n/d, also when they are beyond the range of doubles, times π as often as it occurs. */
export function toNumber({ terms, n, d }: ExactProduct): number {
  const bits = (whole: bigint): number => whole.toString(2).length;
  // Keep 64 significant bits of the quotient, more than a double holds, then let Number() round once.
  const shift = 64 + bits(d) - bits(n);
  return Number((n << BigInt(shift)) / d) * 2 ** -shift * Math.PI ** (terms.get("π") ?? 0);
}
