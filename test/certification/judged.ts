import { quantileOfSorted } from "@tarewatt/estimate";

/** A prediction beside what it predicts; all in one unit. */
export interface Prediction {
  readonly maker: string;
  readonly certified: number;
  readonly low: number;
  readonly likely: number;
  readonly high: number;
}

/** Sizes of errors |predicted/certified − 1|, and the middle of the errors with their sign. */
export interface ErrorSummary {
  readonly median: number;
  readonly p90: number;
  readonly bias: number;
  /** Median over makers of each maker's median: a maker with many rows counts once. */
  readonly balanced: number;
}

/** 5th and 95th percentile when makers are drawn anew. */
type Between = readonly [low: number, high: number];

/** How well predictions do; all figures are shares. */
export interface Judgement {
  readonly errors: ErrorSummary;
  /** Share within the 90 % interval. */
  readonly interval90: number;
  /** The same as mean over makers of each maker's share. */
  readonly balanced90: number;
  /** Width of that interval over the prediction, median. */
  readonly width90: number;
  /** Mean of width and misses, per certified: small when intervals are narrow and hold. */
  readonly intervalScore: number;
  /** The same when makers are drawn anew, as many and with replacement: what is owed to these makers being here. */
  readonly makersDrawn: Readonly<Record<"median" | "p90" | "balanced" | "interval90", Between>>;
}

const ALPHA = 0.1;
const DRAWS = 1000;
const SEED = 1;

export function judge(predictions: readonly Prediction[]): Judgement {
  const byMaker = new Map<string, Prediction[]>();
  for (const each of predictions) byMaker.set(each.maker, [...(byMaker.get(each.maker) ?? []), each]);
  const makers = [...byMaker.values()];
  const next = numbersFrom(SEED);
  const drawn = Array.from({ length: DRAWS }, () => {
    const some = makers.map(() => makers[Math.floor(next() * makers.length)] as Prediction[]);
    return { ...errorsOf(some), interval90: held(some.flat()) };
  });
  const between = (figure: "median" | "p90" | "balanced" | "interval90"): Between => {
    const values = drawn.map((each) => each[figure]);
    return [quantile(values, 0.05), quantile(values, 0.95)];
  };
  return {
    errors: errorsOf(makers),
    interval90: held(predictions),
    balanced90: mean(makers.map(held)),
    width90: quantile(
      predictions.map(({ low, likely, high }) => (high - low) / likely),
      0.5,
    ),
    intervalScore: mean(predictions.map(intervalScore)),
    makersDrawn: {
      ...{ median: between("median"), p90: between("p90") },
      ...{ balanced: between("balanced"), interval90: between("interval90") },
    },
  };
}

function errorsOf(makers: readonly (readonly Prediction[])[]): ErrorSummary {
  const ratios = makers.flat().map(({ likely, certified }) => likely / certified);
  const sizes = ratios.map((ratio) => Math.abs(ratio - 1));
  const ofMaker = (rows: readonly Prediction[]): number =>
    quantile(
      rows.map(({ likely, certified }) => Math.abs(likely / certified - 1)),
      0.5,
    );
  return {
    ...{ median: quantile(sizes, 0.5), p90: quantile(sizes, 0.9), bias: quantile(ratios, 0.5) - 1 },
    balanced: quantile(makers.map(ofMaker), 0.5),
  };
}

function held(predictions: readonly Prediction[]): number {
  return mean(predictions.map(({ low, high, certified }) => (low <= certified && certified <= high ? 1 : 0)));
}

/** Strictly proper scoring rules, Journal of the American Statistical Association 102 (2007), 6.2; from memory. */
function intervalScore({ low, high, certified }: Prediction): number {
  const missed = Math.max(low - certified, certified - high, 0);
  return (high - low + (2 / ALPHA) * missed) / certified;
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

export function quantile(values: readonly number[], share: number): number {
  return quantileOfSorted(Float64Array.from(values).sort(), share);
}

/** Numbers in [0, 1), the same for the same seed: the public-domain generator mulberry32. */
function numbersFrom(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 0x100000000;
  };
}
