import { quantity, readNumber, readOptions } from "@tarewatt/units";
import type { EvidenceFor, Model, ModelInput, ModelOutput, ValueIn } from "../model/model.js";
import { attempt, noResult, readModel } from "../model/read-model.js";
import { type RankCorrelation, readCorrelations } from "./correlation.js";
import { correlationOf, momentsOf, readDegrees } from "./standard-uncertainty.js";
import { studentFactor } from "./student.js";
import { readAllEvidence } from "./study.js";

/** What {@link propagateLinearly} needs. */
export interface PropagateLinearlyOptions<
  I extends Readonly<Record<string, ModelInput>>,
  O extends Readonly<Record<string, ModelOutput>>,
> {
  /** The model. */
  readonly model: Model<I, O>;
  /** What is known of each input. */
  readonly evidence: EvidenceFor<I>;
  /** Inputs that go together, as in `propagate`. */
  readonly correlations?: readonly RankCorrelation<keyof I & string>[] | undefined;
  /** Degrees of freedom of the standard uncertainty of inputs that were estimated from few observations; unlimited when left out. */
  readonly degreesOfFreedom?: { readonly [K in keyof I]?: number } | undefined;
  /** The chance that the expanded interval holds the value; 0.95 when left out. */
  readonly coverage?: number | undefined;
}

/** One line of an uncertainty budget. */
export interface BudgetLine<Y> {
  /** Name of the input. */
  readonly input: string;
  /** What it is, in words. */
  readonly meaning: string;
  /** Its unit; `"1"` for a ratio. */
  readonly unit: string;
  /** Its mean, in that unit. */
  readonly value: number;
  /** Its standard uncertainty, in that unit. */
  readonly standardUncertainty: number;
  /** Change of the output for one unit of the input: output's unit per input's unit. */
  readonly sensitivity: number;
  /** What it brings to the standard uncertainty of the output, with the sign of the sensitivity. */
  readonly contribution: Y;
}

/** An output with its uncertainty by the linear law. */
export interface LinearPropagation<Y> {
  /** The output with every input at its mean. */
  readonly value: Y;
  /** Combined standard uncertainty by the linear law. */
  readonly standardUncertainty: Y;
  /** The same with the terms of the next order, which show where the law bends. */
  readonly withSecondOrder: Y;
  /** Effective degrees of freedom by the formula of Welch and Satterthwaite; missing when unlimited. */
  readonly degreesOfFreedom?: number;
  /** By what the standard uncertainty is multiplied for the expanded one. */
  readonly coverageFactor: number;
  /** Half-width of the interval that holds the value with the chance asked for. */
  readonly expandedUncertainty: Y;
  /** The uncertainty budget, the largest contribution first. */
  readonly budget: readonly BudgetLine<Y>[];
  /** What is doubtful; empty when nothing is. */
  readonly warnings: readonly string[];
}

/** Where the next order changes the uncertainty by more than this, the linear law is called doubtful. */
const BENT = 0.05;

/**
 * Carries standard uncertainties through a model by the linear law of JCGM 100:2008, 5.1 and 5.2 and annex G.4 (from memory): quick, without
 * draws, with a budget that shows what each input brings. `propagate` shows the distribution itself; where `withSecondOrder`
 * differs from `standardUncertainty`, believe that.
 *
 * Standard uncertainty of an input is the standard deviation of its evidence; sensitivities are from the output one standard uncertainty to
 * either side (JCGM 100, 5.1.4, note 2).
 *
 * @param options - model, evidence, correlations, degrees of freedom by input, coverage
 * @returns each output with its uncertainty and budget
 * @throws InputError as `propagate`; `NOT_VALID_HERE`, with the cause, when the model gives no finite result near the means
 * @example
 * const area = model({
 *   name: "drag area",
 *   inputs: { coefficient: { unit: "1", meaning: "drag coefficient" }, frontal: { unit: "m²", meaning: "frontal area" } },
 *   outputs: { dragArea: { unit: "m²", meaning: "drag area" } },
 *   evaluate: ({ coefficient, frontal }) => ({ dragArea: coefficient * frontal }),
 * });
 * const evidence = { coefficient: around(0.3, 0.05), frontal: around(q("2.5 m²"), 0.02) };
 * const { dragArea } = propagateLinearly({ model: area, evidence });
 * dragArea.budget.map(({ input }) => input); // ["coefficient", "frontal"]
 * dragArea.value.in("m²").toFixed(3); // "0.750"
 */
export function propagateLinearly<
  I extends Readonly<Record<string, ModelInput>>,
  O extends Readonly<Record<string, ModelOutput>>,
>(options: PropagateLinearlyOptions<I, O>): { readonly [K in keyof O]: LinearPropagation<ValueIn<O[K]["unit"]>> } {
  const optional = ["correlations?", "degreesOfFreedom?", "coverage?"];
  readOptions("propagateLinearly", options, {}, ["model", "evidence", ...optional]);
  const model = readModel(options.model);
  const evidence = readAllEvidence(model, options.evidence);
  const together = readCorrelations([...evidence.keys()], options.correlations);
  const degrees = readDegrees(model.inputs, options.degreesOfFreedom, model.name);
  const coverage = readNumber("coverage", options.coverage ?? 0.95, { unit: "1", above: 0, atMost: 0.9999 });
  const moments = new Map([...evidence].map(([name, read]) => [name, momentsOf(read)]));
  const means = Object.fromEntries([...moments].map(([name, { mean }]) => [name, mean]));
  const names = [...moments].filter(([, { deviation }]) => deviation > 0).map(([name]) => name);
  const deviation = (name: string): number => moments.get(name)?.deviation ?? 0;
  /** All outputs with inputs moved by so many standard uncertainties. */
  const at = (moved: Readonly<Record<string, number>>): Readonly<Record<string, number>> => {
    const inputs = { ...means };
    for (const [name, by] of Object.entries(moved)) inputs[name] = (means[name] as number) + by * deviation(name);
    const { outputs, reason } = attempt(model, inputs);
    if (outputs !== undefined) return outputs;
    const which = Object.keys(moved).join(" and ");
    throw noResult(
      `${model.name} gives no finite results ${which === "" ? "at the means" : `within one standard uncertainty of the mean of ${which}`}`,
      reason,
    );
  };
  const centre = at({});
  const sides = new Map(names.map((name) => [name, [at({ [name]: 1 }), at({ [name]: -1 })] as const]));
  const pairs = names.flatMap((a, i) =>
    names.slice(0, i).map((b) => ({
      ...{ a, b, correlation: correlationOf(together, a, b) },
      ...{
        pp: at({ [a]: 1, [b]: 1 }),
        pm: at({ [a]: 1, [b]: -1 }),
        mp: at({ [a]: -1, [b]: 1 }),
        mm: at({ [a]: -1, [b]: -1 }),
      },
    })),
  );
  const results = Object.entries(model.outputs).map(([output, { unit }]) => {
    const of = (outputs: Readonly<Record<string, number>> | undefined): number => outputs?.[output] ?? 0;
    const inUnit = (value: number): unknown => (unit === "1" ? value : quantity(value, unit as string));
    const middle = of(centre);
    // In units of the standard uncertainties, so that derivatives are already contributions.
    const slope = new Map(names.map((name) => [name, (of(sides.get(name)?.[0]) - of(sides.get(name)?.[1])) / 2]));
    const squares = names.reduce((sum, name) => sum + (slope.get(name) as number) ** 2, 0);
    let variance = squares;
    // JCGM 100, 5.1.2, note. Of the third derivative in one input alone, the slope over ± one uncertainty already holds a part.
    let second = 0;
    for (const name of names) second += (of(sides.get(name)?.[0]) - 2 * middle + of(sides.get(name)?.[1])) ** 2 / 2;
    for (const { a, b, correlation, pp, pm, mp, mm } of pairs) {
      const [sa, sb] = [slope.get(a) as number, slope.get(b) as number];
      variance += 2 * correlation * sa * sb;
      const mixed = (of(pp) - of(pm) - of(mp) + of(mm)) / 4;
      // ∂³f/∂a∂b² and ∂³f/∂b∂a²: how the slope in one changes as the other moves to either side
      const abb = (of(pp) - of(mp) + of(pm) - of(mm)) / 2 - 2 * sa;
      const baa = (of(pp) - of(pm) + of(mp) - of(mm)) / 2 - 2 * sb;
      second += mixed ** 2 + sa * abb + sb * baa;
    }
    variance = Math.max(0, variance);
    const uncertainty = Math.sqrt(variance);
    const fourths = names.reduce(
      (sum, name) => sum + (slope.get(name) as number) ** 4 / (degrees.get(name) ?? Number.POSITIVE_INFINITY),
      0,
    );
    const effective = fourths > 0 ? Math.max(1, variance ** 2 / fourths) : Number.POSITIVE_INFINITY;
    // Truncated to the next lower whole number: JCGM 100, G.4.1, note 1.
    const factor = studentFactor(
      coverage,
      Number.isFinite(effective) ? Math.floor(effective) : Number.POSITIVE_INFINITY,
    );
    const bent = Math.sqrt(Math.max(0, variance + second));
    const budget = names
      .map((name) => ({ name, share: slope.get(name) as number }))
      .sort((a, b) => Math.abs(b.share) - Math.abs(a.share))
      .map(({ name, share }) =>
        Object.freeze({
          ...{ input: name, meaning: model.inputs[name]?.meaning ?? name, unit: model.inputs[name]?.unit ?? "1" },
          ...{ value: means[name] as number, standardUncertainty: deviation(name) },
          ...{ sensitivity: share / deviation(name), contribution: inUnit(share) },
        }),
      );
    const result = {
      ...{ value: inUnit(middle), standardUncertainty: inUnit(uncertainty), withSecondOrder: inUnit(bent) },
      ...(Number.isFinite(effective) ? { degreesOfFreedom: effective } : {}),
      ...{ coverageFactor: factor, expandedUncertainty: inUnit(factor * uncertainty), budget: Object.freeze(budget) },
      warnings: Object.freeze([
        ...(Math.abs(bent - uncertainty) > BENT * uncertainty
          ? [
              `the model bends within the spread of its inputs: the next order changes the uncertainty of ${output} by more than 5 %; see propagate`,
            ]
          : []),
        ...(pairs.some(({ correlation }) => correlation !== 0) && Number.isFinite(effective)
          ? ["the formula for effective degrees of freedom holds for independent inputs only"]
          : []),
      ]),
    };
    return [output, Object.freeze(result)];
  });
  return Object.freeze(Object.fromEntries(results)) as {
    readonly [K in keyof O]: LinearPropagation<ValueIn<O[K]["unit"]>>;
  };
}
