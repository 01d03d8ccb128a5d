/** @internal A spread as its quantiles: straight lines between them, and a jump of what is left at each end. */
export interface QuantileSpread {
  /** Ascending, between 0 and 1. */
  readonly shares: readonly number[];
  /** One for each share; never falling. */
  readonly quantiles: readonly number[];
}

/**
 * @internal The share of the spread below an outcome (the probability integral transform): uniform when the spread is right. Beyond the outermost
 * quantiles it is the middle of what is left there.
 */
export function shareBelow({ shares, quantiles }: QuantileSpread, outcome: number): number {
  const above = quantiles.findIndex((each) => each >= outcome);
  if (above < 0) return (1 + (shares.at(-1) as number)) / 2;
  const last = quantiles.findLastIndex((each) => each <= outcome);
  if (last < 0) return (shares[0] as number) / 2;
  // Several quantiles in one place: the middle of the jump there
  if (above <= last) return ((shares[above] as number) + (shares[last] as number)) / 2;
  const [a, b] = [quantiles[last] as number, quantiles[above] as number];
  const [from, to] = [shares[last] as number, shares[above] as number];
  return from + ((to - from) * (outcome - a)) / (b - a);
}

/**
 * @internal Continuous ranked probability score, ∫ (F(x) − 1{x ≥ y})² dx, exactly for the spread as it is kept here: the distance between outcome
 * and spread, in the unit of both, the less the better (Gneiting and Raftery 2007, equation 20; from memory).
 */
export function rankedProbabilityScore({ shares, quantiles }: QuantileSpread, outcome: number): number {
  const [first, last] = [quantiles[0] as number, quantiles.at(-1) as number];
  let score = Math.max(0, first - outcome) + Math.max(0, outcome - last);
  for (let i = 1; i < quantiles.length; i++) {
    const [a, b] = [quantiles[i - 1] as number, quantiles[i] as number];
    if (a === b) continue;
    const [from, to] = [shares[i - 1] as number, shares[i] as number];
    const cut = Math.min(b, Math.max(a, outcome));
    const middle = from + ((to - from) * (cut - a)) / (b - a);
    score += squareUnder(cut - a, from, middle) + squareUnder(b - cut, 1 - middle, 1 - to);
  }
  return score;
}

/** Integral of the square of what goes straight from one height to another. */
function squareUnder(width: number, from: number, to: number): number {
  return (width * (from * from + from * to + to * to)) / 3;
}
