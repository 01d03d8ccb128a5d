import type { AnyQuantity } from "@tarewatt/units";
import type { SpreadLike } from "../table/cell.js";
import type { FigureParts, FigureWords, ValueAxis } from "./figure.js";

/** One row of an interval figure. */
export interface IntervalRow {
  /** What the row is about. */
  readonly label: string;
  /** Best value, drawn as a dot: the median where there is a spread. */
  readonly value?: AnyQuantity | number | undefined;
  /** Lower end of the thick bar. */
  readonly low?: AnyQuantity | number | undefined;
  /** Upper end of the thick bar. */
  readonly high?: AnyQuantity | number | undefined;
  /** Lower end of the thin bar, at most `low`. */
  readonly least?: AnyQuantity | number | undefined;
  /** Upper end of the thin bar, at least `high`. */
  readonly most?: AnyQuantity | number | undefined;
  /** Value, low and high in one: an object with `p10`, `p50` and `p90`, such as the spread of a result. */
  readonly spread?: SpreadLike | undefined;
  /** A value to compare the row with, such as a claim; drawn as an upright mark. */
  readonly target?: AnyQuantity | number | undefined;
}

/** A row of an interval figure as the figure keeps it, in the unit of the axis. */
export interface IntervalFigureRow {
  /** What the row is about. */
  readonly label: string;
  /** Best value. */
  readonly value?: number;
  /** Lower end of the thick bar. */
  readonly low?: number;
  /** Upper end of the thick bar. */
  readonly high?: number;
  /** Lower end of the thin bar. */
  readonly least?: number;
  /** Upper end of the thin bar. */
  readonly most?: number;
  /** Value to compare with. */
  readonly target?: number;
}

/** What {@link intervalFigure} takes. */
export interface IntervalFigureOptions extends FigureWords {
  /** Axis of the values. */
  readonly x: ValueAxis;
  /** The rows, top to bottom. */
  readonly rows: readonly IntervalRow[];
  /** What the thick bar is; `"P10 to P90"` when left out. */
  readonly band?: string | undefined;
  /** What the thin bar is; `"P5 to P95"` when left out. */
  readonly outerBand?: string | undefined;
  /** What the target marks are; `"target"` when left out. */
  readonly targetName?: string | undefined;
}

/** Intervals in rows, as plain, frozen data: see {@link Figure}. */
export interface IntervalFigure extends FigureParts<"interval", IntervalFigureRow> {
  /** Axis of the values. */
  readonly x: ValueAxis;
}
