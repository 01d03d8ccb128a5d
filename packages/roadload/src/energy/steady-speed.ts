import {
  type Energy,
  type EnergyPerDistance,
  InputError,
  type Power,
  type Quantity,
  quantity,
  type Speed,
  type Step,
  type Working,
} from "@tarewatt/units";
import { cautionsOf } from "../check/towing.js";
import type { Drivetrain } from "../drivetrain/drivetrain.js";
import { isEfficiencyDrivetrain } from "../drivetrain/efficiency-drivetrain.js";
import type { Fraction } from "../fraction.js";
import type { RoadLoad } from "../resistance/road-load.js";
import { batteryPowerBraking, batteryPowerDriving, batteryPowerOfModel } from "./battery-energy.js";
import { assertConservesAt } from "./conserves-energy.js";
import { steadyConsumptionAtBattery, steadyConsumptionAtWall, wallPower } from "./consumption.js";
import { gradeText } from "./drive-cycle.js";
import { type LedgerNumbers, type PowerLedger, powerLedger, roadEntries } from "./ledger.js";
import { type BatteryBoundary, finitePower, readScope, type Scope, warningsOf } from "./scope.js";
import { type WarmUp, warmUpPart } from "./warm-up.js";

/** Options of {@link steadySpeed}. */
export interface SteadySpeedOptions {
  /** Speed, more than 0 and at most 150 m/s. */
  readonly speed: Quantity<Speed>;
  /** Resistance of the vehicle. */
  readonly load: RoadLoad;
  /** What stands between wheels and battery. */
  readonly drivetrain: Drivetrain;
  /** Power of the accessories; say so when it is `q("0 W")`. */
  readonly accessories: Quantity<Power>;
  /**
   * Heating and cooling; none when left out. Energy to warm up is no power: it is in no power, consumption or ledger here, but a range
   * counts it, once. Its `warnings` are carried on.
   */
  readonly climate?:
    | {
        /** Power drawn all the time. */
        readonly power: Quantity<Power>;
        /** Energy to warm up or cool down, once. */
        readonly warmUpEnergy?: Quantity<Energy> | undefined;
        /** What a reader should doubt. */
        readonly warnings?: readonly string[] | undefined;
      }
    | undefined;
  /** Grade of the road, rise over run, positive uphill; level when left out. */
  readonly grade?: Fraction | undefined;
  /**
   * Battery energy per wall energy; without it nothing is said at the wall. Its scope is the wall to the energy drawn from
   * the battery, charger and battery while charging: 0.89 was measured (26 cars at 11 kW, a touring club, 2025; 7 % in the
   * charger, 4 % in the battery and its conditioning). With a drivetrain that contains `"battery"` give the charger's alone,
   * about 0.93: the result warns.
   */
  readonly chargingEfficiency?: Fraction | undefined;
}

/** Power at a steady speed and where it goes. Made by {@link steadySpeed}. */
export interface SteadyResult {
  /** What was driven, in words. */
  readonly procedure: string;
  /** The speed. */
  readonly speed: Quantity<Speed>;
  /** Where the power at the battery is counted: see {@link BatteryBoundary}. */
  readonly batteryBoundary: BatteryBoundary;
  /** Powers. */
  readonly power: {
    /** At the wheels; negative when the vehicle is held back. */
    readonly atWheel: Quantity<Power>;
    /** Of the battery; negative when it is charged. */
    readonly atBattery: Quantity<Power>;
    /** At the wall, if it were replaced as it is drawn; only with a charging efficiency. */
    readonly atWall?: Quantity<Power>;
  };
  /** Powers per speed. */
  readonly consumption: {
    /** Driving energy at the wheels per distance; zero when the vehicle is held back. */
    readonly atWheel: Quantity<EnergyPerDistance>;
    /** At the battery. */
    readonly atBattery: Quantity<EnergyPerDistance>;
    /** At the wall; only with a charging efficiency. */
    readonly atWall?: Quantity<EnergyPerDistance>;
  };
  /** Energy to warm up, which is in none of these, and the consumption beside it; only when there is some. */
  readonly warmUp?: WarmUp;
  /** Where the power goes. */
  readonly ledger: PowerLedger;
  /** What a reader should doubt; empty when there is nothing. */
  readonly warnings: readonly string[];
  /** What is dangerous, such as something towed; empty when there is nothing. */
  readonly cautions: readonly string[];
  /** How the numbers came about. */
  working(): Step[];
}

/**
 * Power and consumption at a steady speed.
 *
 * @param options - speed, road load, drivetrain, accessories, grade, charging
 * @returns powers, consumptions, the ledger
 * @throws InputError `COUNTED_TWICE` when two parts hold one loss, `NOT_A_NUMBER` when the drivetrain gives no finite power,
 *   `NOT_VALID_HERE` when the drivetrain's power does not reach,
 *   `OUT_OF_RANGE`, `WRONG_CHOICE`, `NEGATIVE`, `NOT_A_FRACTION`, and what `readOptions` throws
 * @example
 * const load = roadLoad({
 *   ...{ mass: q("2000 kg"), dragArea: q("0.7 m²"), rollingResistanceCoefficient: 0.009, airDensity: q("1.189 kg/m³") },
 * });
 * const drivetrain = efficiencyDrivetrain({
 *   ...{ efficiency: 0.88, regeneration: { share: 0.9 }, contains: ["gears", "motor", "inverter"] },
 * });
 * steadySpeed({ speed: q("110 km/h"), load, drivetrain, accessories: q("350 W") }).consumption.atBattery.in("kWh/100 km"); // 18.15...
 */
export function steadySpeed(options: SteadySpeedOptions): SteadyResult {
  const rules = { speed: { unit: "m/s", above: 0, atMost: 150 } } as const;
  const { scope, read } = readScope("steadySpeed", options, rules);
  const { speed } = read;
  const { load, numbers, drivetrain, accessories, grade, chargingEfficiency } = scope;
  const climate = scope.climate?.power ?? 0;
  const terms = {
    constant: numbers.constant * speed,
    linear: numbers.linear * speed ** 2,
    quadratic: numbers.quadratic * speed ** 3,
  };
  const climbing = numbers.gradeForce * speed;
  const atWheel = terms.constant + terms.linear + terms.quadratic + climbing;
  assertReachable(drivetrain, atWheel, speed);
  const drawn = finitePower(drivetrain, drivetrain.batteryPower(atWheel, speed), atWheel, speed);
  const brakes = finitePower(drivetrain, drivetrain.frictionBrakePower(atWheel, speed), atWheel, speed);
  assertConservesAt(drivetrain, atWheel, speed);
  const atBattery = drawn + accessories + climate;
  const atWall = chargingEfficiency === undefined ? undefined : atBattery / chargingEfficiency;
  const entries: LedgerNumbers = [
    ...roadEntries(load, terms),
    ["grade", climbing],
    ["friction brakes", brakes],
    ["drivetrain loss", drawn - atWheel - brakes],
    ["accessories", accessories],
    ...(scope.climate === undefined ? [] : ([["climate", climate]] as const)),
    ...(atWall === undefined ? [] : ([["charging loss", atWall - atBattery]] as const)),
  ];
  const perDistance = (power: number) => quantity(power / speed / 3.6, "Wh/km");
  return Object.freeze({
    procedure: `steady ${options.speed}${gradeText(grade)}`,
    speed: options.speed,
    batteryBoundary: scope.batteryBoundary,
    power: Object.freeze({
      atWheel: quantity(atWheel, "W"),
      atBattery: quantity(atBattery, "W"),
      ...(atWall === undefined ? {} : { atWall: quantity(atWall, "W") }),
    }),
    consumption: Object.freeze({
      atWheel: perDistance(Math.max(0, atWheel)),
      atBattery: perDistance(atBattery),
      ...(atWall === undefined ? {} : { atWall: perDistance(atWall) }),
    }),
    ...warmUpPart(scope.climate?.warmUpEnergy ?? 0, atBattery / speed),
    ledger: powerLedger(atWall === undefined ? "battery" : "wall", entries, atWall ?? atBattery),
    warnings: warningsOf(scope, atBattery, `at a steady ${options.speed}`, speed),
    cautions: cautionsOf(load),
    working: () => [...load.at(options.speed, { grade }).working(), ...explain(scope, speed, atWheel, drawn)],
  });
}

/** A speed that nobody can hold has no consumption. */
function assertReachable(drivetrain: Drivetrain, wheelPower: number, speed: number): void {
  const most = drivetrain.maximumWheelPower?.(speed) ?? Number.POSITIVE_INFINITY;
  if (!(wheelPower > most * (1 + 1e-12))) return;
  throw new InputError(
    "NOT_VALID_HERE",
    `the vehicle cannot hold this speed: it takes ${Number((wheelPower / 1000).toPrecision(4))} kW at the wheels, and the ` +
      `drivetrain gives ${Number((most / 1000).toPrecision(4))} kW at ${Number(speed.toPrecision(4))} m/s`,
    { wheelPower, most, speed },
  );
}

function explain(
  { drivetrain, accessories, climate, chargingEfficiency }: Scope,
  speed: number,
  wheelPower: number,
  drawn: number,
): Step[] {
  const working: Working = [];
  const battery = batteryPowerStep(drivetrain, accessories + (climate?.power ?? 0), wheelPower, drawn, working);
  steadyConsumptionAtBattery.of({ power: battery, speed }, working);
  if (chargingEfficiency !== undefined) {
    const power = wallPower.of({ battery, chargingEfficiency }, working);
    steadyConsumptionAtWall.of({ power, speed }, working);
  }
  return working;
}

function batteryPowerStep(
  drivetrain: Drivetrain,
  accessories: number,
  wheelPower: number,
  drawn: number,
  working: Working,
): number {
  if (!isEfficiencyDrivetrain(drivetrain)) return batteryPowerOfModel.of({ drivetrain: drawn, accessories }, working);
  const { efficiency, share, regenerationEfficiency } = drivetrain;
  return wheelPower >= 0
    ? batteryPowerDriving.of({ wheelPower, efficiency, accessories }, working)
    : batteryPowerBraking.of({ wheelPower, share, regenerationEfficiency, accessories }, working);
}
