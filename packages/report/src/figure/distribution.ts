import type { AnyQuantity } from "@tarewatt/units";
import type { FigureParts, FigureWords, ValueAxis } from "./figure.js";

/** A point of a curve of density. */
export interface DensityPoint {
  /** Value. */
  readonly x: AnyQuantity | number;
  /** Density there, at least 0, in any unit: only its course is drawn. */
  readonly density: number;
}

/** A bin of a histogram. */
export interface HistogramBin {
  /** Lower end. */
  readonly from: AnyQuantity | number;
  /** Upper end, more than `from`. */
  readonly to: AnyQuantity | number;
  /** How many outcomes lie in it, or their share; at least 0. */
  readonly count: number;
}

/** A value to compare a distribution with. */
export interface DistributionTarget {
  /** What it is. */
  readonly label: string;
  /** Where it stands. */
  readonly value: AnyQuantity | number;
  /** Probability, 0 to 1, that the answer is at least so large; printed beside the label. */
  readonly chance?: number | undefined;
}

/** A target as the figure keeps it, in the unit of the axis. */
export interface ReadDistributionTarget {
  /** What it is. */
  readonly label: string;
  /** Where it stands. */
  readonly value: number;
  /** Probability, 0 to 1, that the answer is at least so large. */
  readonly chance?: number;
}

/** A corner of the outline of a distribution, in the unit of the axis. */
export interface DistributionFigureRow {
  /** Value. */
  readonly x: number;
  /** Density there. */
  readonly density: number;
}

/** What {@link distributionFigure} takes. */
export interface DistributionFigureOptions extends FigureWords {
  /** Axis of the values. */
  readonly x: ValueAxis;
  /** A curve of density in the order of x, instead of `bins`. */
  readonly curve?: readonly DensityPoint[] | undefined;
  /** A histogram in order, instead of `curve`. */
  readonly bins?: readonly HistogramBin[] | undefined;
  /** Median, marked by a full rule. */
  readonly median?: AnyQuantity | number | undefined;
  /** Lower end of the interval that is shaded. */
  readonly low?: AnyQuantity | number | undefined;
  /** Upper end of the interval that is shaded. */
  readonly high?: AnyQuantity | number | undefined;
  /** What the interval is; `"P10 to P90"` when left out. */
  readonly band?: string | undefined;
  /** Values to compare with, marked by dashed rules. */
  readonly targets?: readonly DistributionTarget[] | undefined;
}

/** A distribution as plain, frozen data: see {@link Figure}. */
export interface DistributionFigure extends FigureParts<"distribution", DistributionFigureRow> {
  /** Axis of the values. */
  readonly x: ValueAxis;
  /** Median. */
  readonly median?: number;
  /** Lower end of the interval. */
  readonly low?: number;
  /** Upper end of the interval. */
  readonly high?: number;
  /** Values to compare with. */
  readonly targets: readonly ReadDistributionTarget[];
}
