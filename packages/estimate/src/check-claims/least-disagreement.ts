import { cholesky, solveWith } from "../calibrate/cholesky.js";
import { dot } from "./scores.js";

/** @internal What a claim says of a number. */
export interface Said {
  /** The announced figure. */
  readonly value: number;
  /** Standard deviation of the truth about it. */
  readonly deviation: number;
  /** On which side of the figure the truth may lie freely. */
  readonly side: Side;
}

/** @internal */
export type Side = "both" | "at least" | "at most";

/** @internal The claimed numbers as the model gives them for independent normal scores; undefined where it gives none. */
export type Predict = (scores: readonly number[]) => readonly number[] | undefined;

/** @internal The unknowns that disagree least with evidence and claims together. */
export interface Fit {
  readonly scores: readonly number[];
  readonly values: readonly number[];
  /** Squared scores, and squared misfits of the claims, each in its standard deviations. */
  readonly ofUnknowns: number;
  readonly ofClaims: number;
  /** Their sum. */
  readonly total: number;
  /** Change of each claimed number by each score, in the claim's standard deviations. */
  readonly slopes: readonly (readonly number[])[];
  readonly settled: boolean;
}

const STEP = 1e-3;
const MOST_STEPS = 60;
const SETTLED = 1e-9;

/** @internal By how many of its standard deviations a number misses what is said of it; zero on the free side. */
export function misfit({ value, deviation, side }: Said, predicted: number): number {
  const distance = (predicted - value) / deviation;
  if (side === "at least") return Math.min(0, distance);
  return side === "at most" ? Math.max(0, distance) : distance;
}

/**
 * @internal Minimises the squared scores plus the squared misfits by Gauss's and Newton's method with Levenberg's damping. For a linear
 * model with claims on both sides the first step is exact, and the minimum is rᵀ·(J·Jᵀ + S)⁻¹·r of data reconciliation.
 */
export function leastDisagreement(predict: Predict, said: readonly Said[], start: readonly number[]): Fit | undefined {
  const at = (scores: readonly number[]) => {
    const values = predict(scores);
    if (values === undefined) return undefined;
    const misfits = said.map((each, i) => misfit(each, values[i] as number));
    const [ofUnknowns, ofClaims] = [dot(scores, scores), dot(misfits, misfits)];
    return { scores, values, misfits, ofUnknowns, ofClaims, total: ofUnknowns + ofClaims };
  };
  let here = at(start);
  if (here === undefined) return undefined;
  let slopes = slopesAt(predict, said, here.scores, here.values);
  let damping = 0;
  let settled = start.length === 0;
  for (let step = 0; step < MOST_STEPS && !settled; step++) {
    const { scores, misfits, total } = here;
    const active = misfits.flatMap((each, i) => (said[i]?.side === "both" || each !== 0 ? [i] : []));
    const matrix = normalMatrix(slopes, active, scores.length, 1 + damping);
    const downhill = scores.map((score, j) =>
      active.reduce((sum, i) => sum - (slopes[i]?.[j] ?? 0) * (misfits[i] as number), -score),
    );
    const move = solveWith(cholesky(matrix), downhill);
    const next = at(scores.map((score, j) => score + (move[j] as number)));
    const size = Math.sqrt(dot(move, move));
    if (next !== undefined && next.total <= total) {
      settled = size < 1e-6 || total - next.total < SETTLED * (1 + total) * 1e-3;
      here = next;
      slopes = slopesAt(predict, said, here.scores, here.values);
      damping = damping < 1e-3 ? 0 : damping / 5;
    } else {
      settled = size < 1e-6;
      damping = Math.max(0.01, damping * 4);
    }
  }
  const { misfits: _, ...found } = here;
  return { ...found, slopes, settled };
}

/** @internal The identity times a factor, plus what the active claims say of the scores. */
export function normalMatrix(
  slopes: readonly (readonly number[])[],
  active: readonly number[],
  size: number,
  diagonal: number,
): number[][] {
  return Array.from({ length: size }, (_, j) =>
    Array.from({ length: size }, (__, k) =>
      active.reduce((sum, i) => sum + (slopes[i]?.[j] ?? 0) * (slopes[i]?.[k] ?? 0), j === k ? diagonal : 0),
    ),
  );
}

function slopesAt(
  predict: Predict,
  said: readonly Said[],
  scores: readonly number[],
  values: readonly number[],
): number[][] {
  const slopes = said.map(() => new Array<number>(scores.length).fill(0));
  for (let j = 0; j < scores.length; j++) {
    const moved = (by: number) => predict(scores.map((score, k) => (k === j ? score + by : score)));
    const [below, above] = [moved(-STEP), moved(STEP)];
    const width = (below === undefined ? 0 : STEP) + (above === undefined ? 0 : STEP);
    if (width === 0) continue;
    said.forEach(({ deviation }, i) => {
      const change = ((above ?? values)[i] as number) - ((below ?? values)[i] as number);
      (slopes[i] as number[])[j] = change / width / deviation;
    });
  }
  return slopes;
}
