import type { AnyQuantity } from "@tarewatt/units";
import type { FigureParts, FigureWords, ValueAxis } from "./figure.js";

/** A labelled point. */
export interface LabelledPoint {
  /** Name, written beside the point. */
  readonly label: string;
  /** Place along the horizontal axis. */
  readonly x: AnyQuantity | number;
  /** Place along the vertical axis. */
  readonly y: AnyQuantity | number;
  /** Left end of the bar for the spread of x. */
  readonly xLow?: AnyQuantity | number | undefined;
  /** Right end of the bar for the spread of x. */
  readonly xHigh?: AnyQuantity | number | undefined;
  /** Lower end of the bar for the spread of y. */
  readonly yLow?: AnyQuantity | number | undefined;
  /** Upper end of the bar for the spread of y. */
  readonly yHigh?: AnyQuantity | number | undefined;
  /** Whether the figure is about this point; drawn filled and named in bold. */
  readonly subject?: boolean | undefined;
}

/** A point as the figure keeps it, in the units of the axes. */
export interface PointFigureRow {
  /** Name. */
  readonly label: string;
  /** Place along the horizontal axis. */
  readonly x: number;
  /** Place along the vertical axis. */
  readonly y: number;
  /** Left end of the spread of x. */
  readonly xLow?: number;
  /** Right end of the spread of x. */
  readonly xHigh?: number;
  /** Lower end of the spread of y. */
  readonly yLow?: number;
  /** Upper end of the spread of y. */
  readonly yHigh?: number;
  /** Whether the figure is about this point. */
  readonly subject?: boolean;
}

/** What {@link pointFigure} takes. */
export interface PointFigureOptions extends FigureWords {
  /** Horizontal axis. */
  readonly x: ValueAxis;
  /** Vertical axis, with one unit. */
  readonly y: ValueAxis;
  /** The points. */
  readonly points: readonly LabelledPoint[];
  /** What the bars are; `"P10 to P90"` when left out. */
  readonly band?: string | undefined;
}

/** Labelled points as plain, frozen data: see {@link Figure}. */
export interface PointFigure extends FigureParts<"point", PointFigureRow> {
  /** Horizontal axis. */
  readonly x: ValueAxis;
  /** Vertical axis. */
  readonly y: ValueAxis;
}
