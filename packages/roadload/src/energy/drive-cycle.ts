import { type Energy, InputError, type Quantity, quantity } from "@tarewatt/units";
import { textsOf } from "../check/read-words.js";
import { cautionsOf } from "../check/towing.js";
import type { Cycle, CycleTotals } from "../cycle/cycle.js";
import type { Pieces } from "../cycle/pieces.js";
import { piecesOf } from "../cycle/pieces-of.js";
import { warningsOfCharge } from "./battery.js";
import { assertConserves, assertConservesOn } from "./conserves-energy.js";
import { isPlainModel } from "./drive-model.js";
import type { BatteryRun, DriveCycleOptions, DriveResult } from "./drive-result.js";
import { sumsAsTabled, sumsOf } from "./drive-sums.js";
import { type DriveSums, explainDrive } from "./drive-working.js";
import { followingOf, runWarnings } from "./following.js";
import { energyLedger, type LedgerNumbers, roadEntries } from "./ledger.js";
import type { Simulation } from "./run.js";
import { readScope, type Scope, warningsOf } from "./scope.js";
import { newSeries } from "./series.js";
import { simulate } from "./simulate.js";
import { warmUpPart } from "./warm-up.js";

/**
 * Drives a cycle once, as tabled, and says what energy it took, at the wheels, the battery and the wall, and where it went.
 *
 * Speed is linear between the rows of the cycle, so energies at the wheels, driving and braking apart, are exact. A drivetrain
 * that is not of constant efficiency, and a battery, are asked at two moments of every piece (at most 1 s; the two points of
 * Gauss). With a drivetrain or a battery that limits the power, the vehicle may fall behind the cycle: `following` and a
 * warning say by how much. It tries to be at the speed of the cycle again, and does not make up for lost distance.
 *
 * @param options - cycle, road load, drivetrain, accessories, climate, battery, grade, charging
 * @returns energies, consumptions, the ledger
 * @throws InputError `COUNTED_TWICE` when two parts hold one loss, `NOT_VALID_HERE` when the cycle never moves or the vehicle
 *   cannot, `INCONSISTENT` when the cycle has grades and one is given, `NOT_A_NUMBER` when drivetrain or battery give none, `WRONG_CHOICE`, `NEGATIVE`, `NOT_A_FRACTION`, and what
 *   `readOptions` throws
 * @example
 * const load = roadLoad({
 *   ...{ mass: q("2000 kg"), dragArea: q("0.7 m²"), rollingResistanceCoefficient: 0.009, airDensity: q("1.189 kg/m³") },
 * });
 * const drivetrain = efficiencyDrivetrain({
 *   ...{ efficiency: 0.88, regeneration: { share: 0.9 }, contains: ["gears", "motor", "inverter"] },
 * });
 * const run = driveCycle({ cycle: wltc3b, load, drivetrain, accessories: q("350 W"), chargingEfficiency: 0.88 });
 * run.consumption.atBattery.in("kWh/100 km"); // 15.00...
 */
export function driveCycle(options: DriveCycleOptions): DriveResult {
  const { scope } = readScope("driveCycle", options, {}, ["cycle", "series?", "battery?"]);
  const { cycle } = options;
  const pieces = piecesOf(cycle);
  if (pieces.total.distance === 0) {
    throw new InputError("NOT_VALID_HERE", `${cycle.name} never moves: there is no consumption per distance`, {
      cycle: cycle.name,
    });
  }
  if (pieces.grade !== undefined && options.grade !== undefined) {
    throw new InputError("INCONSISTENT", `${cycle.name} has grades of its own: leave out the grade`, {});
  }
  return driveResult(scope, pieces, cycle, readSeries(options.series));
}

function driveResult(scope: Scope, pieces: Pieces, cycle: Cycle, wantsSeries: boolean): DriveResult {
  const { load, numbers, drivetrain, battery, grade, chargingEfficiency } = scope;
  const { total } = pieces;
  const begin = cycle.time[0] as number;
  const simple = isPlainModel(drivetrain) && battery === undefined && pieces.grade === undefined && !wantsSeries;
  const series = wantsSeries ? newSeries(pieces, begin, battery !== undefined) : undefined;
  const run = simple ? undefined : simulateScope(scope, pieces, begin, series);
  const sums = run === undefined ? sumsAsTabled(scope, pieces, cycle) : sumsOf(scope, run, pieces);
  if (!(sums.distance > 0)) {
    throw new InputError("NOT_VALID_HERE", `the vehicle cannot move on ${cycle.name}: it has too little power`, {});
  }
  assertConserves(drivetrain, sums, `on ${cycle.name}`, "J");
  // A vehicle that fell behind, or drove over hills, was at other points than these.
  if (sums.followed) assertConservesOn(pieces, numbers, drivetrain);
  const atBattery = sums.drivetrain + sums.accessories + sums.climate + sums.batteryLoss;
  const atWall = chargingEfficiency === undefined ? undefined : atBattery / chargingEfficiency;
  const entries: LedgerNumbers = [
    ...roadEntries(load, sums),
    ["grade", sums.grade],
    ["change of kinetic energy", sums.kinetic],
    ["friction brakes", sums.brakes],
    ["drivetrain loss", sums.loss],
    ["accessories", sums.accessories],
    ...(scope.climate === undefined ? [] : ([["climate", sums.climate]] as const)),
    ...(battery === undefined ? [] : ([["battery loss", sums.batteryLoss]] as const)),
    ...(atWall === undefined ? [] : ([["charging loss", atWall - atBattery]] as const)),
  ];
  const perDistance = (energy: number) => quantity(energy / 3.6 / sums.distance, "Wh/km");
  const warmUpEnergy = scope.climate?.warmUpEnergy ?? 0;
  const following = run === undefined ? undefined : followingOf(scope, run, total);
  return Object.freeze({
    procedure: `${cycle.name}, driven once as tabled, no label adjustment${gradeText(grade)}`,
    // Not the cycle's own fields, which a changed copy of one may have kept.
    distance: quantity(sums.distance, "m").to(cycle.distance.unit as "km"),
    duration: quantity(total.duration, "s").to(cycle.duration.unit as "s"),
    batteryBoundary: scope.batteryBoundary,
    energy: Object.freeze({
      atWheel: Object.freeze({ driving: kilowattHours(sums.driving), braking: kilowattHours(sums.braking) }),
      atBattery: kilowattHours(atBattery),
      ...(atWall === undefined ? {} : { atWall: kilowattHours(atWall) }),
    }),
    consumption: Object.freeze({
      atWheel: perDistance(sums.driving),
      atBattery: perDistance(atBattery),
      ...(atWall === undefined ? {} : { atWall: perDistance(atWall) }),
    }),
    ...warmUpPart(warmUpEnergy, (atBattery - warmUpEnergy) / sums.distance),
    ...(following === undefined ? {} : { following }),
    ...(battery === undefined || run === undefined ? {} : { battery: batteryRun(sums, run) }),
    ...(series === undefined ? {} : { series: Object.freeze(series) }),
    ledger: energyLedger(atWall === undefined ? "battery" : "wall", entries, atWall ?? atBattery),
    warnings: Object.freeze([
      ...warningsOfCycle(cycle, total),
      ...warningsOf(scope, atBattery, `on ${cycle.name}`, pieces.maximumSpeed),
      ...(run === undefined ? [] : runWarnings(run, following, cycle.name)),
      ...(battery === undefined || run === undefined
        ? []
        : warningsOfCharge(battery, atBattery, sums.driving - sums.braking, scope.stateOfCharge - run.stateOfCharge)),
    ]),
    cautions: cautionsOf(load),
    working: () => explainDrive(scope, total, sums),
  });
}

function warningsOfCycle({ name, warnings, distance, duration }: Cycle, total: CycleTotals): readonly string[] {
  const differs = (shown: number, driven: number): boolean => Math.abs(shown - driven) > 1e-9 * driven;
  return [
    // A cycle of an older copy of the package has no warnings.
    ...textsOf(warnings),
    ...(differs(distance.in("m"), total.distance) || differs(duration.in("s"), total.duration)
      ? [
          `the table of this ${name} is not the one that its distance of ${distance} and duration of ${duration} are of: the table was ` +
            "driven, under the old name. Make a changed cycle with speedTrace",
        ]
      : []),
  ];
}

function simulateScope(
  { load, numbers, drivetrain, accessories, climate, battery, stateOfCharge }: Scope,
  pieces: Pieces,
  begin: number,
  series: DriveResult["series"],
): Simulation {
  const warmUp = climate === undefined ? 0 : climate.power + climate.warmUpEnergy / pieces.total.duration;
  return simulate({
    ...{ pieces, begin, numbers, drivetrain, battery, stateOfCharge, series },
    mass: load.mass.in("kg"),
    auxiliary: accessories + warmUp,
  });
}

function batteryRun(sums: DriveSums, run: Simulation): BatteryRun {
  return Object.freeze({
    stateOfCharge: run.stateOfCharge,
    lowestStateOfCharge: run.lowestStateOfCharge,
    atTerminals: kilowattHours(sums.drivetrain + sums.accessories + sums.climate),
    loss: kilowattHours(run.batteryLoss),
    refused: kilowattHours(run.refusedCharge),
  });
}

function readSeries(given: unknown): boolean {
  if (given === undefined || typeof given === "boolean") return given === true;
  throw new InputError("WRONG_CHOICE", "series must be true or false", { name: "series" });
}

function kilowattHours(joules: number): Quantity<Energy> {
  return quantity(joules / 3.6e6, "kWh");
}

/** @internal */
export function gradeText(grade: number): string {
  return grade === 0 ? "" : `, on a grade of ${Number((grade * 100).toPrecision(6))} %`;
}
