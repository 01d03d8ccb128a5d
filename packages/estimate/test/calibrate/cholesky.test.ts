import fc from "fast-check";
import { Matrix, solve } from "ml-matrix";
import { describe, expect, it } from "vitest";
import { cholesky, solveWith } from "../../src/calibrate/cholesky.js";

const square = fc.integer({ min: 1, max: 8 }).chain((n) =>
  fc.array(fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: n, maxLength: n }), {
    minLength: n,
    maxLength: n,
  }),
);

describe("the solver of symmetric positive definite systems", () => {
  it("solves as another program does", () => {
    fc.assert(
      fc.property(square, (rows) => {
        const factor = new Matrix(rows);
        const matrix = factor.mmul(factor.transpose()).add(Matrix.eye(rows.length));
        const right = rows.map((_, i) => i + 1);
        const wanted = solve(matrix, Matrix.columnVector(right)).to1DArray();
        solveWith(cholesky(matrix.to2DArray()), right).forEach((value, i) => {
          expect(value).toBeCloseTo(wanted[i] as number, 8);
        });
      }),
    );
  });
});
