import { Bins, mergedBins } from "./bins.js";
import { BLOCK, type Block, type FailedDraw } from "./block.js";
import { ExactSum, sumOf } from "./exact-sum.js";

/** What a part of a study found of one output. */
export interface OutputSummary {
  /** Unit of the figures; `"1"` for a ratio. */
  readonly unit: string;
  /** The output with every input at its likely value; sums are of what the draws differ from it. */
  readonly likely: number;
  /** Smallest value; missing while no draw succeeded. */
  readonly lowest?: number;
  /** Largest value; missing while no draw succeeded. */
  readonly highest?: number;
  /** Exact sum of the differences from `likely`, as numbers to be added. */
  readonly sum: readonly number[];
  /** For each eighth of the study, counts of values in narrow bins; empty when the draws themselves are kept. */
  readonly bins: readonly (readonly (readonly [key: number, count: number])[])[];
}

/**
 * What a part of a study found, as plain data that can be written as JSON, sent elsewhere and merged. Its size does not grow with the
 * number of draws.
 */
export interface StudySummary {
  /** Name of the model. */
  readonly model: string;
  /** A mark of the evidence and the correlations: parts with different ones are not of one study. */
  readonly evidence: string;
  /** The seed of the study. */
  readonly seed: number;
  /** How many draws the whole study has. */
  readonly draws: number;
  /** Which of them are in here: first index, and the one after the last. */
  readonly ranges: readonly (readonly [from: number, to: number])[];
  /** For how many of these the model gave no finite result. */
  readonly failed: number;
  /** The first of those, with the reason. */
  readonly failures: readonly FailedDraw[];
  /** How many draws succeeded in each eighth of the study. */
  readonly succeeded: readonly number[];
  /** Each output by name. */
  readonly outputs: Readonly<Record<string, OutputSummary>>;
  /** Exact sums of products of differences: each output with itself and with those after it, in order. */
  readonly products: readonly (readonly number[])[];
}

/** @internal Into how many a study is cut to see how far its figures have settled. */
export const EIGHTHS = 8;

/** @internal How many failed draws are shown. */
export const FAILURES_SHOWN = 3;

/** In which eighth of a study an index lies. */
function eighthOf(index: number, draws: number): number {
  return Math.floor((index * EIGHTHS) / draws);
}

/** @internal Where the block that begins at an index ends: at a multiple of {@link BLOCK}, or where an eighth of the study does. */
export function blockEnd(index: number, draws: number): number {
  const eighth = Math.ceil(((eighthOf(index, draws) + 1) * draws) / EIGHTHS);
  return Math.min(eighth, (Math.floor(index / BLOCK) + 1) * BLOCK);
}

/** @internal Whether a part of a study may begin or end at an index without cutting a block in two. */
export function isBlockEnd(index: number, draws: number): boolean {
  return index === 0 || blockEnd(index - 1, draws) === index;
}

/** @internal What stays the same for every part of a study. */
export interface StudyHead {
  readonly model: string;
  readonly evidence: string;
  readonly seed: number;
  readonly draws: number;
  readonly outputs: readonly { readonly name: string; readonly unit: string; readonly likely: number }[];
}

/** @internal Takes blocks, and gives what they come to. */
export interface Summarizer {
  take(block: Block): void;
  summary(from: number, to: number): StudySummary;
}

/** @internal Sums what differs from the likely values, block by block; counts bins when the draws are not kept. */
export function summarizer(head: StudyHead, binned: boolean): Summarizer {
  const { draws, outputs } = head;
  const likely = outputs.map((each) => each.likely);
  const sums = outputs.map(() => new ExactSum());
  const products = outputs.flatMap((_, i) => outputs.slice(i).map((__, j) => ({ i, j: i + j, sum: new ExactSum() })));
  const bins = outputs.map(() => Array.from({ length: binned ? EIGHTHS : 0 }, () => new Bins()));
  const lowest = outputs.map(() => Number.POSITIVE_INFINITY);
  const highest = outputs.map(() => Number.NEGATIVE_INFINITY);
  const differences = outputs.map(() => new Float64Array(BLOCK));
  const succeeded = new Array<number>(EIGHTHS).fill(0);
  const failures: FailedDraw[] = [];
  let failed = 0;
  return {
    take({ first, count, columns, failures: here }) {
      const eighth = eighthOf(first, draws);
      (succeeded[eighth] as number) += count;
      failed += here.length;
      for (const each of here) if (failures.length < FAILURES_SHOWN) failures.push(Object.freeze(each));
      for (let i = 0; i < columns.length; i++) {
        const [column, difference, centre] = [columns[i], differences[i], likely[i]] as [
          Float64Array,
          Float64Array,
          number,
        ];
        let sum = 0;
        for (let k = 0; k < count; k++) {
          const value = column[k] as number;
          const d = value - centre;
          difference[k] = d;
          sum += d;
          if (value < (lowest[i] as number)) lowest[i] = value;
          if (value > (highest[i] as number)) highest[i] = value;
        }
        sums[i]?.add(sum);
        const counted = bins[i]?.[eighth];
        if (counted !== undefined) for (let k = 0; k < count; k++) counted.add(column[k] as number);
      }
      for (const { i, j, sum } of products) {
        const [a, b] = [differences[i], differences[j]] as [Float64Array, Float64Array];
        let product = 0;
        for (let k = 0; k < count; k++) product += (a[k] as number) * (b[k] as number);
        sum.add(product);
      }
    },
    summary: (from, to) => ({
      ...{ model: head.model, evidence: head.evidence, seed: head.seed, draws, failed, failures, succeeded },
      ranges: from < to ? [[from, to]] : [],
      outputs: Object.fromEntries(
        outputs.map((output, i) => [
          output.name,
          {
            ...{ unit: output.unit, likely: output.likely },
            ...(Number.isFinite(lowest[i]) ? { lowest: lowest[i] as number, highest: highest[i] as number } : {}),
            ...{ sum: sums[i]?.parts() ?? [], bins: (bins[i] ?? []).map((each) => each.entries()) },
          },
        ]),
      ),
      products: products.map(({ sum }) => sum.parts()),
    }),
  };
}

/** @internal The same as if one run had made all the draws of the parts, which do not overlap. */
export function mergedSummaries(parts: readonly [StudySummary, ...StudySummary[]]): StudySummary {
  const [first] = parts;
  const ranges = parts
    .flatMap((part) => part.ranges)
    .sort(([a], [b]) => a - b)
    .reduce<(readonly [number, number])[]>((joined, [from, to]) => {
      const last = joined.at(-1);
      if (last === undefined || last[1] !== from) joined.push([from, to]);
      else joined[joined.length - 1] = [last[0], to];
      return joined;
    }, []);
  const output = (name: string, { unit, likely, bins }: OutputSummary): OutputSummary => {
    const all = parts.map((part) => part.outputs[name] as OutputSummary);
    const found = all.filter((each) => each.lowest !== undefined);
    return {
      ...{ unit, likely },
      ...(found.length === 0
        ? {}
        : {
            lowest: Math.min(...found.map((each) => each.lowest as number)),
            highest: Math.max(...found.map((each) => each.highest as number)),
          }),
      sum: sumOf(all.map((each) => each.sum)).parts(),
      bins: bins.map((_, eighth) => mergedBins(all.map((each) => each.bins[eighth] ?? []))),
    };
  };
  return {
    ...{ model: first.model, evidence: first.evidence, seed: first.seed, draws: first.draws, ranges },
    failed: parts.reduce((sum, part) => sum + part.failed, 0),
    failures: parts
      .flatMap((part) => part.failures)
      .sort((a, b) => a.index - b.index)
      .slice(0, FAILURES_SHOWN),
    succeeded: first.succeeded.map((_, eighth) => parts.reduce((sum, part) => sum + (part.succeeded[eighth] ?? 0), 0)),
    outputs: Object.fromEntries(Object.entries(first.outputs).map(([name, each]) => [name, output(name, each)])),
    products: first.products.map((_, i) => sumOf(parts.map((part) => part.products[i] ?? [])).parts()),
  };
}
