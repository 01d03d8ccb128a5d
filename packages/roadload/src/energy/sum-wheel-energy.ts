import type { Pieces } from "../cycle/pieces.js";
import { drawerOf, TYPICAL } from "../cycle/sorted-pieces.js";
import { type ForceRoots, findForceRoots } from "./force-roots.js";

/** Where the sums over a cycle are written; kept by the caller, so that no vehicle allocates. @internal */
export interface WheelSums {
  /** In J; not negative. */
  driving: number;
  /** In J; not positive. */
  braking: number;
  readonly roots: ForceRoots;
}

/** @internal */
export const newWheelSums = (): WheelSums => ({ driving: 0, braking: 0, roots: { low: Number.NaN, high: Number.NaN } });

/**
 * Sums the driving and the braking energy of a vehicle with the road load a + b·v + c·v² and the mass m.
 *
 * In the order of `sortPieces` the force per mass is the key, and what the resistance differs from the typical one: that lies
 * within bounds over the speeds of the cycle. Pieces below them are braking, pieces above are driving; both are summed
 * already. The pieces in between are taken one by one, and split where their force changes its sign.
 *
 * @internal
 */
export function sumWheelEnergy(pieces: Pieces, a: number, b: number, c: number, m: number, sums: WheelSums): void {
  const { sorted, maximumSpeed } = pieces;
  const { count, rows, ends, before, slack, drawers, lowest, perKey } = sorted;
  const square = maximumSpeed * maximumSpeed;
  const linear = b * maximumSpeed;
  const quadratic = (c - m * TYPICAL) * square;
  const least = -(a + Math.max(linear, 0) + Math.max(quadratic, 0)) / m - slack;
  const most = -(a + Math.min(linear, 0) + Math.min(quadratic, 0)) / m + slack;
  // Without mass, or with a negative one, acceleration says nothing: all pieces are looked at.
  const from = m > 0 ? at(drawers, drawerOf(least, lowest, perKey, count)) : 0;
  const upTo = m > 0 ? at(drawers, drawerOf(most, lowest, perKey, count) + 1) : count;
  // Within these bounds the speed of a piece, of 1 s at most, changes no more than this, and the force no more than `spread`.
  const change = m > 0 ? Math.max(-least, most) + TYPICAL * square : maximumSpeed;
  const spread = change * (Math.abs(b) + 2 * maximumSpeed * Math.abs(c));
  const monotone = b >= 0 && c >= 0;
  let net = 0;
  let size = 0;
  let hidden = 0;
  const stop = 4 * upTo;
  let i = 4 * from;
  // Two loops, so that the inner one, which takes nearly all the time, holds nothing but sums: measured.
  for (;;) {
    let distance = 0;
    let energy = 0;
    for (; i < stop; i += 4) {
      distance = rows[i + 1] as number;
      energy = (a + m * (rows[i] as number)) * distance + (b * (rows[i + 2] as number) + c * (rows[i + 3] as number));
      net += energy;
      size += Math.abs(energy);
      // Only a mean force as small as this can hide a change of sign.
      if (Math.abs(energy) < spread * distance) break;
    }
    if (i >= stop) break;
    const end = 3 * (i >> 2);
    const first = at(ends, end);
    const last = at(ends, end + 1);
    const force = a + m * at(rows, i);
    // Of a force that only rises with speed, the ends tell.
    if (!monotone || (force + first * (b + c * first)) * (force + last * (b + c * last)) < 0) {
      hidden += smallerPart(force, b, c, first, last, at(ends, end + 2), sums.roots);
    }
    i += 4;
  }
  const s = 4 * from;
  const t = 4 * count;
  const below = a * at(before, s) + b * at(before, s + 1) + c * at(before, s + 2) + m * at(before, s + 3);
  const above =
    a * (at(before, t) - at(before, stop)) +
    b * (at(before, t + 1) - at(before, stop + 1)) +
    c * (at(before, t + 2) - at(before, stop + 2)) +
    m * (at(before, t + 3) - at(before, stop + 3));
  // Sums of no pieces, or of pieces that hardly need anything, could be off zero by their rounding.
  sums.driving = Math.max(0, above) + (size + net) / 2 + hidden;
  sums.braking = Math.min(0, below) + (net - size) / 2 - hidden;
}

const at = (list: readonly number[], index: number): number => list[index] as number;

/** Of the driving and the braking energy of a piece, split at the roots of its force, the size of the smaller one. */
function smallerPart(
  constant: number,
  b: number,
  c: number,
  first: number,
  last: number,
  seconds: number,
  roots: ForceRoots,
): number {
  findForceRoots(constant, b, c, first, last, roots);
  if (Number.isNaN(roots.low)) return 0;
  let plus = 0;
  let minus = 0;
  let v = first;
  for (let part = 0; part < 3; part++) {
    const next = part === 0 ? roots.low : part === 1 && !Number.isNaN(roots.high) ? roots.high : last;
    const dt = (seconds * (next - v)) / (last - first);
    const energy =
      dt * (v + next) * (constant / 2 + (c * (v * v + next * next)) / 4) +
      (b * dt * (v * v + v * next + next * next)) / 3;
    if (energy > 0) plus += energy;
    else minus -= energy;
    v = next;
  }
  return Math.min(plus, minus);
}
