import type { Energy, Mass, Quantity, Step } from "@tarewatt/units";
import type { CellStanding } from "../cell/footprint.js";
import type { Caution } from "../safety/caution.js";
import type { CellPlace } from "./cell-place.js";
import type { Space } from "./space.js";

/** One way to fill the space. */
export interface SpaceFilling {
  /** The order of the cells, in words. */
  readonly pattern: string;
  /** Which size points up. */
  readonly standing: CellStanding;
  /** Layers. */
  readonly layers: number;
  /** Cells in each layer. */
  readonly perLayer: number;
  /** Cells in all layers. */
  readonly cellCount: number;
  /** Volume of the cells over the volume of the space inside the reserves. */
  readonly filledFraction: number;
  /** Where each cell is, layer by layer, for drawing to scale: all that fit, also those that `cellCount` leaves out. */
  layout(): readonly CellPlace[];
}

/** What limits the number of cells. */
export type SpaceLimit = "space" | "mass" | "count";

/** A space filled with cells. */
export interface FilledSpace {
  /** Sizes of the space inside the reserves. */
  readonly inside: Space;
  /** Every way that was tried and holds a cell, the one with most cells first; of equals, the plainest. */
  readonly fillings: readonly SpaceFilling[];
  /** Cells that the space, the mass and the count allow, in whole strings when the series is known. */
  readonly cellCount: number;
  /** Cells that space, mass and count allow and that make no whole string, so that `cellCount` leaves them out; 0 without a series. */
  readonly besideStrings: number;
  /** Total energy of these cells. */
  readonly energy: Quantity<Energy>;
  /** Mass of these cells. */
  readonly cellsMass: Quantity<Mass>;
  /** What allows least. */
  readonly limitedBy: SpaceLimit;
  /** How many cells each limit allows, before whole strings. */
  readonly allowed: Readonly<Partial<Record<SpaceLimit, number>>>;
  /** Cautions about safety, to be printed wherever the result is; without the cells in series the voltage is taken for a high one. */
  readonly cautions: readonly Caution[];
  /** What is doubtful; empty when nothing is. */
  readonly warnings: readonly string[];
  /** How energy and mass came about; empty when no cell fits. */
  working(): Step[];
}
