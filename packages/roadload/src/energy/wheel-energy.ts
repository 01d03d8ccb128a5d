import { describeGiven, InputError } from "@tarewatt/units";
import type { Cycle } from "../cycle/cycle.js";
import type { Pieces } from "../cycle/pieces.js";
import { piecesOf } from "../cycle/pieces-of.js";
import type { RoadLoadNumbers } from "../resistance/road-load.js";
import { type ForceRoots, findForceRoots } from "./force-roots.js";

/** Energy at the wheels over a cycle, in J. */
export interface WheelEnergy {
  /** What the wheels must be given; not negative. */
  readonly driving: number;
  /** What the wheels give back while the vehicle is braked; not positive. */
  readonly braking: number;
}

/** Many vehicles for {@link wheelEnergies}: one number a vehicle in every list, in SI units. */
export interface VehicleArrays {
  /** Constant forces, in N. */
  readonly constant: Float64Array;
  /** Forces per speed, in N/(m/s). */
  readonly linear: Float64Array;
  /** Forces per speed squared, in N/(m/s)². */
  readonly quadratic: Float64Array;
  /** Masses to accelerate, in kg. */
  readonly inertiaMass: Float64Array;
}

/** Energies at the wheels of many vehicles, in J. */
export interface WheelEnergyArrays {
  /** What the wheels must be given; not negative. */
  readonly driving: Float64Array;
  /** What the wheels give back while the vehicle is braked; not positive. */
  readonly braking: Float64Array;
}

/**
 * Energy at the wheels of one vehicle over a cycle: the kernel for loops, on plain SI numbers.
 *
 * Exact for a speed that is linear within each piece of the cycle: a piece in which the wheel force changes its sign is
 * split there into driving and braking.
 *
 * @param cycle - the cycle
 * @param load - N, N/(m/s), N/(m/s)², kg: see {@link roadLoadNumbers}
 * @returns energies in J
 * @throws InputError `WRONG_CHOICE` when `cycle` is no cycle, `NOT_A_NUMBER` when the load is not finite
 * @example
 * wheelEnergy(wltc3b, { constant: 200, linear: 0, quadratic: 0.5, inertiaMass: 2060 }).driving / 3.6e6; // 4.18...
 */
export function wheelEnergy(cycle: Cycle, load: RoadLoadNumbers): WheelEnergy {
  const pieces = levelPiecesOf(cycle);
  const { constant, linear, quadratic, inertiaMass } = (load ?? {}) as RoadLoadNumbers;
  const sums = newSums();
  // A text or a null would be taken for a number by the sums, and a symbol would stop them.
  const numbers = Number.isFinite(constant) && Number.isFinite(linear) && Number.isFinite(quadratic);
  if (!numbers || !Number.isFinite(inertiaMass)) refuseLoad(load);
  sumPieces(pieces, constant, linear, quadratic, inertiaMass, sums);
  const driving = (sums.net + sums.size) / 2;
  const braking = (sums.net - sums.size) / 2;
  if (!Number.isFinite(driving - braking)) refuseLoad(load);
  return { driving, braking };
}

/**
 * Energies at the wheels of many vehicles over a cycle, without an allocation a vehicle.
 *
 * @param cycle - the cycle
 * @param vehicles - lists of equal length, in N, N/(m/s), N/(m/s)² and kg
 * @param out - lists to fill, of the same length; new ones when left out
 * @returns energies in J
 * @throws InputError `WRONG_CHOICE` when `cycle` is no cycle or a list no Float64Array, `INCONSISTENT` when the lengths
 *   differ or `out` holds one list twice, `NEGATIVE` for a mass, `NOT_A_NUMBER` when a load is not finite (it names the vehicle, counted from 0)
 * @example
 * const [constant, linear] = [Float64Array.of(200, 220), Float64Array.of(0, 0)];
 * const [quadratic, inertiaMass] = [Float64Array.of(0.5, 0.6), Float64Array.of(2060, 2400)];
 * wheelEnergies(udds, { constant, linear, quadratic, inertiaMass }).driving.length; // 2
 */
export function wheelEnergies(cycle: Cycle, vehicles: VehicleArrays, out?: WheelEnergyArrays): WheelEnergyArrays {
  const pieces = levelPiecesOf(cycle);
  const { constant, linear, quadratic, inertiaMass } = (vehicles ?? {}) as VehicleArrays;
  const length = assertLists({ constant, linear, quadratic, inertiaMass });
  const { driving, braking } = out ?? { driving: new Float64Array(length), braking: new Float64Array(length) };
  assertLists({ constant, driving, braking });
  assertMasses(inertiaMass);
  if (driving === braking) {
    throw new InputError("INCONSISTENT", "out.driving and out.braking must be two lists: one list cannot hold both", {
      name: "out",
    });
  }
  const sums = newSums();
  for (let i = 0; i < length; i++) {
    sumPieces(
      pieces,
      constant[i] as number,
      linear[i] as number,
      quadratic[i] as number,
      inertiaMass[i] as number,
      sums,
    );
    driving[i] = (sums.net + sums.size) / 2;
    braking[i] = (sums.net - sums.size) / 2;
  }
  for (let i = 0; i < length; i++) {
    if (Number.isFinite((driving[i] as number) - (braking[i] as number))) continue;
    refuse(`vehicle ${i}`, {
      constant: constant[i],
      linear: linear[i],
      quadratic: quadratic[i],
      inertiaMass: inertiaMass[i],
    });
  }
  return out ?? { driving, braking };
}

interface Sums {
  /** Sum of the energies of all pieces. */
  net: number;
  /** Sum of their sizes: driving and braking energy without their signs. */
  size: number;
  /** Kept here, so that no piece allocates. */
  readonly roots: ForceRoots;
}

const newSums = (): Sums => ({ net: 0, size: 0, roots: { low: Number.NaN, high: Number.NaN } });

/**
 * Adds up the energy of every piece and its size; half their sum is the driving energy, half their difference the braking
 * energy. Measured, and kept for it: `Math.abs` clears a bit where a comparison would branch; one plain list is read with
 * fewer checks than four, or than typed arrays; two pieces a step halve the chain of additions.
 */
function sumPieces(pieces: Pieces, a: number, b: number, c: number, m: number, sums: Sums): void {
  const { integrals } = pieces;
  const { length } = integrals;
  let net = 0;
  let size = 0;
  for (let i = 0; i < length; i += 8) {
    const one =
      a * (integrals[i] as number) +
      b * (integrals[i + 1] as number) +
      (c * (integrals[i + 2] as number) + m * (integrals[i + 3] as number));
    const two =
      a * (integrals[i + 4] as number) +
      b * (integrals[i + 5] as number) +
      (c * (integrals[i + 6] as number) + m * (integrals[i + 7] as number));
    net += one + two;
    size += Math.abs(one) + Math.abs(two);
  }
  sums.net = net;
  sums.size = size + 2 * hiddenInPieces(pieces, a, b, c, m, sums.roots);
}

/**
 * What the sizes of whole pieces do not show, because driving and braking cancel within a piece. The resistance lies within
 * bounds over the speeds of the cycle, so only pieces whose acceleration lies within these bounds per mass can change sign.
 */
function hiddenInPieces(
  { byAcceleration, maximumSpeed }: Pieces,
  a: number,
  b: number,
  c: number,
  m: number,
  roots: ForceRoots,
): number {
  const linear = b * maximumSpeed;
  const quadratic = c * maximumSpeed * maximumSpeed;
  const least = a + Math.min(linear, 0) + Math.min(quadratic, 0);
  const most = a + Math.max(linear, 0) + Math.max(quadratic, 0);
  // Without mass, or with a negative one, there are no such bounds: all pieces are looked at.
  const from = m > 0 ? firstAtLeast(byAcceleration, -most / m) : 0;
  const upTo = m > 0 ? firstAtLeast(byAcceleration, -least / m) : byAcceleration.length;
  const monotone = b >= 0 && c >= 0;
  let hidden = 0;
  for (let i = from; i < upTo; i += 4) {
    const constant = a + m * (byAcceleration[i] as number);
    const first = byAcceleration[i + 1] as number;
    const last = byAcceleration[i + 2] as number;
    const before = constant + first * (b + c * first);
    const after = constant + last * (b + c * last);
    // Of a force that only rises with speed, the ends tell.
    if (before * after < 0 || !monotone) {
      hidden += smallerPart(constant, b, c, first, last, byAcceleration[i + 3] as number, roots);
    }
  }
  return hidden;
}

/** Place in the list of the first piece that accelerates at least so much. */
function firstAtLeast(byAcceleration: readonly number[], acceleration: number): number {
  let low = 0;
  let high = byAcceleration.length / 4;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((byAcceleration[4 * middle] as number) < acceleration) low = middle + 1;
    else high = middle;
  }
  return 4 * low;
}

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

/** The numbers of a load do not tell the mass from the rotating parts, so they cannot be taken up a hill. @internal */
export function levelPiecesOf(cycle: Cycle): Pieces {
  const pieces = piecesOf(cycle);
  if (pieces.grade === undefined) return pieces;
  const message = `${cycle.name} has grades, which these kernels leave out: use driveCycle`;
  throw new InputError("NOT_VALID_HERE", message, { cycle: cycle.name });
}

/** Refuses lists that are no Float64Array or not as long as the first one; says how long that is. */
function assertLists(lists: Readonly<Record<string, unknown>>): number {
  const expected = Object.values(lists)[0];
  for (const [name, list] of Object.entries(lists)) {
    if (!isFloat64Array(list)) {
      throw new InputError("WRONG_CHOICE", `${name} must be a Float64Array: got ${describeGiven(list)}`, { name });
    }
    const { length } = expected as Float64Array;
    if (list.length === length) continue;
    throw new InputError(
      "INCONSISTENT",
      `${name} must have one number a vehicle, as many as constant: got ${list.length} for ${length}`,
      { name, given: list.length, expected: length },
    );
  }
  return (expected as Float64Array).length;
}

/** A mass of zero is that of a vehicle whose inertia is left out; what is not a number is refused with its energy. */
function assertMasses(inertiaMass: Float64Array): void {
  const vehicle = inertiaMass.findIndex((mass) => mass < 0);
  if (vehicle < 0) return;
  const given = inertiaMass[vehicle] as number;
  const message = `vehicle ${vehicle} must have no negative inertiaMass: got ${describeGiven(given)} kg`;
  throw new InputError("NEGATIVE", message, { vehicle, given });
}

/** Not by its class: a list of another realm, such as a worker or a frame, is one too. */
function isFloat64Array(list: unknown): list is Float64Array {
  return ArrayBuffer.isView(list) && (list as Partial<Float64Array>)[Symbol.toStringTag] === "Float64Array";
}

function refuseLoad(load: RoadLoadNumbers | undefined): never {
  const { constant, linear, quadratic, inertiaMass } = (load ?? {}) as RoadLoadNumbers;
  return refuse("the load", { constant, linear, quadratic, inertiaMass });
}

function refuse(what: string, numbers: Readonly<Record<string, unknown>>): never {
  const text = Object.entries(numbers).map(([name, value]) => `${name} ${describeGiven(value)}`);
  throw new InputError(
    "NOT_A_NUMBER",
    `${what} must be of finite numbers, and their energy too: got ${text.join(", ")}`,
    numbers,
  );
}
