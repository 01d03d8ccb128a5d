import { dot } from "../least-squares.js";
import type { Block, CoastDownFit, SharedTerm } from "./fit.js";
import { forceDeviation } from "./force-deviation.js";
import { refuse } from "./refuse.js";
import type { PreparedRun } from "./simulate.js";

/** What the last step of a fit leaves, in SI units. */
interface Found {
  readonly linear: number;
  readonly quadratic: number;
  readonly directional: number;
  /** Constant force of every run. */
  readonly constants: readonly number[];
  readonly rows: Float64Array;
  /** See `LinearFit.inverse`. */
  readonly inverse: readonly (readonly number[])[];
}

/**
 * Coefficients and their covariance from what was fitted. Noise of the speeds alone would say that a gust, which moves a whole run, is
 * known away by its many rows. So with three runs and more each way the covariance is also taken from how the runs differ, each
 * counting as one observation (the estimate that is robust to clusters: Liang and Zeger, Biometrika 73 (1986) 13, from memory),
 * and the one with more variance of the force at 80 km/h holds.
 * @internal
 */
export function spreadOf(
  runs: readonly PreparedRun[],
  blocks: readonly Block[],
  shared: readonly SharedTerm[],
  found: Found,
): Omit<CoastDownFit, "residuals" | "rejected"> {
  const { constants, rows, inverse, linear, quadratic, directional } = found;
  const free = rows.length - shared.length - 2 * runs.length;
  if (free < 1) refuse("too few rows are left for a spread");
  const variance = dot(rows, rows) / free;
  const weights = weightsOf(runs);
  const constant = constants.reduce((sum, value, i) => sum + value * (weights[i] as number), 0);
  const noise = blocks.map(({ constantLength }) => variance / constantLength ** 2);
  const scatter = scatterOf(runs, constants, noise);
  // A run's constant force falls when a shared term takes over: by this much, averaged as A is.
  const taken = shared.map((_, k) =>
    blocks.reduce((sum, { alongConstant, constantLength }, i) => {
      return sum + ((weights[i] as number) * (alongConstant[k] as number)) / constantLength;
    }, 0),
  );
  const ofShared = inverse.map((row) => row.map((value) => value * variance));
  const withConstant = ofShared.map((row) => -row.reduce((sum, value, k) => sum + value * (taken[k] as number), 0));
  const ofConstant =
    weights.reduce((sum, weight, i) => sum + weight ** 2 * (noise[i] as number), 0) -
    withConstant.reduce((sum, value, k) => sum + value * (taken[k] as number), 0);
  const at = (term: "constant" | SharedTerm, other: "constant" | SharedTerm): number => {
    const [i, j] = [term, other].map((each) => shared.indexOf(each as SharedTerm)) as [number, number];
    if (term === "constant" && other === "constant") return ofConstant;
    if (term === "constant") return withConstant[j] ?? 0;
    return (other === "constant" ? withConstant[i] : ofShared[i]?.[j]) ?? 0;
  };
  const terms = ["constant", "linear", "quadratic"] as const;
  const fromNoise = terms.map((term) => terms.map((other) => at(term, other)));
  const fromRuns = betweenRuns(runs, blocks, shared, { constants, weights, inverse, taken });
  return {
    coefficients: [constant, linear, quadratic],
    covariance: forceDeviation(fromRuns, COMPARED_AT) > forceDeviation(fromNoise, COMPARED_AT) ? fromRuns : fromNoise,
    speedDeviation: Math.sqrt(variance),
    offsets: constants.map((value, i) => ({ force: value - constant, deviation: Math.sqrt(noise[i] as number) })),
    scatter,
    directional,
  };
}

/** Part of every run in A: both directions count alike, however many runs each has. */
function weightsOf(runs: readonly PreparedRun[]): number[] {
  const directions = new Set(runs.map(({ direction }) => direction)).size;
  return runs.map(({ direction }) => 1 / directions / runs.filter((run) => run.direction === direction).length);
}

/** In m/s, 80 km/h. */
const COMPARED_AT = 80 / 3.6;
/** Fewest runs each way that say how runs differ: common practice, no source. @internal */
export const FEWEST_RUNS = 3;

/** Covariance of A, B and C from what each run does to them; zero for too few runs. */
function betweenRuns(
  runs: readonly PreparedRun[],
  blocks: readonly Block[],
  shared: readonly SharedTerm[],
  given: {
    readonly constants: readonly number[];
    readonly weights: readonly number[];
    readonly inverse: readonly (readonly number[])[];
    readonly taken: readonly number[];
  },
): number[][] {
  const { constants, weights, inverse, taken } = given;
  const same = runs.map(({ direction }) => runs.flatMap((other, j) => (other.direction === direction ? [j] : [])));
  const few = same.some(({ length }) => length < FEWEST_RUNS);
  const sums = [0, 1, 2].map(() => [0, 0, 0]);
  for (const [i, { columns, rows }] of few ? [] : [...blocks.entries()]) {
    const group = same[i] as readonly number[];
    const pulls = columns.map((column) => dot(column, rows));
    const onShared = inverse.map((row) => row.reduce((sum, value, k) => sum + value * (pulls[k] as number), 0));
    const mean = group.reduce((sum, j) => sum + (constants[j] as number) / group.length, 0);
    const own = (weights[i] as number) * ((constants[i] as number) - mean);
    const pull = (term: SharedTerm): number => onShared[shared.indexOf(term)] ?? 0;
    const onAll = [
      onShared.reduce((sum, value, k) => sum - value * (taken[k] as number), own),
      pull("linear"),
      pull("quadratic"),
    ];
    // A mean was taken from each direction: the usual correction for it.
    const correction = group.length / (group.length - 1);
    for (const [row, sum] of sums.entries()) {
      for (const column of sum.keys()) {
        sum[column] = (sum[column] as number) + correction * (onAll[row] as number) * (onAll[column] as number);
      }
    }
  }
  return sums;
}

/** How much more than noise the constant forces scatter within the directions, as a ratio. */
function scatterOf(
  runs: readonly PreparedRun[],
  constants: readonly number[],
  noise: readonly number[],
): number | undefined {
  const groups = (["out", "back"] as const)
    .map((way) => constants.filter((_, i) => runs[i]?.direction === way))
    .filter(({ length }) => length > 1);
  const free = groups.reduce((sum, { length }) => sum + length - 1, 0);
  const expected = noise.reduce((sum, value) => sum + value, 0) / noise.length;
  if (free === 0 || expected === 0) return undefined;
  const squares = groups.reduce((sum, group) => {
    const mean = group.reduce((total, value) => total + value, 0) / group.length;
    return sum + group.reduce((total, value) => total + (value - mean) ** 2, 0);
  }, 0);
  return Math.sqrt(squares / free / expected);
}
