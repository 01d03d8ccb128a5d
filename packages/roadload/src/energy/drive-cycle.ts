import {
  type Energy,
  type EnergyPerDistance,
  InputError,
  type Length,
  type Power,
  type Quantity,
  quantity,
  type Step,
  type Time,
  type Working,
} from "@tarewatt/units";
import type { Cycle, CycleTotals } from "../cycle/cycle.js";
import type { Pieces } from "../cycle/pieces.js";
import { piecesOf } from "../cycle/pieces-of.js";
import type { Drivetrain } from "../drivetrain/drivetrain.js";
import { isEfficiencyDrivetrain } from "../drivetrain/efficiency-drivetrain.js";
import type { Fraction } from "../fraction.js";
import { dragArea } from "../resistance/drag-area.js";
import { effectiveMass } from "../resistance/effective-mass.js";
import { gradeResistance } from "../resistance/grade-resistance.js";
import { quadraticCoefficient } from "../resistance/quadratic-coefficient.js";
import type { RoadLoad, SplitNumbers } from "../resistance/road-load.js";
import { rollingResistance } from "../resistance/rolling-resistance.js";
import { accessoryEnergy, batteryEnergy, batteryEnergyOfModel } from "./battery-energy.js";
import { consumptionAtBattery, consumptionAtWall, wallEnergy } from "./consumption.js";
import { energyLedger, type Ledger, type LedgerNumbers, roadEntries } from "./ledger.js";
import { drivingEnergy, netWheelEnergy } from "./net-wheel-energy.js";
import { type BatteryBoundary, batteryBoundaryOf, finitePower, readScope, type Scope, warningsOf } from "./scope.js";
import { type WheelEnergy, wheelEnergy } from "./wheel-energy.js";

/** Options of {@link driveCycle}. */
export interface DriveCycleOptions {
  /** Speed over time. */
  readonly cycle: Cycle;
  /** Resistance of the vehicle. */
  readonly load: RoadLoad;
  /** What stands between wheels and battery. */
  readonly drivetrain: Drivetrain;
  /** Power of the accessories, drawn all the time; say so when it is `q("0 W")`. */
  readonly accessories: Quantity<Power>;
  /** Constant grade of the road, rise over run, positive uphill; level when left out. */
  readonly grade?: Fraction | undefined;
  /**
   * Battery energy per wall energy; without it nothing is said at the wall. Its scope is the wall to the energy drawn from
   * the battery, charger and battery while charging: 0.89 was measured (26 cars at 11 kW, a touring club, 2025; 7 % in the
   * charger, 4 % in the battery and its conditioning). With a drivetrain that contains `"battery"` give the charger's alone,
   * about 0.93: the result warns.
   */
  readonly chargingEfficiency?: Fraction | undefined;
}

/** Energy of a cycle and where it went. Made by {@link driveCycle}. */
export interface DriveResult {
  /** What was driven, in words. */
  readonly procedure: string;
  /** Distance of the cycle. */
  readonly distance: Quantity<Length>;
  /** Duration of the cycle. */
  readonly duration: Quantity<Time>;
  /** Where the energy at the battery is counted: see {@link BatteryBoundary}. */
  readonly batteryBoundary: BatteryBoundary;
  /** Energies of the whole cycle. */
  readonly energy: {
    /** At the wheels. */
    readonly atWheel: {
      /** What the wheels must be given; not negative. */
      readonly driving: Quantity<Energy>;
      /** What the wheels give back while the vehicle is braked; not positive. */
      readonly braking: Quantity<Energy>;
    };
    /** Drawn from the battery less what was given back. */
    readonly atBattery: Quantity<Energy>;
    /** At the wall; only with a charging efficiency. */
    readonly atWall?: Quantity<Energy>;
  };
  /** Energies per distance. */
  readonly consumption: {
    /** Driving energy at the wheels per distance. */
    readonly atWheel: Quantity<EnergyPerDistance>;
    /** At the battery. */
    readonly atBattery: Quantity<EnergyPerDistance>;
    /** At the wall; only with a charging efficiency. */
    readonly atWall?: Quantity<EnergyPerDistance>;
  };
  /** Where the energy went. */
  readonly ledger: Ledger;
  /** What a reader should doubt; empty when there is nothing. */
  readonly warnings: readonly string[];
  /** How the numbers came about. */
  working(): Step[];
}

/**
 * Drives a cycle once, as tabled, and says what energy it took, at the wheels, the battery and the wall, and where it went.
 *
 * Speed is linear between the rows of the cycle, so the terms of the road load, and the net energy at the wheels, are exact.
 * The split into driving and braking is made piece by piece (at most 1 s), each as a whole: on the 1 Hz tables here it moves
 * the driving energy by less than 3e-5 of it, and the braking energy by less than 2e-4. A drivetrain that is not of
 * constant efficiency is asked once a piece, at the piece's mean power and mean speed.
 *
 * @param options - cycle, road load, drivetrain, accessories, grade, charging
 * @returns energies, consumptions, the ledger
 * @throws InputError `COUNTED_TWICE` when two parts hold one loss, `NOT_VALID_HERE` when the cycle never moves,
 *   `NOT_A_NUMBER` when the drivetrain gives no finite power, `WRONG_CHOICE`, `NEGATIVE`, `NOT_A_FRACTION`, and what
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
  const { scope } = readScope("driveCycle", options, {}, ["cycle"]);
  const { load, numbers, drivetrain, accessories, grade, chargingEfficiency } = scope;
  const { cycle } = options;
  const pieces = piecesOf(cycle);
  const { total } = pieces;
  if (total.distance === 0) {
    throw new InputError("NOT_VALID_HERE", `${cycle.name} never moves: there is no consumption per distance`, {
      cycle: cycle.name,
    });
  }
  const wheel = wheelEnergy(cycle, { ...numbers, constant: numbers.constant + numbers.gradeForce });
  const through = isEfficiencyDrivetrain(drivetrain)
    ? throughEfficiencies(wheel, drivetrain)
    : throughModel(pieces, numbers, drivetrain);
  const forAccessories = accessories * total.duration;
  const atBattery = through.battery + forAccessories;
  const atWall = chargingEfficiency === undefined ? undefined : atBattery / chargingEfficiency;
  const entries: LedgerNumbers = [
    ...roadEntries(load, {
      constant: numbers.constant * total.distance,
      linear: numbers.linear * total.speedSquared,
      quadratic: numbers.quadratic * total.speedCubed,
    }),
    ["grade", numbers.gradeForce * total.distance],
    ["change of kinetic energy", numbers.inertiaMass * total.kineticChange],
    ["friction brakes", through.brakes],
    ["drivetrain loss", through.loss],
    ["accessories", forAccessories],
    ...(atWall === undefined ? [] : ([["charging loss", atWall - atBattery]] as const)),
  ];
  const perDistance = (energy: number) => quantity(energy / 3.6 / total.distance, "Wh/km");
  return Object.freeze({
    procedure: `${cycle.name}, driven once as tabled, no label adjustment${gradeText(grade)}`,
    distance: cycle.distance,
    duration: cycle.duration,
    batteryBoundary: batteryBoundaryOf(drivetrain),
    energy: Object.freeze({
      atWheel: Object.freeze({ driving: kilowattHours(wheel.driving), braking: kilowattHours(wheel.braking) }),
      atBattery: kilowattHours(atBattery),
      ...(atWall === undefined ? {} : { atWall: kilowattHours(atWall) }),
    }),
    consumption: Object.freeze({
      atWheel: perDistance(wheel.driving),
      atBattery: perDistance(atBattery),
      ...(atWall === undefined ? {} : { atWall: perDistance(atWall) }),
    }),
    ledger: energyLedger(atWall === undefined ? "battery" : "wall", entries, atWall ?? atBattery),
    warnings: Object.freeze([...warningsOf(scope, atBattery, `on ${cycle.name}`), ...doubtsAbout(cycle)]),
    working: () => explain(scope, total, wheel, through),
  });
}

/** What the cycle itself says, and what of it is not counted here. A cycle of an older copy has no warnings. */
function doubtsAbout({ grade, warnings }: Partial<Cycle>): readonly string[] {
  return [
    ...(Array.isArray(warnings) ? warnings.filter((each) => typeof each === "string") : []),
    ...(grade === undefined
      ? []
      : [
          "the grades that the cycle carries are not counted here: the road is level, or of the one grade that was given",
        ]),
  ];
}

/** What becomes of the energy at the wheels, in J. */
interface Through {
  /** Energy of the battery, accessories not counted. */
  readonly battery: number;
  /** Heat of the friction brakes. */
  readonly brakes: number;
  /** What is lost between wheels and battery. */
  readonly loss: number;
}

function throughEfficiencies(
  { driving, braking }: WheelEnergy,
  {
    efficiency,
    share,
    regenerationEfficiency,
  }: { readonly efficiency: number; readonly share: number; readonly regenerationEfficiency: number },
): Through {
  return {
    battery: driving / efficiency + share * regenerationEfficiency * braking,
    brakes: -braking * (1 - share),
    loss: driving * (1 / efficiency - 1) - braking * share * (1 - regenerationEfficiency),
  };
}

function throughModel(pieces: Pieces, numbers: SplitNumbers, drivetrain: Drivetrain): Through {
  const { count, duration, integrals, standstill } = pieces;
  const constant = numbers.constant + numbers.gradeForce;
  const atRest = finitePower(drivetrain, drivetrain.batteryPower(0, 0), 0, 0);
  let battery = atRest * standstill;
  let loss = battery;
  let brakes = 0;
  for (let i = 0; i < count; i++) {
    const seconds = duration[i] as number;
    const distance = integrals[4 * i] as number;
    const energy =
      constant * distance +
      numbers.linear * (integrals[4 * i + 1] as number) +
      numbers.quadratic * (integrals[4 * i + 2] as number) +
      numbers.inertiaMass * (integrals[4 * i + 3] as number);
    const power = energy / seconds;
    const speed = distance / seconds;
    const drawn = seconds * finitePower(drivetrain, drivetrain.batteryPower(power, speed), power, speed);
    const braked = seconds * finitePower(drivetrain, drivetrain.frictionBrakePower(power, speed), power, speed);
    battery += drawn;
    brakes += braked;
    loss += drawn - energy - braked;
  }
  return { battery, brakes, loss };
}

function explain(
  { load, numbers, drivetrain, accessories, grade, chargingEfficiency }: Scope,
  total: CycleTotals,
  wheel: WheelEnergy,
  through: Through,
): Step[] {
  const working: Working = [];
  const mass = load.mass.in("kg");
  if (load.form === "physical") {
    const airDensity = load.conditions.airDensity.in("kg/m³");
    const { dragCoefficient, frontalArea, rollingResistanceCoefficient } = load;
    rollingResistance.of({ mass, rollingResistanceCoefficient, grade }, working);
    if (dragCoefficient !== undefined && frontalArea !== undefined) {
      dragArea.of({ dragCoefficient, frontalArea: frontalArea.in("m²") }, working);
    }
    quadraticCoefficient.of({ airDensity, dragArea: load.dragArea.in("m²") }, working);
  }
  if (grade !== 0) gradeResistance.of({ mass, grade }, working);
  const inertiaMass = effectiveMass.of({ mass, rotatingMassFraction: load.rotatingMassFraction }, working);
  const net = netWheelEnergy.of(
    {
      ...numbers,
      inertiaMass,
      distance: total.distance,
      speedSquaredIntegral: total.speedSquared,
      speedCubedIntegral: total.speedCubed,
      kineticChange: total.kineticChange,
    },
    working,
  );
  const driving = drivingEnergy.of({ net, braking: wheel.braking }, working);
  const forAccessories = accessoryEnergy.of({ power: accessories, duration: total.duration }, working);
  const battery = isEfficiencyDrivetrain(drivetrain)
    ? batteryEnergy.of(
        {
          driving,
          braking: wheel.braking,
          efficiency: drivetrain.efficiency,
          share: drivetrain.share,
          regenerationEfficiency: drivetrain.regenerationEfficiency,
          accessories: forAccessories,
        },
        working,
      )
    : batteryEnergyOfModel.of({ drivetrain: through.battery, accessories: forAccessories }, working);
  consumptionAtBattery.of({ energy: battery, distance: total.distance }, working);
  if (chargingEfficiency !== undefined) {
    const energy = wallEnergy.of({ battery, chargingEfficiency }, working);
    consumptionAtWall.of({ energy, distance: total.distance }, working);
  }
  return working;
}

function kilowattHours(joules: number): Quantity<Energy> {
  return quantity(joules / 3.6e6, "kWh");
}

/** @internal */
export function gradeText(grade: number): string {
  return grade === 0 ? "" : `, on a grade of ${Number((grade * 100).toPrecision(6))} %`;
}
