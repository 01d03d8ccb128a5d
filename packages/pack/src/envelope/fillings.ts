import { InputError } from "@tarewatt/units";
import type { Cell } from "../cell/cell.js";
import type { CellStanding } from "../cell/footprint.js";
import { sizesOf } from "../cell/sizes-of.js";
import { fitting } from "./block.js";
import { placesOf } from "./cell-place.js";
import type { SpaceFilling } from "./filled-space.js";
import { patternsOn } from "./patterns.js";
import type { Inside } from "./space.js";

/** More than a vehicle holds: the sizes are a slip of unit. */
const MOST_CELLS = 200_000;

/** @internal How a space may be filled: gaps in mm. */
export interface FillingRules {
  readonly gap: number;
  readonly layerGap: number;
  readonly mostLayers: number;
  readonly standings: readonly CellStanding[];
}

/** @internal Every way to fill a space, the one with most cells first. */
export function fillingsOf(
  cell: Cell,
  inside: Inside,
  { gap, layerGap, mostLayers, standings }: FillingRules,
): readonly SpaceFilling[] {
  const { length, width, height } = inside;
  const sizes = sizesOf(cell);
  const cellVolume = cell.volume.in("L");
  const volume = (length * width * height) / 1e6;
  // Rows are looped over, so they must be countable.
  if (Math.max(length, width) / Math.min(sizes.thickness, sizes.width, sizes.height) > MOST_CELLS) tooMany();
  const fillings = patternsOn({ length, width, gap }, sizes, standings).flatMap(
    ({ name, standing, up, blocks, perLayer }): SpaceFilling[] => {
      const layers = Math.min(mostLayers, fitting(height, up, layerGap));
      const cellCount = layers * perLayer;
      if (cellCount === 0) return [];
      if (cellCount > MOST_CELLS) tooMany();
      return [
        Object.freeze({
          ...{ pattern: name, standing, layers, perLayer, cellCount },
          filledFraction: Math.min(1, (cellCount * cellVolume) / volume),
          layout: () => placesOf(blocks, { layers, up, pitch: up + layerGap }),
        }),
      ];
    },
  );
  // The order of patterns is from plain to odd, and sorting keeps it among equals.
  return Object.freeze(fillings.sort((a, b) => b.cellCount - a.cellCount));
}

function tooMany(): never {
  throw new InputError(
    "OUT_OF_RANGE",
    `more than ${MOST_CELLS} cells would fit: check the units of space and cell`,
    {},
  );
}
