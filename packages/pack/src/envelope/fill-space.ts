import { type Length, type Mass, type NumberRule, type Quantity, quantity, readOptions } from "@tarewatt/units";
import { energyOfCells } from "../arrangement/energy-of-cells.js";
import type { Cell } from "../cell/cell.js";
import type { CellStanding } from "../cell/footprint.js";
import { readCell } from "../cell/read-cell.js";
import { assertWhole } from "../check/assert-whole.js";
import { massOfCells } from "../composition/masses.js";
import { unknownMaximum } from "../composition/unknown-maximum.js";
import { voltageCautions } from "../safety/voltage-cautions.js";
import type { FilledSpace, SpaceLimit } from "./filled-space.js";
import { fillingsOf } from "./fillings.js";
import { readStandings } from "./read-standings.js";
import { type Inside, type Reserves, readInside, type Space } from "./space.js";

/** Options of {@link fillSpace}. */
export interface FillSpaceOptions {
  /** The cell. */
  readonly cell: Cell;
  /** Sizes of the space. */
  readonly space: Space;
  /** What the cells may not use of it. Without it the cells fill the space to its walls, with a warning. */
  readonly reserves?: Reserves | undefined;
  /** Clear gap between neighbouring cells: cooling, swelling, tolerance. Not negative; zero when left out. */
  readonly gap?: Quantity<Length> | undefined;
  /** Most layers of cells, a whole number from 1 to 10; 1 when left out. */
  readonly layers?: number | undefined;
  /** Clear distance between two layers. Not negative; zero when left out. */
  readonly layerGap?: Quantity<Length> | undefined;
  /**
   * Which ways the cell may stand. When left out a box may stand any way; a cylinder stands on its end, and lies `"axis along"` or
   * `"axis across"` only when told. Some cells may not lie: ask their maker.
   */
  readonly standings?: readonly CellStanding[] | undefined;
  /** Cells in series, when known: then only whole strings count. A whole number of at least one. */
  readonly series?: number | undefined;
  /** Most mass of cells that the vehicle can carry. Greater than zero. */
  readonly cellsMassAtMost?: Quantity<Mass> | undefined;
  /** Most cells wanted or to be had. A whole number of at least one. */
  readonly cellsAtMost?: number | undefined;
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

/**
 * Fills a space with cells: how many fit, in which order, what energy that makes, and whether space, mass or count limits.
 *
 * Tried are, for cylinders that stand, square and hexagonal order, along and across, also with rows spread to the ends; for those
 * that lie, even rows and layers; for boxes, every
 * way to stand, each along, across and with the rest of the floor turned. It is the best of these, not proven the best of all.
 * Nothing is kept free between cells but the gaps: cross members and module frames belong in the reserves or the gaps. What is
 * not reserved is filled: the count is then the most that could be, and a warning says where.
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
  const standings = readStandings(options.standings, cell.form === "cylindrical");
  const fillings = fillingsOf(cell, inside, { gap, layerGap, mostLayers, standings });

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
  const voltages = series === undefined ? undefined : voltagesOf(cell, series);

  return Object.freeze({
    inside: Object.freeze({
      ...{ length: quantity(inside.length, "mm"), width: quantity(inside.width, "mm") },
      height: quantity(inside.height, "mm"),
    }),
    fillings,
    cellCount,
    besideStrings: least - cellCount,
    energy: cell.energy.times(cellCount).to("kWh"),
    cellsMass: cell.mass.times(cellCount).to("kg"),
    limitedBy,
    allowed: Object.freeze(allowed),
    cautions: voltageCautions(voltages ?? {}),
    warnings: Object.freeze([
      ...cell.warnings,
      ...(voltages ? unknownMaximum(voltages) : []),
      ...tooFew(cell, inside, { space, least, series, cellsAtMost }),
      ...(space > 0 ? tooMany(inside, gap) : []),
    ]),
    working: () =>
      cellCount === 0
        ? []
        : [
            energyOfCells.explain({ cellCount, cellEnergy: cell.energy }),
            massOfCells.explain({ cellCount, cellMass: cell.mass }),
          ],
  });
}

function voltagesOf({ nominalVoltage, maximumVoltage }: Cell, series: number) {
  return {
    nominalVoltage: nominalVoltage.times(series),
    ...(maximumVoltage && { maximumVoltage: maximumVoltage.times(series) }),
  };
}

interface Counts {
  readonly space: number;
  readonly least: number;
  readonly series: number | undefined;
  readonly cellsAtMost: number | undefined;
}

function tooFew(cell: Cell, { length, width, height }: Inside, counts: Counts): string[] {
  const { space, least, series, cellsAtMost } = counts;
  const left = [length, width, height].map((size) => Number(size.toPrecision(4))).join(" × ");
  if (space === 0) return [`no ${cell.label} fits into ${left} mm, what the reserves leave`];
  const wanted =
    cellsAtMost !== undefined && cellsAtMost > space
      ? [`${cellsAtMost} cells are wanted and ${space} fit: ${cellsAtMost - space} find no place`]
      : [];
  if (series === undefined || least % series === 0) return wanted;
  if (least < series) {
    return [
      ...wanted,
      `${least} cells do not make one string of ${series} in series: another cell or voltage is needed`,
    ];
  }
  return [
    ...wanted,
    `${least % series} of the ${least} cells make no whole string of ${series} in series, and are not counted: the layout shows ` +
      "what fits, not what is wired",
  ];
}

/** What was kept free nowhere makes a count that no pack reaches. */
function tooMany({ unreserved }: Inside, gap: number): string[] {
  const where = unreserved.length === 4 ? "anywhere: no reserves are given" : unreserved.join(", ");
  return [
    ...(unreserved.length === 0
      ? []
      : [
          `nothing is kept free ${where}. A pack needs room for sills and crush, tray, cooling, busbars and lid: ` +
            "this is the most that could fit, and packs hold fewer",
        ]),
    ...(gap === 0 ? ["the cells touch: give the gap that cooling, swelling and tolerance take"] : []),
  ];
}
