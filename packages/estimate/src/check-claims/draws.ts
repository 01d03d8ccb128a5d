import { normalCdf } from "../evidence/normal.js";
import { quantileOfSorted } from "../propagate/spread.js";
import { misfit } from "./least-disagreement.js";
import type { ClaimRead } from "./read-claims.js";

/** @internal What the draws say of a claim before any claim. */
export interface Expected {
  readonly p10: number;
  readonly p50: number;
  readonly p90: number;
  readonly mean: number;
  readonly deviation: number;
  /** Share of figures, those of true claims with their spread included, below the announced one. */
  readonly below: number;
}

/** @internal Draws of the unknowns, each weighted by how well it meets the claims. */
export interface Drawn {
  /** For each claim. */
  readonly expected: readonly Expected[];
  /** Independent scores of the draws that gave a result, and their weights, which sum to 1. */
  readonly rows: readonly (readonly number[])[];
  readonly weights: readonly number[];
  /** (Σw)²/Σw². */
  readonly effective: number;
  /** Scores of the draw of the largest weight. */
  readonly best: readonly number[] | undefined;
  readonly failed: number;
}

/** @internal */
export function drawsOf(
  claims: readonly ClaimRead[],
  counted: readonly ClaimRead[],
  draws: number,
  draw: (index: number) => { readonly independent: readonly number[]; readonly values: readonly number[] | undefined },
): Drawn {
  const rows: (readonly number[])[] = [];
  const columns = claims.map((): number[] => []);
  const misses: number[] = [];
  const places = counted.map((each) => claims.indexOf(each));
  for (let index = 0; index < draws; index++) {
    const { independent, values } = draw(index);
    if (values === undefined) continue;
    rows.push(independent);
    claims.forEach((_, i) => {
      columns[i]?.push(values[i] as number);
    });
    misses.push(counted.reduce((sum, each, i) => sum + misfit(each, values[places[i] as number] as number) ** 2, 0));
  }
  const least = misses.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY);
  // The nearest draw has the weight 1, so that weights of draws far from all claims do not vanish together.
  const raw = misses.map((each) => Math.exp((least - each) / 2));
  const sum = raw.reduce((a, b) => a + b, 0);
  const squares = raw.reduce((total, each) => total + each ** 2, 0);
  return {
    expected: claims.map((each, i) => expectedOf(each, columns[i] as number[])),
    ...{ rows, weights: raw.map((each) => each / sum), failed: draws - rows.length },
    effective: rows.length === 0 ? 0 : sum ** 2 / squares,
    best: rows[misses.indexOf(least)],
  };
}

function expectedOf({ value, deviation }: ClaimRead, column: readonly number[]): Expected {
  const sorted = Float64Array.from(column).sort();
  const n = Math.max(1, column.length);
  const mean = column.reduce((sum, each) => sum + each, 0) / n;
  const variance = column.reduce((sum, each) => sum + (each - mean) ** 2, 0) / n;
  const below = column.reduce((sum, each) => sum + normalCdf((value - each) / deviation), 0) / n;
  const at = (share: number): number => (sorted.length === 0 ? value : quantileOfSorted(sorted, share));
  return { p10: at(0.1), p50: at(0.5), p90: at(0.9), mean, deviation: Math.sqrt(variance), below };
}
