/** @internal An exact factor: numerator / denominator × π^pi. Only used while a unit is read, never while it converts. */
export interface Rational {
  readonly n: bigint;
  readonly d: bigint;
  readonly pi: number;
}

/** @internal */
export const ONE: Rational = { n: 1n, d: 1n, pi: 0 };
/** @internal */
export const PI: Rational = { n: 1n, d: 1n, pi: 1 };

/** @internal Greatest common divisor, not negative. */
export function gcd(a: bigint, b: bigint): bigint {
  while (b !== 0n) [a, b] = [b, a % b];
  return a < 0n ? -a : a;
}

/** @internal */
export function rational(n: bigint, d: bigint, pi = 0): Rational {
  const common = gcd(n, d) || 1n;
  return { n: n / common, d: d / common, pi };
}

/** @internal Reads a plain decimal such as "0.45359237" exactly. */
export function decimal(text: string): Rational {
  const [whole = "0", fraction = ""] = text.split(".");
  return rational(BigInt(whole + fraction), 10n ** BigInt(fraction.length));
}

/** @internal */
export function multiply(a: Rational, b: Rational): Rational {
  return rational(a.n * b.n, a.d * b.d, a.pi + b.pi);
}

/** @internal */
export function divide(a: Rational, b: Rational): Rational {
  return rational(a.n * b.d, a.d * b.n, a.pi - b.pi);
}

/** @internal */
export function subtract(a: Rational, b: Rational): Rational {
  return rational(a.n * b.d - b.n * a.d, a.d * b.d);
}

/** @internal */
export function power(a: Rational, exponent: number): Rational {
  const size = BigInt(Math.abs(exponent));
  const raised: Rational = { n: a.n ** size, d: a.d ** size, pi: a.pi * Math.abs(exponent) };
  return exponent < 0 ? divide(ONE, raised) : raised;
}

/** @internal The double nearest to the fraction, also when numerator and denominator are beyond the range of doubles. */
export function toNumber({ n, d, pi }: Rational): number {
  const negative = n < 0n;
  const size = negative ? -n : n;
  // Keep 64 significant bits of the quotient, more than a double holds, then let Number() round once.
  const shift = 64 - (size.toString(2).length - d.toString(2).length);
  const scaled = shift >= 0 ? (size << BigInt(shift)) / d : size / (d << BigInt(-shift));
  const value = Number(scaled) * 2 ** -shift * Math.PI ** pi;
  return negative ? -value : value;
}
