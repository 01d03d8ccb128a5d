import type { BarFigure } from "./bar.js";
import type { BridgeFigure } from "./bridge.js";
import type { DistributionFigure } from "./distribution.js";
import type { IntervalFigure } from "./interval.js";
import type { LayoutFigure } from "./layout.js";
import type { PanelFigure } from "./panel.js";
import type { PointFigure } from "./point.js";
import type { StackFigure } from "./stack.js";

/** Plain JSON data. */
export type JsonValue = string | number | boolean | null | readonly JsonValue[] | { readonly [key: string]: JsonValue };

/** A Vega-Lite specification as plain JSON data, for any program that draws the open Vega-Lite grammar. */
export interface VegaLiteSpec {
  readonly [key: string]: JsonValue;
}

/** An axis of a figure. */
export interface Axis {
  /** What is measured along it. */
  readonly title: string;
  /** Unit of its numbers, shown in parentheses; `"1"` for a pure number, which shows none. */
  readonly unit: string;
}

/** One point of a series, in the units of the axes. */
export interface LinePoint {
  /** Position along the horizontal axis. */
  readonly x: number;
  /** Position along the vertical axis: the median where there is a spread. */
  readonly y: number;
  /** Lower end of the band, at most `y`. */
  readonly low?: number | undefined;
  /** Upper end of the band, at least `y`. */
  readonly high?: number | undefined;
}

/** A named line. */
export interface LineSeries {
  /** Name, written at the end of the line. */
  readonly name: string;
  /** Points in the order of x. Either all of them have `low` and `high` or none has. */
  readonly points: readonly LinePoint[];
}

/** A level to compare with, drawn as a thin dashed rule across the figure. */
export interface LevelTarget {
  /** What it is, written at the end of the rule. */
  readonly label: string;
  /** Where it stands on the vertical axis, in its unit. */
  readonly value: number;
  /** Not here: a target stands on one axis. */
  readonly x?: undefined;
}

/** A place to mark, drawn as a thin dashed upright rule. */
export interface PlaceTarget {
  /** What it is, written above the rule. */
  readonly label: string;
  /** Where it stands on the horizontal axis, in its unit. */
  readonly x: number;
  /** Not here: a target stands on one axis. */
  readonly value?: undefined;
}

/** A value to compare with, on the vertical axis or on the horizontal one. */
export type LineTarget = LevelTarget | PlaceTarget;

/** One point of a figure with the name of its series, as the figure's table prints it. */
export interface FigureRow extends LinePoint {
  /** Name of the series. */
  readonly series: string;
}

/** Words that every figure takes. */
export interface FigureWords {
  /** What the figure shows. */
  readonly title: string;
  /** What a reader should know, such as the conditions. */
  readonly caption?: string | undefined;
  /** Where the data are from; printed below the figure. */
  readonly source?: string | undefined;
  /** Date of the data or the figure, as it is to be printed beside the source. */
  readonly date?: string | undefined;
  /** What the picture says, in words, for readers who cannot see it. */
  readonly description: string;
}

/** An axis of values that may show a second unit beside the first. */
export interface ValueAxis extends Axis {
  /** Second unit of the same dimension, such as `"mi"` beside `"km"`. */
  readonly also?: string | undefined;
}

/** What every figure has, whatever its kind. */
export interface FigureParts<Kind extends string, Row> {
  /** Kind of the figure, whichever copy of the package made it. */
  readonly kind: Kind;
  /** What the figure shows. */
  readonly title: string;
  /** Conditions, how to read the marks, source and date, in one line. */
  readonly caption: string;
  /** Alternative text. */
  readonly description: string;
  /** The data, row by row. */
  readonly rows: readonly Row[];
  /** The picture at its usual size as a Vega-Lite specification. */
  readonly spec: VegaLiteSpec;
}

/** What {@link lineFigure} takes. */
export interface LineFigureOptions extends FigureWords {
  /** Horizontal axis. */
  readonly x: Axis;
  /** Vertical axis. */
  readonly y: Axis;
  /** One to seven lines. */
  readonly series: readonly LineSeries[];
  /** Values to compare with. */
  readonly targets?: readonly LineTarget[] | undefined;
  /** What the band from `low` to `high` is; `"P10 to P90"` when left out. */
  readonly band?: string | undefined;
}

/** A line figure as plain, frozen data: see {@link Figure}. */
export interface LineFigure extends FigureParts<"line", FigureRow> {
  /** Horizontal axis. */
  readonly x: Axis;
  /** Vertical axis. */
  readonly y: Axis;
  /** The lines. */
  readonly series: readonly LineSeries[];
  /** Values to compare with. */
  readonly targets: readonly LineTarget[];
  /** What the band is, empty when no series has one. */
  readonly band: string;
}
/**
 * A figure as plain, frozen data. {@link figureToVegaLite}, {@link figureToSvg}, {@link figureToText}, {@link figureToMarkdown},
 * {@link figureToHtml} and {@link figureToCsv} print every kind of it. In a notebook it shows itself.
 */
export type Figure =
  | LineFigure
  | IntervalFigure
  | StackFigure
  | BridgeFigure
  | BarFigure
  | DistributionFigure
  | PointFigure
  | LayoutFigure
  | PanelFigure;
