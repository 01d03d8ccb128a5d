import { lowerGamma } from "./gamma.js";

/** Coefficients of Wichura's rational approximations, by region: numerator and denominator, from the highest power down. */
const AS241 = {
  source: {
    document:
      "M. J. Wichura, Algorithm AS 241: The percentage points of the normal distribution, Applied Statistics 37 (1988) 477",
    section: "PPND16",
    status: "memory",
  },
  centre: {
    above: [
      2509.0809287301227, 33430.57558358813, 67265.7709270087, 45921.95393154987, 13731.69376550946, 1971.5909503065513,
      133.14166789178438, 3.3871328727963665,
    ],
    below: [
      5226.495278852854, 28729.085735721943, 39307.89580009271, 21213.794301586597, 5394.196021424751,
      687.1870074920579, 42.31333070160091, 1,
    ],
  },
  tail: {
    above: [
      0.0007745450142783414, 0.022723844989269184, 0.2417807251774506, 1.2704582524523684, 3.6478483247632045,
      5.769497221460691, 4.630337846156546, 1.4234371107496835,
    ],
    below: [
      1.0507500716444169e-9, 0.0005475938084995345, 0.015198666563616457, 0.14810397642748008, 0.6897673349851,
      1.6763848301838038, 2.053191626637759, 1,
    ],
  },
  farTail: {
    above: [
      2.0103343992922881e-7, 2.7115555687434876e-5, 0.0012426609473880784, 0.026532189526576124, 0.29656057182850487,
      1.7848265399172913, 5.463784911164114, 6.657904643501103,
    ],
    below: [
      2.0442631033899397e-15, 1.421511758316446e-7, 1.8463183175100548e-5, 0.0007868691311456133, 0.014875361290850615,
      0.1369298809227358, 0.599832206555888, 1,
    ],
  },
} as const;

/** @internal The number of standard deviations below which a share u of a normal distribution lies, 0 ≤ u ≤ 1. */
export function normalQuantile(u: number): number {
  const fromCentre = u - 0.5;
  if (Math.abs(fromCentre) <= 0.425) {
    return fromCentre * ratio(AS241.centre, 0.180625 - fromCentre * fromCentre);
  }
  const r = Math.sqrt(-Math.log(Math.min(u, 1 - u)));
  if (r === Number.POSITIVE_INFINITY) return fromCentre < 0 ? Number.NEGATIVE_INFINITY : Number.POSITIVE_INFINITY;
  const size = r <= 5 ? ratio(AS241.tail, r - 1.6) : ratio(AS241.farTail, r - 5);
  return fromCentre < 0 ? -size : size;
}

/** @internal The share of a normal distribution below z standard deviations. */
export function normalCdf(z: number): number {
  // erf(x) = P(½, x²): Abramowitz & Stegun 6.5.16, from memory
  if (z === Number.NEGATIVE_INFINITY || z === Number.POSITIVE_INFINITY) return z < 0 ? 0 : 1;
  const { below, above } = lowerGamma(0.5, (z * z) / 2);
  return z < 0 ? above / 2 : 0.5 + below / 2;
}

function ratio({ above, below }: { readonly above: readonly number[]; readonly below: readonly number[] }, x: number) {
  const polynomial = (coefficients: readonly number[]): number =>
    coefficients.reduce((sum, coefficient) => sum * x + coefficient, 0);
  return polynomial(above) / polynomial(below);
}
