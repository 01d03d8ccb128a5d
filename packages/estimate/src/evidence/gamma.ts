const EPSILON = 1e-16;
const TINY = 1e-300;
const MOST_TERMS = 10_000;

/** Lanczos' approximation of the gamma function with g = 7 and nine terms; the set is from memory, checked in the tests. */
const LANCZOS = [
  0.9999999999998099, 676.5203681218851, -1259.1392167224028, 771.3234287776531, -176.6150291621406, 12.507343278686905,
  -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
] as const;

/** @internal Natural logarithm of the gamma function, x > 0. */
export function logGamma(x: number): number {
  const shifted = x - 1;
  const [first, ...rest] = LANCZOS;
  const sum = rest.reduce((total, coefficient, i) => total + coefficient / (shifted + i + 1), first as number);
  const t = shifted + 7.5;
  return 0.5 * Math.log(2 * Math.PI) + (shifted + 0.5) * Math.log(t) - t + Math.log(sum);
}

/**
 * @internal The regularised incomplete gamma functions P(a, x) and Q(a, x) = 1 − P, a > 0, x ≥ 0, each without cancellation:
 * the series below x = a + 1, the continued fraction above (Abramowitz & Stegun 6.5.29 and 6.5.31, from memory).
 */
export function lowerGamma(a: number, x: number): { readonly below: number; readonly above: number } {
  if (x === 0) return { below: 0, above: 1 };
  if (x === Number.POSITIVE_INFINITY) return { below: 1, above: 0 };
  const front = Math.exp(a * Math.log(x) - x - logGamma(a));
  if (x < a + 1) {
    let term = 1 / a;
    let sum = term;
    for (let n = 1; n < MOST_TERMS && Math.abs(term) > EPSILON * Math.abs(sum); n++) {
      term *= x / (a + n);
      sum += term;
    }
    return { below: front * sum, above: 1 - front * sum };
  }
  let b = x + 1 - a;
  let c = 1 / TINY;
  let d = 1 / b;
  let h = d;
  for (let n = 1; n < MOST_TERMS; n++) {
    const an = -n * (n - a);
    b += 2;
    d = 1 / away(an * d + b);
    c = away(b + an / c);
    h *= d * c;
    if (Math.abs(d * c - 1) < 4 * EPSILON) break;
  }
  return { below: 1 - front * h, above: front * h };
}

/** @internal The chance that a sum of so many squared normal deviates exceeds χ². */
export function chanceOfChiSquared(chiSquared: number, degreesOfFreedom: number): number {
  return lowerGamma(degreesOfFreedom / 2, chiSquared / 2).above;
}

/**
 * @internal The regularised incomplete beta function I_x(a, b), by its continued fraction (Abramowitz & Stegun 26.5.8, from
 * memory) with Lentz's method.
 */
export function incompleteBeta(x: number, a: number, b: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  if (x > (a + 1) / (a + b + 2)) return 1 - incompleteBeta(1 - x, b, a);
  const front = Math.exp(a * Math.log(x) + b * Math.log1p(-x) - logBeta(a, b)) / a;
  let c = 1;
  let d = 1 / away(1 - ((a + b) * x) / (a + 1));
  let h = d;
  for (let m = 1; m < MOST_TERMS; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / away(1 + even * d);
    c = away(1 + even / c);
    h *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / away(1 + odd * d);
    c = away(1 + odd / c);
    h *= d * c;
    if (Math.abs(d * c - 1) < 4 * EPSILON) break;
  }
  return front * h;
}

/** @internal Natural logarithm of the beta function. */
export function logBeta(a: number, b: number): number {
  return logGamma(a) + logGamma(b) - logGamma(a + b);
}

function away(value: number): number {
  return Math.abs(value) < TINY ? TINY : value;
}
