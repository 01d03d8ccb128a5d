import { typicalDrivetrainFit as shipped } from "@tarewatt/roadload";
import { type Expected, expectedOf } from "./expected.js";
import { type ErrorSummary, type Judgement, judge, type Prediction } from "./judged.js";
import type { CertifiedRow, Driving } from "./rows.js";

/** How well rows are predicted; all figures are shares. */
interface Score<Key extends string = Driving> {
  readonly rows: number;
  readonly scored: number;
  readonly makers: number;
  readonly interval90: Readonly<Record<Key, number>>;
  readonly balanced90: Readonly<Record<Key, number>>;
  readonly width90: Readonly<Record<Key, number>>;
  readonly intervalScore: Readonly<Record<Key, number>>;
  readonly makersDrawn: Readonly<Record<Key, Judgement["makersDrawn"]>>;
}

/** A score with the errors of each result beside it, under its name. */
export type ScoreWithErrors<Key extends string = Driving> = Score<Key> & Readonly<Record<Key, ErrorSummary>>;

/** The predictions of the results that a row has. */
export type Predicted<Key extends string> = Readonly<Record<Key, Prediction>>;

/** Judges predictions of the same results of several rows. */
export function scoreOfPredictions<Key extends string>(
  rows: readonly unknown[],
  keys: readonly Key[],
  predicted: readonly Predicted<Key>[],
): ScoreWithErrors<Key> {
  if (predicted.length === 0) throw new Error("no row of the file can be predicted in this way");
  const judged = new Map(keys.map((key) => [key, judge(predicted.map((each) => each[key]))]));
  const each = <Value>(of: (judgement: Judgement) => Value): Record<Key, Value> =>
    Object.fromEntries(keys.map((key) => [key, of(judged.get(key) as Judgement)])) as Record<Key, Value>;
  const makers = new Set(predicted.map((row) => row[keys[0] as Key].maker));
  return {
    ...{ rows: rows.length, scored: predicted.length, makers: makers.size },
    ...each(({ errors }) => errors),
    interval90: each(({ interval90 }) => interval90),
    width90: each(({ width90 }) => width90),
    balanced90: each(({ balanced90 }) => balanced90),
    intervalScore: each(({ intervalScore }) => intervalScore),
    makersDrawn: each(({ makersDrawn }) => makersDrawn),
  };
}

/** Rows predicted from road load, test weight, rated power and years of experience alone. */
export function scoreOf(rows: readonly CertifiedRow[], keep: "core" | "all"): ScoreWithErrors {
  const scored = expectedOf(rows).filter(({ row }) => row.core || keep === "all");
  return scoreOfPredictions(rows, drivings, scored.map(alone));
}

export const drivings = ["city", "highway"] as const;

/** What is predicted of a row without comparators. */
function alone(row: Expected): Predicted<Driving> {
  return { city: within(row, "city", 0, 1), highway: within(row, "highway", 0, 1) };
}

/** A prediction moved by a logarithm, in an interval narrowed to a share of that of the library. */
export function within({ row, expected }: Expected, driving: Driving, moved: number, left: number): Prediction {
  const likely = expected[driving] * Math.exp(moved);
  const factor = shipped.interval90[driving] ** left;
  return { maker: row.maker, certified: row[driving], low: likely / factor, likely, high: likely * factor };
}
