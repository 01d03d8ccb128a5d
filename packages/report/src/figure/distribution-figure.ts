import { frozen } from "../check/frozen.js";
import { readKeys, readOptionalText } from "../check/read.js";
import { showFigure } from "../notebook/show-figure.js";
import type { DistributionFigure, DistributionFigureOptions } from "./distribution.js";
import { readDistributionTargets, readMarks, readOutline } from "./distribution-kind.js";
import { distributionSpec } from "./distribution-spec.js";
import { readValueAxis } from "./measure.js";
import { readSize } from "./picture-size.js";
import { readWords, wordKeys } from "./words.js";

/**
 * A figure of how an answer is distributed: a curve or a histogram with its median, an interval shaded, and values to compare
 * with, each with the probability that it is reached.
 *
 * @param options - title, axis, a curve or bins, median, interval, targets, caption, source, date and a description; bare numbers
 * are in the unit of the axis, quantities are converted to it
 * @returns an immutable figure; a histogram is kept as the outline of its bins, whose areas are as their counts
 * @throws ReportError `NOT_ORDERED` when values go back or the median is outside its interval, `NOT_A_TEXT`, `NO_ROOM`
 * @throws InputError `INCONSISTENT` without or with both of curve and bins, `EMPTY` without an area, `NOT_A_NUMBER`,
 * `NEGATIVE` for a density or count below 0, `NOT_A_FRACTION` for a chance outside 0 to 1, `OUT_OF_RANGE` beyond 10¹⁵, `UNKNOWN_OPTION`, `MISSING_OPTION`
 * @throws QuantityError when a quantity measures something else than the axis
 * @example
 * const range = distributionFigure({
 *   title: "Range on the combined cycle",
 *   x: { title: "Range", unit: "km", also: "mi" },
 *   bins: [{ from: 350, to: 400, count: 12 }, { from: 400, to: 450, count: 60 }, { from: 450, to: 500, count: 28 }],
 *   ...{ median: 432, low: q("393 km"), high: 475 },
 *   targets: [{ label: "Announced: 480 km", value: 480, chance: 0.08 }],
 *   description: "The range is most likely 432 km; the announced 480 km are reached in 8 % of the cases.",
 * });
 * range.rows[2]?.density; // 1.2
 */
export function distributionFigure(options: DistributionFigureOptions): DistributionFigure {
  const own = ["x", "curve?", "bins?", "median?", "low?", "high?", "band?", "targets?"];
  readKeys("distributionFigure", options, [...wordKeys, ...own]);
  const x = readValueAxis("x", options.x);
  const rows = readOutline(options, x.unit);
  const marks = readMarks(options, x.unit);
  const targets = readDistributionTargets(options.targets ?? [], x.unit);
  const band = readOptionalText("band", options.band) ?? "P10 to P90";
  const reading = [
    "The area over a stretch is the probability of it",
    ...(marks.low === undefined ? [] : [`darker: ${band}`]),
    ...(marks.median === undefined ? [] : ["full rule: median"]),
  ].join("; ");
  const content = { kind: "distribution" as const, ...readWords(options, reading), x, ...marks, targets, rows };
  return showFigure({ ...content, spec: frozen(distributionSpec(content, readSize("the picture", {}))) });
}
