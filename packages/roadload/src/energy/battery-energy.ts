import { type Energy, type Power, type Quantity, type Relation, relation, type Time } from "@tarewatt/units";
import type { Fraction } from "../fraction.js";

const efficiency = { symbol: "η", unit: "1", meaning: "drivetrain efficiency", above: 0, atMost: 1 } as const;
const share = {
  symbol: "r",
  unit: "1",
  meaning: "share of braking taken by the motors",
  atLeast: 0,
  atMost: 1,
} as const;
const regenerationEfficiency = {
  symbol: "η_r",
  unit: "1",
  meaning: "efficiency of regeneration",
  atLeast: 0,
  atMost: 1,
} as const;
const source = { document: "energy chain from wheel to battery", status: "memory" } as const;

/** Inputs of {@link batteryEnergy}. */
export interface BatteryEnergyInputs {
  /** Driving energy at the wheels. */
  readonly driving: Quantity<Energy>;
  /** Braking energy at the wheels; not positive. */
  readonly braking: Quantity<Energy>;
  /** Wheel energy per battery energy while driving. */
  readonly efficiency: Fraction;
  /** Part of the braking energy that the motors take. */
  readonly share: Fraction;
  /** Battery energy per energy that the motors take. */
  readonly regenerationEfficiency: Fraction;
  /** Energy of the accessories. */
  readonly accessories: Quantity<Energy>;
}

/**
 * Energy at the battery over a cycle, for constant efficiencies; positive when the battery is drained.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`, `NOT_A_FRACTION`; otherwise as every relation
 * @example
 * batteryEnergy({
 *   driving: q("12 MJ"), braking: q("-3 MJ"), efficiency: 0.88, share: 0.9, regenerationEfficiency: 0.88, accessories: q("0.6 MJ"),
 * }).in("kWh"); // 3.295
 */
export const batteryEnergy: Relation<BatteryEnergyInputs, Quantity<Energy>> = /* @__PURE__ */ relation({
  name: "energy at the battery",
  inputs: {
    driving: { symbol: "E_drive", unit: "J", meaning: "driving energy at the wheels", atLeast: 0 },
    braking: { symbol: "E_brake", unit: "J", meaning: "braking energy at the wheels", atMost: 0 },
    efficiency,
    share,
    regenerationEfficiency,
    accessories: { symbol: "E_acc", unit: "J", meaning: "energy of the accessories", atLeast: 0 },
  },
  result: { symbol: "E_bat", unit: "J" },
  expression: "E_drive/η + r·η_r·E_brake + E_acc",
  source,
  evaluate: (n) => n.driving / n.efficiency + n.share * n.regenerationEfficiency * n.braking + n.accessories,
});

/** Inputs of {@link batteryPowerDriving}. */
export interface BatteryPowerDrivingInputs {
  /** Power at the wheels, not negative. */
  readonly wheelPower: Quantity<Power>;
  /** Wheel power per battery power. */
  readonly efficiency: Fraction;
  /** Power of the accessories. */
  readonly accessories: Quantity<Power>;
}

/**
 * Power of the battery while the vehicle is driven, for a constant efficiency.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`, `NOT_A_FRACTION`; otherwise as every relation
 * @example
 * batteryPowerDriving({ wheelPower: q("17.6 kW"), efficiency: 0.88, accessories: q("350 W") }).in("kW"); // 20.35
 */
export const batteryPowerDriving: Relation<BatteryPowerDrivingInputs, Quantity<Power>> = /* @__PURE__ */ relation({
  name: "power of the battery, driving",
  inputs: {
    wheelPower: { symbol: "P_w", unit: "W", meaning: "power at the wheels", atLeast: 0 },
    efficiency,
    accessories: { symbol: "P_acc", unit: "W", meaning: "power of the accessories", atLeast: 0 },
  },
  result: { symbol: "P_bat", unit: "W" },
  expression: "P_w/η + P_acc",
  source,
  evaluate: ({ wheelPower, efficiency, accessories }) => wheelPower / efficiency + accessories,
});

/** Inputs of {@link batteryPowerBraking}. */
export interface BatteryPowerBrakingInputs {
  /** Power at the wheels, not positive. */
  readonly wheelPower: Quantity<Power>;
  /** Part of the braking power that the motors take. */
  readonly share: Fraction;
  /** Battery power per power that the motors take. */
  readonly regenerationEfficiency: Fraction;
  /** Power of the accessories. */
  readonly accessories: Quantity<Power>;
}

/**
 * Power of the battery while the vehicle is braked, for constant efficiencies; negative when the battery is charged.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`, `NOT_A_FRACTION`; otherwise as every relation
 * @example
 * batteryPowerBraking({ wheelPower: q("-10 kW"), share: 0.9, regenerationEfficiency: 0.88, accessories: q("350 W") }).in("kW"); // -7.57
 */
export const batteryPowerBraking: Relation<BatteryPowerBrakingInputs, Quantity<Power>> = /* @__PURE__ */ relation({
  name: "power of the battery, braking",
  inputs: {
    wheelPower: { symbol: "P_w", unit: "W", meaning: "power at the wheels", atMost: 0 },
    share,
    regenerationEfficiency,
    accessories: { symbol: "P_acc", unit: "W", meaning: "power of the accessories", atLeast: 0 },
  },
  result: { symbol: "P_bat", unit: "W" },
  expression: "r·η_r·P_w + P_acc",
  source,
  evaluate: (n) => n.share * n.regenerationEfficiency * n.wheelPower + n.accessories,
});

/** Inputs of {@link batteryEnergyOfModel}. */
export interface BatteryEnergyOfModelInputs {
  /** Energy that the drivetrain's model takes from the battery, accessories not counted. */
  readonly drivetrain: Quantity<Energy>;
  /** Energy of the accessories. */
  readonly accessories: Quantity<Energy>;
}

/**
 * Energy at the battery, where a model of the drivetrain gave its part.
 *
 * @throws InputError `NEGATIVE`; otherwise as every relation
 * @example
 * batteryEnergyOfModel({ drivetrain: q("3.1 kWh"), accessories: q("0.2 kWh") }).in("kWh"); // 3.3
 */
export const batteryEnergyOfModel: Relation<BatteryEnergyOfModelInputs, Quantity<Energy>> = /* @__PURE__ */ relation({
  name: "energy at the battery, drivetrain by its model",
  inputs: {
    drivetrain: { symbol: "E_dt", unit: "J", meaning: "energy taken by the drivetrain's model" },
    accessories: { symbol: "E_acc", unit: "J", meaning: "energy of the accessories", atLeast: 0 },
  },
  result: { symbol: "E_bat", unit: "J" },
  expression: "E_dt + E_acc",
  source,
  evaluate: ({ drivetrain, accessories }) => drivetrain + accessories,
});

/** Inputs of {@link batteryPowerOfModel}. */
export interface BatteryPowerOfModelInputs {
  /** Power that the drivetrain's model takes from the battery, accessories not counted. */
  readonly drivetrain: Quantity<Power>;
  /** Power of the accessories. */
  readonly accessories: Quantity<Power>;
}

/**
 * Power of the battery, where a model of the drivetrain gave its part.
 *
 * @throws InputError `NEGATIVE`; otherwise as every relation
 * @example
 * batteryPowerOfModel({ drivetrain: q("20 kW"), accessories: q("350 W") }).in("kW"); // 20.35
 */
export const batteryPowerOfModel: Relation<BatteryPowerOfModelInputs, Quantity<Power>> = /* @__PURE__ */ relation({
  name: "power of the battery, drivetrain by its model",
  inputs: {
    drivetrain: { symbol: "P_dt", unit: "W", meaning: "power taken by the drivetrain's model" },
    accessories: { symbol: "P_acc", unit: "W", meaning: "power of the accessories", atLeast: 0 },
  },
  result: { symbol: "P_bat", unit: "W" },
  expression: "P_dt + P_acc",
  source,
  evaluate: ({ drivetrain, accessories }) => drivetrain + accessories,
});

/** Inputs of {@link accessoryEnergy}. */
export interface AccessoryEnergyInputs {
  /** Power of the accessories. */
  readonly power: Quantity<Power>;
  /** How long they run. */
  readonly duration: Quantity<Time>;
}

/**
 * Energy of the accessories over a cycle: they run all the time, at rest too.
 *
 * @throws InputError `NEGATIVE`; otherwise as every relation
 * @example
 * accessoryEnergy({ power: q("350 W"), duration: q("1800 s") }).in("Wh"); // 175
 */
export const accessoryEnergy: Relation<AccessoryEnergyInputs, Quantity<Energy>> = /* @__PURE__ */ relation({
  name: "energy of the accessories",
  inputs: {
    power: { symbol: "P_acc", unit: "W", meaning: "power of the accessories", atLeast: 0 },
    duration: { symbol: "t", unit: "s", meaning: "duration", atLeast: 0 },
  },
  result: { symbol: "E_acc", unit: "J" },
  expression: "P_acc·t",
  source: { document: "energy is power times time", status: "definition" },
  evaluate: ({ power, duration }) => power * duration,
});
