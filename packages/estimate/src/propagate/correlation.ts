import { describeGiven, InputError, readNumber, readOptions } from "@tarewatt/units";
import { normalQuantile, normalShare } from "./normal.js";
import type { UniformDraws } from "./sequence.js";

/** Two inputs that go together. */
export interface RankCorrelation<Name extends string = string> {
  /** Names of the two inputs. */
  readonly between: readonly [Name, Name];
  /** Rank correlation (Spearman), −1 to 1: +0.8 when a high value of one mostly comes with a high value of the other. */
  readonly rank: number;
}

/** @internal Inputs that go together, in alphabetical order, and the triangular root of their correlation matrix. */
export interface Together {
  readonly names: readonly string[];
  readonly root: readonly (readonly number[])[];
}

/**
 * @internal Checks correlations: names of inputs, each pair once, and a matrix that some set of inputs can have.
 *
 * The ranks go through a Gaussian copula. The correlation of two normal scores with the rank correlation s is 2·sin(π·s/6): K. Pearson
 * 1907, from memory.
 */
export function readCorrelations(known: readonly string[], given: unknown): Together {
  if (given === undefined) return { names: [], root: [] };
  if (!Array.isArray(given)) throw new InputError("WRONG_CHOICE", "correlations must be a list", {});
  const pairs = given.map((each: RankCorrelation) => readPair(known, each));
  const names = [...new Set(pairs.flatMap(({ a, b }) => [a, b]))].sort();
  const matrix = names.map((_, i) => names.map((__, j) => (i === j ? 1 : 0)));
  for (const { a, b, rank } of pairs) {
    const [i, j] = [names.indexOf(a), names.indexOf(b)];
    if (pairs.filter((each) => (each.a === a && each.b === b) || (each.a === b && each.b === a)).length > 1) {
      throw new InputError("INCONSISTENT", `the correlation between ${a} and ${b} is given twice`, { a, b });
    }
    const score = 2 * Math.sin((Math.PI * rank) / 6);
    (matrix[i] as number[])[j] = score;
    (matrix[j] as number[])[i] = score;
  }
  return { names, root: triangularRoot(matrix, names) };
}

function readPair(known: readonly string[], each: RankCorrelation) {
  readOptions("a correlation", each, {}, ["between", "rank"]);
  const { between } = each;
  if (!Array.isArray(between) || between.length !== 2 || between[0] === between[1]) {
    throw new InputError("WRONG_CHOICE", `a correlation is between two inputs: got ${describeGiven(between)}`, {});
  }
  for (const name of between) {
    if (known.includes(name as string)) continue;
    throw new InputError("WRONG_CHOICE", `there is no input ${describeGiven(name)}: there are ${known.join(", ")}`, {});
  }
  const rank = readNumber("rank", each.rank, { unit: "1", atLeast: -1, atMost: 1 });
  return { a: between[0] as string, b: between[1] as string, rank };
}

/** Below this what is left of an input's own variance is taken for nothing: the rounding of a few sums. */
const NOTHING = 1e-12;

/** Cholesky's root; an input that follows wholly from those before it is let pass. */
function triangularRoot(matrix: readonly (readonly number[])[], names: readonly string[]): number[][] {
  const root: number[][] = [];
  const at = (i: number, j: number): number => root[i]?.[j] ?? 0;
  for (let i = 0; i < names.length; i++) {
    root.push([]);
    for (let j = 0; j <= i; j++) {
      let rest = matrix[i]?.[j] ?? 0;
      for (let k = 0; k < j; k++) rest -= at(i, k) * at(j, k);
      if (i === j && rest < -NOTHING) throw impossible(matrix, names, i);
      if (i !== j && at(j, j) === 0 && Math.abs(rest) > Math.sqrt(NOTHING)) throw impossible(matrix, names, i);
      root[i]?.push(i === j ? (rest < NOTHING ? 0 : Math.sqrt(rest)) : at(j, j) === 0 ? 0 : rest / at(j, j));
    }
  }
  return root;
}

function impossible(matrix: readonly (readonly number[])[], names: readonly string[], row: number): InputError {
  const involved = names.filter((_, j) => j === row || (j < row && matrix[row]?.[j] !== 0));
  return new InputError(
    "INCONSISTENT",
    `the correlations of ${involved.join(", ")} cannot all hold: what ${names[row]} shares with the others contradicts what those share with each other (the matrix is not positive definite); bring them nearer to zero`,
    { inputs: involved },
  );
}

/** @internal Refuses correlations with inputs that are given values and not drawn. */
export function refuseFixed({ names }: Together, fixed: readonly string[]): void {
  const name = fixed.find((each) => names.includes(each));
  if (name === undefined) return;
  const message = `${name} takes given values here and is not drawn: leave its correlations out`;
  throw new InputError("INCONSISTENT", message, { name });
}

/** @internal The draws of inputs that go together, from the draws that each would have alone. */
export function drawnTogether(
  { names, root }: Together,
  alone: ReadonlyMap<string, UniformDraws>,
): ReadonlyMap<string, UniformDraws> {
  return new Map(
    names.map((name, i) => {
      const weights = root[i] as readonly number[];
      const parts = names.slice(0, i + 1).map((each) => alone.get(each) as UniformDraws);
      const uniform: UniformDraws = (index) => {
        let score = 0;
        for (let j = 0; j <= i; j++) {
          const weight = weights[j] as number;
          if (weight !== 0) score += weight * normalQuantile((parts[j] as UniformDraws)(index));
        }
        return normalShare(score);
      };
      return [name, uniform];
    }),
  );
}
