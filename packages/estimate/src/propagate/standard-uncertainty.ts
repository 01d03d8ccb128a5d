import { InputError, readNumber } from "@tarewatt/units";
import type { EvidenceRead } from "../evidence/evidence.js";
import { quantileOf } from "../evidence/quantile.js";
import type { ModelInput } from "../model/model.js";
import { entryOf } from "../model/read-model.js";
import type { Together } from "./correlation.js";

/** Midpoints at which the quantile function is read: the mean and deviation of a tail are right to about 1e-5 of the spread. */
const MIDPOINTS = 4096;

/** @internal Mean of what is known of an input, and its standard deviation. */
export function momentsOf(read: EvidenceRead): { readonly mean: number; readonly deviation: number } {
  if (read.low === read.high) return { mean: read.likely, deviation: 0 };
  let [sum, squares] = [0, 0];
  for (let i = 0; i < MIDPOINTS; i++) {
    const difference = quantileOf(read, (i + 0.5) / MIDPOINTS) - read.likely;
    sum += difference;
    squares += difference * difference;
  }
  const shift = sum / MIDPOINTS;
  return { mean: read.likely + shift, deviation: Math.sqrt(squares / MIDPOINTS - shift * shift) };
}

/** @internal Degrees of freedom by the name of an input. */
export function readDegrees(
  inputs: Readonly<Record<string, ModelInput>>,
  given: unknown,
  model: string,
): ReadonlyMap<string, number> {
  if (given === undefined) return new Map();
  if (typeof given !== "object" || given === null) {
    throw new InputError("NOT_AN_OBJECT", "degreesOfFreedom must give numbers by the names of inputs", {});
  }
  return new Map(
    Object.entries(given).map(([name, value]) => {
      entryOf(inputs, name, "input", model);
      return [name, readNumber(`degreesOfFreedom.${name}`, value, { unit: "1", atLeast: 1 })];
    }),
  );
}

/** @internal Correlation of the normal scores of two inputs, taken for that of the inputs. */
export function correlationOf({ names, root }: Together, a: string, b: string): number {
  const [x, y] = [root[names.indexOf(a)], root[names.indexOf(b)]];
  if (x === undefined || y === undefined) return 0;
  return x.reduce((sum, value, k) => sum + value * (y[k] ?? 0), 0);
}
