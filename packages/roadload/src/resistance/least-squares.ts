/** A linear fit: parameters, and what their covariance is made of. @internal */
export interface LinearFit {
  /** One number a column. */
  readonly solution: readonly number[];
  /** Inverse of the normal matrix: times the variance of a row it is the covariance of the solution. */
  readonly inverse: readonly (readonly number[])[];
}

/** A column that keeps less of its length than this beside the others says nothing of its own. */
const DEPENDENT = 1e-10;

/**
 * Least squares for a few columns: modified Gram-Schmidt on columns of unit length, each made orthogonal twice, which keeps
 * the digits that normal equations lose (Björck, Numerical Methods for Least Squares Problems, 1996, chapter 2; from memory).
 * Undefined when the columns do not tell the parameters apart.
 * @internal
 */
export function leastSquares(columns: readonly Float64Array[], rows: Float64Array): LinearFit | undefined {
  const size = columns.length;
  const lengths = columns.map((column) => Math.sqrt(dot(column, column)));
  const basis: Float64Array[] = [];
  const upper: number[][] = columns.map(() => new Array<number>(size).fill(0));
  for (const [k, column] of columns.entries()) {
    const length = lengths[k] as number;
    if (!(length > 0) || !Number.isFinite(length)) return undefined;
    const vector = column.map((value) => value / length);
    for (let pass = 0; pass < 2; pass++) {
      for (const [j, other] of basis.entries()) {
        const part = dot(other, vector);
        (upper[j] as number[])[k] = ((upper[j] as number[])[k] as number) + part;
        for (let i = 0; i < vector.length; i++) vector[i] = (vector[i] as number) - part * (other[i] as number);
      }
    }
    const rest = Math.sqrt(dot(vector, vector));
    if (!(rest > DEPENDENT)) return undefined;
    (upper[k] as number[])[k] = rest;
    basis.push(vector.map((value) => value / rest));
  }
  const inverseUpper = invertUpper(upper);
  const projections = basis.map((vector) => dot(vector, rows));
  const inDirection = inverseUpper.map((row) =>
    row.reduce((sum, value, j) => sum + value * (projections[j] as number), 0),
  );
  return {
    solution: inDirection.map((value, k) => value / (lengths[k] as number)),
    inverse: inverseUpper.map((row, i) =>
      inverseUpper.map((other, j) => {
        const product = row.reduce((sum, value, k) => sum + value * (other[k] as number), 0);
        return product / ((lengths[i] as number) * (lengths[j] as number));
      }),
    ),
  };
}

/** @internal */
export function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += (a[i] as number) * (b[i] as number);
  return sum;
}

function invertUpper(upper: readonly (readonly number[])[]): number[][] {
  const size = upper.length;
  const inverse = upper.map(() => new Array<number>(size).fill(0));
  for (let column = 0; column < size; column++) {
    for (let row = column; row >= 0; row--) {
      let sum = row === column ? 1 : 0;
      for (let k = row + 1; k <= column; k++)
        sum -= ((upper[row] as number[])[k] as number) * ((inverse[k] as number[])[column] as number);
      (inverse[row] as number[])[column] = sum / ((upper[row] as number[])[row] as number);
    }
  }
  return inverse;
}
