import { InputError, quantity, readNumber, readOptions } from "@tarewatt/units";
import type { EvidenceFor, Model, ModelInput, ModelOutput, ValueIn } from "../model/model.js";
import { entryOf, readModel, reasonOf } from "../model/read-model.js";
import { type RankCorrelation, readCorrelations, refuseFixed } from "../propagate/correlation.js";
import { propagate } from "../propagate/propagate.js";
import type { Propagation } from "../propagate/propagation.js";
import type { Spread } from "../propagate/spread.js";
import { type Axis, type AxisRead, readAxes } from "./axis.js";
import { type CrossingLine, crossingsOf } from "./crossing.js";

/** What {@link sweep} needs. */
export interface SweepOptions<
  I extends Readonly<Record<string, ModelInput>>,
  O extends Readonly<Record<string, ModelOutput>>,
  Target extends keyof O & string,
> {
  /** The model. */
  readonly model: Model<I, O>;
  /** What is known of each input; what it says of those that are swept is not used. */
  readonly evidence: EvidenceFor<I>;
  /** One to three inputs, and the values they take: every one with every other. */
  readonly over: { readonly [K in keyof I]?: Axis<ValueIn<I[K]["unit"]>> };
  /** The output to be followed. */
  readonly output: Target;
  /** A value of the output to look out for. */
  readonly target?: ValueIn<O[Target]["unit"]> | undefined;
  /** Inputs that go together, as in `propagate`; none of those that are swept. */
  readonly correlations?: readonly RankCorrelation<keyof I & string>[] | undefined;
  /** How many draws at each point, 100 to 1,000,000; 1024 when left out. */
  readonly draws?: number | undefined;
  /** As in `propagate`; all points have the same draws, so that lines are smooth. */
  readonly seed?: number | undefined;
}

/** One point of a sweep. */
export interface SweepRow<I extends Readonly<Record<string, ModelInput>>, Y> {
  /** Values of the inputs that are swept. */
  readonly at: { readonly [K in keyof I]?: ValueIn<I[K]["unit"]> };
  /** The output with every other input at its likely value; missing where the model gives none. */
  readonly likely?: Y;
  /** The output over the draws; missing where the model gives none. */
  readonly spread?: Spread<Y>;
  /** The share of draws that reach the target, when there is one. */
  readonly chanceOfAtLeast?: number;
  /** How many draws gave no result and are left out. */
  readonly failed: number;
  /** Why there is no result, or why the first draw that failed did. */
  readonly reason?: string;
}

/** Where a figure crosses the target along the first input, by straight lines between the points. */
export interface Crossing<I extends Readonly<Record<string, ModelInput>>> {
  /** Which figure crosses. */
  readonly line: CrossingLine;
  /** All inputs that are swept, the first at the crossing. */
  readonly at: { readonly [K in keyof I]?: ValueIn<I[K]["unit"]> };
  /** Whether the output rises there along the values as given. */
  readonly rising: boolean;
}

/** What {@link sweep} finds. */
export interface Sweep<I extends Readonly<Record<string, ModelInput>>, Y> {
  /** One row for every point, the first input running fastest. */
  readonly rows: readonly SweepRow<I, Y>[];
  /** Crossings with the target; none without a target. */
  readonly crossings: readonly Crossing<I>[];
  /** How many draws were made at each point. */
  readonly draws: number;
  /** What is doubtful; empty when nothing is. */
  readonly warnings: readonly string[];
}

const MOST_POINTS = 10_000;

/**
 * Follows an output over values of one to three inputs, with its spread at every point.
 *
 * @param options - model, evidence, inputs to sweep with their values, output, target, draws and seed
 * @returns tidy rows, ready for a table or a figure, and where the target is crossed
 * @throws InputError `UNKNOWN_OPTION`, `WRONG_CHOICE` for a name that the model does not have, `INCONSISTENT` for values in no order and for correlations of what is swept,
 *   `OUT_OF_RANGE` for more than three inputs or 10,000 points, `NOT_VALID_HERE` when no point has a result
 * @example
 * const range = model({
 *   name: "range",
 *   inputs: { usable: { unit: "kWh", meaning: "usable energy", above: 0 }, use: { unit: "Wh/km", meaning: "consumption", above: 0 } },
 *   outputs: { range: { unit: "km", meaning: "range" } },
 *   evaluate: ({ usable, use }) => ({ range: (1000 * usable) / use }),
 * });
 * const evidence = { usable: q("90 kWh"), use: around(q("200 Wh/km"), 0.1) };
 * const over = { usable: { from: q("60 kWh"), to: q("120 kWh"), points: 4 } };
 * const { rows, crossings } = sweep({ model: range, evidence, over, output: "range", target: q("450 km") });
 * rows.map(({ likely }) => likely?.format()); // ["300 km", "400 km", "500 km", "600 km"]
 * crossings.find(({ line }) => line === "likely")?.at.usable?.format(); // "90.0 kWh"
 */
export function sweep<
  I extends Readonly<Record<string, ModelInput>>,
  O extends Readonly<Record<string, ModelOutput>>,
  Target extends keyof O & string,
>(options: SweepOptions<I, O, Target>): Sweep<I, ValueIn<O[Target]["unit"]>> {
  const others = ["target?", "correlations?", "draws?", "seed?"];
  readOptions("sweep", options, {}, ["model", "evidence", "over", "output", ...others]);
  type Y = ValueIn<O[Target]["unit"]>;
  const { output, correlations, draws = 1024, seed } = options;
  const model = readModel(options.model);
  const { unit } = entryOf(model.outputs, output, "output", model.name);
  const axes = readAxes(model.inputs, options.over, model.name);
  const swept = axes.map(({ name }) => name);
  refuseFixed(readCorrelations(Object.keys(model.inputs), correlations), swept);
  const target = options.target === undefined ? undefined : readNumber("target", options.target, { unit });
  const points = axes.reduce<readonly (readonly number[])[]>(
    (all, { values }) => values.flatMap((value) => all.map((point) => [...point, value])),
    [[]],
  );
  if (points.length > MOST_POINTS) {
    throw new InputError("OUT_OF_RANGE", `a sweep has at most ${MOST_POINTS} points: got ${points.length}`, {});
  }
  let first: unknown;
  const rows = points.map((point): SweepRow<I, Y> => {
    const at = named(axes, point) as SweepRow<I, Y>["at"];
    const evidence = { ...options.evidence, ...at } as EvidenceFor<I>;
    try {
      const found = propagate({ model, evidence, correlations, draws, seed });
      return Object.freeze({ at, ...figuresOf(found, output, options.target) }) as SweepRow<I, Y>;
    } catch (error) {
      // A point where the model does not hold is a gap in the line. What is wrong with the options is wrong at every point.
      if (!(error instanceof InputError) || error.code !== "NOT_VALID_HERE") throw error;
      first ??= error;
      return Object.freeze({ at, failed: draws, reason: reasonOf(error) });
    }
  });
  if (rows.every(({ spread }) => spread === undefined)) throw first;
  const gaps = rows.filter(({ spread }) => spread === undefined).length;
  const thinned = rows.filter(({ spread, failed }) => spread !== undefined && failed > 0).length;
  return Object.freeze({
    rows: Object.freeze(rows),
    crossings: Object.freeze(target === undefined ? [] : allCrossings(axes, rows, target, unit as string)),
    draws,
    warnings: Object.freeze([
      ...(gaps === 0 ? [] : [`${gaps} of ${rows.length} points have no result`]),
      ...(thinned === 0 ? [] : [`at ${thinned} of ${rows.length} points some draws gave no result and are left out`]),
    ]),
  });
}

function figuresOf<O extends Readonly<Record<string, ModelOutput>>, Target extends keyof O & string>(
  { spread, likely, failed, failures, chanceOfAtLeast }: Propagation<O>,
  output: Target,
  target: ValueIn<O[Target]["unit"]> | undefined,
) {
  const [failure] = failures;
  return {
    ...{ likely: likely[output], spread: spread[output], failed },
    ...(target === undefined ? {} : { chanceOfAtLeast: chanceOfAtLeast(output, target) }),
    ...(failure === undefined ? {} : { reason: failure.reason }),
  };
}

/** Values by name, as quantities. */
function named(axes: readonly AxisRead[], point: readonly number[]): Readonly<Record<string, unknown>> {
  const value = (number: number, unit: string): unknown => (unit === "1" ? number : quantity(number, unit));
  return Object.freeze(Object.fromEntries(axes.map(({ name, unit }, i) => [name, value(point[i] as number, unit)])));
}

/** Crossings along the first axis, for every line of points; the first input runs fastest. */
function allCrossings<I extends Readonly<Record<string, ModelInput>>, Y>(
  axes: readonly AxisRead[],
  rows: readonly SweepRow<I, Y>[],
  target: number,
  unit: string,
): readonly Crossing<I>[] {
  const [along] = axes as [AxisRead];
  const length = along.values.length;
  const numberOf = (value: Y | undefined): number | undefined =>
    value === undefined ? undefined : readNumber("output", value, { unit });
  const starts = rows.flatMap((_, i) => (i % length === 0 ? [i] : []));
  return starts.flatMap((start) => {
    const line = rows.slice(start, start + length);
    const figures: Readonly<Record<CrossingLine, (row: SweepRow<I, Y>) => Y | undefined>> = {
      likely: (row) => row.likely,
      p10: (row) => row.spread?.p10,
      p50: (row) => row.spread?.p50,
      p90: (row) => row.spread?.p90,
    };
    return (Object.keys(figures) as CrossingLine[]).flatMap((name) => {
      const ys = line.map((row) => numberOf(figures[name](row)));
      return crossingsOf(along.values, ys, target).map(({ value, rising }): Crossing<I> => {
        const at = { ...line[0]?.at, ...named([along], [value]) } as Crossing<I>["at"];
        return Object.freeze({ line: name, at: Object.freeze(at), rising });
      });
    });
  });
}
