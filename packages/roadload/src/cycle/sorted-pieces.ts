import type { Pieces } from "./pieces.js";

/** The pieces of a cycle by rising acceleration: see {@link sortPieces}. SI units. @internal */
export interface SortedPieces {
  /** Number of pieces. */
  readonly count: number;
  /** Four numbers a piece: acceleration, ∫v dt, ∫v² dt, ∫v³ dt. */
  readonly rows: readonly number[];
  /** Three numbers a piece: speed at its start, at its end, its duration. */
  readonly ends: readonly number[];
  /** Four numbers for every piece, and for the end of the list: the sums of `integrals` over all pieces before it. */
  readonly before: readonly number[];
}

/**
 * Sorts pieces by their acceleration, and sums their integrals up in this order.
 *
 * Pieces that decelerate more than any resistance would are all braking, pieces that decelerate less are all driving, and the
 * sums give their energies at once. Only those in between have to be looked at one by one.
 *
 * @internal
 */
export function sortPieces({
  from,
  to,
  duration,
  integrals,
}: Pick<Pieces, "from" | "to" | "duration" | "integrals">): SortedPieces {
  const acceleration = Float64Array.from(from, (v, i) => ((to[i] as number) - v) / (duration[i] as number));
  const order = Uint32Array.from(from, (_, i) => i);
  order.sort((i, j) => (acceleration[i] as number) - (acceleration[j] as number));
  const rows = doubles();
  const ends = doubles();
  const before = doubles();
  let [distance, squared, cubed, kinetic] = [0, 0, 0, 0];
  before.push(0, 0, 0, 0);
  for (const i of order) {
    const [s, s2, s3, k] = integrals.slice(4 * i, 4 * i + 4) as [number, number, number, number];
    rows.push(acceleration[i] as number, s, s2, s3);
    ends.push(from[i] as number, to[i] as number, duration[i] as number);
    distance += s;
    squared += s2;
    cubed += s3;
    kinetic += k;
    before.push(distance, squared, cubed, kinetic);
  }
  return { count: order.length, rows, ends, before };
}

/** A list that engines keep as doubles, whatever is put in: one kind of list makes one kind of loop. A −0 is no small integer. */
function doubles(): number[] {
  const list = [-0];
  list.pop();
  return list;
}
