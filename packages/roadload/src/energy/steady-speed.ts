import {
  type Energy,
  type EnergyPerDistance,
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
import type { BatteryState } from "./battery.js";
import { batteryPowerBraking, batteryPowerDriving, batteryPowerOfModel } from "./battery-energy.js";
import { batteryPowerOfParts } from "./battery-energy-of-parts.js";
import { steadyConsumptionAtBattery, steadyConsumptionAtWall, wallPower } from "./consumption.js";
import { gradeText } from "./drive-cycle.js";
import { type LedgerNumbers, type PowerLedger, powerLedger, roadEntries } from "./ledger.js";
import { type BatteryBoundary, readScope, type Scope, warningsOf } from "./scope.js";
import { lossAt, type SteadyPoint, steadyPoint } from "./steady-point.js";
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
   * The battery and how full it is. Its loss is then counted, power at the battery is that of the cells, and its limits hold: a
   * speed that it gives too little power for is refused, and what it cannot be charged with the friction brakes take.
   */
  readonly battery?: BatteryState | undefined;
  /**
   * Battery energy per wall energy; without it nothing is said at the wall. Its scope is the wall to the energy drawn from
   * the battery, charger and battery while charging: 0.89 was measured (26 cars at 11 kW, a touring club, 2025; 7 % in the
   * charger, 4 % in the battery and its conditioning). With a drivetrain that contains `"battery"` give the charger's alone,
   * about 0.93: the result warns.
   */
  readonly chargingEfficiency?: Fraction | undefined;
}

/** How a battery fares at a steady speed. */
export interface SteadyBattery {
  /** State of charge that the powers are those of. */
  readonly stateOfCharge: number;
  /** Power given at the terminals; negative when it is charged. */
  readonly atTerminals: Quantity<Power>;
  /** Heat in the battery. */
  readonly loss: Quantity<Power>;
  /** Braking power at the wheels that the battery could not be charged with; the friction brakes take it. */
  readonly refused: Quantity<Power>;
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
  /** How the battery fares; only with a battery. */
  readonly battery?: SteadyBattery;
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
 * @param options - speed, road load, drivetrain, accessories, climate, battery, grade, charging
 * @returns powers, consumptions, the ledger
 * @throws InputError `COUNTED_TWICE` when two parts hold one loss, `NOT_A_NUMBER` when the drivetrain gives no finite power,
 *   `NOT_VALID_HERE` when the power of drivetrain or battery does not reach,
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
  const { scope, read } = readScope("steadySpeed", options, rules, ["battery?"]);
  const { speed } = read;
  const { load, numbers, accessories, grade, chargingEfficiency, battery, stateOfCharge } = scope;
  const climate = scope.climate?.power ?? 0;
  const terms = {
    constant: numbers.constant * speed,
    linear: numbers.linear * speed ** 2,
    quadratic: numbers.quadratic * speed ** 3,
  };
  const climbing = numbers.gradeForce * speed;
  const atWheel = terms.constant + terms.linear + terms.quadratic + climbing;
  const point = steadyPoint(scope, atWheel, speed, stateOfCharge);
  const { drawn, brakes, terminals, refused } = point;
  const loss = lossAt(battery, terminals, stateOfCharge);
  const atBattery = terminals + loss;
  const atWall = chargingEfficiency === undefined ? undefined : atBattery / chargingEfficiency;
  const entries: LedgerNumbers = [
    ...roadEntries(load, terms),
    ["grade", climbing],
    ["friction brakes", brakes],
    ["drivetrain loss", drawn - atWheel - brakes],
    ["accessories", accessories],
    ...(scope.climate === undefined ? [] : ([["climate", climate]] as const)),
    ...(battery === undefined ? [] : ([["battery loss", loss]] as const)),
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
    ...(battery === undefined
      ? {}
      : {
          battery: Object.freeze({
            stateOfCharge,
            atTerminals: quantity(terminals, "W"),
            loss: quantity(loss, "W"),
            refused: quantity(refused, "W"),
          }),
        }),
    ledger: powerLedger(atWall === undefined ? "battery" : "wall", entries, atWall ?? atBattery),
    warnings: warningsOf(scope, atBattery, `at a steady ${options.speed}`, speed),
    cautions: cautionsOf(load),
    working: () => [...load.at(options.speed, { grade }).working(), ...explain(scope, speed, point, loss)],
  });
}

function explain(scope: Scope, speed: number, point: SteadyPoint, loss: number): Step[] {
  const { chargingEfficiency } = scope;
  const working: Working = [];
  const battery = batteryPowerStep(scope, point, loss, working);
  steadyConsumptionAtBattery.of({ power: battery, speed }, working);
  if (chargingEfficiency !== undefined) {
    const power = wallPower.of({ battery, chargingEfficiency }, working);
    steadyConsumptionAtWall.of({ power, speed }, working);
  }
  return working;
}

function batteryPowerStep(
  { drivetrain: model, accessories, climate, battery }: Scope,
  { atWheel: wheelPower, drawn: drivetrain }: SteadyPoint,
  batteryLoss: number,
  working: Working,
): number {
  if (climate !== undefined || battery !== undefined) {
    const parts = { drivetrain, accessories, climate: climate?.power ?? 0, batteryLoss };
    return batteryPowerOfParts.of(parts, working);
  }
  if (!isEfficiencyDrivetrain(model)) return batteryPowerOfModel.of({ drivetrain, accessories }, working);
  const { efficiency, share, regenerationEfficiency } = model;
  return wheelPower >= 0
    ? batteryPowerDriving.of({ wheelPower, efficiency, accessories }, working)
    : batteryPowerBraking.of({ wheelPower, share, regenerationEfficiency, accessories }, working);
}
