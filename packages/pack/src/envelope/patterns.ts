import type { CellStanding } from "../cell/footprint.js";
import type { CellSizes } from "../cell/sizes-of.js";
import { type Block, countOf, evenRows, type Floor, turned } from "./block.js";
import { hexagonalRows, spreadRows } from "./circle-rows.js";

/** @internal One layer of cells in one order. */
export interface Pattern {
  readonly name: string;
  readonly standing: CellStanding;
  /** Size that points up, in mm. */
  readonly up: number;
  readonly blocks: readonly Block[];
  readonly perLayer: number;
}

/** @internal Every pattern that is known for a cell on a floor, the plainest first. */
export function patternsOn(floor: Floor, sizes: CellSizes, standings: readonly CellStanding[]): Pattern[] {
  return standings.flatMap((standing) => {
    if (standing === "axis along" || standing === "axis across") return [lying(floor, sizes, standing)];
    return sizes.cylindrical ? cylinders(floor, sizes) : boxes(floor, sizes, standing);
  });
}

const across = ({ length, width, gap }: Floor): Floor => ({ length: width, width: length, gap });

function cylinders(floor: Floor, { width: diameter, height }: CellSizes): Pattern[] {
  const pattern = (name: string, blocks: readonly Block[]): Pattern => ({
    ...{ name, standing: "height up", up: height, blocks, perLayer: countOf(blocks) },
  });
  return [
    pattern("square order", [evenRows(floor, diameter, diameter)]),
    pattern("hexagonal order, rows along the length", hexagonalRows(floor, diameter)),
    pattern("hexagonal order, rows along the width", turned(hexagonalRows(across(floor), diameter))),
    pattern("hexagonal order spread to the ends, rows along the length", spreadRows(floor, diameter)),
    pattern("hexagonal order spread to the sides, rows along the width", turned(spreadRows(across(floor), diameter))),
  ];
}

/** Cylinders that lie, end to end and side by side: layers rest on each other, not in the grooves between the cells below. */
function lying(floor: Floor, { width: diameter, height }: CellSizes, standing: "axis along" | "axis across"): Pattern {
  const [along, across] = standing === "axis along" ? [height, diameter] : [diameter, height];
  const blocks = [evenRows(floor, along, across)];
  return { name: `lying, ${standing}, even rows`, standing, up: diameter, blocks, perLayer: countOf(blocks) };
}

/** Which way a box stands: by the size that points up. */
type BoxStanding = Exclude<CellStanding, "axis along" | "axis across">;

/** Sizes on the floor, by the size that points up. */
function boxes(floor: Floor, { thickness, width, height }: CellSizes, standing: BoxStanding): Pattern[] {
  const sides = {
    "height up": { up: height, a: thickness, b: width, nameA: "thickness", nameB: "width" },
    "width up": { up: width, a: thickness, b: height, nameA: "thickness", nameB: "height" },
    "thickness up": { up: thickness, a: width, b: height, nameA: "width", nameB: "height" },
  } as const satisfies Readonly<Record<BoxStanding, unknown>>;
  const { up, a, b, nameA, nameB } = sides[standing];
  const pattern = (order: string, blocks: readonly Block[]): Pattern => ({
    ...{ name: `${standing}, ${order}`, standing, up, blocks, perLayer: countOf(blocks) },
  });
  const columns = [twoWays(floor, a, b), twoWays(floor, b, a)];
  const rows = [twoWays(across(floor), a, b), twoWays(across(floor), b, a)];
  return [
    pattern(`${nameA} along the length`, [evenRows(floor, a, b)]),
    pattern(`${nameB} along the length`, [evenRows(floor, b, a)]),
    pattern("turned behind some columns", most(columns)),
    pattern("turned beside some rows", turned(most(rows))),
  ];
}

/** Some columns one way, and the rest of the length the other way. */
function twoWays(floor: Floor, a: number, b: number): Block[] {
  const all = evenRows(floor, a, b);
  let best: Block[] = [all];
  for (let columns = 0; columns < all.countX; columns++) {
    const first = { ...all, countX: columns };
    const blocks = [first, evenRows(floor, b, a, columns * all.pitchX)];
    if (countOf(blocks) > countOf(best)) best = blocks;
  }
  return best;
}

function most(all: readonly Block[][]): Block[] {
  return all.reduce((best, each) => (countOf(each) > countOf(best) ? each : best), []);
}
