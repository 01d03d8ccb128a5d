import { InputError, printed, quantity } from "@tarewatt/units";
import { bridgeBetween } from "../bridge/bridge-between.js";
import type { Bridge, BridgeMethod } from "../bridge/bridge-result.js";
import { inUnitOf, makeBridge, numberOf, type StepNumbers } from "../bridge/make-bridge.js";
import type { EvidenceFor, Model, ModelInput, ModelOutput } from "../model/model.js";
import { attempt } from "../model/read-model.js";
import type { SealedEstimate, SealedOutput } from "./sealed.js";
import type { Figure } from "./settlement.js";

interface AttributionOptions<
  Inputs extends Readonly<Record<string, ModelInput>>,
  Outputs extends Readonly<Record<string, ModelOutput>>,
> {
  readonly sealed: SealedEstimate;
  readonly model: Model<Inputs, Outputs>;
  readonly known: Partial<EvidenceFor<Inputs>>;
  readonly output: string;
  readonly outcome: number;
  readonly method?: BridgeMethod | undefined;
}

/** @internal From the sealed median to the outcome: the likely inputs, those that became known, and the rest. */
export function attributionOf<
  Inputs extends Readonly<Record<string, ModelInput>>,
  Outputs extends Readonly<Record<string, ModelOutput>>,
>({ sealed, model, known, output, outcome, method }: AttributionOptions<Inputs, Outputs>): Bridge<Figure> {
  const { unit, meaning, quantiles } = sealed.outputs[output] as SealedOutput;
  const likely = Object.entries(sealed.inputs).map(([name, input]) => [name, inUnitOf(input.likely, input.unit)]);
  const between: Bridge = bridgeBetween({
    ...{ model, output: output as keyof Outputs & string, to: known, method },
    from: Object.fromEntries(likely) as unknown as EvidenceFor<Inputs>,
  }) as Bridge;
  const change = (value: Figure | undefined): number => numberOf(value ?? 0);
  const inputs = between.parts.map(({ cause, after, overOrders, working }): StepNumbers => {
    const { least, most } = overOrders ?? {};
    return {
      ...{ cause, value: numberOf(after), working },
      explanation: "What was taken as likely, and what it turned out to be.",
      ...(overOrders === undefined ? {} : { overOrders: { least: change(least), most: change(most) } }),
    };
  });
  return makeBridge({
    unit,
    from: { label: `${meaning}, median as sealed`, value: quantiles[sealed.shares.indexOf(0.5)] as number },
    steps: [
      {
        cause: "likely inputs instead of the middle of the spread",
        explanation: "The figure at the likely inputs is near the median of the draws, and not the same.",
        value: numberOf(between.from.value),
      },
      ...inputs,
      {
        cause: "not explained by the model",
        explanation: "Inputs that are not known yet, and what the model leaves out or has wrong.",
        value: outcome,
      },
    ],
    to: `${meaning}, outcome`,
    method: between.method,
  }) as Bridge<Figure>;
}

type AnyTable = Readonly<Record<string, { readonly unit: string }>>;

/** @internal Refuses a model whose inputs and outputs are not those that were sealed. */
export function sameModel(
  sealed: SealedEstimate,
  model: { readonly name: string; readonly inputs: AnyTable; readonly outputs: AnyTable },
): void {
  const differing = (one: AnyTable, other: AnyTable): readonly string[] =>
    Object.keys(one).filter((name) => !Object.hasOwn(other, name) || other[name]?.unit !== one[name]?.unit);
  const wrong = [
    ...differing(sealed.inputs, model.inputs),
    ...differing(model.inputs, sealed.inputs),
    ...differing(sealed.outputs, model.outputs),
  ];
  if (model.name === sealed.model && wrong.length === 0) return;
  const names = wrong.length === 0 ? "" : `: they differ in ${[...new Set(wrong)].join(", ")}`;
  throw new InputError(
    "INCONSISTENT",
    `the model '${model.name}' is not the model '${sealed.model}' that was sealed${names}`,
    { wrong },
  );
}

/** Relative difference below which two engines may differ: their exp, log and pow need not agree in the last digits. */
const SAME = 1e-9;

/** @internal A warning when the model no longer gives what was sealed. */
export function changedSince<
  Inputs extends Readonly<Record<string, ModelInput>>,
  Outputs extends Readonly<Record<string, ModelOutput>>,
>(sealed: SealedEstimate, model: Model<Inputs, Outputs>): readonly string[] {
  const inputs = Object.fromEntries(Object.entries(sealed.inputs).map(([name, { likely }]) => [name, likely]));
  const now = attempt(model, inputs).outputs;
  if (now === undefined)
    return [`${model.name} has changed since: it gives no result at the likely inputs that were sealed`];
  const show = (value: number, unit: string): string => printed(quantity<string>(value, unit), { digits: 5 });
  return Object.entries(sealed.outputs).flatMap(([name, { likely, unit }]) => {
    const value = now[name] as number;
    if (Math.abs(value - likely) <= SAME * Math.max(Math.abs(value), Math.abs(likely))) return [];
    return [
      `${model.name} has changed since: at the likely inputs it gave ${show(likely, unit)} for ${name} when it was sealed, and gives ${show(value, unit)} now`,
    ];
  });
}
