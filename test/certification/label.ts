import { combinedWeights } from "@tarewatt/roadload";
import { expectedOf, withoutMaker } from "./expected.js";
import { quantile } from "./judged.js";
import type { CertifiedRow } from "./rows.js";
import { type ScoreWithErrors, scoreOfPredictions } from "./scores.js";

/** Label range over what V×Ah gives on the unadjusted cycles, at the wall: middle and deviation of its logarithm. */
interface LabelFit {
  readonly middle: number;
  readonly deviation: number;
}

/**
 * What is to be expected of that ratio from outside, counted as so many makers. Its middle: wall energy of a full charge per V×Ah, 1.09,
 * times label per unadjusted consumption, 0.70, both orientations over many makers. Its deviation is round, for the share of V×Ah that may
 * be used (0.8 to 1), the voltage on file (nominal, or up to 1.14 times that), the method and the caution of the label (0.65 to 0.75) and
 * the consumption (10 % either way): common practice, no source.
 */
const outside = { middle: Math.log(1.09 * 0.7), deviation: 0.2, makers: 5 } as const;

/** 95th percentile of Student's t with ten degrees of freedom, about what is known of the deviation. Tables, from memory. */
const STUDENT_95 = 1.812;

/** {@link fitLabel} of the core rows of the open file. */
export const typicalLabel: LabelFit = { middle: -0.2455, deviation: 0.1881 };

/** A row with a label and a pack on file, and the range that it would have without an adjustment, in mi. */
export interface Labelled {
  readonly row: CertifiedRow;
  readonly unadjusted: number;
}

/** Partial pooling of the makers' medians with what is to be expected from outside. */
export function fitLabel(rows: readonly Labelled[]): LabelFit {
  const makers = [...new Set(rows.map(({ row }) => row.maker))];
  const medians = makers.map((maker) =>
    quantile(
      rows.filter(({ row }) => row.maker === maker).map(({ row, unadjusted }) => Math.log(row.labelRange / unadjusted)),
      0.5,
    ),
  );
  const count = medians.length + outside.makers;
  const middle = (outside.makers * outside.middle + medians.reduce((sum, each) => sum + each, 0)) / count;
  const squares = medians.reduce((sum, each) => sum + (each - middle) ** 2, outside.makers * outside.deviation ** 2);
  return { middle, deviation: Math.sqrt(squares / count) * Math.sqrt(1 + 1 / count) };
}

/** Combined label range predicted from road load, test weight and pack on file, not knowing the method of the label. */
export function scoreOfLabels(rows: readonly CertifiedRow[], keep: "core" | "all"): ScoreWithErrors<"range"> {
  const labelled = labelledOf(rows.filter(({ core }) => core || keep === "all"));
  const fits = withoutMaker(rows, labelled, ({ row }) => row.maker, fitLabel, typicalLabel);
  const predicted = labelled.map(({ row, unadjusted }) => {
    const { middle, deviation } = fits(row.maker);
    const likely = unadjusted * Math.exp(middle);
    const factor = Math.exp(STUDENT_95 * deviation);
    const prediction = { maker: row.maker, certified: row.labelRange, likely };
    return { range: { ...prediction, low: likely / factor, high: likely * factor } };
  });
  return scoreOfPredictions(rows, ["range"], predicted);
}

/** The rows that have a label and a pack on file, with V×Ah over consumption: the label takes the 55/45 mean of city and highway range. */
export function labelledOf(rows: readonly CertifiedRow[]): Labelled[] {
  const { city, highway } = combinedWeights;
  return expectedOf(rows)
    .filter(({ row }) => row.packEnergy > 0 && row.labelRange > 0)
    .map(({ row, expected }) => ({
      row,
      unadjusted: row.packEnergy * (city / expected.city + highway / expected.highway),
    }));
}
