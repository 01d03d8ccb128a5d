import type { EvidenceRead } from "../evidence/evidence.js";
import { attempt } from "../model/read-model.js";
import type { AnyModel } from "../propagate/block.js";
import { drawer } from "../propagate/study.js";

/** @internal Shares of the variance of an output, for each unknown, by parts of the study. */
export interface SharesRead {
  readonly first: Estimate;
  readonly total: Estimate;
}

/** @internal A figure and the standard deviation of its error. */
export interface Estimate {
  readonly value: number;
  readonly standardError: number;
}

/** Into how many the rows are cut to find the errors. */
const PARTS = 16;

/** Sums over some rows, from which the shares follow. */
interface Sums {
  rows: number;
  f: number;
  ff: number;
  /** For each unknown: Σ f(B)(f(A_B) − f(A)), Σ (f(B) − f(A_B))² and Σ (f(A) − f(A_B))². */
  readonly first: Float64Array;
  readonly rest: Float64Array;
  readonly total: Float64Array;
}

/** @internal */
export interface SharesOptions {
  readonly model: AnyModel;
  readonly output: string;
  readonly evidence: ReadonlyMap<string, EvidenceRead>;
  readonly unknowns: readonly string[];
  readonly rows: number;
  readonly seed: number;
}

/**
 * @internal Shares of the variance, first-order and total (A. Saltelli and others, Computer Physics Communications 181 (2010) 259, table 2,
 * from memory): two independent samples A and B, and for each unknown the sample A with that one column of B. For the first-order share
 * the table has an estimator that is good for small shares and one, of Jansen, that is good for large ones; the one with the smaller
 * error is taken.
 *
 * Values are taken from the output at likely values, which changes no share and lessens the rounding and the scatter of the first-order estimator.
 * Their errors are from leaving out one sixteenth of the rows after the other (the jackknife). A row in which one evaluation fails is left out.
 */
export function sharesOf(options: SharesOptions): {
  readonly shares: ReadonlyMap<string, SharesRead>;
  readonly failed: number;
} {
  const { model, output, evidence, unknowns, rows, seed } = options;
  const { inputs } = model;
  const drawA = drawer({ inputs, evidence, seed });
  const drawB = drawer({ inputs, evidence, seed, secondSample: true });
  const at = (drawn: Record<string, number>): number => attempt(model, drawn).outputs?.[output] ?? Number.NaN;
  const k = unknowns.length;
  const parts = Array.from({ length: PARTS }, () => sums(k));
  const centre = at(Object.fromEntries([...evidence].map(([name, { likely }]) => [name, likely])));
  const mixed = new Float64Array(k);
  let failed = 0;
  for (let row = 0; row < rows; row++) {
    const [a, b] = [drawA(row), drawB(row)];
    const [fa, fb] = [at(a) - centre, at(b) - centre];
    let whole = Number.isFinite(fa) && Number.isFinite(fb);
    for (let i = 0; i < k && whole; i++) {
      const name = unknowns[i] as string;
      const own = a[name] as number;
      a[name] = b[name] as number;
      mixed[i] = at(a) - centre;
      a[name] = own;
      whole = Number.isFinite(mixed[i]);
    }
    if (!whole) {
      failed++;
      continue;
    }
    const part = parts[Math.floor((row * PARTS) / rows)] as Sums;
    part.rows++;
    part.f += fa + fb;
    part.ff += fa * fa + fb * fb;
    for (let i = 0; i < k; i++) {
      const step = (mixed[i] as number) - fa;
      (part.first[i] as number) += fb * step;
      (part.rest[i] as number) += (fb - (mixed[i] as number)) ** 2;
      (part.total[i] as number) += step * step;
    }
  }
  const all = added(parts, k);
  const without = parts.filter(({ rows: here }) => here > 0).map((part) => added([all, part], k, -1));
  const estimate = (pick: (from: Sums) => number): Estimate => {
    const left = without.map(pick);
    const mean = left.reduce((sum, each) => sum + each, 0) / left.length;
    const squares = left.reduce((sum, each) => sum + (each - mean) ** 2, 0);
    return Object.freeze({ value: pick(all), standardError: Math.sqrt((squares * (left.length - 1)) / left.length) });
  };
  return {
    failed,
    shares: new Map(
      unknowns.map((name, i) => [
        name,
        {
          first: better(
            estimate((from) => share((from.first[i] as number) / from.rows, from)),
            estimate((from) => 1 - share((from.rest[i] as number) / (2 * from.rows), from)),
          ),
          total: estimate((from) => share((from.total[i] as number) / (2 * from.rows), from)),
        },
      ]),
    ),
  };
}

function better(a: Estimate, b: Estimate): Estimate {
  return a.standardError <= b.standardError ? a : b;
}

function sums(k: number): Sums {
  const zeros = (): Float64Array => new Float64Array(k);
  return { rows: 0, f: 0, ff: 0, first: zeros(), rest: zeros(), total: zeros() };
}

/** The sum of all; with a sign of −1 the first less the others. */
function added(parts: readonly Sums[], k: number, sign = 1): Sums {
  const sum = sums(k);
  parts.forEach((part, index) => {
    const s = index === 0 ? 1 : sign;
    sum.rows += s * part.rows;
    sum.f += s * part.f;
    sum.ff += s * part.ff;
    for (let i = 0; i < k; i++) {
      (sum.first[i] as number) += s * (part.first[i] as number);
      (sum.rest[i] as number) += s * (part.rest[i] as number);
      (sum.total[i] as number) += s * (part.total[i] as number);
    }
  });
  return sum;
}

/** A part of the variance as a share. Of an output that does not move, and of no rows, everything is nothing. */
function share(part: number, { rows, f, ff }: Sums): number {
  const mean = f / (2 * rows);
  const variance = ff / (2 * rows) - mean * mean;
  return variance > 0 && rows > 0 ? part / variance : 0;
}
