import { quantity, type Step, type Working } from "@tarewatt/units";
import { cautionsOf } from "../check/towing.js";
import { isEfficiencyDrivetrain } from "../drivetrain/efficiency-drivetrain.js";
import { batteryPowerBraking, batteryPowerDriving, batteryPowerOfModel } from "./battery-energy.js";
import { batteryPowerOfParts } from "./battery-energy-of-parts.js";
import { steadyConsumptionAtBattery, steadyConsumptionAtWall, wallPower } from "./consumption.js";
import { gradeText } from "./drive-cycle.js";
import { type LedgerNumbers, powerLedger, roadEntries } from "./ledger.js";
import { readScope, type Scope, warningsOf } from "./scope.js";
import { lossAt, type SteadyPoint, steadyPoint } from "./steady-point.js";
import type { SteadyResult, SteadySpeedOptions } from "./steady-result.js";
import { warmUpPart } from "./warm-up.js";

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
