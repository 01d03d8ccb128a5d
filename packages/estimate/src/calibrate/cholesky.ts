/** A symmetric positive definite matrix, row by row, full. @internal */
export type Symmetric = readonly (readonly number[])[];

/** @internal Lower triangle L of K = L·Lᵀ. */
export function cholesky(matrix: Symmetric): number[][] {
  const lower: number[][] = [];
  for (const [i, row] of matrix.entries()) {
    const filled: number[] = [];
    for (let j = 0; j <= i; j++) {
      const other = j === i ? filled : (lower[j] as number[]);
      let rest = row[j] as number;
      for (let k = 0; k < j; k++) rest -= (filled[k] as number) * (other[k] as number);
      filled.push(j === i ? Math.sqrt(rest) : rest / (other[j] as number));
    }
    lower.push(filled);
  }
  return lower;
}

/** @internal The x of L·Lᵀ·x = right. */
export function solveWith(lower: readonly (readonly number[])[], right: readonly number[]): number[] {
  const n = right.length;
  const x = [...right];
  const at = (i: number, j: number): number => (lower[i] as readonly number[])[j] as number;
  for (let i = 0; i < n; i++) {
    for (let k = 0; k < i; k++) x[i] = (x[i] as number) - at(i, k) * (x[k] as number);
    x[i] = (x[i] as number) / at(i, i);
  }
  for (let i = n - 1; i >= 0; i--) {
    for (let k = i + 1; k < n; k++) x[i] = (x[i] as number) - at(k, i) * (x[k] as number);
    x[i] = (x[i] as number) / at(i, i);
  }
  return x;
}
