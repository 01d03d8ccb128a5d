import type { AnyQuantity } from "@tarewatt/units";
import type { FigureParts, FigureWords, ValueAxis } from "./figure.js";

/** A figure at one end of a bridge. */
export interface BridgeStart {
  /** What it is. */
  readonly label: string;
  /** How much. */
  readonly value: AnyQuantity | number;
}

/** One cause of a bridge. */
export interface BridgeStep {
  /** The cause. */
  readonly label: string;
  /** What it adds; negative when it takes away. */
  readonly change: AnyQuantity | number;
}

/** A row of a bridge as the figure keeps it, in the unit of the axis. */
export interface BridgeFigureRow {
  /** An end of the bridge, or the cause. */
  readonly label: string;
  /** What the step adds; not there at the two ends. */
  readonly change?: number;
  /** Running total after the row. */
  readonly total: number;
}

/** What {@link bridgeFigure} takes. */
export interface BridgeFigureOptions extends FigureWords {
  /** Axis of the values. */
  readonly x: ValueAxis;
  /** Where the bridge begins. */
  readonly from: BridgeStart;
  /** The causes, top to bottom. */
  readonly steps: readonly BridgeStep[];
  /** What the bridge arrives at: the sum of all. */
  readonly to: string;
}

/** A bridge from one figure to another as plain, frozen data: see {@link Figure}. */
export interface BridgeFigure extends FigureParts<"bridge", BridgeFigureRow> {
  /** Axis of the values. */
  readonly x: ValueAxis;
}
