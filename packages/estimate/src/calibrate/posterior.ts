import { cholesky, solveWith } from "./cholesky.js";
import { covariance, type Likened, ownCovariance, type Pair, shared } from "./compared.js";
import { withinMaker } from "./within-maker.js";

/** A comparator with how much more its certificate says than was to be expected, as logarithms. @internal */
export interface Learnt {
  readonly vehicle: Likened;
  readonly more: Pair;
}

/** What the comparators say of one vehicle. @internal */
export interface Said {
  /** What one unit of each comparator's two results adds to the logarithm of each of the vehicle's, in the order given. */
  readonly shares: readonly { readonly city: Pair; readonly highway: Pair }[];
  /** Standard deviations of the logarithms: with the comparators, and without any. */
  readonly deviation: Pair;
  readonly without: Pair;
  /** Mean and standard deviation of the factor, as a logarithm. */
  readonly factor: MeanAndDeviation;
  /** Mean and standard deviation of the standing power beyond the typical, in W. */
  readonly power: MeanAndDeviation;
}

interface MeanAndDeviation {
  readonly mean: number;
  readonly deviation: number;
}

/** What one comparator is among the others. @internal */
export interface Among {
  /** How much of it is believed to be the maker's: 1 for one as expected, towards 0 for an odd one. */
  readonly trust: number;
  /** Squared distance from what the others say, in standard deviations, of both results together. */
  readonly distance: number;
}

/** @internal */
export interface Posterior {
  readonly among: readonly Among[];
  of(vehicle: Likened): Said;
}

const both = [0, 1] as const;
const ROUNDS = 100;
const SETTLED = 1e-10;

/**
 * What certificates of one maker say of its other vehicles: linear prediction by covariance, where what is a comparator's own has
 * the heavy tails of Student's t, found by renewing a weight for each comparator.
 *
 * Gaussian Processes for Machine Learning (MIT Press, 2006), 2.2 and, for the distances, 5.4.2; weights: Robust statistical
 * modeling using the t distribution, Journal of the American Statistical Association 84 (1989). Both from memory.
 *
 * @internal
 */
export function posteriorOf(comparators: readonly Learnt[]): Posterior {
  // Entry 2·i is the city result of comparator i, entry 2·i + 1 its highway result.
  const places = comparators.flatMap((learnt, i) => both.map((driving) => ({ ...learnt, i, driving })));
  const common = places.map((a) => places.map((b) => covariance(a.vehicle, a.driving, b.vehicle, b.driving)));
  const more = places.map(({ more, driving }) => more[driving]);
  const weights = comparators.map(() => 1);
  const factored = (): number[][] =>
    cholesky(
      common.map((row, p) =>
        row.map((value, q) => {
          const [a, b] = [places[p], places[q]] as [(typeof places)[number], (typeof places)[number]];
          return a.i === b.i ? value + ownCovariance(a.driving, b.driving) / (weights[a.i] as number) : value;
        }),
      ),
    );
  let lower = factored();
  let solved = solveWith(lower, more);
  let change = comparators.length === 0 ? 0 : 1;
  for (let round = 0; round < ROUNDS && change > SETTLED; round++) {
    change = 0;
    for (const i of comparators.keys()) {
      const weight = weights[i] as number;
      const renewed = renewedWeight(ownSize(solved, i) / weight ** 2);
      change = Math.max(change, Math.abs(renewed - weight));
      weights[i] = renewed;
    }
    lower = factored();
    solved = solveWith(lower, more);
  }
  const highest = renewedWeight(0);
  const among = comparators.map((_, i) => ({
    trust: (weights[i] as number) / highest,
    distance: distanceFromOthers(lower, solved, i, weights[i] as number),
  }));
  return { among, of: (vehicle) => saidOf(vehicle, comparators, lower, more) };
}

/** Expectation of the precision of a t distribution over both results, by the size of what is the comparator's own. */
function renewedWeight(size: number): number {
  const { degreesOfFreedom } = withinMaker;
  return (degreesOfFreedom + both.length) / (degreesOfFreedom + size);
}

/** Size αᵀ·N·α of what is found to be a comparator's own, e = N·α/weight, in units of its deviations, times weight². */
function ownSize(solved: readonly number[], i: number): number {
  return quadratic(ownCovariance, [solved[2 * i] as number, solved[2 * i + 1] as number]);
}

function quadratic(matrix: (a: 0 | 1, b: 0 | 1) => number, [x, y]: Pair): number {
  return x * x * matrix(0, 0) + x * y * (matrix(0, 1) + matrix(1, 0)) + y * y * matrix(1, 1);
}

/** Squared distance of a comparator from what the others say of it, were it a result with no more of its own than usual. */
function distanceFromOthers(lower: number[][], solved: readonly number[], i: number, weight: number): number {
  const unit = (at: number): number[] => solved.map((_, place) => (place === at ? 1 : 0));
  const [first, second] = both.map((driving) => solveWith(lower, unit(2 * i + driving))) as [number[], number[]];
  const block = inverse2(first[2 * i] as number, first[2 * i + 1] as number, second[2 * i + 1] as number);
  const [x, y] = [solved[2 * i] as number, solved[2 * i + 1] as number];
  const left: Pair = [block.a * x + block.b * y, block.b * x + block.d * y];
  const usual = (p: 0 | 1, q: 0 | 1): number => ownCovariance(p, q) * (1 - 1 / weight);
  const inverted = inverse2(block.a + usual(0, 0), block.b + usual(0, 1), block.d + usual(1, 1));
  return quadratic((p, q) => (p !== q ? inverted.b : p === 0 ? inverted.a : inverted.d), left);
}

/** Inverse of a symmetric matrix of two rows. */
function inverse2(a: number, b: number, d: number): { a: number; b: number; d: number } {
  const determinant = a * d - b * b;
  return { a: d / determinant, b: -b / determinant, d: a / determinant };
}

function saidOf(vehicle: Likened, comparators: readonly Learnt[], lower: number[][], more: readonly number[]): Said {
  /** What is known of something whose variance is `own`, and whose covariances with the comparators' results are in `row`. */
  const known = (own: number, row: readonly number[]): MeanAndDeviation & { readonly shares: readonly number[] } => {
    const shares = solveWith(lower, row);
    return { shares, mean: dot(shares, more), deviation: Math.sqrt(own - dot(shares, row)) };
  };
  const withAll = (of: (learnt: Learnt, driving: 0 | 1) => number): number[] =>
    comparators.flatMap((each) => both.map((driving) => of(each, driving)));
  const self = shared(vehicle, vehicle);
  const factor = known(
    self.factor,
    withAll((each) => shared(vehicle, each.vehicle).factor),
  );
  const power = known(
    self.power,
    withAll((each, driving) => shared(vehicle, each.vehicle).power * each.vehicle.perWatt[driving]),
  );
  const result = (driving: 0 | 1, own: number) =>
    known(
      own,
      withAll((each, other) => covariance(vehicle, driving, each.vehicle, other)),
    );
  const variance = (driving: 0 | 1): number =>
    covariance(vehicle, driving, vehicle, driving) + ownCovariance(driving, driving);
  const [ofCity, ofHighway] = [variance(0), variance(1)];
  const [city, highway] = [result(0, ofCity), result(1, ofHighway)];
  const pairOf = (shares: readonly number[], i: number): Pair => [shares[2 * i] as number, shares[2 * i + 1] as number];
  return {
    shares: comparators.map((_, i) => ({ city: pairOf(city.shares, i), highway: pairOf(highway.shares, i) })),
    deviation: [city.deviation, highway.deviation],
    without: [Math.sqrt(ofCity), Math.sqrt(ofHighway)],
    ...{ factor, power },
  };
}

function dot(a: readonly number[], b: readonly number[]): number {
  return a.reduce((sum, value, i) => sum + value * (b[i] as number), 0);
}
