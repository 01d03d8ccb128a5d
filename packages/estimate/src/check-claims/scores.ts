import type { EvidenceRead } from "../evidence/evidence.js";
import { normalCdf, normalQuantile } from "../evidence/normal.js";
import { quantileOf } from "../evidence/quantile.js";
import type { ModelInput } from "../model/model.js";
import type { Together } from "../propagate/correlation.js";
import { evenUniforms } from "../propagate/sequence.js";

/** Beyond so many standard deviations the normal distribution cannot be told from its end in double precision. */
const FARTHEST = 7.5;

/**
 * @internal The unknowns of a model as independent standard normal numbers, whatever the shape of their evidence: an input is the
 * quantile of its evidence at the normal share of its score. Inputs that go together share scores, as in `propagate`.
 */
export interface Scores {
  /** The inputs that are not exact. */
  readonly names: readonly string[];
  /** All inputs, in their units, for independent normal numbers. */
  readonly inputs: (independent: readonly number[]) => Readonly<Record<string, number>>;
  /** How each input's score follows from the independent numbers: one row for each name. */
  readonly weights: readonly (readonly number[])[];
  /** The value of an input at a score of its own. */
  readonly valueAt: (name: string, score: number) => number;
  /** Independent normal numbers of a draw. */
  readonly draw: (index: number) => number[];
}

/** @internal */
export function scoresOf(options: {
  readonly inputs: Readonly<Record<string, ModelInput>>;
  readonly evidence: ReadonlyMap<string, EvidenceRead>;
  readonly together: Together;
  readonly seed: number;
}): Scores {
  const { inputs, evidence, together, seed } = options;
  const uncertain = [...evidence].filter(([, read]) => read.shape !== undefined || read.low !== read.high);
  const names = uncertain.map(([name]) => name);
  const likely = Object.fromEntries([...evidence].map(([name, read]) => [name, read.likely]));
  const uniforms = names.map((name) => evenUniforms(seed, name, inputs[name]?.place));
  const valueAt = (name: string, score: number): number =>
    quantileOf(evidence.get(name) as EvidenceRead, normalCdf(Math.min(FARTHEST, Math.max(-FARTHEST, score))));
  const weights = names.map((name) => {
    const row = together.names.indexOf(name);
    return names.map((other) => {
      if (row < 0) return other === name ? 1 : 0;
      const column = together.names.indexOf(other);
      return column < 0 ? 0 : (together.root[row]?.[column] ?? 0);
    });
  });
  return {
    ...{ names, weights, valueAt },
    inputs: (independent) => {
      const values = { ...likely };
      names.forEach((name, i) => {
        values[name] = valueAt(name, dot(weights[i] as readonly number[], independent));
      });
      return values;
    },
    draw: (index) => uniforms.map((uniform) => normalQuantile(uniform(index))),
  };
}

/** @internal */
export function dot(a: readonly number[], b: readonly number[]): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += (a[i] as number) * (b[i] as number);
  return sum;
}
