import { describeGiven, InputError } from "@tarewatt/units";
import type { Model, ModelInput, ModelNumbers, ModelOutput } from "./model.js";

/** @internal Refuses what is no model, by what it lacks. */
export function readModel<
  Inputs extends Readonly<Record<string, ModelInput>>,
  Outputs extends Readonly<Record<string, ModelOutput>>,
>(model: Model<Inputs, Outputs>): Model<Inputs, Outputs> {
  const { name, inputs, outputs, evaluate } = (typeof model === "object" && model !== null ? model : {}) as Partial<
    Model<Inputs, Outputs>
  >;
  const table = (each: unknown): boolean =>
    typeof each === "object" &&
    each !== null &&
    Object.values(each).every((entry) => typeof (entry as Partial<ModelOutput> | null)?.unit === "string");
  if (typeof name === "string" && table(inputs) && table(outputs) && typeof evaluate === "function") return model;
  throw new InputError(
    "WRONG_CHOICE",
    "model must have a name, inputs and outputs with their units, and evaluate: see the function model()",
    {},
  );
}

/** @internal An entry of a table of inputs or outputs, refused by name when there is none. */
export function entryOf<T>(
  table: Readonly<Record<string, T>>,
  name: unknown,
  what: "input" | "output",
  model: string,
): T {
  const found = typeof name === "string" && Object.hasOwn(table, name) ? table[name] : undefined;
  if (found !== undefined) return found;
  const known = Object.keys(table).join(", ");
  throw new InputError(
    "WRONG_CHOICE",
    `${model} has no ${what} ${typeof name === "string" ? `'${name}'` : describeGiven(name)}: it has ${known}`,
    {
      name: describeGiven(name),
    },
  );
}

/** @internal Outputs of one evaluation, or the reason why there are none. */
export type Attempt =
  | { readonly outputs: Readonly<Record<string, number>>; readonly reason?: never }
  | { readonly outputs?: never; readonly reason: unknown };

/** @internal Evaluates a model; an exception or an output that is not finite is a reason, not a crash. */
export function attempt<
  Inputs extends Readonly<Record<string, ModelInput>>,
  Outputs extends Readonly<Record<string, ModelOutput>>,
>(model: Model<Inputs, Outputs>, inputs: Readonly<Record<string, number>>): Attempt {
  try {
    const outputs = model.evaluate(inputs as ModelNumbers<Inputs>) as Readonly<Record<string, number>>;
    const odd = Object.keys(model.outputs).find((name) => !Number.isFinite(outputs[name]));
    return odd === undefined ? { outputs } : { reason: `${odd} is ${describeGiven(outputs[odd])}` };
  } catch (reason) {
    return { reason };
  }
}

/** @internal Why a model gave no results, in words. */
export function reasonOf(cause: unknown): string {
  if (typeof cause === "string") return cause;
  return cause instanceof Error ? cause.message : describeGiven(cause);
}

/** @internal The error for a model without results, with its cause. */
export function noResult(what: string, cause: unknown): InputError {
  const why = cause === undefined ? "" : `: ${reasonOf(cause)}`;
  return Object.assign(new InputError("NOT_VALID_HERE", `${what}${why}`, {}), { cause });
}
