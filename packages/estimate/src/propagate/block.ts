import { describeGiven } from "@tarewatt/units";
import type { Model, ModelInput, ModelOutput } from "../model/model.js";
import { reasonOf } from "../model/read-model.js";

/** @internal Any model, where its names do not matter. */
export type AnyModel = Model<Readonly<Record<string, ModelInput>>, Readonly<Record<string, ModelOutput>>>;

/** A draw for which the model threw, or gave a number that is not finite. */
export interface FailedDraw {
  /** Index of the draw. */
  readonly index: number;
  /** What the model threw, or which output was no number. */
  readonly reason: string;
}

/** @internal How many draws are summed before they are added to the exact sums: parts of a study begin at multiples of it. */
export const BLOCK = 256;

/** @internal The outputs of some draws that follow each other, those that succeeded. */
export interface Block {
  /** Index of its first draw. */
  readonly first: number;
  /** How many succeeded. */
  readonly count: number;
  /** For each output, in order, its values in the first `count` places. The arrays are used again for the next block. */
  readonly columns: readonly Float64Array[];
  readonly failures: readonly FailedDraw[];
}

/** @internal Evaluates a model for draws `first` to `last`, the latter not included, at most {@link BLOCK} of them. */
export function blockRunner(
  model: AnyModel,
  drawn: (index: number) => Record<string, number>,
): (first: number, last: number) => Block {
  const names = Object.keys(model.outputs);
  const columns = names.map(() => new Float64Array(BLOCK));
  /** Writes the outputs of a draw into a row; why it has none, otherwise. */
  const evaluateInto = (index: number, row: number): string | undefined => {
    try {
      const outputs = model.evaluate(drawn(index));
      for (let i = 0; i < names.length; i++) {
        const name = names[i] as string;
        const value = outputs[name] as number;
        if (!Number.isFinite(value)) return `${name} is ${describeGiven(value)}`;
        (columns[i] as Float64Array)[row] = value;
      }
      return undefined;
    } catch (error) {
      return reasonOf(error);
    }
  };
  return (first, last) => {
    const failures: FailedDraw[] = [];
    let count = 0;
    for (let index = first; index < last; index++) {
      const reason = evaluateInto(index, count);
      if (reason === undefined) count++;
      else failures.push({ index, reason });
    }
    return { first, count, columns, failures };
  };
}
