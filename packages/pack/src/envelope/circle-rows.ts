import { type Block, countOf, evenRows, type Floor, fitting } from "./block.js";

/** Beyond this distance in the row, in diameters, rows two apart would touch: √3, the hexagonal order turned by a quarter. */
// Written out, so that a bundler can drop it: a call of Math.sqrt counts as a side effect.
const WIDEST = 1.7320508075688772;

/**
 * @internal Rows of circles along the length, each moved by half a distance against the one before it: hexagonal order.
 */
export function hexagonalRows({ length, width, gap }: Floor, diameter: number): Block[] {
  const pitch = diameter + gap;
  const first = fitting(length, diameter, gap);
  const second = fitting(length - pitch / 2, diameter, gap);
  if (second === 0) return [evenRows({ length, width, gap }, diameter, diameter)];
  return movedRows({ width, gap }, diameter, pitch, first, second);
}

/**
 * @internal The same with the circles of a row moved apart, so that they reach from end to end and rows lie nearer to each
 * other: the best of all numbers in a row. It is the hexagonal order where the floor fits that, and more where it does not.
 */
export function spreadRows({ length, width, gap }: Floor, diameter: number): Block[] {
  const pitch = diameter + gap;
  const room = length - diameter;
  let best: Block[] = [];
  if (room < 0) return best;
  const consider = (first: number, second: number, distance: number): void => {
    if (second < 1 || distance < pitch) return;
    const rows = movedRows({ width, gap }, diameter, Math.min(distance, WIDEST * pitch), first, second);
    if (countOf(rows) > countOf(best)) best = rows;
  };
  for (let inRow = fitting(length, diameter, gap); inRow >= 1; inRow--) {
    consider(inRow, inRow, room / (inRow - 0.5));
    consider(inRow, inRow - 1, room / (inRow - 1));
  }
  return best;
}

/** Two blocks: the rows with even and those with odd numbers. */
function movedRows(
  { width, gap }: Omit<Floor, "length">,
  diameter: number,
  distance: number,
  first: number,
  second: number,
): Block[] {
  const pitch = diameter + gap;
  const between = Math.sqrt(pitch ** 2 - distance ** 2 / 4);
  const rows = fitting(width, diameter, between - diameter);
  const shape = { pitchX: distance, pitchY: 2 * between, sizeX: diameter, sizeY: diameter };
  return [
    { x: 0, y: 0, countX: first, countY: Math.ceil(rows / 2), ...shape },
    { x: distance / 2, y: between, countX: second, countY: Math.floor(rows / 2), ...shape },
  ];
}
