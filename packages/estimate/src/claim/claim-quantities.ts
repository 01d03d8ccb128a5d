import type { NumberRule } from "@tarewatt/units";

/** What a claim can be about: its unit, what must be said with it, and which direction sells. */
export interface ClaimRule extends NumberRule {
  /** In words. */
  readonly meaning: string;
  /** Whether the figure means nothing without a procedure. */
  readonly needsProcedure: boolean;
  /** What the figure can refer to; empty where there is one reading only. */
  readonly boundaries: readonly string[];
  /** The direction that an announcement likes to show. */
  readonly better: "more" | "less";
  /** Whether wheels, tyres and equipment move the figure. */
  readonly dependsOnEquipment: boolean;
}

/** A rule whose unit the compiler knows. */
export interface ClaimRuleIn<Unit extends string> extends ClaimRule {
  /** Unit that the figure is kept in. */
  readonly unit: Unit;
}

/** The rules of {@link claimQuantities}, by what they are about. */
export interface ClaimQuantities {
  /** Range. */
  readonly range: ClaimRuleIn<"km">;
  /** Consumption. */
  readonly consumption: ClaimRuleIn<"Wh/km">;
  /** Pack energy. */
  readonly packEnergy: ClaimRuleIn<"kWh">;
  /** Mass of the vehicle. */
  readonly mass: ClaimRuleIn<"kg">;
  /** Payload. */
  readonly payload: ClaimRuleIn<"kg">;
  /** Towed mass. */
  readonly towedMass: ClaimRuleIn<"kg">;
  /** Power. */
  readonly power: ClaimRuleIn<"kW">;
  /** Torque. */
  readonly torque: ClaimRuleIn<"N·m">;
  /** Time of a sprint. */
  readonly sprintTime: ClaimRuleIn<"s">;
  /** Top speed. */
  readonly topSpeed: ClaimRuleIn<"km/h">;
  /** Charging power. */
  readonly chargingPower: ClaimRuleIn<"kW">;
  /** Charging time. */
  readonly chargingTime: ClaimRuleIn<"min">;
  /** Drag coefficient. */
  readonly dragCoefficient: ClaimRuleIn<"1">;
  /** Frontal area. */
  readonly frontalArea: ClaimRuleIn<"m²">;
  /** Specific energy. */
  readonly specificEnergy: ClaimRuleIn<"Wh/kg">;
}

const positive = { above: 0, needsProcedure: false, boundaries: [], dependsOnEquipment: false } as const;

/** What a claim can be about. */
export const claimQuantities: ClaimQuantities = /* @__PURE__ */ (() =>
  ({
    range: {
      ...positive,
      unit: "km",
      meaning: "range",
      needsProcedure: true,
      better: "more",
      dependsOnEquipment: true,
    },
    consumption: {
      ...positive,
      unit: "Wh/km",
      meaning: "consumption",
      needsProcedure: true,
      boundaries: ["at wheel", "at battery", "at wall"],
      better: "less",
      dependsOnEquipment: true,
    },
    packEnergy: { ...positive, unit: "kWh", meaning: "pack energy", boundaries: ["total", "usable"], better: "more" },
    mass: {
      ...positive,
      unit: "kg",
      meaning: "mass of the vehicle",
      boundaries: ["curb mass", "mass in running order", "gross mass"],
      better: "less",
      dependsOnEquipment: true,
    },
    payload: { ...positive, unit: "kg", meaning: "payload", better: "more", dependsOnEquipment: true },
    towedMass: { ...positive, unit: "kg", meaning: "towed mass", boundaries: ["braked", "unbraked"], better: "more" },
    power: { ...positive, unit: "kW", meaning: "power", boundaries: ["peak", "continuous"], better: "more" },
    torque: {
      ...positive,
      unit: "N·m",
      meaning: "torque",
      boundaries: ["at the motor", "at the wheels"],
      better: "more",
    },
    sprintTime: {
      ...positive,
      unit: "s",
      meaning: "time of a sprint",
      needsProcedure: true,
      better: "less",
      dependsOnEquipment: true,
    },
    topSpeed: { ...positive, unit: "km/h", meaning: "top speed", better: "more" },
    chargingPower: { ...positive, unit: "kW", meaning: "charging power", boundaries: ["peak", "mean"], better: "more" },
    chargingTime: { ...positive, unit: "min", meaning: "charging time", needsProcedure: true, better: "less" },
    dragCoefficient: {
      ...positive,
      unit: "1",
      atMost: 2,
      meaning: "drag coefficient",
      better: "less",
      dependsOnEquipment: true,
    },
    frontalArea: { ...positive, unit: "m²", meaning: "frontal area", better: "less" },
    specificEnergy: {
      ...positive,
      unit: "Wh/kg",
      meaning: "specific energy",
      boundaries: ["cell", "pack"],
      better: "more",
    },
  }) as const)();

/** The name of something that a claim can be about. */
export type ClaimQuantity = keyof ClaimQuantities;
