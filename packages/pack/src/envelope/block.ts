/** @internal Cells in even rows: a corner, numbers, distances from cell to cell and sizes, in mm; x along the floor, y across. */
export interface Block {
  readonly x: number;
  readonly y: number;
  readonly countX: number;
  readonly countY: number;
  readonly pitchX: number;
  readonly pitchY: number;
  readonly sizeX: number;
  readonly sizeY: number;
}

/** @internal A rectangle of floor in mm, and the clear gap that cells keep from each other. */
export interface Floor {
  readonly length: number;
  readonly width: number;
  readonly gap: number;
}

/** A whole number of cells may come out a few units of the last binary digit too small, and must not cost a row. */
const TRIFLE = 1e-9;

/** @internal How many of one size fit on a line with gaps between them. */
export function fitting(line: number, size: number, gap: number): number {
  return line <= 0 ? 0 : Math.max(0, Math.floor((line + gap) / (size + gap) + TRIFLE));
}

/** @internal Even rows of boxes, or of circles in square order, from a corner on. */
export function evenRows(floor: Floor, sizeX: number, sizeY: number, x = 0, y = 0): Block {
  const { length, width, gap } = floor;
  return {
    ...{ x, y, sizeX, sizeY },
    ...{ countX: fitting(length - x, sizeX, gap), countY: fitting(width - y, sizeY, gap) },
    ...{ pitchX: sizeX + gap, pitchY: sizeY + gap },
  };
}

/** @internal Cells in all blocks. */
export function countOf(blocks: readonly Block[]): number {
  return blocks.reduce((sum, { countX, countY }) => sum + countX * countY, 0);
}

/** @internal The same blocks with length and width exchanged. */
export function turned(blocks: readonly Block[]): Block[] {
  return blocks.map(({ x, y, countX, countY, pitchX, pitchY, sizeX, sizeY }) => ({
    ...{ x: y, y: x, countX: countY, countY: countX },
    ...{ pitchX: pitchY, pitchY: pitchX, sizeX: sizeY, sizeY: sizeX },
  }));
}
