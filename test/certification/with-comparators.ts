import { typicalDrivetrainFit } from "@tarewatt/roadload";
import type { Likened } from "../../packages/estimate/src/calibrate/compared.js";
import { posteriorOf } from "../../packages/estimate/src/calibrate/posterior.js";
import { type Expected, expectedOf } from "./expected.js";
import type { CertifiedRow, Driving } from "./rows.js";
import { forceAt } from "./rows.js";
import { drivings, type Predicted, type ScoreWithErrors, scoreOfPredictions, within } from "./scores.js";

/** Which rows of the same maker may tell of a row. */
export type Tells = (of: CertifiedRow, other: CertifiedRow) => boolean;

/** Weight and force at 50 mph both within 3 %: two of one configuration, or nearly. */
function siblings(a: CertifiedRow, b: CertifiedRow): boolean {
  const near = (x: number, y: number): boolean => Math.abs(x / y - 1) < 0.03;
  return near(a.testWeight, b.testWeight) && near(forceAt(a, 50), forceAt(b, 50));
}

/** Earlier model years, siblings left out: what is known on the day when a vehicle is announced. */
export const earlierRows: Tells = (of, other) => other.modelYear < of.modelYear && !siblings(of, other);

/** Any other configuration: another road load or another weight. */
export const otherRows: Tells = (of, other) =>
  of.testWeight !== other.testWeight || of.coefficients.some((each, i) => each !== other.coefficients[i]);

/** How a row is compared with others; its expected consumption is that of a fit without its maker. */
function likened({ row, expected, parts }: Expected): Likened {
  const hours = (driving: Driving): number => parts[driving].at(-1) as number;
  const perWatt = (driving: Driving): number =>
    hours(driving) / typicalDrivetrainFit.chargingEfficiency / expected[driving];
  return {
    modelYear: row.modelYear,
    likeness: { mass: row.testWeight, force: forceAt(row, 50), power: row.ratedPower / 1000 },
    perWatt: [perWatt("city"), perWatt("highway")],
  };
}

/** What comparators say of a row: how much more than expected, as logarithms, and the share of the deviation that they leave. */
export function saidOf(
  row: Expected,
  comparators: readonly Expected[],
): Readonly<Record<Driving, { readonly moved: number; readonly left: number }>> {
  const more = (other: Expected, driving: Driving): number => Math.log(other.row[driving] / other.expected[driving]);
  const learnt = comparators.map((other) => ({
    vehicle: likened(other),
    more: [more(other, "city"), more(other, "highway")] as const,
  }));
  const said = posteriorOf(learnt).of(likened(row));
  const on = (driving: Driving, at: 0 | 1) => ({
    moved: said.shares.reduce((sum, share, i) => {
      const [city, highway] = learnt[i]?.more ?? [0, 0];
      return sum + share[driving][0] * city + share[driving][1] * highway;
    }, 0),
    left: said.deviation[at] / said.without[at],
  });
  return { city: on("city", 0), highway: on("highway", 1) };
}

/** The rows that have comparators, each predicted from them: how `calibrate` does, by a fit that has not seen the maker. */
export function scoreWithComparators(
  rows: readonly CertifiedRow[],
  keep: "core" | "all",
  tells: Tells,
): ScoreWithErrors {
  const all = expectedOf(rows).filter(({ row }) => row.core || keep === "all");
  const predicted = all.flatMap((row): Predicted<Driving>[] => {
    const comparators = all.filter(
      (other) => other !== row && other.row.maker === row.row.maker && tells(row.row, other.row),
    );
    if (comparators.length === 0) return [];
    const said = saidOf(row, comparators);
    const on = (driving: Driving) => within(row, driving, said[driving].moved, said[driving].left);
    return [{ city: on("city"), highway: on("highway") }];
  });
  return scoreOfPredictions(rows, drivings, predicted);
}
