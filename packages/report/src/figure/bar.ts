import type { AnyQuantity } from "@tarewatt/units";
import type { FigureParts, FigureWords, ValueAxis } from "./figure.js";

/** A bar with its uncertainty. */
export interface BarRow {
  /** What the bar is about. */
  readonly label: string;
  /** Length of the bar. */
  readonly value: AnyQuantity | number;
  /** Lower end of the whisker. */
  readonly low?: AnyQuantity | number | undefined;
  /** Upper end of the whisker. */
  readonly high?: AnyQuantity | number | undefined;
  /** A part of the bar that is drawn darker inside it, such as a first-order share within the total share. */
  readonly within?: AnyQuantity | number | undefined;
}

/** A bar as the figure keeps it, in the unit of the axis. */
export interface BarFigureRow {
  /** What the bar is about. */
  readonly label: string;
  /** Length of the bar. */
  readonly value: number;
  /** Lower end of the whisker. */
  readonly low?: number;
  /** Upper end of the whisker. */
  readonly high?: number;
  /** Part that is drawn darker. */
  readonly within?: number;
}

/** What {@link barFigure} takes. */
export interface BarFigureOptions extends FigureWords {
  /** Axis of the values. */
  readonly x: ValueAxis;
  /** The bars, top to bottom, in the order given. */
  readonly rows: readonly BarRow[];
  /** What the whisker is; `"P10 to P90"` when left out. */
  readonly band?: string | undefined;
  /** What the darker part is; `"part"` when left out. */
  readonly withinName?: string | undefined;
}

/** Bars with their uncertainty as plain, frozen data: see {@link Figure}. */
export interface BarFigure extends FigureParts<"bar", BarFigureRow> {
  /** Axis of the values. */
  readonly x: ValueAxis;
}
