import { describeGiven, InputError, type Power, type Quantity, readOptions } from "@tarewatt/units";
import type { Cycle } from "../cycle/cycle.js";
import type { Drivetrain } from "../drivetrain/drivetrain.js";
import { isEfficiencyDrivetrain } from "../drivetrain/efficiency-drivetrain.js";
import { energyOfPoints } from "../drivetrain/energy-of-points.js";
import { assertDrivetrain } from "../drivetrain/read-drivetrain.js";
import { assertConservesOn } from "./conserves-energy.js";
import { energyAtRest } from "./drive-model.js";
import { canFollow } from "./reachable-speed.js";
import { simulate } from "./simulate.js";
import { levelPiecesOf, type VehicleArrays, wheelEnergies } from "./wheel-energy.js";
import { fillWheelPoints, newWheelPoints } from "./wheel-points.js";

/** Options of {@link batteryEnergies}. */
export interface BatteryEnergiesOptions {
  /** The cycle, on a level road. */
  readonly cycle: Cycle;
  /** One number a vehicle in every list, in SI units. */
  readonly vehicles: VehicleArrays;
  /** What stands between wheels and battery, of all vehicles. */
  readonly drivetrain: Drivetrain;
  /** Power of the accessories, of all vehicles. */
  readonly accessories: Quantity<Power>;
}

/**
 * Energies at the battery of many vehicles over a cycle, in J: the kernel for loops. The scope of losses is yours to keep.
 *
 * The same as `driveCycle` gives one by one: a vehicle that lacks power falls behind, which is not said here, so check
 * `driven`.
 *
 * @param options - cycle, vehicles, drivetrain, accessories
 * @returns energies at the battery in J, and distances driven in m, one number a vehicle
 * @throws InputError `WRONG_CHOICE`, `INCONSISTENT` when the lengths differ, `NOT_A_NUMBER` when a load is not finite or the
 *   drivetrain gives no number, `NOT_VALID_HERE` on a cycle with grades, and what `readOptions` throws
 * @example
 * const [constant, linear] = [Float64Array.of(200, 220), Float64Array.of(0, 0)];
 * const [quadratic, inertiaMass] = [Float64Array.of(0.5, 0.6), Float64Array.of(2060, 2400)];
 * const drivetrain = efficiencyDrivetrain({ efficiency: 0.88, regeneration: { share: 0.9 }, contains: ["motor"] });
 * const vehicles = { constant, linear, quadratic, inertiaMass };
 * batteryEnergies({ cycle: udds, vehicles, drivetrain, accessories: q("350 W") }).battery.length; // 2
 */
export function batteryEnergies(options: BatteryEnergiesOptions): {
  /** Energy at the battery, in J. */
  readonly battery: Float64Array;
  /** Distance driven, in m. */
  readonly driven: Float64Array;
} {
  const { accessories } = readOptions("batteryEnergies", options, { accessories: { unit: "W", atLeast: 0 } }, [
    ...["cycle", "vehicles", "drivetrain"],
  ]);
  const { cycle, vehicles, drivetrain } = options;
  assertDrivetrain(drivetrain);
  const pieces = levelPiecesOf(cycle);
  const { distance, duration } = pieces.total;
  // It also checks the lists and the numbers.
  const wheel = wheelEnergies(cycle, vehicles);
  const { length } = wheel.driving;
  const battery = new Float64Array(length);
  const driven = new Float64Array(length).fill(distance);
  if (isEfficiencyDrivetrain(drivetrain)) {
    const { efficiency, share, regenerationEfficiency } = drivetrain;
    for (let i = 0; i < length; i++) {
      const braking = share * regenerationEfficiency * (wheel.braking[i] as number);
      battery[i] = (wheel.driving[i] as number) / efficiency + braking + accessories * duration;
    }
    return Object.freeze({ battery, driven });
  }
  const begin = cycle.time[0] as number;
  const points = newWheelPoints(pieces);
  const atRest = energyAtRest(drivetrain, pieces);
  for (let i = 0; i < length; i++) {
    const inertiaMass = vehicles.inertiaMass[i] as number;
    if (!(inertiaMass > 0)) {
      const message = `vehicle ${i} must have an inertiaMass of more than 0 kg: got ${describeGiven(inertiaMass)}`;
      throw new InputError("OUT_OF_RANGE", message, { vehicle: i });
    }
    const numbers = {
      constant: vehicles.constant[i] as number,
      linear: vehicles.linear[i] as number,
      quadratic: vehicles.quadratic[i] as number,
      inertiaMass,
      gradeForce: 0,
    };
    // One vehicle tells of the model; the sums of each would cost as much as they are.
    if (i === 0) assertConservesOn(pieces, numbers, drivetrain);
    if (canFollow(drivetrain, pieces, numbers)) {
      fillWheelPoints(pieces, numbers, points);
      battery[i] = energyOfPoints(drivetrain, points) + atRest + accessories * duration;
      if (Number.isFinite(battery[i])) continue;
    }
    // The vehicle lacks power, or something was no number: the careful way finds out where, and says so.
    const run = simulate({ pieces, begin, numbers, mass: 0, drivetrain, auxiliary: accessories, stateOfCharge: 1 });
    battery[i] = run.drivetrain + accessories * duration;
    driven[i] = run.distance;
  }
  return Object.freeze({ battery, driven });
}
