import { InputError, quantity, readNumber } from "@tarewatt/units";
import type { ModelOutput, ValueIn } from "../model/model.js";
import { entryOf, noResult } from "../model/read-model.js";
import { BIN_WIDTH, mergedBins, quantileOfBins, shareOfBins } from "./bins.js";
import type { FailedDraw } from "./block.js";
import { sumOf } from "./exact-sum.js";
import { quantileOfSorted, type Spread } from "./spread.js";
import type { OutputSummary, StudySummary } from "./summary.js";

/** The outputs of a model under uncertain inputs. */
export interface Propagation<Outputs extends Readonly<Record<string, ModelOutput>>> {
  /** How many draws were made. */
  readonly draws: number;
  /** The seed that chose them. */
  readonly seed: number;
  /** For how many draws the model threw or gave a number that is not finite; they are left out of everything else. */
  readonly failed: number;
  /** The first three of those, with the reason. */
  readonly failures: readonly FailedDraw[];
  /** 10th, 50th and 90th percentiles of each output. */
  readonly spread: { readonly [K in keyof Outputs]: Spread<ValueIn<Outputs[K]["unit"]>> };
  /** The outputs with every input at its likely value: near the 50th percentile, but not the same thing. */
  readonly likely: { readonly [K in keyof Outputs]: ValueIn<Outputs[K]["unit"]> };
  /** Mean of each output. */
  readonly mean: { readonly [K in keyof Outputs]: ValueIn<Outputs[K]["unit"]> };
  /** Standard deviation of each output: its standard uncertainty. */
  readonly standardDeviation: { readonly [K in keyof Outputs]: ValueIn<Outputs[K]["unit"]> };
  /** Largest error of a percentile as a share of it, when the draws were not kept; zero when they were. */
  readonly resolution: number;
  /** What is doubtful; empty when nothing is. */
  readonly warnings: readonly string[];
  /**
   * The share of draws in which an output reaches a value.
   * @param output - name of the output
   * @param value - the value to reach or exceed
   */
  chanceOfAtLeast<K extends keyof Outputs & string>(output: K, value: ValueIn<Outputs[K]["unit"]>): number;
  /**
   * The value below which an output lies in a share of the draws.
   * @param output - name of the output
   * @param share - 0 to 1
   */
  quantile<K extends keyof Outputs & string>(output: K, share: number): ValueIn<Outputs[K]["unit"]>;
  /**
   * How far the percentiles of an output would move with another seed, at most about: the standard deviation of each over the eight
   * eighths of the study, by √8. It is on the safe side, since the eighths complement each other.
   * @param output - name of the output
   */
  standardError<K extends keyof Outputs & string>(output: K): Spread<ValueIn<Outputs[K]["unit"]>>;
  /**
   * How far two outputs go together: their linear correlation, −1 to 1; undefined when one of them does not move.
   * @param one - name of an output
   * @param other - name of another
   */
  correlation(one: keyof Outputs & string, other: keyof Outputs & string): number | undefined;
  /**
   * A copy of the draws of an output that succeeded, in the order of their index, in its unit.
   * @param output - name of the output
   * @throws InputError `NOT_VALID_HERE` when the draws were not kept
   */
  samples(output: keyof Outputs & string): Float64Array;
}

/** @internal Draws by output, when they are kept. */
export type Kept = ReadonlyMap<string, Float64Array>;

/** @internal Presents what a study found. */
export function propagationOf<Outputs extends Readonly<Record<string, ModelOutput>>>(
  outputs: Outputs,
  summary: StudySummary,
  kept?: Kept,
): Propagation<Outputs> {
  const { draws, seed, failed, failures, succeeded, model } = summary;
  const count = succeeded.reduce((sum, each) => sum + each, 0);
  if (count === 0) throw noResult(`none of the ${draws} draws of ${model} gave finite results`, failures[0]?.reason);
  const names = Object.keys(summary.outputs);
  const of = (name: string): OutputSummary => {
    entryOf(outputs, name, "output", model);
    return summary.outputs[name] as OutputSummary;
  };
  const inUnit = (name: string, value: number): unknown =>
    of(name).unit === "1" ? value : quantity(value, of(name).unit as string);
  const each = (number: (name: string) => unknown) =>
    Object.freeze(Object.fromEntries(names.map((name) => [name, number(name)])));
  const spreadBy = (name: string, at: (share: number) => number): Spread<unknown> =>
    Object.freeze({ p10: inUnit(name, at(0.1)), p50: inUnit(name, at(0.5)), p90: inUnit(name, at(0.9)) });

  const sums = new Map(names.map((name) => [name, sumOf([of(name).sum]).rounded()]));
  /** Sum of products about the means. */
  const comoment = (one: string, other: string): number => {
    const [i, j] = [names.indexOf(one), names.indexOf(other)].sort((a, b) => a - b) as [number, number];
    const product = sumOf([summary.products[i * names.length - (i * (i - 1)) / 2 + (j - i)] ?? []]).rounded();
    return product - ((sums.get(one) as number) * (sums.get(other) as number)) / count;
  };
  const deviation = (name: string): number => Math.sqrt(Math.max(0, comoment(name, name)) / Math.max(1, count - 1));
  const quantiles = kept === undefined ? fromBins(of, succeeded) : fromDraws(kept, succeeded);
  const within = (name: string, value: number): number =>
    Math.min(of(name).highest as number, Math.max(of(name).lowest as number, value));
  const quantile = (name: string, share: number): number => within(name, quantiles.whole(name, share));
  return Object.freeze({
    ...{ draws, seed, failed, failures: Object.freeze([...failures]) },
    spread: each((name) => spreadBy(name, (share) => quantile(name, share))),
    likely: each((name) => inUnit(name, of(name).likely)),
    mean: each((name) => inUnit(name, of(name).likely + (sums.get(name) as number) / count)),
    standardDeviation: each((name) => inUnit(name, deviation(name))),
    resolution: kept === undefined ? BIN_WIDTH : 0,
    warnings: Object.freeze(
      failed === 0 ? [] : [`${failed} of ${count + failed} draws gave no result and are left out of the spreads`],
    ),
    chanceOfAtLeast: (output: string, value: unknown) =>
      quantiles.reach(output, readNumber(output, value, { unit: of(output).unit })),
    quantile: (output: string, share: number) => {
      of(output);
      return inUnit(output, quantile(output, readNumber("share", share, { unit: "1", atLeast: 0, atMost: 1 })));
    },
    standardError: (output: string) => {
      of(output);
      return spreadBy(output, (share) => errorOfMean(quantiles.eighths(output, share)));
    },
    correlation: (one: string, other: string) => {
      of(one);
      of(other);
      const scale = Math.sqrt(comoment(one, one) * comoment(other, other));
      return scale > 0 ? Math.max(-1, Math.min(1, comoment(one, other) / scale)) : undefined;
    },
    samples: (output: string) => {
      of(output);
      const values = kept?.get(output);
      if (values !== undefined) return values.slice();
      throw new InputError("NOT_VALID_HERE", 'the draws were not kept: propagate with keep "draws"', { output });
    },
  }) as unknown as Propagation<Outputs>;
}

interface Quantiles {
  whole(name: string, share: number): number;
  eighths(name: string, share: number): readonly number[];
  reach(name: string, value: number): number;
}

function fromBins(of: (name: string) => OutputSummary, succeeded: readonly number[]): Quantiles {
  const count = succeeded.reduce((sum, each) => sum + each, 0);
  const merged = new Map<string, ReturnType<typeof mergedBins>>();
  const all = (name: string) => {
    const bins = merged.get(name) ?? mergedBins(of(name).bins);
    merged.set(name, bins);
    return bins;
  };
  return {
    whole: (name, share) => quantileOfBins(all(name), count, share),
    eighths: (name, share) =>
      of(name).bins.flatMap((bins, i) => (bins.length === 0 ? [] : [quantileOfBins(bins, succeeded[i] ?? 0, share)])),
    reach: (name, value) => {
      const { lowest = value, highest = value } = of(name);
      return value <= lowest ? 1 : value > highest ? 0 : shareOfBins(all(name), count, value);
    },
  };
}

function fromDraws(kept: Kept, succeeded: readonly number[]): Quantiles {
  const values = (name: string): Float64Array => kept.get(name) as Float64Array;
  const memory = new Map<string, Float64Array>();
  const sorted = (name: string): Float64Array => {
    const found = memory.get(name) ?? values(name).slice().sort();
    memory.set(name, found);
    return found;
  };
  return {
    whole: (name, share) => quantileOfSorted(sorted(name), share),
    eighths: (name, share) => {
      let start = 0;
      return succeeded.flatMap((count) => {
        const part = values(name)
          .slice(start, start + count)
          .sort();
        start += count;
        return count === 0 ? [] : [quantileOfSorted(part, share)];
      });
    },
    reach: (name, value) => values(name).reduce((sum, each) => sum + (each >= value ? 1 : 0), 0) / values(name).length,
  };
}

/** Standard deviation of the mean of independent figures. */
function errorOfMean(figures: readonly number[]): number {
  if (figures.length < 2)
    throw noResult("too few draws succeeded to say how far the percentiles have settled", undefined);
  const mean = figures.reduce((sum, each) => sum + each, 0) / figures.length;
  const squares = figures.reduce((sum, each) => sum + (each - mean) ** 2, 0);
  return Math.sqrt(squares / (figures.length - 1) / figures.length);
}
