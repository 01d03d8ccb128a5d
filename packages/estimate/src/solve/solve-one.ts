import { InputError } from "@tarewatt/units";
import { bracketedRoot } from "./bracketed-root.js";
import type { LimitRead } from "./limit.js";

/** @internal The answer for one set of inputs. `rising`: more of the unknown brings the output nearer to what is wanted. */
export type Outcome =
  /** From `value` up to `end`, or down from it. */
  | { readonly outcome: "reached"; readonly value: number; readonly rising: boolean; readonly end: number }
  /** Everywhere up to `end`. */
  | { readonly outcome: "always reached"; readonly rising: boolean; readonly end: number }
  | {
      readonly outcome: "not reached";
      readonly limit: string;
      readonly best: number;
      readonly at: number;
      readonly rising: boolean;
    };

/** @internal What is asked of a model of one unknown. */
export interface Problem {
  readonly unknown: string;
  readonly output: string;
  readonly target: number;
  /** 1 when the output must be at least the target, -1 when at most. */
  readonly sign: 1 | -1;
  readonly low: number;
  readonly high: number;
  readonly limits: readonly LimitRead[];
}

/** Relative width at which a root is good enough: far below what any input deserves. */
const PRECISION = 1e-6;

/** @internal */
export function solveOne(evaluate: (value: number) => Readonly<Record<string, number>>, problem: Problem): Outcome {
  const { output, target, sign, low, high, unknown } = problem;
  // Target and limits are read at the same ends: one evaluation serves all.
  const known = new Map<number, Readonly<Record<string, number>>>();
  const at = (name: string, value: number): number => {
    const outputs = known.get(value) ?? evaluate(value);
    known.set(value, outputs);
    return finite(outputs[name], name);
  };
  const root = (f: (value: number) => number, a: number, b: number, ends: readonly [number, number]): number =>
    bracketedRoot(f, a, b, PRECISION * Math.max(Math.abs(a), Math.abs(b)), ends);
  /** Not negative where the target is reached. */
  const surplus = (value: number): number => sign * (at(output, value) - target);

  const { end, limit } = allowedEnd(problem, at, root);
  if (end === undefined) {
    return { outcome: "not reached", limit: limit as string, best: at(output, low), at: low, rising: true };
  }
  const [atLow, atEnd] = [surplus(low), surplus(end)];
  const rising = atEnd > atLow;
  if (atLow >= 0 && atEnd >= 0) return { outcome: "always reached", rising, end };
  if (atLow >= 0 || atEnd >= 0)
    return { outcome: "reached", value: root(surplus, low, end, [atLow, atEnd]), rising, end };
  if (atLow === atEnd && end > low) {
    throw new InputError("NOT_VALID_HERE", `${output} does not move with ${unknown}: it cannot be solved for`, {});
  }
  const nearest = rising ? end : low;
  return { outcome: "not reached", limit: limit ?? barrier(), best: at(output, nearest), at: nearest, rising };

  function barrier(): string {
    if (!rising) return `the smallest ${unknown} considered`;
    return surplus(100 * high) < 0
      ? `no ${unknown} reaches it: even a hundred times the largest considered would not, since what it adds is spent on carrying it`
      : `the largest ${unknown} considered`;
  }
}

/** The largest value that keeps every limit, and the limit that sets it; no value when the smallest breaks one already. */
function allowedEnd(
  { low, high, limits }: Problem,
  at: (name: string, value: number) => number,
  root: (f: (value: number) => number, a: number, b: number, ends: readonly [number, number]) => number,
): { readonly end?: number; readonly limit?: string } {
  let end = high;
  let limit: string | undefined;
  for (const { output, atMost, because } of limits) {
    const excess = (value: number): number => at(output, value) - atMost;
    const [atLow, atEnd] = [excess(low), excess(end)];
    if (atLow > 0) return { limit: because };
    if (atEnd <= 0) continue;
    end = root(excess, low, end, [atLow, atEnd]);
    limit = because;
  }
  return limit === undefined ? { end } : { end, limit };
}

function finite(value: number | undefined, output: string): number {
  if (value !== undefined && Number.isFinite(value)) return value;
  throw new InputError("NOT_VALID_HERE", `the model gave no finite ${output} inside the bracket`, { output });
}
