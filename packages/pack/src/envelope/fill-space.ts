import {
  type Energy,
  InputError,
  type Length,
  type Mass,
  type NumberRule,
  type Quantity,
  quantity,
  readOptions,
  type Step,
} from "@tarewatt/units";
import { energyOfCells } from "../arrangement/energy-of-cells.js";
import type { Cell } from "../cell/cell.js";
import type { CellStanding } from "../cell/footprint.js";
import { readCell } from "../cell/read-cell.js";
import { sizesOf } from "../cell/sizes-of.js";
import { assertWhole } from "../check/assert-whole.js";
import { massOfCells } from "../composition/masses.js";
import type { Caution } from "../safety/caution.js";
import { highVoltageCaution } from "../safety/high-voltage-caution.js";
import { fitting } from "./block.js";
import { type CellPlace, placesOf } from "./cell-place.js";
import { patternsOn } from "./patterns.js";
import { readStandings } from "./read-standings.js";
import { type Inside, type Reserves, readInside, type Space } from "./space.js";

/** Options of {@link fillSpace}. */
export interface FillSpaceOptions {
  /** The cell. A cylinder stands on its end. */
  readonly cell: Cell;
  /** Sizes of the space. */
  readonly space: Space;
  /** What the cells may not use of it. */
  readonly reserves?: Reserves | undefined;
  /** Clear gap between neighbouring cells: cooling, swelling, tolerance. Not negative; zero when left out. */
  readonly gap?: Quantity<Length> | undefined;
  /** Most layers of cells, a whole number from 1 to 10; 1 when left out. */
  readonly layers?: number | undefined;
  /** Clear distance between two layers. Not negative; zero when left out. */
  readonly layerGap?: Quantity<Length> | undefined;
  /** Which ways a box may stand; all when left out. Some cells may not lie on a side: ask their maker. */
  readonly standings?: readonly CellStanding[] | undefined;
  /** Cells in series, when known: then only whole strings count. A whole number of at least one. */
  readonly series?: number | undefined;
  /** Most mass of cells that the vehicle can carry. Greater than zero. */
  readonly cellsMassAtMost?: Quantity<Mass> | undefined;
  /** Most cells wanted or to be had. A whole number of at least one. */
  readonly cellsAtMost?: number | undefined;
}

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
  /** Where each cell is, layer by layer, for drawing to scale. */
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
  /** Total energy of these cells. */
  readonly energy: Quantity<Energy>;
  /** Mass of these cells. */
  readonly cellsMass: Quantity<Mass>;
  /** What allows least. */
  readonly limitedBy: SpaceLimit;
  /** How many cells each limit allows, before whole strings. */
  readonly allowed: Readonly<Partial<Record<SpaceLimit, number>>>;
  /** Cautions about safety, to be printed wherever the result is; the voltage is known only with the cells in series. */
  readonly cautions: readonly Caution[];
  /** What is doubtful; empty when nothing is. */
  readonly warnings: readonly string[];
  /** How energy and mass came about; empty when no cell fits. */
  working(): Step[];
}

const GAP = { unit: "mm", atLeast: 0, atMost: 1e4, optional: true } as const satisfies NumberRule;
const COUNT = { unit: "1", atLeast: 1, atMost: 1e7, optional: true } as const satisfies NumberRule;

const rules = {
  gap: GAP,
  layerGap: GAP,
  layers: { unit: "1", atLeast: 1, atMost: 10, optional: true },
  series: COUNT,
  cellsMassAtMost: { unit: "kg", above: 0, optional: true },
  cellsAtMost: COUNT,
} as const satisfies Readonly<Record<string, NumberRule>>;

/** More than a vehicle holds: the sizes are a slip of unit. */
const MOST_CELLS = 200_000;

/**
 * Fills a space with cells: how many fit, in which order, what energy that makes, and whether space, mass or count limits.
 *
 * Tried are, for cylinders, square and hexagonal order, along and across, also with rows spread to the ends; for boxes, every
 * way to stand, each along, across and with the rest of the floor turned. It is the best of these, not proven the best of all.
 * Nothing is kept free between cells but the gaps: cross members and module frames belong in the reserves or the gaps.
 *
 * @param options - cell, space, reserves, gaps, layers, and what else limits
 * @returns the fillings, and what the best of them holds
 * @throws InputError `INCONSISTENT` when the reserves leave nothing, `OUT_OF_RANGE` (also for more cells than a vehicle holds),
 *   `NEGATIVE`, `WRONG_DIMENSION`, `WRONG_CHOICE`, `MISSING_OPTION`, `NOT_AN_OBJECT`, `UNKNOWN_OPTION`
 * @example
 * const cell = cylindricalCell({
 *   ...{ diameter: q("46 mm"), height: q("80 mm"), mass: q("355 g") },
 *   ...{ capacity: q("23.125 Ah"), nominalVoltage: q("3.7 V") },
 * });
 * const space = { length: q("1.7 m"), width: q("1.2 m"), height: q("120 mm") };
 * const { cellCount, fillings } = fillSpace({ cell, space, reserves: { eachSide: q("50 mm") }, gap: q("1 mm") });
 * `${cellCount} cells, ${fillings[0]?.pattern}`; // "945 cells, hexagonal order spread to the ends, rows along the length"
 */
export function fillSpace(options: FillSpaceOptions): FilledSpace {
  const numbers = readOptions("fillSpace", options, rules, ["cell", "space", "reserves?", "standings?"]);
  const { gap = 0, layerGap = 0, layers: mostLayers = 1, series, cellsMassAtMost, cellsAtMost } = numbers;
  const cell = readCell(options.cell);
  const inside = readInside(options.space, options.reserves);
  for (const [name, value] of Object.entries({ layers: mostLayers, series, cellsAtMost })) assertWhole(name, value);
  const fillings = fill(cell, inside, { gap, layerGap, mostLayers, standings: readStandings(options.standings) });

  const space = fillings[0]?.cellCount ?? 0;
  const mass = cellsMassAtMost && Math.floor((cellsMassAtMost / cell.mass.in("kg")) * (1 + 1e-12));
  const allowed = {
    space,
    ...(mass !== undefined && { mass }),
    ...(cellsAtMost !== undefined && { count: cellsAtMost }),
  };
  const least = Math.min(...Object.values(allowed));
  const limitedBy = (Object.keys(allowed) as SpaceLimit[]).find((limit) => allowed[limit] === least) ?? "space";
  const cellCount = series === undefined ? least : series * Math.floor(least / series);
  const highest = series === undefined ? undefined : (cell.maximumVoltage ?? cell.nominalVoltage).times(series);
  const caution = highest && highVoltageCaution(highest);

  return Object.freeze({
    inside: Object.freeze({
      ...{ length: quantity(inside.length, "mm"), width: quantity(inside.width, "mm") },
      height: quantity(inside.height, "mm"),
    }),
    fillings,
    cellCount,
    energy: cell.energy.times(cellCount).to("kWh"),
    cellsMass: cell.mass.times(cellCount).to("kg"),
    limitedBy,
    allowed: Object.freeze(allowed),
    cautions: Object.freeze(caution === undefined ? [] : [caution]),
    warnings: Object.freeze([...cell.warnings, ...tooFew(cell, inside, { space, least, series })]),
    working: () =>
      cellCount === 0
        ? []
        : [
            energyOfCells.explain({ cellCount, cellEnergy: cell.energy }),
            massOfCells.explain({ cellCount, cellMass: cell.mass }),
          ],
  });
}

interface Filling {
  readonly gap: number;
  readonly layerGap: number;
  readonly mostLayers: number;
  readonly standings: readonly CellStanding[];
}

function fill(cell: Cell, inside: Inside, { gap, layerGap, mostLayers, standings }: Filling): readonly SpaceFilling[] {
  const { length, width, height } = inside;
  const sizes = sizesOf(cell);
  const cellVolume = cell.volume.in("L");
  const volume = (length * width * height) / 1e6;
  // Nothing is looped over before it is known to be countable.
  const smallest = Math.min(sizes.thickness, sizes.width, sizes.height);
  if (Math.max(length, width) / smallest > MOST_CELLS || volume / cellVolume > MOST_CELLS) tooMany();
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

interface Counts {
  readonly space: number;
  readonly least: number;
  readonly series: number | undefined;
}

function tooFew(cell: Cell, { length, width, height }: Inside, { space, least, series }: Counts): string[] {
  const left = [length, width, height].map((size) => Number(size.toPrecision(4))).join(" × ");
  if (space === 0) return [`no ${cell.label} fits into ${left} mm, what the reserves leave`];
  if (series !== undefined && least < series) {
    return [`${least} cells do not make one string of ${series} in series: another cell or voltage is needed`];
  }
  return [];
}

function tooMany(): never {
  throw new InputError(
    "OUT_OF_RANGE",
    `more than ${MOST_CELLS} cells would fit: check the units of space and cell`,
    {},
  );
}
