import { InputError, readOptions, type Working } from "@tarewatt/units";
import { readChoice, readFilled, readText } from "../check/reads.js";
import { readEvidence } from "../evidence/evidence.js";
import type { EvidenceFor, Model, ModelInput, ModelNumbers, ModelOutput, ValueIn } from "../model/model.js";
import { attempt, entryOf, noResult, readModel } from "../model/read-model.js";
import { likelyInputs, readAllEvidence } from "../propagate/study.js";
import type { Bridge, BridgeMethod } from "./bridge-result.js";
import { makeBridge } from "./make-bridge.js";
import { meanOverOrders } from "./mean-over-orders.js";

/** Inputs that change together. */
export interface InputGroup<Name extends string> {
  /** What the change is, in words. */
  readonly cause: string;
  /** The inputs that change. */
  readonly inputs: readonly Name[];
  /** Why it matters, in a sentence. */
  readonly explanation?: string | undefined;
}

/** Options of {@link bridgeBetween}. */
export interface BridgeBetweenOptions<
  Inputs extends Readonly<Record<string, ModelInput>>,
  Outputs extends Readonly<Record<string, ModelOutput>>,
  Target extends keyof Outputs & string,
> {
  /** The model. */
  readonly model: Model<Inputs, Outputs>;
  /** All inputs at the beginning. Of evidence with a spread, the likely value is taken. */
  readonly from: EvidenceFor<Inputs>;
  /** The inputs that are others at the end. */
  readonly to: Partial<EvidenceFor<Inputs>>;
  /** The output whose change is explained. */
  readonly output: Target;
  /** The inputs of `to`, alone or in groups, in the order in which they are taken in; as `to` names them when left out. */
  readonly order?: readonly ((keyof Inputs & string) | InputGroup<keyof Inputs & string>)[] | undefined;
  /** How the causes share the way; `"in the order stated"` when left out. The mean over all orders takes at most 8 causes. */
  readonly method?: BridgeMethod | undefined;
  /** What the two figures are called; `"before"` and `"after"` when left out. */
  readonly labels?:
    | {
        /** The figure at the beginning. */
        readonly from: string;
        /** The figure at the end. */
        readonly to: string;
      }
    | undefined;
}

/** @internal */
export const methods: readonly BridgeMethod[] = ["in the order stated", "mean over all orders"];

/** How many causes have all their orders tried: 2⁸ evaluations. */
const MOST_CAUSES = 8;

/**
 * What moves an output from one set of inputs to another, one input or group at a time.
 *
 * In a stated order, what two inputs do together belongs to the later of them. The mean over all orders favours none: equal causes have
 * equal parts, and each part comes with its smallest and largest change over the orders.
 *
 * @param options - model, both sets of inputs, the output and the order
 * @returns the bridge; the working of a part is that of the model with this cause taken in
 * @throws InputError `INCONSISTENT` when an input stands twice in the order or a changed one is missing there, `WRONG_CHOICE` for names that the
 *   model does not know, `TOO_LONG` for more than 8 causes with all orders, `NOT_VALID_HERE`, with the cause, when the model gives no result on the
 *   way, and what `readOptions` throws
 * @example
 * const range = model({
 *   name: "range",
 *   inputs: { usable: { unit: "kWh", meaning: "usable energy", above: 0 }, use: { unit: "Wh/km", meaning: "consumption", above: 0 } },
 *   outputs: { range: { unit: "km", meaning: "range" } },
 *   evaluate: ({ usable, use }) => ({ range: (1000 * usable) / use }),
 * });
 * const way = bridgeBetween({
 *   ...{ model: range, output: "range", from: { usable: q("100 kWh"), use: q("200 Wh/km") } },
 *   to: { usable: q("90 kWh"), use: q("180 Wh/km") },
 * });
 * way.parts.map(({ change }) => change.in("km")); // [-50, 50]
 */
export function bridgeBetween<
  Inputs extends Readonly<Record<string, ModelInput>>,
  Outputs extends Readonly<Record<string, ModelOutput>>,
  Target extends keyof Outputs & string,
>(options: BridgeBetweenOptions<Inputs, Outputs, Target>): Bridge<ValueIn<Outputs[Target]["unit"]>> {
  readOptions("bridgeBetween", options, {}, ["model", "from", "to", "output", "order?", "method?", "labels?"]);
  const model = readModel(options.model);
  const { output, labels = { from: "before", to: "after" } } = options;
  const { unit } = entryOf(model.outputs, output, "output", model.name);
  const method = readChoice("method", options.method ?? "in the order stated", methods);
  readOptions("labels of bridgeBetween", labels, {}, ["from", "to"]);
  const before = likelyInputs(readAllEvidence(model, options.from));
  const after = likelyOf(model, options.to, "to");
  const causes = readOrder(model.inputs, model.name, options.order ?? Object.keys(after), Object.keys(after));
  if (method === "mean over all orders" && causes.length > MOST_CAUSES) {
    throw new InputError(
      "TOO_LONG",
      `all orders can be tried of at most ${MOST_CAUSES} causes: got ${causes.length}; group some, or take them in the order stated`,
      { causes: causes.length },
    );
  }
  const inputsWith = (taken: readonly Cause[]): Readonly<Record<string, number>> => {
    const changed = taken.flatMap(({ inputs }) => inputs).map((name) => [name, after[name] ?? before[name]]);
    return { ...before, ...Object.fromEntries(changed) };
  };
  const figureOf = (taken: readonly Cause[]): number => {
    const { outputs, reason } = attempt(model, inputsWith(taken));
    if (outputs !== undefined) return outputs[output] as number;
    const named = taken.map(({ cause }) => cause).join(", ") || "the inputs it begins with";
    throw noResult(`${model.name} gives no finite results with ${named}`, reason);
  };
  const start = figureOf([]);
  const orders =
    method === "mean over all orders"
      ? meanOverOrders(causes.length, (set) => figureOf(causes.filter((_, i) => (set & (1 << i)) !== 0)))
      : undefined;
  const end = figureOf(causes);
  let reached = start;
  const steps = causes.map(({ cause, explanation }, i) => {
    const taken = causes.slice(0, i + 1);
    const { mean, least, most } = orders?.[i] ?? {};
    if (taken.length === causes.length) reached = end;
    else reached = mean === undefined ? figureOf(taken) : reached + mean;
    return {
      ...{ cause, explanation, value: reached },
      ...(least === undefined || most === undefined ? {} : { overOrders: { least, most } }),
      working: (): Working => {
        const steps: Working = [];
        model.evaluate(inputsWith(taken) as ModelNumbers<Inputs>, steps);
        return steps;
      },
    };
  });
  const ends = { from: readText("label of from", labels.from), to: readText("label of to", labels.to) };
  return makeBridge({
    unit,
    from: { label: ends.from, value: start },
    steps,
    to: ends.to,
    method,
  }) as unknown as Bridge<ValueIn<Outputs[Target]["unit"]>>;
}

/** Some of a model's inputs at their likely values. */
function likelyOf(
  { name, inputs }: { readonly name: string; readonly inputs: Readonly<Record<string, ModelInput>> },
  given: Readonly<Record<string, unknown>>,
  called: string,
): Readonly<Record<string, number>> {
  const optional = Object.keys(inputs).map((each) => `${each}?`);
  readOptions(`${called} of ${name}`, given, {}, optional);
  const named = Object.entries(given).filter(([, value]) => value !== undefined);
  if (named.length === 0) throw new InputError("EMPTY", `${called} must name at least one input of ${name}`, {});
  return Object.fromEntries(
    named.map(([key, value]) => [key, readEvidence(key, value, inputs[key] as ModelInput).likely]),
  );
}

interface Cause {
  readonly cause: string;
  readonly inputs: readonly string[];
  readonly explanation?: string | undefined;
}

/** @internal The causes in order, with every changed input in one of them. */
export function readOrder(
  inputs: Readonly<Record<string, ModelInput>>,
  model: string,
  order: readonly unknown[],
  changed: readonly string[],
): readonly Cause[] {
  const taken = new Set<string>();
  const take = (name: unknown): string => {
    entryOf(inputs, name, "input", model);
    if (taken.has(name as string)) {
      throw new InputError("INCONSISTENT", `${name} stands twice in the order: an input changes once`, { name });
    }
    taken.add(name as string);
    return name as string;
  };
  const causes = readFilled("order", order).map((each, i): Cause => {
    if (typeof each === "string") return { inputs: [take(each)], cause: inputs[each]?.meaning ?? each };
    const group = each as InputGroup<string>;
    readOptions(`entry ${i + 1} of order`, group, {}, ["cause", "inputs", "explanation?"]);
    return {
      cause: readText(`cause of entry ${i + 1} of order`, group.cause),
      inputs: readFilled(`inputs of entry ${i + 1} of order`, group.inputs).map(take),
      ...(group.explanation === undefined ? {} : { explanation: readText("explanation", group.explanation) }),
    };
  });
  const missing = changed.filter((name) => !taken.has(name));
  if (missing.length === 0) return causes;
  throw new InputError("INCONSISTENT", `order must name every input that changes: ${missing.join(", ")} is missing`, {
    missing,
  });
}
