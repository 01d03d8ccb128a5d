import type { Pieces } from "./pieces.js";

/** The pieces of a cycle in the order of what they ask of a typical vehicle: see {@link sortPieces}. SI units. @internal */
export interface SortedPieces {
  /** Number of pieces. */
  readonly count: number;
  /** Four numbers a piece: acceleration, ∫v dt, ∫v² dt, ∫v³ dt. */
  readonly rows: readonly number[];
  /** Three numbers a piece: speed at its start, at its end, its duration. */
  readonly ends: readonly number[];
  /** Four numbers for every piece, and for the end of the list: the sums of `integrals` over all pieces before it. */
  readonly before: readonly number[];
  /** The key of a piece lies no farther than this from acceleration + {@link TYPICAL}·v² anywhere within the piece. */
  readonly slack: number;
  /** Number of pieces in the drawers before each drawer; the last two entries are the number before the last one, and of all. */
  readonly drawers: readonly number[];
  /** Lowest key, and drawers per difference of keys: where to look for a key. */
  readonly lowest: number;
  readonly perKey: number;
}

/** Quadratic resistance per mass of a middling car, in 1/m: the nearer a vehicle is to it, the fewer pieces are looked at. @internal */
export const TYPICAL = 2.2e-4;

/**
 * Sorts pieces by acceleration + {@link TYPICAL}·v², at the mean of v² of both ends, and sums their integrals up in this order.
 *
 * A vehicle brakes in pieces with a key below some bound, and drives in pieces above another one, whatever their speed: the
 * sums give their energies at once, and only the pieces in between have to be looked at one by one.
 *
 * @internal
 */
export function sortPieces({ from, to, duration, integrals }: Unsorted): SortedPieces {
  const count = from.length;
  const acceleration = Float64Array.from(from, (v, i) => ((to[i] as number) - v) / (duration[i] as number));
  const key = Float64Array.from(from, (v, i) => at(acceleration, i) + (TYPICAL * (v * v + at(to, i) ** 2)) / 2);
  const slack = from.reduce((most, v, i) => Math.max(most, (TYPICAL * Math.abs(at(to, i) ** 2 - v * v)) / 2), 0);
  const order = Uint32Array.from(from, (_, i) => i).sort((i, j) => at(key, i) - at(key, j));
  const rows = doubles();
  const ends = doubles();
  const before = doubles();
  let [distance, squared, cubed, kinetic] = [0, 0, 0, 0];
  before.push(0, 0, 0, 0);
  for (const i of order) {
    const [s, s2, s3, k] = integrals.slice(4 * i, 4 * i + 4) as [number, number, number, number];
    rows.push(at(acceleration, i), s, s2, s3);
    ends.push(at(from, i), at(to, i), at(duration, i));
    distance += s;
    squared += s2;
    cubed += s3;
    kinetic += k;
    before.push(distance, squared, cubed, kinetic);
  }
  const sorted = Float64Array.from(order, (i) => at(key, i));
  const lowest = count === 0 ? 0 : at(sorted, 0);
  // Where all keys are the same, any width will do.
  const perKey = count === 0 ? 0 : count / (at(sorted, count - 1) - lowest || 1);
  const drawers: number[] = [];
  for (let drawer = 0, piece = 0; drawer <= count; drawer++) {
    while (piece < count && drawerOf(at(sorted, piece), lowest, perKey, count) < drawer) piece++;
    drawers.push(piece);
  }
  drawers.push(count);
  return { count, rows, ends, before, slack, drawers, lowest, perKey };
}

type Unsorted = Pick<Pieces, "from" | "to" | "duration" | "integrals">;

/**
 * Drawer of a key, 0 to `count`: on average one piece is in each. It never falls while keys rise, so what is in the drawers
 * before that of a key is less than the key, and what is in the drawers after it is more.
 *
 * @internal
 */
export function drawerOf(key: number, lowest: number, perKey: number, count: number): number {
  return Math.min(count, Math.max(0, (key - lowest) * perKey)) | 0;
}

const at = (list: ArrayLike<number>, index: number): number => list[index] as number;

/** A list that engines keep as doubles, whatever is put in: one kind of list makes one kind of loop. A −0 is no small integer. */
function doubles(): number[] {
  const list = [-0];
  list.pop();
  return list;
}
