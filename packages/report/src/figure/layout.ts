import type { FigureParts, FigureWords } from "./figure.js";

/** A rectangle to scale, in millimetres. */
export interface LayoutRectangle {
  /** Says that it is a rectangle. */
  readonly shape: "rectangle";
  /** Left edge, from the left edge of the outline. */
  readonly x: number;
  /** Lower edge, from the lower edge of the outline. */
  readonly y: number;
  /** Size across. */
  readonly width: number;
  /** Size upwards. */
  readonly height: number;
}

/** A circle to scale, in millimetres. */
export interface LayoutCircle {
  /** Says that it is a circle. */
  readonly shape: "circle";
  /** Left edge of the square around it, from the left edge of the outline. */
  readonly x: number;
  /** Lower edge of the square around it, from the lower edge of the outline. */
  readonly y: number;
  /** Diameter. */
  readonly diameter: number;
}

/** Something to scale. */
export type LayoutShape = LayoutRectangle | LayoutCircle;

/** One view of a layout. */
export interface LayoutView {
  /** What is seen, such as "Plan" or "From the side". */
  readonly title: string;
  /** Size of the space across, in millimetres. */
  readonly width: number;
  /** Size of the space upwards, in millimetres. */
  readonly height: number;
  /** What stands in it. */
  readonly shapes: readonly LayoutShape[];
}

/** One shape of a layout, in millimetres. */
export interface LayoutFigureRow {
  /** The view. */
  readonly view: string;
  /** Rectangle or circle. */
  readonly shape: "rectangle" | "circle";
  /** Left edge of the shape. */
  readonly x: number;
  /** Lower edge of the shape. */
  readonly y: number;
  /** Size across. */
  readonly width: number;
  /** Size upwards. */
  readonly height: number;
}

/** What {@link layoutFigure} takes. */
export interface LayoutFigureOptions extends FigureWords {
  /** One to three views, all drawn to one scale. */
  readonly views: readonly LayoutView[];
}

/** A layout to scale as plain, frozen data: see {@link Figure}. */
export interface LayoutFigure extends FigureParts<"layout", LayoutFigureRow> {
  /** The views without their shapes, which are the rows. */
  readonly views: readonly Omit<LayoutView, "shapes">[];
}
