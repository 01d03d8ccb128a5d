import { InputError, readNumber, readOptions } from "@tarewatt/units";
import type { ModelOutput, ValueIn } from "../model/model.js";
import { entryOf } from "../model/read-model.js";

/** Something that must not be exceeded on the way to a target: a gross mass, a pack volume. */
export interface Limit<Outputs extends Readonly<Record<string, ModelOutput>>> {
  /** Output of the model that is limited. */
  readonly output: keyof Outputs & string;
  /** Its largest allowed value. */
  readonly atMost: ValueIn<Outputs[keyof Outputs]["unit"]>;
  /** Why, in words that can be printed: "gross vehicle mass of the licence class". */
  readonly because: string;
}

/** @internal */
export interface LimitRead {
  readonly output: string;
  readonly atMost: number;
  readonly because: string;
}

/** @internal */
export function readLimits<Outputs extends Readonly<Record<string, ModelOutput>>>(
  outputs: Outputs,
  limits: readonly Limit<Outputs>[],
): readonly LimitRead[] {
  if (!Array.isArray(limits)) throw new InputError("NOT_AN_OBJECT", "limits must be a list", {});
  return limits.map((limit: Limit<Outputs>) => {
    readOptions("a limit", limit, {}, ["output", "atMost", "because"]);
    const output = entryOf(outputs, limit.output, "output", "the model of a limit");
    const atMost = readNumber(`the limit of ${limit.output}`, limit.atMost, { unit: output.unit });
    return { output: limit.output, atMost, because: limit.because };
  });
}
