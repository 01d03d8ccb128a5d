/** Standard deviation of A + B·v + C·v² for a covariance of A, B and C. @internal */
export function forceDeviation(covariance: readonly (readonly number[])[], speed: number): number {
  const powers = [1, speed, speed ** 2];
  const variance = covariance.reduce(
    (sum, row, i) =>
      sum + row.reduce((part, value, j) => part + value * (powers[i] as number) * (powers[j] as number), 0),
    0,
  );
  return Math.sqrt(Math.max(0, variance));
}
