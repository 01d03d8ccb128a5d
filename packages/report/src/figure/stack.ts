import type { AnyQuantity } from "@tarewatt/units";
import type { FigureParts, FigureWords, ValueAxis } from "./figure.js";

/** A part of a stacked bar. */
export interface StackPart {
  /** Name; the same name has the same fill in every bar. */
  readonly name: string;
  /** How much; negative parts, such as recuperated energy, stand left of zero. */
  readonly value: AnyQuantity | number;
}

/** A stacked bar. */
export interface StackBar {
  /** What the bar is about. */
  readonly label: string;
  /** Its parts, in order from zero. */
  readonly parts: readonly StackPart[];
}

/** A part of a bar as the figure keeps it, in the unit of the axis. */
export interface StackFigureRow {
  /** The bar. */
  readonly bar: string;
  /** Name of the part. */
  readonly part: string;
  /** How much. */
  readonly value: number;
}

/** What {@link stackFigure} takes. */
export interface StackFigureOptions extends FigureWords {
  /** Axis of the values. */
  readonly x: ValueAxis;
  /** The bars, top to bottom. */
  readonly bars: readonly StackBar[];
}

/** Stacked bars as plain, frozen data: see {@link Figure}. */
export interface StackFigure extends FigureParts<"stack", StackFigureRow> {
  /** Axis of the values. */
  readonly x: ValueAxis;
}
