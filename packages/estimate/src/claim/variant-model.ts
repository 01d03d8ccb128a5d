import { describeGiven, InputError, readOptions, type Working } from "@tarewatt/units";
import type { Model, ModelInput, ModelNumbers, ModelOutput } from "../model/model.js";
import { entryOf, readModel } from "../model/read-model.js";

/** A table of a model for several variants: shared entries as they are, the others as `variant.name`. */
export type OfVariants<Table, Variant extends string, Own extends PropertyKey> = {
  readonly [K in Exclude<keyof Table, Own>]: Table[K];
} & { readonly [K in keyof Table & Own & string as `${Variant}.${K}`]: Table[K] };

/** What {@link variantModel} needs. */
export interface VariantModelOptions<
  Inputs extends Readonly<Record<string, ModelInput>>,
  Outputs extends Readonly<Record<string, ModelOutput>>,
  Variant extends string,
  Own extends keyof Inputs & string,
> {
  /** The model of one variant. */
  readonly model: Model<Inputs, Outputs>;
  /** Names of the variants, without dots. */
  readonly variants: readonly Variant[];
  /** The inputs that differ from variant to variant; all others are one unknown of the whole vehicle. */
  readonly own: readonly Own[];
}

/**
 * One model of all variants of a vehicle. Shared unknowns, such as the drag coefficient, are drawn once for all of them; own ones, such as the
 * pack energy, once for each. So differences between variants do not hold the spread of what they share.
 *
 * Inputs that are shared keep their names; own ones and all outputs are called `variant.name`.
 *
 * @param options - model, variants and their own inputs
 * @returns a model for `propagate`, `solveFor` and `rankUnknowns`
 * @throws InputError `EMPTY` without variants, `INCONSISTENT` when a name comes twice, `WRONG_CHOICE` for an input that the model has not
 * @example
 * const range = model({
 *   name: "range",
 *   inputs: { usable: { unit: "kWh", meaning: "usable energy", above: 0 }, use: { unit: "Wh/km", meaning: "consumption", above: 0 } },
 *   outputs: { range: { unit: "km", meaning: "range" } },
 *   evaluate: ({ usable, use }) => ({ range: (1000 * usable) / use }),
 * });
 * const both = variantModel({ model: range, variants: ["short", "long"], own: ["usable"] });
 * const evidence = { use: around(q("180 Wh/km"), 0.1), "short.usable": q("60 kWh"), "long.usable": q("90 kWh") };
 * propagate({ model: both, evidence }).likely["long.range"].in("km"); // 500
 */
export function variantModel<
  Inputs extends Readonly<Record<string, ModelInput>>,
  Outputs extends Readonly<Record<string, ModelOutput>>,
  const Variant extends string,
  const Own extends keyof Inputs & string,
>(
  options: VariantModelOptions<Inputs, Outputs, Variant, Own>,
): Model<OfVariants<Inputs, Variant, Own>, OfVariants<Outputs, Variant, keyof Outputs>> {
  readOptions("variantModel", options, {}, ["model", "variants", "own"]);
  const model = readModel(options.model);
  const variants = readNames("variants", options.variants);
  const own = readNames("own", options.own);
  if (variants.length === 0) throw new InputError("EMPTY", "variantModel needs at least one variant", {});
  const dotted = variants.find((name) => name.includes("."));
  if (dotted !== undefined) {
    throw new InputError("WRONG_CHOICE", `the name of a variant must have no dot: got '${dotted}'`, { name: dotted });
  }
  for (const name of own) entryOf(model.inputs, name, "input", model.name);
  const shared = Object.keys(model.inputs).filter((name) => !own.includes(name));
  const outputs = Object.keys(model.outputs);
  const table = <T extends { readonly meaning: string }>(
    entries: Readonly<Record<string, T>>,
    names: readonly string[],
  ) =>
    variants.flatMap((variant) =>
      names.map((name) => {
        const entry = entries[name] as T;
        return [`${variant}.${name}`, { ...entry, meaning: `${entry.meaning}, ${variant}` }] as const;
      }),
    );
  return Object.freeze({
    name: `${model.name} of ${variants.join(", ")}`,
    inputs: Object.freeze(
      Object.fromEntries([
        ...shared.map((name) => [name, model.inputs[name] as ModelInput] as const),
        ...table(model.inputs, own),
      ]),
    ),
    outputs: Object.freeze(Object.fromEntries(table(model.outputs, outputs))),
    evaluate: (numbers: Readonly<Record<string, number>>, working?: Working) => {
      const all: Record<string, number> = {};
      for (const variant of variants) {
        const inputs: Record<string, number> = {};
        for (const name of shared) inputs[name] = numbers[name] as number;
        for (const name of own) inputs[name] = numbers[`${variant}.${name}`] as number;
        const results = model.evaluate(inputs as ModelNumbers<Inputs>, working) as Readonly<Record<string, number>>;
        for (const name of outputs) all[`${variant}.${name}`] = results[name] as number;
      }
      return all;
    },
  }) as unknown as Model<OfVariants<Inputs, Variant, Own>, OfVariants<Outputs, Variant, keyof Outputs>>;
}

function readNames(what: string, given: unknown): readonly string[] {
  if (!Array.isArray(given)) {
    throw new InputError("WRONG_CHOICE", `${what} must be a list of names: got ${describeGiven(given)}`, {});
  }
  const names = Array.from(given as readonly unknown[], (each) => {
    if (typeof each === "string" && each.trim() !== "") return each;
    throw new InputError("WRONG_CHOICE", `${what} must be a list of names: got ${describeGiven(each)} in it`, {});
  });
  const repeated = names.find((name, i) => names.indexOf(name) < i);
  if (repeated !== undefined) {
    throw new InputError("INCONSISTENT", `'${repeated}' stands twice in ${what}`, { name: repeated });
  }
  return names;
}
