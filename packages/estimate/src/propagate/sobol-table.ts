import type { Source } from "@tarewatt/units";

/** A degree, the inner coefficients, and as many first direction numbers as the degree. */
type Entry = readonly [degree: number, inner: number, ...first: number[]];

/**
 * @internal For places 2 and up: the degree of a primitive polynomial over two elements, its inner coefficients as the bits of a
 * number, and the first direction numbers, as many as the degree. The first place needs none.
 *
 * The tests check what can be checked without the paper: each polynomial is primitive and stands once, each number is odd and
 * small enough, and every pair of places is evenly spread.
 */
export const sobolTable: { readonly source: Source; readonly entries: readonly Entry[] } = {
  source: {
    document:
      "S. Joe and F. Y. Kuo, Constructing Sobol sequences with better two-dimensional projections, SIAM J. Sci. Comput. 30 (2008)",
    section: "table new-joe-kuo-6",
    status: "memory",
  },
  entries: [
    [1, 0, 1],
    [2, 1, 1, 3],
    [3, 1, 1, 3, 1],
    [3, 2, 1, 1, 1],
    [4, 1, 1, 1, 3, 3],
    [4, 4, 1, 3, 5, 13],
    [5, 2, 1, 1, 5, 5, 17],
    [5, 4, 1, 1, 5, 5, 5],
    [5, 7, 1, 1, 7, 11, 19],
    [5, 11, 1, 1, 5, 1, 1],
    [5, 13, 1, 1, 1, 3, 11],
    [5, 14, 1, 3, 5, 5, 31],
    [6, 1, 1, 3, 3, 9, 7, 49],
    [6, 13, 1, 1, 1, 15, 21, 21],
    [6, 16, 1, 3, 1, 13, 27, 49],
    [6, 19, 1, 1, 1, 15, 7, 5],
    [6, 22, 1, 3, 1, 15, 13, 25],
    [6, 25, 1, 1, 5, 5, 19, 61],
    [7, 1, 1, 3, 7, 11, 23, 15, 103],
    [7, 4, 1, 3, 7, 13, 13, 15, 69],
    [7, 7, 1, 1, 3, 13, 7, 35, 63],
    [7, 8, 1, 3, 5, 9, 1, 25, 53],
    [7, 14, 1, 3, 1, 13, 9, 35, 107],
    [7, 19, 1, 3, 1, 5, 27, 61, 31],
    [7, 21, 1, 1, 5, 11, 19, 41, 61],
    [7, 28, 1, 3, 5, 3, 3, 13, 69],
    [7, 31, 1, 1, 7, 13, 1, 19, 1],
    [7, 32, 1, 3, 7, 5, 13, 19, 59],
    [7, 37, 1, 1, 3, 9, 25, 29, 41],
    [7, 41, 1, 3, 5, 13, 23, 1, 55],
    [7, 42, 1, 3, 7, 3, 13, 59, 17],
    [7, 50, 1, 3, 1, 3, 5, 53, 69],
    [7, 55, 1, 1, 5, 5, 23, 33, 13],
    [7, 56, 1, 1, 7, 7, 1, 61, 123],
    [7, 59, 1, 1, 7, 9, 13, 61, 49],
    [7, 62, 1, 3, 3, 5, 3, 55, 33],
    [8, 14, 1, 3, 1, 15, 31, 13, 49, 245],
    [8, 21, 1, 3, 5, 15, 31, 59, 63, 97],
    [8, 22, 1, 3, 1, 11, 11, 11, 77, 249],
  ],
};
