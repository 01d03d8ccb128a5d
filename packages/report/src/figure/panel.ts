import type { Axis, FigureParts, FigureRow, FigureWords, LineSeries, LineTarget } from "./figure.js";

/** One panel of a panel figure. */
export interface Panel {
  /** Vertical axis. */
  readonly y: Axis;
  /** One to seven lines. */
  readonly series: readonly LineSeries[];
  /** Values to compare with. */
  readonly targets?: readonly LineTarget[] | undefined;
}

/** One point of a panel figure with the names of its panel and its series. */
export interface PanelFigureRow extends FigureRow {
  /** Title of the vertical axis of its panel. */
  readonly panel: string;
}

/** What {@link panelFigure} takes. */
export interface PanelFigureOptions extends FigureWords {
  /** Horizontal axis, which all panels share. */
  readonly x: Axis;
  /** One to four panels, top to bottom. */
  readonly panels: readonly Panel[];
  /** What the band from `low` to `high` is; `"P10 to P90"` when left out. */
  readonly band?: string | undefined;
}

/** Panels of lines as plain, frozen data: see {@link Figure}. */
export interface PanelFigure extends FigureParts<"panel", PanelFigureRow> {
  /** Horizontal axis. */
  readonly x: Axis;
  /** The panels. */
  readonly panels: readonly Panel[];
  /** What the band is, empty when no series has one. */
  readonly band: string;
}
