import { dot } from "../least-squares.js";
import type { Block, CoastDownFit, SharedTerm } from "./fit.js";
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
 * Coefficients and their covariance from what was fitted. The variance of A has two parts: noise of the speeds, and what the
 * runs of a direction scatter beyond it, as a gust or a warmer tyre moves a whole run.
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
  const { scatter, between } = scatterOf(runs, constants, noise);
  // A run's constant force falls when a shared term takes over: by this much, averaged as A is.
  const taken = shared.map((_, k) =>
    blocks.reduce((sum, { alongConstant, constantLength }, i) => {
      return sum + ((weights[i] as number) * (alongConstant[k] as number)) / constantLength;
    }, 0),
  );
  const ofShared = inverse.map((row) => row.map((value) => value * variance));
  const withConstant = ofShared.map((row) => -row.reduce((sum, value, k) => sum + value * (taken[k] as number), 0));
  const ofConstant =
    weights.reduce((sum, weight, i) => sum + weight ** 2 * ((noise[i] as number) + between), 0) -
    withConstant.reduce((sum, value, k) => sum + value * (taken[k] as number), 0);
  const at = (term: "constant" | SharedTerm, other: "constant" | SharedTerm): number => {
    const [i, j] = [term, other].map((each) => shared.indexOf(each as SharedTerm)) as [number, number];
    if (term === "constant" && other === "constant") return ofConstant;
    if (term === "constant") return withConstant[j] ?? 0;
    return (other === "constant" ? withConstant[i] : ofShared[i]?.[j]) ?? 0;
  };
  const terms = ["constant", "linear", "quadratic"] as const;
  return {
    coefficients: [constant, linear, quadratic],
    covariance: terms.map((term) => terms.map((other) => at(term, other))),
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

/** How the constant forces scatter within the directions: as a ratio to noise, and as a variance beyond it. */
function scatterOf(
  runs: readonly PreparedRun[],
  constants: readonly number[],
  noise: readonly number[],
): { readonly scatter: number | undefined; readonly between: number } {
  const groups = (["out", "back"] as const)
    .map((way) => constants.filter((_, i) => runs[i]?.direction === way))
    .filter(({ length }) => length > 1);
  const free = groups.reduce((sum, { length }) => sum + length - 1, 0);
  const expected = noise.reduce((sum, value) => sum + value, 0) / noise.length;
  if (free === 0 || expected === 0) return { scatter: undefined, between: 0 };
  const squares = groups.reduce((sum, group) => {
    const mean = group.reduce((total, value) => total + value, 0) / group.length;
    return sum + group.reduce((total, value) => total + (value - mean) ** 2, 0);
  }, 0);
  return { scatter: Math.sqrt(squares / free / expected), between: Math.max(0, squares / free - expected) };
}
