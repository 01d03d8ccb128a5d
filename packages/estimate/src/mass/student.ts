/**
 * The 90th percentile of Student's t with so many degrees of freedom, by which the scatter of a few comparators is widened.
 *
 * Values as printed in tables of the t distribution (one-sided 10 %); from memory of such tables, and checked in the tests
 * against numerical integration of the density. Between the rows the value for fewer degrees of freedom is used, which
 * errs on the wide side.
 *
 * @internal
 */
const TABLE: readonly (readonly [degrees: number, t: number])[] = [
  [1, 3.078],
  [2, 1.886],
  [3, 1.638],
  [4, 1.533],
  [5, 1.476],
  [6, 1.44],
  [7, 1.415],
  [8, 1.397],
  [9, 1.383],
  [10, 1.372],
  [12, 1.356],
  [15, 1.341],
  [20, 1.325],
  [30, 1.31],
  [60, 1.296],
];

/** @internal */
export function studentT90(degreesOfFreedom: number): number {
  let found = TABLE[0] as readonly [number, number];
  for (const row of TABLE) if (row[0] <= degreesOfFreedom) found = row;
  return found[1];
}
