import type { AnyQuantity, DifferenceOf, Dimension, Quantity, Step } from "@tarewatt/units";

/** What the difference of two T is: of two temperatures a temperature difference, of anything else the same. */
export type DifferenceIn<T> = T extends Quantity<infer D extends Dimension> ? Quantity<DifferenceOf<D>> : T;

/**
 * How the causes share the way:
 * - `in the order stated`: each is taken in after those before it, so what causes do together belongs to the later one;
 * - `mean over all orders`: the mean of what each does over all orders in which they could be taken in (the Shapley value).
 */
export type BridgeMethod = "in the order stated" | "mean over all orders";

/** One end of a bridge. */
export interface BridgeEnd<T> {
  /** What the figure is, in words. */
  readonly label: string;
  /** The figure. */
  readonly value: T;
}

/** What one cause does to the figure. */
export interface BridgePart<T> {
  /** The cause, in words. */
  readonly cause: string;
  /** Why it matters, in a sentence; empty when nothing was said. */
  readonly explanation: string;
  /** The figure before this cause is taken in. */
  readonly before: T;
  /** The figure with it. */
  readonly after: T;
  /** `after` less `before`, exactly. */
  readonly change: DifferenceIn<T>;
  /** Smallest and largest change over all orders; with `mean over all orders` only. */
  readonly overOrders?: {
    /** The smallest change. */
    readonly least: DifferenceIn<T>;
    /** The largest. */
    readonly most: DifferenceIn<T>;
  };
  /** How the figure with this cause came about; empty when nothing was said. */
  working(): readonly Step[];
}

/** From one figure to another, one cause at a time. */
export interface Bridge<T = AnyQuantity | number> {
  /** Where it begins. */
  readonly from: BridgeEnd<T>;
  /** The causes, in order. Their changes sum exactly to `change`, in floating point and in any order. */
  readonly parts: readonly BridgePart<T>[];
  /** Where it ends. */
  readonly to: BridgeEnd<T>;
  /** The whole way: `to` less `from`. */
  readonly change: DifferenceIn<T>;
  /** How the causes share it. */
  readonly method: BridgeMethod;
  /** What is doubtful; empty when nothing is. */
  readonly warnings: readonly string[];
  /**
   * The same in another unit; the changes sum exactly there, too.
   * @param unit - text of a unit, such as `"mi"`
   */
  inUnit(unit: string): Bridge<T>;
  /**
   * One line for each end and each cause. All figures have the same decimals, and the printed changes sum to the printed ends.
   * @param units - units to print side by side, such as `["km", "mi"]`; that of the figures when left out
   */
  lines(units?: readonly string[]): readonly string[];
}
