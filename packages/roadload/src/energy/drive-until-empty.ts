import {
  type Energy,
  type EnergyPerDistance,
  InputError,
  type Length,
  type Quantity,
  quantity,
  readNumber,
  type Source,
  type Speed,
  type Time,
} from "@tarewatt/units";
import { cautionsOf } from "../check/towing.js";
import { piecesOf } from "../cycle/pieces-of.js";
import type { Fraction } from "../fraction.js";
import { type BatteryState, warningsOfCharge } from "./battery.js";
import { assertConserves, assertConservesOn } from "./conserves-energy.js";
import type { DriveCycleOptions } from "./drive-result.js";
import { type BatteryBoundary, readScope, warningsOf } from "./scope.js";
import { simulate } from "./simulate.js";

/** Options of {@link driveUntilEmpty}. */
export interface DriveUntilEmptyOptions extends Omit<DriveCycleOptions, "battery" | "series" | "chargingEfficiency"> {
  /** The battery and how full it is at the start. */
  readonly battery: BatteryState;
  /** State of charge at which the vehicle is called empty; 0 when left out. */
  readonly floor?: Fraction | undefined;
  /** Lack of speed from which the vehicle no longer follows; {@link defaultSpeedTolerance} when left out. */
  readonly speedTolerance?: Quantity<Speed> | undefined;
}

/** Lack of speed that a test of range still allows. From memory of UN GTR No. 15. */
export const defaultSpeedTolerance = /* @__PURE__ */ Object.freeze({
  /** In km/h. */
  value: 2,
  /** Where the value is from. */
  source: /* @__PURE__ */ Object.freeze<Source>({
    document: "UN GTR No. 15",
    section: "Annex 6, speed trace tolerances",
    status: "memory",
  }),
} as const);

/** How far a battery goes. Made by {@link driveUntilEmpty}. */
export interface EmptyResult {
  /** What was driven, and what empty means. */
  readonly procedure: string;
  /** Distance driven until empty. */
  readonly range: Quantity<Length>;
  /** Time until empty. */
  readonly duration: Quantity<Time>;
  /** Cycles driven, the last one in part. */
  readonly cycles: number;
  /** What ended the drive: the state of charge at its floor, or a vehicle that no longer follows. */
  readonly endedBy: "state of charge" | "cannot follow";
  /** State of charge at the end. */
  readonly stateOfCharge: number;
  /** Where the energy at the battery is counted: at the cells, always. */
  readonly batteryBoundary: BatteryBoundary;
  /** Energy per distance over the whole drive; none when the vehicle did not move. */
  readonly consumption?: {
    /** At the battery's cells, with its loss. */
    readonly atBattery: Quantity<EnergyPerDistance>;
  };
  /** Energies from the battery. */
  readonly energy: {
    /** Given at the terminals. */
    readonly atTerminals: Quantity<Energy>;
    /** Heat in the battery. */
    readonly loss: Quantity<Energy>;
  };
  /** What a reader should doubt; empty when there is nothing. */
  readonly warnings: readonly string[];
  /** What is dangerous, such as something towed; empty when there is nothing. */
  readonly cautions: readonly string[];
}

/** More cycles than this are no range of a vehicle. */
const MOST_CYCLES = 10_000;

/**
 * Range with a battery model: the cycle is driven again and again until the state of charge reaches its floor, or the vehicle no
 * longer follows because the battery gives too little power. Where `rangeOn` divides energies, this one drives.
 *
 * Energy to warm up is drawn in the first cycle only.
 *
 * @param options - as for `driveCycle`, with the battery, the floor and the tolerance of speed
 * @returns the range and what ended it
 * @throws InputError `NOT_VALID_HERE` when the battery is not drained, or already at its floor, and what `driveCycle` throws
 * @example
 * const load = roadLoad({
 *   ...{ mass: q("2000 kg"), dragArea: q("0.7 m²"), rollingResistanceCoefficient: 0.009, airDensity: q("1.189 kg/m³") },
 * });
 * const drivetrain = efficiencyDrivetrain({
 *   ...{ efficiency: 0.88, regeneration: { share: 0.9 }, contains: ["gears", "motor", "inverter"] },
 * });
 * // An ideal battery of 72 kWh
 * const model = {
 *   name: "ideal", lossPower: () => 0, stateOfChargeRate: (power: number) => -power / 72 / 3.6e6,
 *   maximumDischargePower: () => 200_000, maximumChargePower: () => 200_000,
 * };
 * const battery = { model, stateOfCharge: 1 };
 * driveUntilEmpty({ cycle: wltc3b, load, drivetrain, accessories: q("350 W"), battery }).range.in("km"); // 481.2...
 */
export function driveUntilEmpty(options: DriveUntilEmptyOptions): EmptyResult {
  const { scope } = readScope("driveUntilEmpty", options, {}, ["cycle", "battery", "floor?", "speedTolerance?"]);
  const { load, numbers, drivetrain, accessories, climate, battery } = scope;
  const { cycle } = options;
  const floor =
    options.floor === undefined ? 0 : readNumber("floor", options.floor, { unit: "1", atLeast: 0, atMost: 1 });
  const tolerance =
    options.speedTolerance === undefined
      ? defaultSpeedTolerance.value / 3.6
      : readNumber("speedTolerance", options.speedTolerance, { unit: "m/s", atLeast: 0 });
  const pieces = piecesOf(cycle);
  if (pieces.grade !== undefined && options.grade !== undefined) {
    throw new InputError("INCONSISTENT", `${cycle.name} has grades of its own: leave out the grade`, {});
  }
  const begin = cycle.time[0] as number;
  const sums = { distance: 0, seconds: 0, atTerminals: 0, loss: 0 };
  let { stateOfCharge } = scope;
  if (stateOfCharge <= floor || pieces.total.distance === 0) {
    const message = "there is nothing to drive: the battery is at its floor, or the cycle never moves";
    throw new InputError("NOT_VALID_HERE", message, { stateOfCharge, floor });
  }
  const until = { stateOfCharge: floor, speedShortfall: tolerance };
  for (let driven = 0; driven < MOST_CYCLES; driven++) {
    const warmUp = driven === 0 ? (climate?.warmUpEnergy ?? 0) / pieces.total.duration : 0;
    const auxiliary = accessories + (climate?.power ?? 0) + warmUp;
    const mass = load.mass.in("kg");
    const run = simulate({ pieces, begin, numbers, mass, drivetrain, auxiliary, battery, stateOfCharge, until });
    const seconds = run.stopped ?? pieces.total.duration;
    assertConserves(drivetrain, run, `on ${cycle.name}`, "J");
    if (driven === 0 && run.behind === 0 && pieces.grade === undefined) assertConservesOn(pieces, numbers, drivetrain);
    sums.distance += run.distance;
    sums.seconds += seconds;
    sums.atTerminals += run.drivetrain + auxiliary * seconds;
    sums.loss += run.batteryLoss;
    if (run.stopped === undefined && run.stateOfCharge > floor) {
      if (run.stateOfCharge >= stateOfCharge) break;
      stateOfCharge = run.stateOfCharge;
      continue;
    }
    const fromCells = sums.atTerminals + sums.loss;
    const endedBy = run.stateOfCharge <= floor ? "state of charge" : "cannot follow";
    return Object.freeze({
      procedure: `${cycle.name}, repeated from a state of charge of ${scope.stateOfCharge} until it is ${floor} or the vehicle cannot follow by ${Number((tolerance * 3.6).toPrecision(4))} km/h`,
      range: quantity(sums.distance, "m").to(cycle.distance.unit as "km"),
      duration: quantity(sums.seconds / 3600, "h"),
      cycles: driven + seconds / pieces.total.duration,
      endedBy,
      stateOfCharge: run.stateOfCharge,
      batteryBoundary: scope.batteryBoundary,
      ...(sums.distance > 0
        ? { consumption: Object.freeze({ atBattery: quantity(fromCells / 3.6 / sums.distance, "Wh/km") }) }
        : {}),
      energy: Object.freeze({
        atTerminals: quantity(sums.atTerminals / 3.6e6, "kWh"),
        loss: quantity(sums.loss / 3.6e6, "kWh"),
      }),
      warnings: Object.freeze([
        ...warningsOf(scope, 0, `on ${cycle.name}`, pieces.maximumSpeed),
        ...(endedBy === "cannot follow" && run.distance < 1
          ? ["the vehicle cannot follow from the start: the battery or the drivetrain gives too little power"]
          : []),
        ...warningsOfCharge(
          options.battery.model,
          fromCells,
          Math.abs(fromCells),
          scope.stateOfCharge - run.stateOfCharge,
        ),
      ]),
      cautions: cautionsOf(load),
    });
  }
  throw new InputError("NOT_VALID_HERE", `the battery is not drained on ${cycle.name}: there is no range`, {});
}
