import {
  type Energy,
  type EnergyPerDistance,
  InputError,
  type Length,
  type Quantity,
  type Relation,
  readNumber,
  readOptions,
  relation,
  type Step,
} from "@tarewatt/units";
import { textsOf } from "../check/read-words.js";
import { unusual } from "../check/unusual.js";
import type { BatteryBoundary } from "./scope.js";
import { rangeAfterWarmUp, type WarmUp } from "./warm-up.js";

/** Inputs of {@link rangeFromConsumption}. */
export interface RangeFromConsumptionInputs {
  /** Usable energy of the battery, at the boundary of the consumption. */
  readonly usableEnergy: Quantity<Energy>;
  /** Consumption at the battery. */
  readonly consumption: Quantity<EnergyPerDistance>;
}

/**
 * Range: usable energy of the battery per consumption at the battery.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`; otherwise as every relation
 * @example
 * rangeFromConsumption({ usableEnergy: q("90 kWh"), consumption: q("200 Wh/km") }).in("km"); // 450
 */
export const rangeFromConsumption: Relation<RangeFromConsumptionInputs, Quantity<Length>> = /* @__PURE__ */ relation({
  name: "range",
  inputs: {
    usableEnergy: { symbol: "E_u", unit: "kWh", meaning: "usable energy of the battery", atLeast: 0 },
    consumption: { symbol: "e_bat", unit: "Wh/km", meaning: "consumption at the battery", above: 0 },
  },
  result: { symbol: "R", unit: "km" },
  expression: "1000·E_u/e_bat",
  source: { document: "definition of range at a constant consumption", status: "definition" },
  evaluate: ({ usableEnergy, consumption }) => (1000 * usableEnergy) / consumption,
});

const boundaries: readonly unknown[] = ["terminals", "cells", "wall"] satisfies BatteryBoundary[];

/** What {@link rangeOn} needs of a result: any {@link DriveResult} or {@link SteadyResult} has it. */
export interface RangeBasis {
  /** What was driven. */
  readonly procedure: string;
  /** Consumption, by boundary. */
  readonly consumption: {
    /** At the battery. */
    readonly atBattery: Quantity<EnergyPerDistance>;
  };
  /** Where the consumption at the battery was counted. */
  readonly batteryBoundary: BatteryBoundary;
  /** What is taken once, however often the drive is repeated; nothing when left out. */
  readonly warmUp?: WarmUp | undefined;
  /** What a reader should doubt; carried on. */
  readonly warnings?: readonly string[] | undefined;
  /** What is dangerous; carried on. */
  readonly cautions?: readonly string[] | undefined;
}

/** Options of {@link rangeOn}. */
export interface RangeOnOptions {
  /** Energy that the driver can use between full and empty, at the boundary of the battery's consumption. */
  readonly usableEnergy: Quantity<Energy>;
  /** Result of {@link driveCycle} or {@link steadySpeed}. */
  readonly result: RangeBasis;
}

/** A range and what it refers to. */
export interface RangeResult {
  /** Distance from full to empty. */
  readonly range: Quantity<Length>;
  /** What was driven, and that it goes on until the battery is empty. */
  readonly procedure: string;
  /** Where energy and consumption were counted. */
  readonly boundary: "battery";
  /** Where at the battery: the usable energy must have been counted there too. See {@link BatteryBoundary}. */
  readonly batteryBoundary: Exclude<BatteryBoundary, "wall">;
  /** What a reader should doubt; empty when there is nothing. */
  readonly warnings: readonly string[];
  /** What is dangerous, such as something towed; empty when there is nothing. */
  readonly cautions: readonly string[];
  /** How the number came about. */
  working(): Step[];
}

/** Certified and published usable energies are direct current energies at the terminals, so this is said, not assumed. */
const AT_CELLS =
  "consumption is counted at the cells, because the drivetrain or a battery model counts the battery's own loss: the usable energy must be " +
  "that of the cells too, which is more than what the terminals give";

/**
 * Range on a cycle or at a steady speed: usable energy per consumption, as if it went on until the battery is empty.
 *
 * Energy to warm up is taken once, not in every repetition. What the result says of doubts and dangers is carried on.
 *
 * This is no label range: labels weight cycles, and adjust. Usable energies from tests (SAE J1634, UN GTR No. 15; from
 * memory) are direct current energies at the battery's terminals. They belong with a consumption at the terminals; with one
 * at the cells the range comes out too short by the battery's own loss, and the result warns.
 *
 * @param options - usable energy and the result to take the consumption from
 * @returns the range with its procedure and its boundary
 * @throws InputError `NOT_VALID_HERE` when nothing is consumed or the consumption is one at the wall, `WRONG_CHOICE` when `result` is no result, `NEGATIVE`, and
 *   what `readOptions` throws
 * @example
 * const load = roadLoad({
 *   ...{ mass: q("2000 kg"), dragArea: q("0.7 m²"), rollingResistanceCoefficient: 0.009, airDensity: q("1.189 kg/m³") },
 * });
 * const drivetrain = efficiencyDrivetrain({
 *   ...{ efficiency: 0.88, regeneration: { share: 0.9 }, contains: ["gears", "motor", "inverter"] },
 * });
 * const result = driveCycle({ cycle: wltc3b, load, drivetrain, accessories: q("350 W") });
 * rangeOn({ usableEnergy: q("90 kWh"), result }).range.in("mi"); // 372.8...
 */
export function rangeOn(options: RangeOnOptions): RangeResult {
  const { usableEnergy: kilowattHours } = readOptions(
    "rangeOn",
    options,
    { usableEnergy: { unit: "kWh", atLeast: 0 } },
    ["result"],
  );
  const { usableEnergy, result } = options;
  const {
    procedure,
    batteryBoundary,
    consumption: given,
    warmUp,
    warnings,
    cautions,
  } = (result ?? {}) as Partial<RangeBasis>;
  const consumption = warmUp === undefined ? given?.atBattery : warmUp?.consumptionThereafter;
  if (consumption === undefined || typeof procedure !== "string" || !boundaries.includes(batteryBoundary)) {
    throw new InputError("WRONG_CHOICE", "result must come from driveCycle or steadySpeed", { name: "result" });
  }
  const perDistance = readNumber("result.consumption.atBattery", consumption, { unit: "Wh/km" });
  if (batteryBoundary === "wall") {
    throw new InputError(
      "NOT_VALID_HERE",
      "the drivetrain of this result contains charging, so its consumption is one at the wall, and the usable energy is not: " +
        "give a drivetrain without charging, and a chargingEfficiency",
      { batteryBoundary },
    );
  }
  if (perDistance <= 0) {
    throw new InputError(
      "NOT_VALID_HERE",
      `there is no range where the battery is not drained: ${procedure} consumes ${consumption}`,
      { consumption: String(consumption) },
    );
  }
  const warmUpEnergy = warmUp?.energy;
  if (warmUp !== undefined) readNumber("result.warmUp.energy", warmUpEnergy, { unit: "kWh", atLeast: 0 });
  return Object.freeze({
    range:
      warmUpEnergy === undefined
        ? rangeFromConsumption({ usableEnergy, consumption })
        : rangeAfterWarmUp({ usableEnergy, warmUpEnergy, consumption }),
    procedure: `${procedure}; repeated until the usable energy is spent`,
    boundary: "battery",
    batteryBoundary: batteryBoundary as Exclude<BatteryBoundary, "wall">,
    warnings: Object.freeze([
      ...textsOf(warnings),
      ...unusual({ usableEnergy: kilowattHours }),
      ...(batteryBoundary === "cells" ? [AT_CELLS] : []),
    ]),
    cautions: Object.freeze(textsOf(cautions)),
    working: () => [
      warmUpEnergy === undefined
        ? rangeFromConsumption.explain({ usableEnergy, consumption })
        : rangeAfterWarmUp.explain({ usableEnergy, warmUpEnergy, consumption }),
    ],
  } as const);
}
