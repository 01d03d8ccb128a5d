/**
 * Root of a continuous function inside a bracket, by interpolation, truncation and projection (the ITP method: Oliveira and
 * Takahashi, ACM Transactions on Mathematical Software 47 (2020), 5:1; from memory): it converges faster than halving and
 * never takes more steps than halving plus one (plus one more where rounding leaves the bracket a hair too wide).
 *
 * @param f - function; its values at the ends have opposite signs
 * @param low - one end
 * @param high - the other, above `low`
 * @param tolerance - half-width at which the search stops, above zero
 * @param ends - values at the two ends, when they are already known
 * @internal
 */
export function bracketedRoot(
  f: (x: number) => number,
  low: number,
  high: number,
  tolerance: number,
  ends: readonly [number, number] = [f(low), f(high)],
): number {
  let [a, b] = [low, high];
  const rising = ends[1] > ends[0];
  const g = rising ? f : (x: number): number => -f(x);
  let [ya, yb] = rising ? ends : [-ends[0], -ends[1]];
  if (ya >= 0) return a;
  if (yb <= 0) return b;
  const halvings = Math.max(0, Math.ceil(Math.log2((b - a) / (2 * tolerance)))) + 1;
  const kappa = 0.2 / (b - a);
  for (let j = 0; b - a > 2 * tolerance; j++) {
    const middle = (a + b) / 2;
    const reach = tolerance * 2 ** (halvings - j) - (b - a) / 2;
    const falsePosition = (yb * a - ya * b) / (yb - ya);
    const side = Math.sign(middle - falsePosition);
    const shift = Math.min(kappa * (b - a) ** 2, Math.abs(middle - falsePosition));
    const truncated = falsePosition + side * shift;
    const x = Math.abs(truncated - middle) <= reach ? truncated : middle - side * reach;
    const y = g(x);
    if (y > 0) [b, yb] = [x, y];
    else if (y < 0) [a, ya] = [x, y];
    else return x;
  }
  return (a + b) / 2;
}
