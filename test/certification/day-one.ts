import { typicalDrivetrainFit } from "@tarewatt/roadload";
import { type Expected, expectedOf } from "./expected.js";
import { predict, prepare } from "./fit.js";
import type { Prediction } from "./judged.js";
import { likelyRoadLoad, roadForceFits } from "./road-force.js";
import type { CertifiedRow, Driving } from "./rows.js";
import { drivings, type Predicted, type ScoreWithErrors, scoreOfPredictions } from "./scores.js";
import { earlierRows, saidOf } from "./with-comparators.js";

/** 95th percentile of the standard normal distribution. Tables, from memory. */
const NORMAL_95 = 1.6449;

/**
 * Rows predicted as on the day of the announcement: the certified road load is hidden, and predicted from weight, class and year, and
 * from the maker's earlier rows where there are any; siblings are left out.
 */
export function scoreOnDayOne(rows: readonly CertifiedRow[], keep: "core" | "all"): ScoreWithErrors {
  const all = expectedOf(rows).filter(({ row }) => row.core || keep === "all");
  const fits = roadForceFits(rows);
  const predicted = all.map((known): Predicted<Driving> => {
    const { row } = known;
    const earlier = all.filter((other) => other.row.maker === row.maker && earlierRows(row, other.row));
    const earlierOnes = earlier.map((each) => each.row);
    const { coefficients, deviation } = likelyRoadLoad(row, earlierOnes, fits(row.maker));
    const guessed = expectedWith(known, coefficients);
    const scaled = expectedWith(known, coefficients.map((each) => each * STEP) as unknown as typeof coefficients);
    const said = saidOf(guessed, earlier);
    const on = (driving: Driving): Prediction => {
      const likely = guessed.expected[driving] * Math.exp(said[driving].moved);
      // How much the consumption follows the road load, in logarithms.
      const follows = Math.log(scaled.expected[driving] / guessed.expected[driving]) / Math.log(STEP);
      const ofRest = Math.log(typicalDrivetrainFit.interval90[driving]) * said[driving].left;
      const factor = Math.exp(Math.hypot(ofRest, NORMAL_95 * follows * deviation));
      return { maker: row.maker, certified: row[driving], low: likely / factor, likely, high: likely * factor };
    };
    return { city: on("city"), highway: on("highway") };
  });
  return scoreOfPredictions(rows, drivings, predicted);
}

const STEP = 1.02;

/** What is to be expected of a row, had it another road load. */
function expectedWith({ row, coefficients: fit }: Expected, coefficients: CertifiedRow["coefficients"]): Expected {
  const { row: changed, parts } = prepare({ ...row, coefficients });
  return {
    ...{ row: changed, parts, coefficients: fit },
    expected: { city: predict(fit, parts.city), highway: predict(fit, parts.highway) },
  };
}
