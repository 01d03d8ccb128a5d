import { describeGiven, InputError } from "@tarewatt/units";
import type { Cycle } from "../cycle/cycle.js";
import type { Pieces } from "../cycle/pieces.js";
import { piecesOf } from "../cycle/pieces-of.js";
import type { RoadLoadNumbers } from "../resistance/road-load-numbers.js";
import { newWheelSums, sumWheelEnergy } from "./sum-wheel-energy.js";

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
  const sums = newWheelSums();
  // A text or a null would be taken for a number by the sums, and a symbol would stop them.
  const numbers = Number.isFinite(constant) && Number.isFinite(linear) && Number.isFinite(quadratic);
  if (!numbers || !Number.isFinite(inertiaMass)) refuseLoad(load);
  sumWheelEnergy(pieces, constant, linear, quadratic, inertiaMass, sums);
  const { driving, braking } = sums;
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
  const sums = newWheelSums();
  for (let i = 0; i < length; i++) {
    sumWheelEnergy(
      pieces,
      constant[i] as number,
      linear[i] as number,
      quadratic[i] as number,
      inertiaMass[i] as number,
      sums,
    );
    driving[i] = sums.driving;
    braking[i] = sums.braking;
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
