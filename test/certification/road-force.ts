import { Matrix, solve } from "ml-matrix";
import { withoutMaker } from "./expected.js";
import { type CertifiedRow, forceAt } from "./rows.js";

/** Speeds in mph at which road forces are predicted: three forces make the three coefficients. */
const SPEEDS = [10, 40, 70] as const;

/** How far a maker's road forces differ from what is expected, and one configuration's beyond that, as logarithms. */
export const forceSpread = { maker: 0.11, own: 0.08 } as const;

/** Weights of the features, a column for each of the three speeds. Forces are logarithms of lbf. */
export type RoadForceFit = readonly (readonly number[])[];

/** {@link fitRoadForce} of the core rows of the open file. */
export const typicalRoadForce: RoadForceFit = [
  [3.633, 4.308, 4.952],
  [0.941, 0.566, 0.339],
  [0.005, 0.075, 0.113],
  [-0.029, -0.047, -0.038],
];

/** Standard deviations of the weights around {@link middles}: wide for the intercept, as the trade expects for the rest. */
const priors: readonly (readonly [middle: number, deviation: number])[] = [
  // 1 lbf for each 100 lb at low speed and as much again for air at 40 mph, or so: common practice, no source
  [4, 2],
  // rolling resistance goes with weight, drag area with less than its square root: common practice, no source
  [0.6, 0.4],
  [0.1, 0.15],
  [0, 0.15],
];

/** One; weight; whether it is a sport utility, pickup or van; model year. */
function features({ testWeight, sizeClass, modelYear }: CertifiedRow): number[] {
  return [1, Math.log(testWeight / 4500), /Utility|Pickup|Van/.test(sizeClass) ? 1 : 0, (modelYear - 2018) / 10];
}

/** Ridge regression of the logarithms of road force, where a maker with many rows counts little more than one with few. */
export function fitRoadForce(rows: readonly CertifiedRow[]): RoadForceFit {
  const size = priors.length;
  const normal = Matrix.zeros(size, size);
  const right = Matrix.zeros(size, SPEEDS.length);
  priors.forEach(([middle, deviation], i) => {
    normal.set(i, i, 1 / deviation ** 2);
    SPEEDS.forEach((_, s) => {
      right.set(i, s, middle / deviation ** 2);
    });
  });
  for (const row of rows) {
    const ofMaker = rows.filter(({ maker }) => maker === row.maker).length;
    const weight = 1 / (forceSpread.own ** 2 + ofMaker * forceSpread.maker ** 2);
    const x = features(row);
    const y = SPEEDS.map((speed) => Math.log(forceAt(row, speed)));
    x.forEach((a, i) => {
      x.forEach((b, j) => {
        normal.set(i, j, normal.get(i, j) + weight * a * b);
      });
      y.forEach((force, s) => {
        right.set(i, s, right.get(i, s) + weight * a * force);
      });
    });
  }
  return solve(normal, right).to2DArray();
}

/** By maker: the fit to the others where the fit has seen the maker, else the typical one. */
export function roadForceFits(rows: readonly CertifiedRow[]): (maker: string) => RoadForceFit {
  return withoutMaker(
    rows,
    rows.filter(({ core }) => core),
    ({ maker }) => maker,
    fitRoadForce,
    typicalRoadForce,
  );
}

/** Coefficients that a vehicle is likely to have, and the standard deviation of the logarithm of its road force. */
export function likelyRoadLoad(
  row: CertifiedRow,
  earlier: readonly CertifiedRow[],
  fit: RoadForceFit,
): { readonly coefficients: CertifiedRow["coefficients"]; readonly deviation: number } {
  const expected = (of: CertifiedRow, s: number): number =>
    features(of).reduce((sum, x, i) => sum + x * (fit[i]?.[s] as number), 0);
  const { maker, own } = forceSpread;
  // Partial pooling: what the maker's earlier ones differ by on the mean, the more believed the more there are.
  const believed = earlier.length / (earlier.length + own ** 2 / maker ** 2);
  const forces = SPEEDS.map((speed, s) => {
    const more = earlier.map((each) => Math.log(forceAt(each, speed)) - expected(each, s));
    const ofMaker = more.reduce((sum, each) => sum + each, 0) / Math.max(more.length, 1);
    return Math.exp(expected(row, s) + believed * ofMaker);
  });
  const matrix = new Matrix(SPEEDS.map((speed) => [1, speed, speed ** 2]));
  const coefficients = solve(matrix, Matrix.columnVector(forces)).to1DArray();
  return {
    coefficients: coefficients as unknown as CertifiedRow["coefficients"],
    deviation: Math.hypot(own, maker * Math.sqrt(1 - believed)),
  };
}
